package greyground.grain;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every grain that is made of thresholds. */
class GrainLawsTest {
    private static final Resolution FILM = new Resolution(1440);

    static Stream<Grain> grains() {
        return Stream.of(
                new Grain.Stochastic(120, 1),
                new Grain.Stochastic(180, 2),
                new Grain.Stochastic(260, -3),
                new Grain.Halftone(new Ruling(60), 45, Grain.DotShape.ROUND),
                new Grain.Halftone(new Ruling(48), 18.4, Grain.DotShape.ROUND),
                new Grain.Halftone(new Ruling(30), -7, Grain.DotShape.LINE),
                new Grain.Halftone(new Ruling(110), 90, Grain.DotShape.LINE));
    }

    @ParameterizedTest
    @MethodSource("grains")
    void everyToneCoversItsOwnShare(Grain grain) {
        ThresholdTile tile = ThresholdTile.of(grain, FILM);
        int pixels = tile.width() * tile.height();
        long[] below = new long[65_537];
        for (int y = 0; y < tile.height(); y++) {
            for (int x = 0; x < tile.width(); x++) {
                below[tile.threshold(x, y) + 1]++;
            }
        }
        for (int code = 1; code < below.length; code++) {
            below[code] += below[code - 1];
        }
        for (int tone = 0; tone <= 256; tone++) {
            int code = (int) Math.round(tone * 65_535 / 256.0);
            assertEquals(code / 65_535.0 * pixels, below[code], 1.0, "tone " + tone + " of 256");
        }
        assertEquals(0, below[0]);
        assertEquals(pixels, below[65_535]);
    }

    @ParameterizedTest
    @MethodSource("grains")
    void repeatsWithoutASeam(Grain grain) {
        ThresholdTile tile = ThresholdTile.of(grain, FILM);
        char[] row = new char[2 * tile.width() + 5];
        char[] again = new char[row.length];
        tile.copyRow(-3, 2, row.length, row);
        tile.copyRow(-3 + 4 * tile.width(), 2 - 3 * tile.height(), row.length, again);
        assertArrayEquals(row, again);
        assertEquals(tile.threshold(-3, 2), row[0]);
        // Across the seam, as anywhere, most neighbours are alike at half coverage: count changes on seam and middle.
        assertEquals(changes(tile, tile.width() / 2), changes(tile, tile.width()), 0.12 * tile.height());
    }

    private static int changes(ThresholdTile tile, int x) {
        int changes = 0;
        for (int y = 0; y < tile.height(); y++) {
            changes += tile.threshold(x, y) < 32_768 ^ tile.threshold(x - 1, y) < 32_768 ? 1 : 0;
        }
        return changes;
    }

    @Test
    void continuousToneHasNoTile() {
        assertThrows(Refusal.class, () -> ThresholdTile.of(new Grain.Continuous(8), FILM));
    }

    @Test
    void aquatintHoldsItsShareOfHardDots() {
        for (double share : new double[] {0.45, 0.5, 0.55}) {
            AquatintScreen screen = new AquatintScreen(
                    StochasticGrain.tile(new Grain.Stochastic(200, 4), FILM), (int) Math.round(share * 65_535));
            int black = 0;
            int side = screen.tile().width();
            for (int i = 0; i < side * side; i++) {
                black += screen.coverage() > screen.tile().threshold(i % side - 7, i / side + 9) ? 1 : 0;
            }
            assertEquals(share, (double) black / (side * side), 1e-4);
        }
    }
}
