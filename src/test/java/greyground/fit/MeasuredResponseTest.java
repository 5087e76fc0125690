package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.tone.PlateResponse;
import greyground.tone.PlateResponseContract;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Invented plates, read with seeded noise. */
class MeasuredResponseTest extends PlateResponseContract {
    @Override
    protected List<PlateResponse> responses() {
        List<PlateResponse> responses = new ArrayList<>();
        for (long seed = 1; seed <= 4; seed++) {
            responses.add(MeasuredResponse.of("noise " + seed, InventedPlate.read(3, 0.3 * seed, seed)));
        }
        responses.add(MeasuredResponse.of("no noise", InventedPlate.read(1, 0, 1)));
        responses.add(MeasuredResponse.of(
                "gap", InventedPlate.read(MeasuredResponseTest::withGap, 3, 0.3, 9, (x, y) -> 0.0)));
        return responses;
    }

    private static double withGap(double coverage) {
        return coverage < 0.025 ? 95 : 88 - 68 * coverage;
    }

    @Test
    void orderOfPatchesAndScaleOfWeightsChangeNothing() {
        for (long seed = 1; seed <= 5; seed++) {
            List<MeasuredPatch> patches = InventedPlate.changed(InventedPlate.read(3, 0.6, seed), 30, 8);
            MeasuredResponse response = MeasuredResponse.of("as read", patches);
            List<MeasuredPatch> mixed = new ArrayList<>(patches);
            Collections.shuffle(mixed, new Random(seed));
            MeasuredResponse other = MeasuredResponse.of("mixed", mixed);
            assertEquals(response.levels(), other.levels());
            assertEquals(response.outliers(), other.outliers());
            assertEquals(response.trend(), other.trend());
            MeasuredResponse heavy = MeasuredResponse.of(
                    "heavy",
                    patches.stream()
                            .map(one -> new MeasuredPatch(
                                    one.coverage(), one.lightness(), one.xMillimetres(), one.yMillimetres(), 64))
                            .toList());
            assertEquals(response.outliers().size(), heavy.outliers().size());
            for (int i = 0; i <= 100; i++) {
                double coverage = i / 100.0;
                assertEquals(response.lightness(coverage), other.lightness(coverage));
                assertEquals(response.lightness(coverage), heavy.lightness(coverage), 1e-9);
                assertEquals(response.halfWidth(coverage), heavy.halfWidth(coverage), 1e-9);
            }
        }
    }

    @Test
    void oneSpoiltPatchIsNamedAndHardlyMovesTheCurve() {
        for (long seed = 1; seed <= 20; seed++) {
            List<MeasuredPatch> patches = InventedPlate.read(3, 0.5, seed);
            MeasuredResponse clean = MeasuredResponse.of("clean", patches);
            int at = 6 + (int) (seed * 7 % 50);
            List<MeasuredPatch> spoilt = InventedPlate.changed(patches, at, at < 30 ? -10 : 10);
            MeasuredResponse response = MeasuredResponse.of("spoilt", spoilt);
            assertTrue(response.outliers().contains(spoilt.get(at)), "seed " + seed);
            for (int i = 0; i <= 100; i++) {
                // A level of two keeps two thirds of its readings: they differ from the mean of three by noise alone.
                assertEquals(clean.lightness(i / 100.0), response.lightness(i / 100.0), 1.2, "seed " + seed);
            }
        }
    }

    /** A patch is accused at 5 % a plate; of 200 clean plates 10 are to be expected, 22 or more has a chance under 0.1 %. */
    @Test
    void cleanPlatesAreSeldomAccused() {
        long accused = LongStream.rangeClosed(1, 200)
                .filter(seed -> !MeasuredResponse.of("clean", InventedPlate.read(3, 0.5, seed))
                        .outliers()
                        .isEmpty())
                .count();
        assertTrue(accused < 22, accused + " of 200");
    }

    /** Drift and bands are tested at 1 % each; 8 or more of 200 has a chance under 0.2 %. */
    @Test
    void cleanPlatesAreSeldomCalledUneven() {
        int drifts = 0;
        int bands = 0;
        for (long seed = 1; seed <= 200; seed++) {
            MeasuredResponse response = MeasuredResponse.of("clean", InventedPlate.read(3, 0.5, seed));
            drifts += response.trend().kind() == MeasuredTrend.Kind.NONE ? 0 : 1;
            bands += response.bands().isPresent() ? 1 : 0;
        }
        assertTrue(drifts < 8, drifts + " of 200 drift");
        assertTrue(bands < 8, bands + " of 200 have bands");
    }

    /** A slant is taken for a curve once in two hundred times: three of twenty has a chance of about 0.01 %. */
    @Test
    void unevenWipingIsFoundAndTakenOut() {
        int plain = 0;
        for (long seed = 1; seed <= 20; seed++) {
            MeasuredResponse slanted = MeasuredResponse.of(
                    "slanted",
                    InventedPlate.read(
                            coverage -> 80 - 50 * coverage, 3, 0.5, seed, (x, y) -> 0.04 * (x - 48) - 0.02 * (y - 28)));
            plain += slanted.trend().kind() == MeasuredTrend.Kind.SLANTED ? 1 : 0;
            assertNotEquals(MeasuredTrend.Kind.NONE, slanted.trend().kind(), "seed " + seed);
            assertEquals(4, slanted.trend().acrossPerHundredMillimetres(), 1.2);
            assertEquals(-2, slanted.trend().downPerHundredMillimetres(), 1.8);
            assertEquals(80 - 25, slanted.lightness(0.5), 1.2);
            MeasuredResponse domed = MeasuredResponse.of(
                    "domed",
                    InventedPlate.read(
                            coverage -> 80 - 50 * coverage, 3, 0.5, seed, (x, y) -> 0.0016 * (x - 48) * (x - 48)));
            assertEquals(MeasuredTrend.Kind.CURVED, domed.trend().kind(), "seed " + seed);
        }
        assertTrue(plain >= 18, plain + " of 20");
    }

