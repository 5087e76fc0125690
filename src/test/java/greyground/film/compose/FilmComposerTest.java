package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.ArtChoice;
import greyground.film.job.ArtOnPlate;
import greyground.film.job.Placing;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Patch;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.TextWidth;
import greyground.grain.ThresholdTile;
import greyground.quantity.FilmPixels;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilmComposerTest {
    private static final Resolution COARSE = new Resolution(150);

    @Test
    void bandsAndThreadsChangeNothing() throws Exception {
        for (FilmComposer film : films()) {
            byte[] whole = film.maker().make(0, film.height());
            assertArrayEquals(whole, banded(film, 1, 2));
            assertArrayEquals(whole, banded(film, 7, 5));
            assertArrayEquals(whole, banded(film, 64, 1));
            assertArrayEquals(whole, banded(film, 64, 5));
        }
    }

    @Test
    void mirroredFilmIsThePlainFilmSeenFromBehind() throws Exception {
        List<FilmComposer> films = films();
        for (int pair = 0; pair < films.size(); pair += 2) {
            FilmComposer plain = films.get(pair);
            FilmComposer mirrored = films.get(pair + 1);
            byte[] a = plain.maker().make(0, plain.height());
            byte[] b = mirrored.maker().make(0, plain.height());
            for (int y = 0; y < plain.height(); y++) {
                for (int x = 0; x < plain.width(); x++) {
                    int seen = sample(plain, a, x, y);
                    int behind = sample(mirrored, b, plain.width() - 1 - x, y);
                    if (seen != behind) {
                        assertEquals(seen, behind, "pair " + pair + " at " + x + "," + y);
                    }
                }
            }
            PixelRect plate = plain.sheet().plate();
            assertEquals(plate.mirrored(plain.width()), mirrored.sheet().plate());
        }
    }

    /** The limits that replace the curve must give what the curve and the threshold say, pixel for pixel. */
    @ParameterizedTest
    @ValueSource(ints = {7, 33, 4096})
    void everyPixelIsBlackExactlyWhereItsCoveragePassesTheThreshold(int tileWidth) throws Exception {
        SheetLayout layout = layout(new Size(40, 50));
        ArrayPlane art = noise(60, 80);
        ArtOnPlate placing = placed(art, layout, Placing.Fit.FILL);
        ToneCurve curve = curve();
        ThresholdTile grain = grain(tileWidth, tileWidth == 4096 ? 2200 : 29);
        FilmComposer film = FilmComposer.screened(layout, new FilmContent.Picture(art, placing), curve, grain, false);
        FilmComposer deep =
                FilmComposer.continuous(layout, new FilmContent.Picture(art, placing), identity(), 16, false);
        byte[] bits = film.maker().make(0, film.height());
        byte[] inks = deep.maker().make(0, film.height());
        PixelRect image = placing.image();
        for (int y = image.top(); y < image.bottom(); y++) {
            for (int x = image.left(); x < image.right(); x++) {
                int grey = 65_535 - sample(deep, inks, x, y);
                int black = curve.coverage(grey) > grain.threshold(x, y) ? 1 : 0;
                if (black != sample(film, bits, x, y)) {
                    assertEquals(black, sample(film, bits, x, y), "at " + x + "," + y);
                }
            }
        }
    }

    @Test
    void uniformArtCoversWhatTheCurveSays() throws Exception {
        SheetLayout layout = layout(new Size(60, 60));
        ToneCurve curve = curve();
        ThresholdTile grain = grain(128, 128);
        for (int step = 0; step <= 20; step++) {
            int grey = 65_535 * step / 20;
            GreyPlane art = ArrayPlane.uniform(50, 50, grey);
            FilmComposer film = FilmComposer.screened(
                    layout, new FilmContent.Picture(art, placed(art, layout, Placing.Fit.FILL)), curve, grain, false);
            byte[] bits = film.maker().make(0, film.height());
            PixelRect plate = layout.plate();
            long black = 0;
            int side = 256;
            for (int y = 0; y < side; y++) {
                for (int x = 0; x < side; x++) {
                    black += sample(film, bits, plate.left() + 3 + x, plate.top() + 5 + y);
                }
            }
            double percent = 100.0 * black / (side * side);
            assertEquals(100.0 * curve.coverage(grey) / 65_535, percent, 0.2, "grey " + grey);
        }
    }

    @Test
    void wedgeCarriesTheCurveAboveAndPlainCoverageBelow() throws Exception {
        SheetLayout layout = layout(new Size(60, 60));
        GreyPlane art = ArrayPlane.uniform(50, 50, 30_000);
        ToneCurve curve = curve();
        FilmContent picture = new FilmContent.Picture(art, placed(art, layout, Placing.Fit.FILL));
        FilmComposer film = FilmComposer.continuous(layout, picture, curve, 16, false);
        byte[] samples = film.maker().make(0, film.height());
        int greys = 0;
        int coverages = 0;
        for (Patch patch : layout.patches()) {
            int got = sample(film, samples, patch.box().left() + 2, patch.box().top() + 2);
            if (patch.field() instanceof Patch.ArtGrey grey) {
                assertEquals(curve.coverage(grey.code()), got);
                greys++;
            } else if (patch.field() instanceof Patch.FilmCoverage cover) {
                assertEquals(cover.coverage(), got);
                coverages++;
            }
        }
        assertEquals(21, greys);
        assertEquals(11, coverages);
    }

    /** The tile holds every field's own coverage as a threshold, so that "as much as" differs from "more than". */
    @Test
    void aFieldsPixelIsBlackExactlyWhereItsCoveragePassesTheThreshold() throws Exception {
        SheetLayout layout = layout(new Size(60, 60));
        GreyPlane art = ArrayPlane.uniform(50, 50, 30_000);
        ToneCurve curve = curve();
        List<Integer> coverages = layout.patches().stream()
                .map(patch -> Math.min(65_534, patch.coverage(curve)))
                .toList();
        char[] thresholds = new char[37 * 11];
        for (int i = 0; i < thresholds.length; i++) {
            thresholds[i] = (char) (int) coverages.get(i % coverages.size());
        }
        ThresholdTile grain = new ThresholdTile(37, 11, thresholds);
        FilmContent picture = new FilmContent.Picture(art, placed(art, layout, Placing.Fit.FILL));
        FilmComposer film = FilmComposer.screened(layout, picture, curve, grain, false);
        byte[] bits = film.maker().make(0, film.height());
        int equal = 0;
        for (Patch patch : layout.patches()) {
            int coverage = patch.coverage(curve);
            PixelRect box = patch.box();
            for (int y = box.top(); y < box.bottom(); y++) {
                for (int x = box.left(); x < box.right(); x++) {
                    equal += coverage == grain.threshold(x, y) ? 1 : 0;
                    assertEquals(coverage > grain.threshold(x, y) ? 1 : 0, sample(film, bits, x, y), patch.toString());
                }
            }
        }
        assertTrue(equal > 100, "pixels at their field's own coverage: " + equal);
    }

    @Test
    void screenFilmIsHardDotsAtTheCoverageAsked() throws Exception {
        SheetLayout layout = layout(new Size(60, 60));
        FilmContent screen = new FilmContent.Screen(layout.bleed(), 65_535 / 2);
        FilmComposer film = FilmComposer.screened(layout, screen, curve(), grain(128, 128), false);
        byte[] bits = film.maker().make(0, film.height());
        long black = 0;
        for (int y = 0; y < 256; y++) {
            for (int x = 0; x < 256; x++) {
                black += sample(
                        film, bits, layout.plate().left() + x, layout.plate().top() + y);
            }
        }
        assertEquals(0.5, black / 65_536.0, 0.002);
    }

    @Test
    void nothingIsBlackBetweenImageAndMarks() throws Exception {
        SheetLayout layout = layout(new Size(60, 60));
        GreyPlane art = ArrayPlane.uniform(50, 50, 0);
        FilmContent picture = new FilmContent.Picture(art, placed(art, layout, Placing.Fit.FILL));
        FilmComposer film = FilmComposer.screened(layout, picture, identity(), grain(16, 16), false);
        byte[] bits = film.maker().make(0, film.height());
        boolean[] drawn = new boolean[film.width()];
        for (int y = 0; y < film.height(); y++) {
            java.util.Arrays.fill(drawn, false);
            int row = y;
            layout.marks().forEach(mark -> mark.spans(row, (from, to) -> java.util.Arrays.fill(drawn, from, to, true)));
            for (Patch patch : layout.patches()) {
                PixelRect box = patch.box();
                if (y >= box.top() && y < box.bottom()) {
                    java.util.Arrays.fill(drawn, box.left(), box.right(), true);
                }
            }
            PixelRect image = picture.image();
            if (y >= image.top() && y < image.bottom()) {
                java.util.Arrays.fill(drawn, image.left(), image.right(), true);
                assertEquals(1, sample(film, bits, image.left(), y));
                assertEquals(1, sample(film, bits, image.right() - 1, y));
            }
            for (int x = 0; x < film.width(); x++) {
                assertTrue(drawn[x] || sample(film, bits, x, y) == 0, x + "," + y);
            }
        }
    }

    /** Plain and mirrored in turn. */
    private static List<FilmComposer> films() {
        List<FilmComposer> films = new ArrayList<>();
        ArrayPlane art = noise(90, 70);
        SheetLayout layout = layout(new Size(37, 41));
        for (Placing.Fit fit : Placing.Fit.values()) {
            FilmContent picture = new FilmContent.Picture(art, placed(art, layout, fit));
            for (int tile : new int[] {19, 64}) {
                for (boolean mirrored : new boolean[] {false, true}) {
                    films.add(FilmComposer.screened(layout, picture, curve(), grain(tile, tile), mirrored));
                }
            }
            for (int bits : new int[] {8, 16}) {
                for (boolean mirrored : new boolean[] {false, true}) {
                    films.add(FilmComposer.continuous(layout, picture, curve(), bits, mirrored));
                }
            }
        }
        FilmContent screen = new FilmContent.Screen(layout.bleed(), 30_000);
        for (boolean mirrored : new boolean[] {false, true}) {
            films.add(FilmComposer.screened(layout, screen, curve(), grain(4000, 2100), mirrored));
        }
        return films;
    }

    private static SheetLayout layout(Size plate) {
        return SheetLayout.of(
                FilmPixels.of(COARSE), plate, 3, 2, Optional.empty(), List.of("a title"), TextWidth.GENEROUS);
    }

    private static ArtOnPlate placed(GreyPlane art, SheetLayout layout, Placing.Fit fit) {
        return ArtOnPlate.of(
                art.width(),
                art.height(),
                new ArtChoice.Crop(0.1, 0.05, 0.8, 0.9),
                fit,
                new PaperShrink(0.7, 0.3),
                layout.pixels(),
                layout.plate(),
                layout.bleed());
    }

    private static ArrayPlane noise(int width, int height) {
        Random random = new Random(4);
        return ArrayPlane.of(width, height, (x, y) -> random.nextInt(65_536));
    }

    /** Falls from 0.9 to 0 with a flat end, as a plate's curve does. */
    private static ToneCurve curve() {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            double dark = Math.max(0, 1 - grey / 62_000.0);
            table[grey] = (char) Math.round(0.9 * ToneCurve.SOLID * Math.pow(dark, 0.7));
        }
        return new ToneCurve("test", table);
    }

    private static ToneCurve identity() {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (ToneCurve.SOLID - grey);
        }
        return new ToneCurve("even", table);
    }

    private static ThresholdTile grain(int width, int height) {
        Random random = new Random(8);
        int[] order = new int[width * height];
        for (int i = 0; i < order.length; i++) {
            int other = random.nextInt(i + 1);
            order[i] = order[other];
            order[other] = i;
        }
        return ThresholdTile.fromOrder(width, height, order);
    }

    private static int sample(FilmRows film, byte[] samples, int x, int y) {
        int row = y * film.bytesPerRow();
        return switch (film.bitsPerSample()) {
            case 1 -> samples[row + x / 8] >> (7 - x % 8) & 1;
            case 8 -> samples[row + x] & 0xFF;
            default -> (samples[row + 2 * x] & 0xFF) << 8 | samples[row + 2 * x + 1] & 0xFF;
        };
    }

    private static byte[] banded(FilmRows film, int rows, int threads) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Bands.inOrder(
                film.height(), rows, threads, film::maker, (first, count, band) -> out.write(band), Progress.NONE);
        return out.toByteArray();
    }
}
