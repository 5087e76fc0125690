package greyground.film.compose;

import greyground.film.sheet.FilledPlate;
import greyground.film.sheet.SheetLayout;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.DeflatedRows;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.OutputStream;
import java.util.zip.Inflater;

/** Composes and deflates a film of more than 2^32 pixels, reads it back as it comes, and says how many bytes it held. */
final class HugeFilm {
    private HugeFilm() {}

    public static void main(String[] arguments) throws Exception {
        ArrayPlane art = ArrayPlane.of(4000, 3000, (x, y) -> (x * 13 + y * 7) % 65_536);
        // 5080 dpi is 200 film pixels a millimetre.
        SheetLayout layout = FilledPlate.sheet(new Resolution(5080), new Size(400, 300), "huge");
        FilmContent.Picture picture = FilledPlate.picture(art, layout);
        char[] even = new char[ToneCurve.CODES];
        for (int grey = 0; grey < even.length; grey++) {
            even[grey] = (char) (ToneCurve.SOLID - grey);
        }
        int[] order = new int[64 * 64];
        for (int i = 0; i < order.length; i++) {
            order[i] = i * 1597 % order.length;
        }
        FilmComposer film = FilmComposer.screened(
                layout, picture, new ToneCurve("even", even), ThresholdTile.fromOrder(64, 64, order), false);
        ReadBack readBack = new ReadBack();
        DeflatedRows.write(film.height(), film.bytesPerRow(), film::maker, 2, readBack, Progress.NONE);
        System.out.println(film.width() + " " + film.height() + " " + readBack.bytes + " " + readBack.ended());
    }

    /** Inflates what is written to it and counts, keeping nothing. */
    private static final class ReadBack extends OutputStream {
        private final Inflater inflater = new Inflater();
        private final byte[] room = new byte[1 << 16];
        private long bytes;

        @Override
        public void write(int value) {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] from, int at, int length) {
            try {
                inflater.setInput(from, at, length);
                for (int got = inflater.inflate(room); got > 0; got = inflater.inflate(room)) {
                    bytes += got;
                }
            } catch (java.util.zip.DataFormatException broken) {
                throw new IllegalStateException(broken);
            }
        }

        boolean ended() {
            return inflater.finished();
        }
    }
}
