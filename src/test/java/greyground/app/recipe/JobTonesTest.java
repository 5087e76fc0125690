package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.compose.GrainPatches;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.fit.MeasuredLevel;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plan.BenchConditions;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.RangeMapping;
import greyground.tone.ToneCurve;
import greyground.workshop.Figure;
import greyground.workshop.KeptResponse;
import greyground.workshop.PlateMaking;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class JobTonesTest {
    private static final Grain GRAIN = new Grain.Stochastic(300, 5);
    private static final Resolution COARSE = new Resolution(720);
    private static final Job JOB = new Job(
            "",
            "2026-11-25",
            new Size(60, 60),
            new PlateProcess.EtchedFilm(),
            COARSE,
            GRAIN,
            ArtChoice.WHOLE.settled(1, 0),
            Placing.USUAL,
            RangeMapping.DEFAULT,
            false,
            Optional.of(0.0),
            List.of());

    private static VirtualResponse predicted;

    @BeforeAll
    static void predict() {
        VirtualPlate plate = new VirtualPlate(
                BenchConditions.ofDepth(Workshop.assumed(), new PlateProcess.EtchedFilm(), 30, true), null, 20);
        predicted = VirtualResponse.of(plate, GrainPatches.of(GRAIN, ThresholdTile.of(GRAIN, COARSE), COARSE));
    }

    /** Darkens to L* 20 at 80 % and pales to 60 at solid. */
    private static KeptResponse kept(String chart, LocalDate date, PlateMaking making) {
        List<MeasuredLevel> levels = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            double lightness = i <= 8 ? 92 - 9 * i : 20 + 20 * (i - 8);
            levels.add(new MeasuredLevel(i / 10.0, lightness, 6, 0.5, 40));
        }
        return new KeptResponse(date, chart, "scan", making, levels, List.of());
    }

    private static final LocalDate OLD = LocalDate.of(2026, 3, 1);
    private static final LocalDate NEW = LocalDate.of(2026, 9, 1);

    private static PlateMaking making(Workshop shop) {
        return JobPlate.making(shop, JOB);
    }

    @Test
    void withoutATestPlateTonesArePredictedAndNothingIsNoted() {
        JobTones tones = JobTones.of(predicted, List.of(), making(Workshop.assumed()));
        assertSame(predicted, tones.response());
        assertTrue(tones.note().isEmpty());
        assertEquals("predicted, " + predicted.name(), tones.name());
    }

    @Test
    void newestThatFitsSetsTheCurve() {
        Workshop shop = Workshop.assumed();
        PlateMaking now = making(shop);
        PlateMaking longer = making(shop.with("bath.biteMinutes", Figure.assumed(25, "test")));
        List<KeptResponse> all =
                List.of(kept("NEWAA", NEW, now), kept("OLDAA", OLD, now), kept("OTHER", NEW.plusDays(9), longer));
        JobTones tones = JobTones.of(predicted, all, now);
        assertEquals("measured on 2026-09-01, chart NEWAA", tones.name());
        assertTrue(tones.note().isEmpty());
        assertEquals(0.8, tones.turningPoint(), 1e-12);
        assertEquals(60, tones.solidLightness(), 1e-9);
        JobTones later = JobTones.of(predicted, List.of(kept("FIRST", NEW, now), kept("AGAIN", NEW, now)), now);
        assertEquals("AGAIN", later.kept().orElseThrow().chart(), "read later on the same day");
    }

    @Test
    void curveStaysWithinWhatWasMeasured() {
        PlateMaking now = making(Workshop.assumed());
        JobTones tones = JobTones.of(predicted, List.of(kept("NEWAA", NEW, now)), now);
        Compensation curve =
                Compensation.of(tones.name(), new ArtRange(1, 0), RangeMapping.named("lightness"), tones.response());
        int most = 0;
        for (int grey = 0; grey < ToneCurve.CODES; grey++) {
            most = Math.max(most, curve.curve().coverage(grey));
        }
        assertEquals(0.8, (double) most / ToneCurve.SOLID, 1e-4);
        assertEquals(20, curve.darkestLightness(), 1e-9);
        assertEquals(92, curve.paperLightness(), 1e-9);
    }

    @Test
    void testPlateThatDoesNotFitIsNamedOnce() {
        Workshop shop = Workshop.assumed();
        Workshop longer = shop.with("bath.biteMinutes", Figure.assumed(25, "test"));
        JobTones tones = JobTones.of(predicted, List.of(kept("PEGEO", NEW, making(shop))), making(longer));
        assertSame(predicted, tones.response());
        assertEquals(
                "tones were measured on 2026-09-01, chart PEGEO, for a bite of 20 min, not 25:"
                        + " predicted tones are used; etch a test plate",
                tones.note().orElseThrow());
    }

    @Test
    void anotherDoseIsAnotherPlateButAnotherLampDistanceIsNot() {
        Workshop shop = Workshop.assumed();
        Workshop held = shop.with("exposure.stepHeld", Figure.assumed(8, "test"));
        assertEquals(List.of("an exposure of 150 s, not 106.2"), making(shop).differencesFrom(making(held)));
        Workshop nearer = shop.with("light.distanceMillimetres", Figure.assumed(500, "test"));
        assertEquals(List.of(), making(shop).differencesFrom(making(nearer)));
    }
}
