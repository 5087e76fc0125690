package greyground.plate.split;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.grain.Grain;
import greyground.grain.StochasticGrain;
import greyground.grain.ThresholdTile;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.Light;
import greyground.plate.PlateConditions;
import greyground.plate.Studio;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.plate.Wipe;
import greyground.plate.edge.NoiseGrain;
import greyground.quantity.Resolution;
import greyground.raster.Progress;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class ExposureSearchIT {
    private static final NoiseGrain SCREEN = new NoiseGrain(1440, 150, 1.8, 5);
    private static final ExposureSearch.Reach REACH =
            new ExposureSearch.Reach(0.3, 3, List.of(0.5, 0.6), List.of(15.0, 25.0));
    private static ExposureTrade searched;

    @BeforeAll
    static void search() throws Exception {
        searched = new ExposureSearch(Studio.photogravure(20), SCREEN, REACH).search(Progress.NONE);
    }

    /**
     * A study of this process (computed, no outside source): screen 60 % black, spots 120 to 180 um apart, edges 18 to 25 um
     * soft, screen dose 1.3 and image dose 1.15 of the hardening dose. It found L* 87 at film density 0.06, 62 at 0.15, an
     * even fall to about 23 near density 1.0 to 1.4, and blacks that turn back past it. It states neither its paper nor its
     * depth. A plate that nothing opened printed 87 in it, as paper of 0.06 does under 0.48 um of plate tone; and 15 um is
     * the depth at which the finest and sharpest of its screens reaches its black.
     */
    @Test
    void theStudyOfDoubleExposureComesOutAgain() {
        ThresholdTile grain = StochasticGrain.tile(new Grain.Stochastic(120, 1), new Resolution(1440));
        int side = 200;
        FilmPatch screen = NoiseGrain.patch(
                side, new Resolution(1440).pitchMicrometres(), i -> grain.threshold(i % side, i / side) < 0.6 * 65_535);
        PlateConditions base = Studio.photogravure(15).withWipe(new Wipe(1.5, 0.48));
        Film soft = new Film(0.06, 3, 0, 18);
        VirtualPlate plate = new VirtualPlate(
                base.withExposures(List.of(
                        new Exposure(1.3, Exposure.Sheet.SCREEN, soft, Studio.LIGHT),
                        Studio.image(1.15, Studio.LIGHT))),
                screen,
                6);
        assertEquals(87, plate.terms(0, FilmPatch.uniform(0.06)).lightness(), 0.5);
        double before = plate.terms(0, FilmPatch.uniform(0.15)).lightness();
        assertEquals(62, before, 3);
        double darkest = before;
        double darkestDensity = 0;
        for (int tenths = 2; tenths <= 26; tenths++) {
            double lightness = plate.terms(0, FilmPatch.uniform(tenths / 10.0)).lightness();
            assertTrue(tenths > 10 || lightness < before, "an even fall, at " + tenths / 10.0);
            if (lightness < darkest) {
                darkest = lightness;
                darkestDensity = tenths / 10.0;
            }
            before = lightness;
        }
        assertEquals(23, darkest, 1.5);
        assertTrue(darkestDensity >= 1.0 && darkestDensity <= 1.4, "darkest at density " + darkestDensity);
        assertTrue(before > darkest + 3, "the blacks turn back");
    }

    @Test
    void theSearchBeatsTheSplitItStartsFrom() throws Exception {
        PlateConditions conditions = Studio.photogravure(20);
        ExposureTrade trade = searched;
        ExposureSplit advised = trade.advised();
        // The study's own split, judged alike.
        CriticalTones tones = CriticalTones.of(conditions, SCREEN.at(0.6), 25, 6, VirtualResponse.FEWEST_LEVELS);
        ExposureSplit study = ExposureSplit.of(new DoubleExposure(1.3, 1.15), 0.6, 25, tones, Studio.FILM);
        assertTrue(advised.lightGap() < study.lightGap(), advised + " against " + study);
        assertTrue(advised.range() > 0.93 * study.range());
        assertTrue(advised.startDensity() >= 0.06 && advised.startDensity() < 0.09, "clear film closes, just");
        assertTrue(advised.darkestDensity() < 3);
        for (ExposureSplit row : trade.rows()) {
            assertTrue(row.screenDose() <= 3 && row.imageDose() <= 3 && row.imageDose() >= 0.3);
        }
        // Soft edges close the gap: the sharper screens can't be the advice.
        assertEquals(25, advised.edgeBlurMicrometres());
        assertEquals(trade, new ExposureSearch(conditions, SCREEN, REACH).search(Progress.NONE));
    }

    /** Straightforward engine at 4.5 um and every film step: the advised range and gap hold to the accuracy told. */
    @Test
    void theAdvisedFiguresHoldWhenComputedFinely() throws Exception {
        PlateConditions conditions = Studio.photogravure(20);
        ExposureSplit advised = searched.advised();
        Film soft = new Film(0.06, 3, 0, advised.edgeBlurMicrometres());
        Light contact = new Light(0, 0, 1);
        VirtualPlate plate = new VirtualPlate(
                conditions.withExposures(List.of(
                        new Exposure(advised.screenDose(), Exposure.Sheet.SCREEN, soft, contact),
                        new Exposure(advised.imageDose(), Exposure.Sheet.POSITIVE, Studio.FILM, contact))),
                SCREEN.at(advised.screenBlack()));
        double gap = 0;
        double lightest = plate.terms(0, FilmPatch.uniform(0.06)).lightness();
        double before = lightest;
        double darkest = before;
        for (double density = 0.08; density < 2.9; density += density < 0.5 ? 0.02 : 0.1) {
            double lightness = plate.terms(0, FilmPatch.uniform(density)).lightness();
            gap = density < 0.5 ? Math.max(gap, before - lightness) : gap;
            darkest = Math.min(darkest, lightness);
            before = lightness;
        }
        assertEquals(lightest - darkest, advised.range(), 1);
        assertEquals(gap, advised.lightGap(), 1);
    }

    @Test
    void aSearchCanBeStopped() {
        ExposureSearch search = new ExposureSearch(Studio.photogravure(20), SCREEN, REACH);
        assertThrows(
                CancellationException.class,
                () -> search.search(fraction -> {
                    throw new CancellationException();
                }));
    }
}
