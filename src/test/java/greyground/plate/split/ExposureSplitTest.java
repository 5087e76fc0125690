package greyground.plate.split;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.Light;
import greyground.plate.PlateConditions;
import greyground.plate.Studio;
import greyground.plate.ToneTerms;
import greyground.plate.VirtualPlate;
import greyground.plate.edge.NoiseGrain;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ExposureSplitTest {
    private static final NoiseGrain SCREEN = new NoiseGrain(1440, 150, 0.9, 3);
    private static final double PIXEL = 9;

    private static CriticalTones tones(double black, double blur, int levels) {
        return CriticalTones.of(Studio.photogravure(25), SCREEN.at(black), blur, PIXEL, levels);
    }

    /** The whole plate, exposed by these doses through these films: nothing but the engine. */
    private static ToneTerms plate(DoubleExposure doses, FilmPatch screen, double blur, double imageDensity) {
        Film soft = new Film(0.06, 3, 0, blur);
        Light contact = new Light(0, 0, 1);
        PlateConditions conditions = Studio.photogravure(25)
                .withExposures(List.of(
                        new Exposure(doses.screenDose(), Exposure.Sheet.SCREEN, soft, contact),
                        new Exposure(doses.imageDose(), Exposure.Sheet.POSITIVE, Studio.FILM, contact)));
        return new VirtualPlate(conditions, screen, PIXEL).terms(0, FilmPatch.uniform(imageDensity));
    }

    /** Es Ts + Ei Ti = 1 is Ts = (1 - Ei Ti) / Es: two splits with one critical transmission harden the same places. */
    @Test
    void splitsWithOneCriticalTransmissionMakeOnePlate() {
        SplittableRandom chance = new SplittableRandom(20261125);
        FilmPatch screen = SCREEN.at(0.5);
        for (int round = 0; round < 12; round++) {
            double critical = chance.nextDouble(0.05, 0.8);
            DoubleExposure one = new DoubleExposure(chance.nextDouble(0.5, 1.2), chance.nextDouble(1, 2));
            DoubleExposure two = new DoubleExposure(chance.nextDouble(0.5, 1.2), chance.nextDouble(1, 2));
            double first = plate(one, screen, 20, one.imageDensityFor(critical)).lightness();
            double second =
                    plate(two, screen, 20, two.imageDensityFor(critical)).lightness();
            assertEquals(first, second, 0.05, critical + ", " + one + ", " + two);
        }
    }

    @Test
    void aJudgedSplitIsWhatTheWholePlatePrints() {
        FilmPatch screen = SCREEN.at(0.6);
        CriticalTones tones = tones(0.6, 20, 65);
        DoubleExposure doses = new DoubleExposure(1.3, 1.2);
        ExposureSplit split = ExposureSplit.of(doses, 0.6, 20, tones, Studio.FILM);
        assertEquals(plate(doses, screen, 20, 0.06).lightness(), split.lightest(), 0.6);
        assertEquals(plate(doses, screen, 20, split.darkestDensity()).lightness(), split.darkest() + 0.5, 0.8);
        assertEquals(
                split.bare() - 0.25,
                plate(doses, screen, 20, split.startDensity()).lightness(),
                1);
        double widest = 0;
        for (double density = 0.06; density < split.darkestDensity(); density += 0.01) {
            widest = Math.max(
                    widest,
                    plate(doses, screen, 20, density).lightness()
                            - plate(doses, screen, 20, density + ExposureSplit.FILM_STEP)
                                    .lightness());
        }
        assertEquals(widest, split.lightGap(), 1.5);
    }

    /**
     * A hard-edged screen, Es 1.5 and Ei 1.3, black of density 3: it opens past image density log10(1.3 / 0.9985), worked
     * out apart in double precision.
     */
    @Test
    void aHardScreenOpensWhereTheClosedFormSays() {
        DoubleExposure doses = new DoubleExposure(1.5, 1.3);
        FilmPatch screen = SCREEN.at(0.5);
        assertEquals(0, plate(doses, screen, 0, 0.1145).openedByLight());
        assertEquals(0.5, plate(doses, screen, 0, 0.1147).openedByLight(), 0.001);
    }

    /** A longer image exposure multiplies its dose; density log10 of as much more undoes it, and nothing else changes. */
    @Test
    void moreImageOnlyAsksForADenserFilm() {
        CriticalTones tones = tones(0.5, 20, 33);
        Film film = new Film(0.06, 4, 0, 0);
        ExposureSplit less = ExposureSplit.of(new DoubleExposure(1.3, 1.2), 0.5, 20, tones, film);
        ExposureSplit more = ExposureSplit.of(new DoubleExposure(1.3, 2.4), 0.5, 20, tones, film);
        assertEquals(less.startDensity() + Math.log10(2), more.startDensity(), 1e-9);
        assertEquals(less.darkestDensity() + Math.log10(2), more.darkestDensity(), 0.006);
        assertEquals(less.range(), more.range(), 0.3);
        assertEquals(less.lightGap(), more.lightGap(), 0.5);
    }

    @Test
    void aTenthMoreLightNeverPrintsDarkerInTheMiddle() {
        for (double black : new double[] {0.4, 0.6}) {
            CriticalTones tones = tones(black, 18, 17);
            for (double dose = 1.2; dose < 2.5; dose += 0.3) {
                ExposureSplit split = ExposureSplit.of(new DoubleExposure(dose, 1.2), black, 18, tones, Studio.FILM);
                assertTrue(split.tenthMoreLight() > 0, split.toString());
            }
        }
    }

    @Test
    void clearFilmThatVeilsTheWhitesCountsAsAGap() {
        CriticalTones tones = tones(0.5, 20, 17);
        ExposureSplit veiled = ExposureSplit.of(new DoubleExposure(1.3, 0.6), 0.5, 20, tones, Studio.FILM);
        assertTrue(veiled.bare() - veiled.lightest() > 10);
        assertTrue(veiled.lightGap() >= veiled.bare() - veiled.lightest());
    }

    private static ExposureSplit row(double gap, double range) {
        return new ExposureSplit(1, 1, 0.5, 20, 95, 95, 95 - range, gap, 0.1, 1.5, 2, 5);
    }

    /** Laws of the choice, over invented rows. */
    @Test
    void theAdvisedSplitIsBeatenByNoneByItsOwnRule() {
        SplittableRandom chance = new SplittableRandom(7);
        for (int round = 0; round < 200; round++) {
            List<ExposureSplit> all = new ArrayList<>();
            double widest = 0;
            for (int i = chance.nextInt(1, 60); i > 0; i--) {
                all.add(row(chance.nextDouble(0, 40), chance.nextDouble(10, 80)));
                widest = Math.max(widest, all.get(all.size() - 1).range());
            }
            ExposureTrade trade = ExposureTrade.of(all);
            ExposureSplit advised = trade.advised();
            assertTrue(advised.range() >= ExposureTrade.KEPT_RANGE * widest);
            for (ExposureSplit split : all) {
                boolean eligible = split.range() >= ExposureTrade.KEPT_RANGE * widest;
                assertTrue(!eligible || split.lightGap() >= advised.lightGap());
                boolean betteredByOne = trade.rows().stream()
                        .anyMatch(kept -> kept.lightGap() <= split.lightGap() && kept.range() >= split.range());
                assertTrue(betteredByOne, "every split is on the front or behind it");
            }
            for (int i = 1; i < trade.rows().size(); i++) {
                assertTrue(
                        trade.rows().get(i).lightGap() > trade.rows().get(i - 1).lightGap());
                assertTrue(trade.rows().get(i).range() > trade.rows().get(i - 1).range());
            }
            assertTrue(trade.table().contains(advised));
        }
    }

    @Test
    void nothingWithinReachIsRefused() {
        assertThrows(Refusal.class, () -> ExposureTrade.of(List.of()));
        assertThrows(Refusal.class, () -> new ExposureSearch.Reach(0, 3, List.of(0.5), List.of(20.0)));
        assertThrows(Refusal.class, () -> new ExposureSearch.Reach(2, 1, List.of(0.5), List.of(20.0)));
        assertThrows(Refusal.class, () -> new ExposureSearch.Reach(0.3, 3, List.of(), List.of(20.0)));
        assertThrows(Refusal.class, () -> new ExposureSearch.Reach(0.3, 3, List.of(0.99), List.of(20.0)));
        Refusal single =
                assertThrows(Refusal.class, () -> CriticalTones.of(Studio.etched(30, 2), SCREEN.at(0.5), 20, PIXEL, 9));
        assertTrue(single.getMessage().contains("photogravure"));
    }
}
