package greyground.app.bite;

import com.fasterxml.jackson.databind.JsonNode;
import greyground.app.files.KeptFiles;
import greyground.app.files.TypedTable;
import greyground.app.recipe.JobPlate;
import greyground.finding.Findings;
import greyground.fit.DepthFit;
import greyground.json.JsonText;
import greyground.plan.Bite;
import greyground.plan.BiteLog;
import greyground.plan.BiteLogOrder;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.PlanRequest;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * A plate's bite log: how deep its proofs show it to be, how fast the bath bites, and what further minutes would do.
 *
 * @param log the numbers
 * @param step to be read at the bath
 */
public record BiteLogAdvice(BiteLog log, Step step) implements BenchAdvice.Answer {
    private static final String COVERAGE = "coverage";

    private static final Map<String, String> COLUMNS = Map.of(
            COVERAGE,
            COVERAGE,
            "coverage %",
            COVERAGE,
            "l*",
            TypedTable.LIGHTNESS,
            "lightness",
            TypedTable.LIGHTNESS,
            TypedTable.DENSITY,
            TypedTable.DENSITY);

    /** A mean of many fields is told more surely than the plate can be predicted. */
    private static final double LEAST_ERROR = 0.3;

    /** Reads the log of a plate in the workshop as it was before its first bite. */
    public static BiteLogAdvice of(PlannedPlate plate, BiteWords words, LocalDate today, Progress progress) {
        checkBitten(plate);
        List<Seen> proofs = new ArrayList<>();
        words.proofs()
                .forEach(proof ->
                        proofs.add(new Seen(proof.minutes(), readings(proof.readings()), OptionalDouble.empty())));
        return of(plate, proofs, words.bath(plate.workshop(), today), words.copperTold(), progress);
    }

    /** Reads a log written down at the bench, in order of time. */
    public static BiteLogAdvice of(PlannedPlate plate, List<LoggedProof> proofs, Progress progress) {
        checkBitten(plate);
        List<Seen> seen = proofs.stream()
                .map(proof -> new Seen(proof.minutes(), proof.readings(), proof.depthMicrometres()))
                .toList();
        return of(plate, seen, plate.workshop(), false, progress);
    }

    /**
     * What one proof showed.
     *
     * @param depthMicrometres where the copper itself was measured
     */
    private record Seen(double minutes, List<DepthFit.Reading> readings, OptionalDouble depthMicrometres) {
        BiteLog.State state(DepthTones tones, Bite planned) {
            if (depthMicrometres.isPresent()) {
                return new BiteLog.State(minutes, depthMicrometres.getAsDouble(), LoggedProof.DEPTH_ERROR, 0, 0);
            }
            DepthFit fit = tones.fit(readings, planned.depthAfter(minutes));
            return new BiteLog.State(
                    minutes, fit.depthMicrometres(), fit.standardError(), readings.size(), fit.misfit());
        }
    }

    private static void checkBitten(PlannedPlate plate) {
        if (plate.job().process() instanceof PlateProcess.UnetchedFilm) {
            throw Refusal.use("process is unetched-film, which is never bitten: ask for a bite of another process");
        }
    }

    private static BiteLogAdvice of(
            PlannedPlate plate, List<Seen> proofs, Workshop told, boolean copperTold, Progress progress) {
        PlanRequest request = plate.request();
        Workshop before = plate.workshop();
        Workshop now = told;
        JobPlate virtual = JobPlate.of(before, plate.job());
        DepthTones tones = new DepthTones(depth -> virtual.response(virtual.conditions(depth)), progress);
        Bite planned = Bite.of(before, request);
        List<BiteLog.State> states =
                proofs.stream().map(proof -> proof.state(tones, planned)).toList();
        if (!copperTold && !states.isEmpty()) {
            double depth = states.get(states.size() - 1).depthMicrometres();
            now = Bite.after(before, now, request, depth);
        }
        BiteLog log = BiteLog.of(before, now, request, states, tones);
        return new BiteLogAdvice(log, BiteLogOrder.step(now, request, log, plate.mostBlack()));
    }

    @Override
    public Findings findings() {
        return new Findings()
                .put(
                        "biteLog",
                        new Findings()
                                .rows(
                                        "states",
                                        IntStream.range(0, log.states().size())
                                                .mapToObj(i -> state(
                                                        log.states().get(i),
                                                        log.stretches().get(i)))
                                                .toList())
                                .put("pace", log.pace())
                                .put("rateNowMicrometresPerMinute", log.bath().rateAtStart())
                                .rows(
                                        "more",
                                        log.rows().stream()
                                                .map(BiteLogAdvice::more)
                                                .toList())
                                .put("endsNoDarker", log.endsNoDarker())
                                .list("warnings", step.warnings()));
    }

    private static Findings state(BiteLog.State state, BiteLog.Stretch stretch) {
        return new Findings()
                .put("minutes", state.minutes())
                .put("depthMicrometres", state.depthMicrometres())
                .put("standardError", state.standardError())
                .put("readings", state.readings())
                .put("misfit", state.misfit())
                .put("rateMicrometresPerMinute", stretch.rate())
                .put("rateStandardError", stretch.standardError())
                .put("ratePredicted", stretch.predicted());
    }

    private static Findings more(BiteLog.Row row) {
        return new Findings()
                .put("minutes", row.moreMinutes())
                .put("depthMicrometres", row.depthMicrometres())
                .put("standardError", row.standardError())
                .put("lightTone", row.light())
                .put("middleTone", row.middle())
                .put("darkTone", row.dark())
                .put("darkest", row.tones().darkest())
                .put("turningPoint", row.tones().turningCoverage());
    }

    /**
     * Reads a file.
     *
     * @param file columns coverage (of the film, in %) and L* or density (paper included), or JSON with a list of levels or tones
     */
    private static List<DepthFit.Reading> readings(Path file) {
        String text = KeptFiles.text("readings", file, "readings");
        return text.stripLeading().startsWith("{") ? json(text) : table(file);
    }

    private static List<DepthFit.Reading> table(Path file) {
        TypedTable table = TypedTable.read("proof readings", file, COLUMNS);
        table.need(COVERAGE);
        table.needTones();
        return table.rows().stream()
                .map(row -> new DepthFit.Reading(
                        table.needed(row, COVERAGE, 0, 100) / 100, table.lightness(row), DepthFit.READING_ERROR))
                .toList();
    }

    private static List<DepthFit.Reading> json(String text) {
        JsonNode file = JsonText.parse("proof readings", text);
        boolean levels = file.path("levels").isArray();
        JsonNode list = levels ? file.path("levels") : file.path("tones");
        List<DepthFit.Reading> readings = new ArrayList<>();
        for (JsonNode each : list) {
            JsonNode coverage = levels ? each.path(COVERAGE) : each.path("coveragePercent");
            if (!coverage.isNumber() || !each.path("lightness").isNumber()) {
                throw Refusal.use("proof readings hold a tone " + JsonText.shown(each)
                        + "; it must have a coverage and a lightness: give what 'greyground read --json' printed");
            }
            double half = each.path("halfWidth").asDouble(each.path("half95").asDouble(0));
            readings.add(new DepthFit.Reading(
                    coverage.doubleValue() / (levels ? 1 : 100),
                    each.path("lightness").doubleValue(),
                    half > 0 ? Math.max(LEAST_ERROR, half / 1.96) : DepthFit.READING_ERROR));
        }
        if (readings.isEmpty()) {
            throw Refusal.use(
                    "proof readings hold no levels or tones: give what 'greyground read --json' printed, or coverage,L*"
                            + " as comma-separated values");
        }
        return readings;
    }
}