    @Test
    void bandsAreFoundWithTheirPeriod() {
        for (long seed = 1; seed <= 20; seed++) {
            MeasuredResponse banded = MeasuredResponse.of(
                    "banded",
                    InventedPlate.read(
                            coverage -> 80 - 50 * coverage,
                            3,
                            0.5,
                            seed,
                            (x, y) -> 1.2 * Math.sin(2 * Math.PI * x / 27)));
            MeasuredBands bands = banded.bands().orElseThrow();
            assertEquals(MeasuredBands.Axis.ACROSS, bands.axis());
            assertEquals(27, bands.periodMillimetres(), 2.5);
            assertEquals(1.2, bands.amplitudeLightness(), 0.6);
        }
    }

    /** Pointwise 95 % band over 40 plates; the curve's own bend between levels is left out by asking at the levels. */
    @Test
    void theBandHoldsTheTruthAboutAsOftenAsItSays() {
        int inside = 0;
        int asked = 0;
        for (long seed = 1; seed <= 40; seed++) {
            MeasuredResponse response = MeasuredResponse.of("seed " + seed, InventedPlate.read(3, 0.6, seed));
            for (MeasuredLevel level : response.levels()) {
                asked++;
                double off = Math.abs(level.lightness() - InventedPlate.turning(level.coverage()));
                inside += off <= response.halfWidth(level.coverage()) ? 1 : 0;
            }
        }
        double share = (double) inside / asked;
        assertTrue(share > 0.925 && share < 0.975, share + " of " + asked);
    }

    @Test
    void theTurningPointIsFoundAndComparedWithWhatWasPredicted() {
        for (long seed = 1; seed <= 20; seed++) {
            MeasuredResponse response = MeasuredResponse.of("turning", InventedPlate.read(3, 0.4, seed));
            assertTrue(response.turn().seen());
            assertEquals(0.85, response.turn().coverage(), 0.051);
            assertTrue(response.turn().agreesWith(0.85), "seed " + seed);
            assertFalse(response.turn().agreesWith(0.6));
            assertFalse(response.turn().agreesWith(0.99));
            assertTrue(response.turn().against(0.6).contains("don't agree"));
            assertTrue(response.usable().most() <= 0.9);
        }
        MeasuredResponse falling = MeasuredResponse.of(
                "falling", InventedPlate.read(coverage -> 90 - 60 * coverage, 3, 0.4, 1, (x, y) -> 0.0));
        assertFalse(falling.turn().seen());
        assertTrue(falling.turn().agreesWith(1));
    }

    @Test
    void aGapAtTheLightEndIsToldAndNotBridged() {
        MeasuredResponse response =
                MeasuredResponse.of("gap", InventedPlate.read(MeasuredResponseTest::withGap, 3, 0.3, 5, (x, y) -> 0.0));
        assertEquals(0.03, response.usable().least(), 1e-9);
        assertEquals(95, response.printableRange().bare(), 0.5);
        assertEquals(95 - 85.96, response.printableRange().lightGap(), 0.8);
        assertEquals(response.lightness(0), response.lightness(0.02));
    }

    /** A shop whose dots grow much prints its first tint far below paper; fewer dots still print the tones between. */
    @Test
    void betweenClearFilmAndTheFirstTintTheCurveGoesOn() {
        MeasuredResponse response =
                MeasuredResponse.of("steep", InventedPlate.read(MeasuredResponseTest::steep, 3, 0.3, 5, (x, y) -> 0.0));
        assertEquals(0, response.usable().least(), 1e-9);
        assertEquals(steep(0.005), response.lightness(0.005), 2);
    }

    /** L* 78 at 1 %. */
    private static double steep(double coverage) {
        return 90 - 76 * Math.pow(coverage, 0.4);
    }

    @Test
    void whatCannotBeAResponseIsRefused() {
        List<MeasuredPatch> few = InventedPlate.read(1, 0, 1).subList(0, 4);
        assertTrue(assertThrows(Refusal.class, () -> MeasuredResponse.of("few", few))
                .getMessage()
                .contains("measure more patches"));
        List<MeasuredPatch> blank = InventedPlate.read(coverage -> 95, 3, 0.1, 1, (x, y) -> 0.0);
        assertTrue(assertThrows(Refusal.class, () -> MeasuredResponse.of("blank", blank))
                .getMessage()
                .contains("right print"));
        assertThrows(Refusal.class, () -> MeasuredResponse.of("none", List.of()));
        assertThrows(Refusal.class, () -> new MeasuredPatch(0.5, Double.NaN, 0, 0, 1));
    }

    /** D = -log10 Y and CIE 15:2004: density 0.734742 is L* 50. */
    @Test
    void densitiesBecomeLightness() {}
}
