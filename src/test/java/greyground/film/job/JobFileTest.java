package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.burnish.LocalTouch;
import greyground.art.spots.Spot;
import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.grain.Grain;
import greyground.grain.Grain.DotShape;
import greyground.plate.LightSplit;
import greyground.plate.PlateProcess;
import greyground.quantity.Offset;
import greyground.quantity.PaperShrink;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.tone.ColourSight;
import greyground.tone.RangeMapping;
import greyground.tone.ToneWish;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class JobFileTest {
    static Stream<Job> jobs() {
        ArtChoice fragment = new ArtChoice(
                "quay \"low water\".tif",
                "ab".repeat(32),
                3,
                new Crop(0.1, 1 / 3.0, 0.5, 0.25),
                1,
                -1.75,
                new TonePoint.Given(0.83),
                new TonePoint.Automatic(),
                new Hand(
                        new ColourSight(
                                ColourSight.Filter.YELLOW, ColourSight.Emulsion.ORTHOCHROMATIC, Optional.empty()),
                        Origin.PRINTED,
                        0.0375,
                        -0.2,
                        Optional.empty(),
                        Optional.of(62.5),
                        new LineWish(Optional.of(0.6), Optional.of(80.5), Optional.of(7.25)),
                        new ToneWish(List.of(new ToneWish.Point(30, 38.125)), 6, -0.15),
                        new Retouching(
                                List.of(
                                        new LocalTouch.Stroke(
                                                6.5, 8, 4, List.of(new Offset(-1, 1 / 3.0), new Offset(20, 7))),
                                        new LocalTouch.Ellipse(-12, new Offset(60, 80.25), 20, 9.5, -15, 5),
                                        new LocalTouch.Gradient(3, new Offset(0, 0), new Offset(0, 40.125))),
                                new SpotWish.Chosen(List.of(
                                        new Spot(List.of(new Spot.Place(12.5, 1 / 3.0)), 6.25, -14.5, true),
                                        new Spot(List.of(new Spot.Place(0, 1), new Spot.Place(9, 1)), 1, 0, false))))));
        Placing turned = new Placing(
                Placing.Fit.WHOLE,
                4.5,
                1,
                new PaperShrink(0.7, 0.4),
                new ReadingSide(ReadingSide.InkSide.UP, 2),
                Optional.of(new Size(329, 483)),
                true,
                Placing.Strip.OFFCUT,
                new Outlines(
                        Optional.of(new Outline.Rectangle(Outline.Corner.CUT, 8.25, Optional.empty())),
                        Optional.of(new Outline.Ellipse(Optional.of(new Outline.Box(-1.5, 10, 80, 1 / 3.0 + 60)))),
                        4.5,
                        new Outlines.Tear(0.8, 3),
                        true));
        return Stream.of(
                job(new PlateProcess.EtchedFilm(), new Grain.Stochastic(180, 7), ArtChoice.WHOLE, Placing.USUAL),
                job(
                        new PlateProcess.SprayedAquatint(0.45, 62, -3),
                        new Grain.Halftone(new Ruling(20), 45, DotShape.LINE),
                        fragment,
                        turned),
                job(new PlateProcess.Photogravure(0.55, 140), new Grain.Continuous(8), fragment, Placing.USUAL),
                job(
                        new PlateProcess.Photogravure(0.45, 140, Optional.of(new LightSplit(1.65, 1.07, 30.5))),
                        new Grain.Continuous(16),
                        fragment,
                        Placing.USUAL),
                job(new PlateProcess.UnetchedFilm(), new Grain.Stochastic(140, 3), ArtChoice.WHOLE, turned));
    }

    private static Job job(PlateProcess process, Grain grain, ArtChoice art, Placing placing) {
        return new Job(
                "Low water",
                "2026-03-31",
                new Size(203.2, 254),
                process,
                new Resolution(1440),
                grain,
                art,
                placing,
                RangeMapping.DEFAULT,
                !(grain instanceof Grain.Continuous),
                Optional.empty(),
                List.of());
    }

    private static String plain() {
        return JobFile.text(jobs().findFirst().orElseThrow());
    }

    @Test
    void aFileFromBeforeMendingIsNotMended() {
        String older = plain().replaceFirst(",\\s*\"mended\" *: *true", "");
        assertFalse(older.contains("mended"));
        assertFalse(JobFile.read(older).mended());
    }

    @Test
    void aFileThatNamesNoReserveHasNone() {
        String older = plain().replaceFirst(",\\s*\"reserve\" *: *\"automatic\"", "");
        assertFalse(older.contains("reserve"));
        assertEquals(Optional.of(0.0), JobFile.read(older).reserve());
        assertEquals(older, JobFile.text(JobFile.read(older)), "and is written back as it was");
        String asked = plain().replace("\"reserve\": \"automatic\"", "\"reserve\": 0.04");
        assertEquals(Optional.of(0.04), JobFile.read(asked).reserve());
        assertEquals(asked, JobFile.text(JobFile.read(asked)));
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void comesBackAsItWas(Job job) {
        assertEquals(job, JobFile.read(JobFile.text(job)));
        assertEquals(JobFile.text(job), JobFile.text(JobFile.read(JobFile.text(job))));
    }

    @Test
    void keepsWhatItDoesNotKnow() {
        String text = plain().replace("\"title\"", "\"colour\" : [1.50, {\"a\": null}],\n\"title\"")
                .replace("\"fit\"", "\"lamp\": \"left\", \"fit\"");
        Job job = JobFile.read(text);
        assertEquals(2, job.kept().size());
        assertEquals(job, JobFile.read(JobFile.text(job)));
        assertTrue(JobFile.text(job).contains("\"lamp\""));
        assertTrue(JobFile.text(job).contains("1.50"));
    }

    @Test
    void refusesANewerVersion() {
        String text = plain().replace("\"version\": 1", "\"version\": 2");
        Refusal refusal = assertThrows(Refusal.class, () -> JobFile.read(text));
        assertTrue(refusal.getMessage().contains("newer Greyground"), refusal.getMessage());
    }

    @Test
    void namesTheFieldTheValueAndTheRange() {
        String text = plain().replace("\"bleedMillimetres\": 3", "\"bleedMillimetres\": 300");
        Refusal refusal = assertThrows(Refusal.class, () -> JobFile.read(text));
        assertTrue(
                refusal.getMessage().contains("placing.bleedMillimetres is 300; it must be a number from 0 to 6"),
                refusal.getMessage());
    }

    /** ISO 216:2007, tables 1 and 2: A5 148 x 210 mm, B3 353 x 500 mm. */
    @Test
    void sizesMayBeNamedInAFile() {
        Job named = JobFile.read("{\"greyground\": \"job\", \"version\": 1, \"plate\": \"A5 landscape\","
                + " \"placing\": {\"sheet\": \"B3\"}}");
        assertEquals(new Size(210, 148), named.plate());
        assertEquals(Optional.of(new Size(353, 500)), named.placing().sheet());
        Refusal refused = assertThrows(
                Refusal.class, () -> JobFile.read("{\"greyground\": \"job\", \"version\": 1, \"plate\": \"A12\"}"));
        assertTrue(String.valueOf(refused.getMessage()).contains("plate \"A12\" is not a size"), refused.getMessage());
    }

    @Test
    void needsAPlate() {
        assertThrows(Refusal.class, () -> JobFile.read("{\"greyground\": \"job\", \"version\": 1}"));
    }

    /** A field that must be there, and stands there with a slip in it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "plat": {"widthMillimetres": 100} | the file has plat, did you mean plate?
            "plate": {"widthMilimetres": 100} | the file has plate.widthMilimetres, did you mean plate.widthMillimetres?
            "weather": "damp" | correct the job file
            """)
    void aMissingFieldIsLookedForUnderANameLikeIt(String fields, String question) {
        Refusal refusal = assertThrows(
                Refusal.class, () -> JobFile.read("{\"greyground\": \"job\", \"version\": 1, " + fields + "}"));
        assertEquals(
                "job plate.widthMillimetres is missing; it must be a number from 30 to 3000: " + question,
                refusal.getMessage());
    }

    @Test
    void photogravureTakesNoGrain() {
        assertThrows(
                Refusal.class,
                () -> job(
                        PlateProcess.Photogravure.usual(),
                        new Grain.Stochastic(180, 1),
                        ArtChoice.WHOLE,
                        Placing.USUAL));
    }
}
