package greyground.art.kind;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Interpretation;
import greyground.art.page.PackedBits;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.SampleReading;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.List;

/**
 * Understands the portable anymap kinds P1 to P6: black and white, grey and RGB, as text or as bytes; and P7, which names its
 * samples and may have alpha.
 */
public final class PnmFormat implements ArtFormat {
    @Override
    public String kind() {
        return "PNM";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        PnmWords words = new PnmWords(file, 0);
        int type = words.octet() == 'P' ? words.octet() - '0' : 0;
        if (type == 7) {
            return stored(file, words, named(words), false);
        }
        int width = words.number(SIDE_AT_MOST, "width");
        int height = words.number(SIDE_AT_MOST, "height");
        boolean twoLevel = type == 1 || type == 4;
        int most = twoLevel ? 1 : words.number(65_535, "largest value");
        Interpretation meaning =
                Interpretation.plain(type == 3 || type == 6 ? Interpretation.Model.RGB : Interpretation.Model.GREY);
        return stored(
                file,
                words,
                new Head(width, height, twoLevel ? meaning.inverse() : meaning, most, twoLevel),
                type <= 3);
    }

    /** What the header says: {@code most} is the largest sample, and {@code inBits} says that a row's samples are bits. */
    private record Head(int width, int height, Interpretation meaning, int most, boolean inBits) {}

    /** P7's header, of names and values in any order. */
    private static Head named(PnmWords words) throws IOException {
        int width = 0;
        int height = 0;
        int depth = 0;
        int most = 0;
        String kind = "";
        for (String name = words.word(); !name.equals("ENDHDR"); name = words.word()) {
            switch (name) {
                case "WIDTH" -> width = words.number(SIDE_AT_MOST, "width");
                case "HEIGHT" -> height = words.number(SIDE_AT_MOST, "height");
                case "DEPTH" -> depth = words.number(32, "number of samples a pixel");
                case "MAXVAL" -> most = words.number(65_535, "largest value");
                case "TUPLTYPE" -> kind = words.word();
                default -> throw new Unreadable("its header says \"" + name + "\", which is not known");
            }
        }
        boolean alpha = kind.endsWith("_ALPHA");
        Interpretation.Model model = switch (alpha ? kind.substring(0, kind.length() - 6) : kind) {
            case "BLACKANDWHITE", "GRAYSCALE" -> Interpretation.Model.GREY;
            case "RGB" -> Interpretation.Model.RGB;
            default ->
                throw new Unreadable(
                        "its samples are called \"" + kind + "\"; BLACKANDWHITE, GRAYSCALE and RGB, and the"
                                + " same with _ALPHA, can be read: save it as one of them");
        };
        if (depth != model.channels() + (alpha ? 1 : 0)) {
            throw new Unreadable("it is called " + kind + " but has " + depth + " samples a pixel: save it anew");
        }
        return new Head(
                width, height, alpha ? Interpretation.withAlpha(model) : Interpretation.plain(model), most, false);
    }

    private static Page stored(ArtBytes file, PnmWords words, Head head, boolean text) throws IOException {
        int width = head.width;
        int height = head.height;
        int most = head.most;
        if (width < 1 || height < 1 || most < 1) {
            throw new Unreadable("it claims " + width + " x " + height + " pixels of 0 to " + most);
        }
        int channels = head.meaning.model().channels() + (head.meaning.alphaChannel() < 0 ? 0 : 1);
        Samples samples = new Samples(width, height, channels, most > 255 ? 2 : 1, true);
        long dataAt = words.at();
        long packedRow = head.inBits && !text ? (width + 7) / 8 : samples.bytesPerRow();
        long least = text ? Math.multiplyExact((long) width * height, channels) : packedRow * height;
        if (file.size() - dataAt < least) {
            throw new Unreadable("it claims " + width + " x " + height + " pixels, for which at least " + least
                    + " bytes are needed, but has " + Math.max(0, file.size() - dataAt) + ": the file is cut short");
        }
        return new Page(
                samples,
                head.meaning,
                null,
                1,
                PixelDensity.NONE,
                most == 1 ? 1 : most > 255 ? 16 : 8,
                samples.bandRows(),
                !text,
                0,
                Page.PACKED,
                () -> text
                        ? new TextRows(new PnmWords(file, dataAt), samples, most, head.inBits)
                        : new StoredRows(file, dataAt, packedRow, samples, most, head.inBits));
    }

    /** Rows stored as bytes. */
    private record StoredRows(ArtBytes file, long dataAt, long packedRow, Samples samples, int most, boolean inBits)
            implements SampleRows {
        @Override
        public void read(int firstRow, int rowCount, byte[] into) throws IOException {
            long at = dataAt + packedRow * firstRow;
            if (inBits) {
                byte[] packed = file.read(at, packedRow * rowCount);
                for (int r = 0; r < rowCount; r++) {
                    PackedBits.spread(packed, (int) packedRow * r, 1, into, samples.width() * r, samples.width(), true);
                }
                return;
            }
            int count = Math.toIntExact(packedRow * rowCount);
            file.readFully(at, into, 0, count);
            if (most != samples.most()) {
                for (int i = 0; i < count; i += samples.bytesPerSample()) {
                    SampleReading.put(into, i, scaled(SampleReading.one(into, i, samples), most, samples), samples);
                }
            }
        }
    }

    /** Rows written out as decimal numbers, read from the top down. */
    private record TextRows(PnmWords words, Samples samples, int most, boolean digits) implements SampleRows {
        @Override
        public void read(int firstRow, int rowCount, byte[] into) throws IOException {
            int count = Math.toIntExact(samples.bytesPerRow() * rowCount);
            for (int i = 0; i < count; i += samples.bytesPerSample()) {
                int value = digits ? words.digit() : words.number(most, "sample");
                SampleReading.put(into, i, scaled(value, most, samples), samples);
            }
        }
    }

    private static int scaled(int value, int most, Samples samples) {
        return most == samples.most()
                ? value
                : (int) (((long) Math.min(value, most) * samples.most() + most / 2) / most);
    }
}
