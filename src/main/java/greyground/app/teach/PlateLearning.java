package greyground.app.teach;

import greyground.app.recipe.JobPlate;
import greyground.fit.FigureChange;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredResponse;
import greyground.fit.PlateLesson;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
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

/**
 * What the readings of a test plate teach a workshop: the tones themselves, and the numbers of the virtual plate that foretell them
 * best.
 *
 * @param measured the response
 * @param kept the same as the workshop keeps it
 * @param foretold what the workshop foretold for this very plate
 * @param taught what it foretells once it is taught
 * @param findings of bars, dots and holes; only the bars teach a number, since the bite widens openings and eats lands
 * @param fit of the numbers; empty where a plate of this kind teaches none
 * @param learned the workshop before and after
 * @param notes one sentence each
 */
record PlateLearning(
        MeasuredResponse measured,
        KeptResponse kept,
        VirtualResponse foretold,
        VirtualResponse taught,
        List<TargetFindings.Finding> findings,
        Optional<PlateLesson> fit,
        LearnedWorkshop learned,
        List<String> notes) {
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

    /**
     * Learns.
     *
     * @param shop the workshop to be taught
     * @param date of the print
     */
    static PlateLearning of(
            TestFilm film, Workshop shop, PlateFindings found, ReadWords words, LocalDate date, Progress progress) {
        String chart = film.plate().id();
        MeasuredResponse measured = MeasuredResponse.of("measured on " + date + ", chart " + chart, found.patches());
        progress.done(0.05);
        PlateMaking making = making(film, words);
        KeptResponse kept = new KeptResponse(date, chart, found.how(), making, measured.levels(), List.of());
        double bite = making.biteMinutes();
        VirtualResponse foretold = foretold(film, shop, bite);
        progress.done(0.2);
        MeasuredDepth depth = words.depth().orElseGet(() -> guessed(shop, bite));
        boolean again = shop.responses().stream().anyMatch(one -> samePrint(one, kept));
        List<TargetFindings.Finding> findings = found.scan()
                .map(scan -> TargetLessons.findings(
                        scan,
                        depth,
                        shop.bath().etchFactor().value(),
                        bite > 0,
                        film.job().resolution().pitchMicrometres()))
                .orElse(List.of());
        List<FigureChange> changes = told(shop, words, bite);
        Workshop told =
                LearnedWorkshop.of(shop, changes, date, "test plate " + chart).after();
        Optional<PlateLesson> fit = again ? Optional.empty() : fit(film, told, depth, measured, found, findings);
        fit.ifPresent(one -> changes.addAll(exact(one.changes(path -> LearnedWorkshop.provenance(shop, path)), shop)));
        progress.done(0.8);
        LearnedWorkshop figures = LearnedWorkshop.of(shop, changes, date, "test plate " + chart);
        Workshop after = figures.after().measuring(with(shop.responses(), kept));
        VirtualResponse taught = foretold(film, after, bite);
        progress.done(1);
        return new PlateLearning(
                measured,
                kept,
                foretold,
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
                    "a bite or depth is told of a plate of unetched film, which is never bitten: leave it out");
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
                .ifPresent(depth -> changes.add(
                        change(shop, RATE, depth.micrometres() / biteMinutes, depth.standardError() / biteMinutes)));
        words.paperLightness()
                .ifPresent(white -> changes.add(change(shop, PAPER, Lightness.toDensity(white), PAPER_DENSITY_ERROR)));
        return changes;
    }

    private static FigureChange change(Workshop shop, String path, double after, double error) {
        Map<String, Figure> figures = shop.figures();
        Figure present = figures.get(path);
        if (present == null) {
            throw new IllegalArgumentException(path);
        }
        return new FigureChange(path, present.value(), present.provenance().words(), after, error);
    }

    private static Optional<PlateLesson> fit(
            TestFilm film,
            Workshop shop,
            MeasuredDepth depth,
            MeasuredResponse measured,
            PlateFindings found,
            List<TargetFindings.Finding> findings) {
        if (film.job().process() instanceof PlateProcess.SprayedAquatint) {
            return Optional.empty();
        }
        JobPlate plate = JobPlate.of(shop, film.job());
        return Optional.of(PlateLesson.of(
                plate.conditions(depth.micrometres()),
                depth,
                plate.patches(),
                plate.widestPixelMicrometres(),
                measured,
                TargetLessons.lines(found.targets(), measured),
                findings.stream().flatMap(finding -> finding.reading().stream()).toList()));
    }

    private static MeasuredDepth guessed(Workshop shop, double biteMinutes) {
        Figure rate = shop.bath().rateMicrometresPerMinute();
        double depth = Math.max(1, rate.value() * biteMinutes);
        return new MeasuredDepth(depth, depth * (rate.isAssumed() ? GUESSED_DEPTH_SHARE : TOLD_DEPTH_SHARE));
    }

    /** A fit may give a number back with its last digit rounded. */
    private static List<FigureChange> exact(List<FigureChange> changes, Workshop shop) {
        return changes.stream()
                .map(each -> change(shop, each.path(), each.after(), each.standardError()))
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

    private static VirtualResponse foretold(TestFilm film, Workshop shop, double biteMinutes) {
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
        return notes;
    }
}
