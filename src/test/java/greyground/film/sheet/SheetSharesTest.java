package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.Bands;
import greyground.raster.PackedRows;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SheetSharesTest {
    /** The layout's marks alone, drawn pixel by pixel. */
    private record Marks(SheetLayout layout) implements FilmRows {
        @Override
        public int width() {
            return layout.width();
        }

        @Override
        public int height() {
            return layout.height();
        }

        @Override
        public int bitsPerSample() {
            return 1;
        }

        @Override
        public Bands.Maker<byte[]> maker() {
            return (first, count) -> {
                byte[] band = new byte[count * bytesPerRow()];
                for (int y = 0; y < count; y++) {
                    int start = y * bytesPerRow();
                    for (Mark mark : layout.marks()) {
                        mark.spans(first + y, (from, to) -> PackedRows.blacken(band, start, from, to));
                    }
                }
                return band;
            };
        }
    }

    /** Law: what is seen from afar is the mean of what is printed, wherever the window lies and however coarse it is. */
    @Test
    void marksFromAfarAreTheMeanOfTheFilmsPixels() throws Exception {
        SheetLayout whole = SheetLayout.of(
                FilmPixels.of(new Resolution(300)),
                new Size(40, 40),
                3,
                2,
                Optional.empty(),
                List.of("one line"),
                (text, cap) -> text.length() * cap);
        SheetLayout layout = whole.bare().carrying(whole.marks(), List.of(), List.of());
        ToneCurve curve = new ToneCurve("clear", new char[ToneCurve.CODES]);
        Random random = new Random(5);
        for (int i = 0; i < 12; i++) {
            double scale = i == 0 ? 1 : 2 + 8 * random.nextDouble();
            SheetShares.Window window = new SheetShares.Window(
                    -20 + 60 * random.nextDouble(), -20 + 60 * random.nextDouble(), scale, scale * 1.01, 250, 250);
            float[] far = SheetShares.of(layout, curve, window);
            float[] near = SheetShares.ofFilm(new Marks(layout), 0, layout.height(), window, Progress.NONE);
            double sum = 0;
            for (float share : near) {
                sum += share;
            }
            assertTrue(sum > 1, "a window without marks proves nothing: " + window);
            assertArrayEquals(near, far, 1e-4f, window.toString());
        }
    }
}
