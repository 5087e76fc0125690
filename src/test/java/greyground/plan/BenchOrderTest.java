package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.PlacingFields;
import greyground.film.job.ReadingSide;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BenchOrderTest {
    static Stream<PlateProcess> everyProcess() {
        return PlateProcess.all().stream();
    }

    static PlanRequest request(PlateProcess process) {
        Job marsh = FilmFields.TITLE.with(FilmFields.DATE.with(JobFields.usual(), "2026-03-06"), "marsh.pdf");
        Job job = FilmFields.PROCESS.with(FilmFields.PLATE.with(marsh, new Size(200, 250)), process);
        return new PlanRequest(job, 0.4, "edge growth 18 µm, n 1.7", "");
    }

    private static ExposurePlan etched(Workshop shop) {
        return BenchOrder.plan(shop, request(new PlateProcess.EtchedFilm()));
    }

    private static Figure measured(double value) {
        return Figure.measured(value, LocalDate.of(2026, 3, 4), "test plate");
    }

    private static Step step(ExposurePlan plan, String title) {
        return plan.steps().stream()
                .filter(step -> step.title().equals(title))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no step " + title + " in " + plan));
    }

    private static Line line(ExposurePlan plan, String title, String label) {
        return step(plan, title).lines().stream()
                .filter(line -> line.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + label + " in " + step(plan, title)));
    }

    @Test
    void usualTimesOfTheTrade() {
        // Common practice, no source: 60 s + 90 s = 150 s without a separate screen; 27, 10 and 20 minutes.
        ExposurePlan plan = etched(Workshop.assumed());
        assertEquals("expose 150 s, no separate screen; bite 20 min", plan.summary());
        assertEquals(
                "150 s (2:30)",
                line(plan, "Exposure", "expose the positive for").value());
        assertEquals(27 * 60, step(plan, "Thinning in soda").seconds());
        assertEquals(10 * 60, step(plan, "Harden").seconds());
        assertEquals(20 * 60, step(plan, "Bite").seconds());
        assertEquals(15 * 60, step(plan, "Hold").seconds());
        assertEquals("20 to 30 min", line(plan, "Thinning in soda", "window").value());
        assertEquals(List.of(), plan.warnings());
    }

    @Test
    void stepsComeInBenchOrder() {
        assertEquals(
                List.of(
                        "The film",
                        "Film on the light table",
                        "Degrease and laminate",
                        "Thinning in soda",
                        "Exposure",
                        "Hold",
                        "Develop",
                        "Brighten the copper",
                        "Aquatint, sprayed on the open copper",
                        "Stop out edges and pinholes",
                        "Harden",
                        "Bite",
                        "Rinse and proof, resist still on",
                        "Bite again, or not",
                        "Strip the resist",
                        "Print"),
                BenchOrder.plan(Workshop.assumed(), request(PlateProcess.SprayedAquatint.usual())).steps().stream()
                        .map(Step::title)
                        .toList());
    }

    @Test
    void photogravureExposesScreenThenImage() {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), request(PlateProcess.Photogravure.unsaid()));
        assertEquals("expose screen 60 s, image 90 s; bite 20 min", plan.summary());
        assertEquals(60, step(plan, "Screen exposure").seconds());
        assertEquals(90, step(plan, "Image exposure").seconds());
        assertEquals(
                "150 s (2:30)", line(plan, "Image exposure", "both together").value());
    }

    /** Every sentence about which way a film lies, and which sheet reads right, comes from the job (geometry: ReadingSide). */
    @ParameterizedTest
    @MethodSource("everyProcess")
    void filmsLieAsTheJobSays(PlateProcess process) {
        for (boolean down : new boolean[] {true, false}) {
            for (int transfers = 1; transfers <= 9; transfers++) {
                ReadingSide side = new ReadingSide(down ? ReadingSide.InkSide.DOWN : ReadingSide.InkSide.UP, transfers);
                Job job = PlacingFields.TRANSFERS.with(request(process).job(), (long) side.transfers());
                PlanRequest request = new PlanRequest(PlacingFields.INK_SIDE.with(job, side.inkSide()), 0.4, "", "");
                String plan = PlanText.of(BenchOrder.plan(Workshop.assumed(), request))
                        .replaceAll("\\s+", " ");
                int films = process instanceof PlateProcess.Photogravure ? 2 : 1;
                assertEquals(down ? films : 0, plan.split("ink side down on the resist", -1).length - 1);
                assertEquals(down ? 0 : films, plan.split("ink side up, its clear side on the resist", -1).length - 1);
                assertEquals(films, plan.split("(?i)with its ink side", -1).length - 1);
                assertEquals(films, plan.split("(?i)ink side (down|up)", -1).length - 1);
                assertEquals(transfers % 2 == 0, plan.contains("pulled from the plate, reads backwards"));
                assertEquals(transfers % 2 == 1 && transfers > 1, plan.contains("pulled from the plate, reads right"));
            }
        }
    }

    @Test
    void unetchedFilmNeverMeetsTheBath() {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), request(new PlateProcess.UnetchedFilm()));
        assertEquals("expose 150 s, no separate screen; no bite", plan.summary());
        for (Step step : plan.steps()) {
            assertFalse(step.title().matches(".*(Bite|strip|Stop out|Thinning|Aquatint).*"), step.title());
            assertFalse(String.join(" ", step.cautions()).contains("Ferric chloride is"), step.title());
        }
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void everyNumberSaysHowItIsKnown(PlateProcess process) {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), request(process));
        assertTrue(
                plan.caution().contains("safety data sheet") && plan.caution().contains("local law"));
        for (Step step : plan.steps().subList(1, plan.steps().size())) {
            for (Line line : step.lines()) {
                assertTrue(
                        line.label().endsWith("wanted")
                                || (line.restsOnAssumption() && !line.basis().isBlank()),
                        () -> step.title() + ": " + line);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void onlyAWholeMeasuredWorkshopComputesWithoutAssumption(PlateProcess process) {
        Workshop shop = Workshop.assumed();
        for (var each : shop.figures().entrySet()) {
            shop = shop.with(each.getKey(), measured(each.getValue().value()));
        }
        for (Step step : BenchOrder.plan(shop, request(process)).steps()) {
            for (Line line : step.lines()) {
                assertFalse(line.restsOnAssumption(), () -> step.title() + ": " + line);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void cautionsStandAtTheirSteps(PlateProcess process) {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), request(process));
        for (Step step : plan.steps()) {
            String cautions = String.join(" ", step.cautions());
            if (step.title().contains("xposure")) {
                assertTrue(cautions.contains("lamp"), step.title());
            }
            if (step.title().equals("Bite")) {
                assertTrue(cautions.contains("aluminium") && cautions.contains("zinc"), step.title());
            }
            if (step.title().equals("Rinse and strip")) {
                assertTrue(cautions.contains("licensed"), step.title());
            }
            if (step.title().startsWith("Aquatint")) {
                assertTrue(cautions.contains("flammable") && cautions.contains("respirator"), step.title());
            }
        }
    }

    @Test
    void exposureFollowsStepHeldLampAndFilm() {
        // 60 s x 10^(0.15 x 2) x (80/60)^2 x 10^0.12, worked apart from this program: 280.562 s and 420.844 s.
        Workshop shop = Workshop.assumed()
                .with("exposure.stepHeld", measured(5))
                .with("light.distanceMillimetres", measured(800))
                .with("filmPrinter.clearUvDensity", measured(0.22));
        ExposureTimes times = ExposureTimes.of(shop);
        assertEquals(280.562, times.screenSeconds(), 0.002);
        assertEquals(420.844, times.imageSeconds(), 0.002);
        assertEquals(times.togetherSeconds(), step(etched(shop), "Exposure").seconds(), 1e-9);
    }

    @Test
    void movedTubesAreWarnedAboutAndNotCorrected() {
        Workshop tubes = WorkshopFile.read(
                "{\"greyground\": \"workshop\", \"version\": 1, \"light\": {\"kind\": \"tubes\", \"distanceMillimetres\": 100}}");
        assertEquals(1, ExposureTimes.of(tubes).distanceFactor());
        assertEquals(1, etched(tubes).warnings().size());
    }

    @Test
    void aThinBlackIsWarnedAboutWithTheStepsItCosts() {
        // Step 7 on bare resist is 0.95 D, contrast 1/1.66096 = 0.602, margin 0.3: 1.852 needed; film and base have
        // 1.40.
        Workshop shop = Workshop.assumed().with("filmPrinter.blackUvDensity", measured(1.4));
        ExposurePlan plan = etched(shop);
        assertEquals(
                "1.85 D (UV)",
                line(plan, "Film on the light table", "black needed").value());
        assertEquals(1, plan.warnings().size());
        assertTrue(
                plan.warnings().get(0).contains("0.45 D too thin"),
                plan.warnings().get(0));
        assertTrue(plan.warnings().get(0).contains("3.0 steps"), plan.warnings().get(0));
    }

    @Test
    void theBlackNeededFollowsTheBaseAndTheSplit() {
        // Base 0.10 then and 0.25 now: light is made up for it, and the black has 0.15 more to stop.
        Workshop yellowed = Workshop.assumed().with("filmPrinter.clearUvDensity", measured(0.25));
        assertEquals(
                2.002, FilmBlack.of(yellowed, new PlateProcess.EtchedFilm()).needed(), 1e-3);
        // Doses 1.8 + 1.05 = 2.85 are 0.455 decades, in place of the step's 0.95.
        PlateProcess split = PlateProcess.all().stream()
                .filter(PlateProcess.Photogravure.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertEquals(1.357, FilmBlack.of(Workshop.assumed(), split).needed(), 1e-3);
        assertEquals(
                1.852,
                FilmBlack.of(Workshop.assumed(), PlateProcess.Photogravure.unsaid())
                        .needed(),
                1e-3);
    }

    @Test
    void lightFallsOffTowardsTheCorners() {
        // 360 x 480 mm: its corner lies 300 mm off the axis of a lamp 600 mm away, cos^4 = 0.8^2 = 0.64, 1.292 steps.
        CornerLight corner = CornerLight.of(600, new Size(360, 480));
        assertEquals(0.64, corner.share(), 1e-12);
        assertEquals(1.292, corner.steps(), 1e-3);
        assertEquals(600, corner.lampMillimetresFor(corner.steps()), 1e-9);
        // 200 x 250 mm, 160 mm off the axis: 0.871, 0.4 steps; at 30 cm 0.606, 1.5 steps. 53.3 cm would do.
        assertEquals(
                "0.4 steps less",
                line(etched(Workshop.assumed()), "Exposure", "light at the plate's corners")
                        .value());
        Workshop near = Workshop.assumed()
                .with("light.distanceMillimetres", measured(300))
                .with("light.distanceAtTestMillimetres", measured(300));
        assertEquals(1, etched(near).warnings().size());
        String warned = etched(near).warnings().get(0);
        assertTrue(
                warned.contains("39 % less") && warned.contains("1.5 wedge steps") && warned.contains("54 cm"), warned);
        Workshop tubes = WorkshopFile.read(
                "{\"greyground\": \"workshop\", \"version\": 1, \"light\": {\"kind\": \"tubes\", \"distanceMillimetres\": 100}}");
        assertTrue(CornerLight.of(tubes, new Size(200, 250)).isEmpty());
    }

    @Test
    void outOfWindowHardWaterAndSpentBathAreWarnedAbout() {
        Workshop shop = Workshop.assumed()
                .with("resist.thinningMinutes", measured(45))
                .with("developer.gramsPerLitre", measured(1))
                .with("bath.copperGramsPerLitre", measured(48))
                .with("bath.degreesBaume", measured(45));
        assertEquals(
                4, etched(shop).warnings().size(), () -> etched(shop).warnings().toString());
    }

    @Test
    void colderOrUsedBathBitesLongerToTheSameDepth() {
        double before = step(etched(Workshop.assumed()), "Bite").seconds();
        Workshop cold = Workshop.assumed().with("bath.temperatureCelsius", measured(15));
        assertTrue(step(etched(cold), "Bite").seconds() > before);
        Workshop used = Workshop.assumed().with("bath.copperGramsPerLitre", measured(50));
        // Half the rate at half the limit: twice the time.
        assertEquals(2 * before, step(etched(used), "Bite").seconds(), 1e-9);
    }

    @Test
    void aBathPastItsLimitIsRefused() {
        Workshop spent = Workshop.assumed().with("bath.copperGramsPerLitre", measured(100));
        String message = assertThrows(Refusal.class, () -> etched(spent)).getMessage();
        assertTrue(message.contains("fresh bath"), message);
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void aPlanComesBackFromItsJson(PlateProcess process) {
        ExposurePlan plan = BenchOrder.plan(Workshop.assumed(), request(process));
        assertEquals(plan, PlanJson.read(PlanJson.text(plan)));
        assertTrue(plan.card().size() >= 3, "a bench card");
        assertThrows(
                Refusal.class, () -> PlanJson.read(PlanJson.text(plan).replace("\"version\": 1", "\"version\": 2")));
        assertThrows(Refusal.class, () -> PlanJson.read(PlanJson.text(plan).replace("\"seconds\"", "\"second\"")));
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void textFitsEightyColumnsAndMarksWhatIsAssumed(PlateProcess process) {
        ExposurePlan plan =
                BenchOrder.plan(Workshop.assumed().with("resist.thinningMinutes", measured(26)), request(process));
        for (String row : PlanText.of(plan).lines().toList()) {
            assertTrue(row.length() <= 80, row);
            assertEquals(row.stripTrailing(), row);
            if (row.startsWith("      time  ") && !row.contains("measured")) {
                assertTrue(row.contains("○ assumed ["), row);
            }
        }
        if (request(process).isBitten()) {
            assertTrue(PlanText.of(plan).contains("26 min            measured 2026-03-04 ["), PlanText.of(plan));
        }
    }
}
