package greyground.app.teach;

import greyground.app.recipe.JobPlate;
import greyground.chart.Target;
import greyground.fit.FigureChange;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredLines;
import greyground.fit.MeasuredResponse;
import greyground.fit.PlateLesson;
import greyground.fit.SharedErrors;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.scan.ScanReading;
import greyground.scan.ScanReading.TargetReading;
import greyground.scan.TargetFindings;
import greyground.tone.Lightness;
import greyground.workshop.Figure;
import greyground.workshop.KeptResponse;
import greyground.workshop.PlateMaking;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What the readings of a test plate teach a workshop: the tones themselves, and the numbers of the virtual plate that predict them
 * best.
 *
 * @param measured the response
 * @param kept the same as the workshop keeps it
 * @param predicted what the workshop predicted for this very plate
 * @param taught what it predicts once it is taught
 * @param findings of bars, dots and holes; only the bars teach a number, since the bite widens openings and eats lands
 * @param fit of the numbers; empty where a plate of this kind teaches none
 * @param learned the workshop before and after
 * @param notes one sentence each
 */
record PlateLearning(
        MeasuredResponse measured,
        KeptResponse kept,
        VirtualResponse predicted,
        VirtualResponse taught,
        List<TargetFindings.Finding> findings,
        Optional<PlateLesson> fit,
        LearnedWorkshop learned,
        List<String> notes) {
    /** One small field of lines is known no better than this, however even it is (assumed). */
    private static final double LEAST_LINE_ERROR = 0.5;

    /** Half the width of an even distribution over its standard deviation. */
    private static final double HALF_OF_EVEN = Math.sqrt(3);

    /** A depth that nobody measured, from a rate that nobody measured, or from one that was (assumed). */
    private static final double GUESSED_DEPTH_SHARE = 0.15;

    private static final double TOLD_DEPTH_SHARE = 0.06;

    /** Of a bare sheet's density on a densitometer that is in order (assumed). */
    private static final double PAPER_DENSITY_ERROR = 0.01;

    private static final String RATE = "bath.rateMicrometresPerMinute";
    private static final String PAPER = "paper.whiteDensity";

    PlateLearning {
        findings = List.copyOf(findings);
        notes = List.copyOf(notes);
    }

    static PlateLearning of(
            TestFilm film,
            Workshop shop,
            PlateFindings found,
            ReadingTrust trust,
            ReadWords words,
            LocalDate date,
            Progress progress) {
        String chart = film.plate().id();
        MeasuredResponse measured = MeasuredResponse.of("measured on " + date + ", chart " + chart, found.patches());
        progress.done(0.05);
        PlateMaking making = making(film, words);
        KeptResponse kept = new KeptResponse(date, chart, found.how(), making, measured.levels(), List.of());
        double bite = making.biteMinutes();
        VirtualResponse predicted = predicted(film, shop, bite);
        progress.done(0.2);
        MeasuredDepth depth = words.depth().orElseGet(() -> guessed(shop, bite));
        boolean again = shop.responses().stream().anyMatch(one -> samePrint(one, kept));
        boolean screened = film.job().process() instanceof PlateProcess.Photogravure;
        // Under a screen no target stands as it is drawn.
        List<TargetFindings.Finding> findings = found.scan()
                .filter(scan -> !screened)
                .map(scan -> findings(
                        scan,
                        depth,
                        shop.bath().etchFactor().value(),
                        bite > 0,
                        film.job().resolution().pitchMicrometres()))
                .orElse(List.of());
        List<FigureChange> changes = told(shop, words, bite);
        Workshop told =
                LearnedWorkshop.of(shop, changes, date, "test plate " + chart).after();
        Optional<PlateLesson> fit =
                again ? Optional.empty() : fit(film, told, depth, measured, found, findings, trust.errors());
        fit.ifPresent(one -> changes.addAll(
                exact(one.changes(path -> shop.figure(path).provenance().words()), shop)));
        progress.done(0.8);
        LearnedWorkshop figures = LearnedWorkshop.of(shop, changes, date, "test plate " + chart);
        Workshop after = figures.after().measuring(with(shop.responses(), kept));
        VirtualResponse taught = predicted(film, after, bite);
        progress.done(1);
        return new PlateLearning(
                measured,
                kept,
                predicted,
                taught,
                findings,
                fit,
                new LearnedWorkshop(shop, after, changes),
                notes(film, shop, after, kept));
    }

    /** As the film was planned, unless the bite was told. */
    private static PlateMaking making(TestFilm film, ReadWords words) {
        PlateMaking planned = JobPlate.making(film.workshop(), film.job());
        boolean bitten = !(planned.process() instanceof PlateProcess.UnetchedFilm);
        if (!bitten && (words.biteMinutes().isPresent() || words.depth().isPresent())) {
            throw Refusal.use(
                    "a bite or depth is given for a plate of unetched film, which is never bitten: leave it out");
        }
        return new PlateMaking(
                planned.process(),
                planned.grain(),
                planned.resolution(),
                planned.inkDown(),
                words.biteMinutes().orElse(planned.biteMinutes()),
                planned.exposureSeconds());
    }

    /** Numbers that a person measured, which no fit need find. */
    private static List<FigureChange> told(Workshop shop, ReadWords words, double biteMinutes) {
        List<FigureChange> changes = new ArrayList<>();
        words.depth()
                .ifPresent(depth -> changes.add(LearnedWorkshop.change(
                        shop, RATE, depth.micrometres() / biteMinutes, depth.standardError() / biteMinutes)));
        words.paperLightness()
                .ifPresent(white -> changes.add(
                        LearnedWorkshop.change(shop, PAPER, Lightness.toDensity(white), PAPER_DENSITY_ERROR)));
        return changes;
    }

    private static Optional<PlateLesson> fit(
            TestFilm film,
            Workshop shop,
            MeasuredDepth depth,
            MeasuredResponse measured,
            PlateFindings found,
            List<TargetFindings.Finding> findings,
            SharedErrors shared) {
        if (film.job().process() instanceof PlateProcess.SprayedAquatint
                || film.job().process() instanceof PlateProcess.Photogravure) {
            return Optional.empty();
        }
        JobPlate plate = JobPlate.of(shop, film.job());
        return Optional.of(PlateLesson.of(
                plate.conditions(depth.micrometres()),
                depth,
                plate.patches(),
                plate.widestPixelMicrometres(),
                measured,
                lines(found.targets(), measured),
                findings.stream().flatMap(finding -> finding.reading().stream()).toList(),
                shared));
    }

    private static MeasuredDepth guessed(Workshop shop, double biteMinutes) {
        Figure rate = shop.bath().rateMicrometresPerMinute();
        double depth = Math.max(1, rate.value() * biteMinutes);
        return new MeasuredDepth(depth, depth * (rate.isAssumed() ? GUESSED_DEPTH_SHARE : TOLD_DEPTH_SHARE));
    }

    /** A fit may give a number back with its last digit rounded. */
    private static List<FigureChange> exact(List<FigureChange> changes, Workshop shop) {
        return changes.stream()
                .map(each -> LearnedWorkshop.change(shop, each.path(), each.after(), each.standardError()))
                .toList();
    }

    /** Its own tones join the others; an earlier reading of the same print makes room. */
    private static List<KeptResponse> with(List<KeptResponse> before, KeptResponse kept) {
        List<KeptResponse> all = new ArrayList<>(before);
        all.removeIf(one -> samePrint(one, kept));
        all.add(kept);
        return all;
    }

    private static boolean samePrint(KeptResponse one, KeptResponse other) {
        return one.chart().equals(other.chart()) && one.date().equals(other.date());
    }

    private static VirtualResponse predicted(TestFilm film, Workshop shop, double biteMinutes) {
        JobPlate plate = JobPlate.of(shop, film.job());
        double depth = biteMinutes * shop.bath().rateMicrometresPerMinute().value();
        return plate.response(plate.conditions(depth));
    }

    private static List<String> notes(TestFilm film, Workshop shop, Workshop after, KeptResponse kept) {
        List<String> notes = new ArrayList<>();
        List<String> others = new ArrayList<>();
        film.workshop().figures().forEach((path, figure) -> {
            Figure now = shop.figures().getOrDefault(path, figure);
            if (now.value() != figure.value()) {
                others.add(
                        path + " " + Refusal.plain(figure.value()) + " there, " + Refusal.plain(now.value()) + " here");
            }
        });
        if (!others.isEmpty()) {
            notes.add("the test film was made with other numbers than this workshop's: "
                    + String.join("; ", others.subList(0, Math.min(3, others.size())))
                    + (others.size() > 3 ? "; and " + (others.size() - 3) + " more" : ""));
        }
        List<String> apart = kept.making().differencesFrom(JobPlate.making(after, film.job()));
        if (!apart.isEmpty()) {
            notes.add("films take these tones only for plates made like the test plate: " + String.join("; ", apart));
        }
        if (shop.responses().stream().anyMatch(one -> samePrint(one, kept))) {
            notes.add(
                    "the workshop has read this print before and has its numbers from it: only the tones are taken anew");
        }
        if (film.job().process() instanceof PlateProcess.SprayedAquatint) {
            notes.add("under a sprayed ground the tones alone are learned, none of the workshop's numbers");
        }
        if (film.job().process() instanceof PlateProcess.Photogravure) {
            notes.add(
                    "of photogravure the tones alone are learned, for this screen and split; none of the workshop's numbers");
        }
        return notes;
    }

    /** The tone over each period of line pairs, upright and lying ones together. */
    private static List<MeasuredLines> lines(List<TargetReading> targets, MeasuredResponse measured) {
        double single = measured.levels().stream()
                .mapToDouble(MeasuredLevel::standardDeviation)
                .average()
                .orElse(LEAST_LINE_ERROR);
        Map<Integer, List<Double>> byPeriod = new TreeMap<>();
        for (TargetReading read : targets) {
            if (read.target() instanceof Target.Lines lines) {
                byPeriod.computeIfAbsent(lines.period(), any -> new ArrayList<>())
                        .add(read.lightness());
            }
        }
        List<MeasuredLines> all = new ArrayList<>();
        byPeriod.forEach((period, read) -> all.add(new MeasuredLines(
                period,
                read.stream().mapToDouble(Double::doubleValue).average().orElse(0),
                Math.max(LEAST_LINE_ERROR, single) / Math.sqrt(read.size()))));
        return all;
    }

    /**
     * What bars, dots and holes say, in the order: pad, smallest opening, smallest land.
     *
     * @param etchFactor of the workshop's bath
     * @param pitchMicrometres of the film: targets finer than its pixels are drawn coarser than they are called
     */
    private static List<TargetFindings.Finding> findings(
            ScanReading reading, MeasuredDepth depth, double etchFactor, boolean bitten, double pitchMicrometres) {
        List<TargetFindings.Finding> all = new ArrayList<>();
        if (bitten) {
            all.add(TargetFindings.barGauge(reading, depth, etchFactor));
        }
        all.add(drawn(TargetFindings.smallestOpening(reading.targets(), reading.patches()), pitchMicrometres));
        all.add(drawn(TargetFindings.smallestLand(reading.targets()), pitchMicrometres));
        return all;
    }

    private static TargetFindings.Finding drawn(TargetFindings.Finding finding, double pitchMicrometres) {
        boolean finer = finding.reading().isPresent()
                && finding.reading().get().value()
                                - HALF_OF_EVEN * finding.reading().get().standardError()
                        < pitchMicrometres;
        return finer
                ? new TargetFindings.Finding(
                        Optional.empty(), finding.words() + "; finer than the film's pixels, so it says nothing sure")
                : finding;
    }
}
