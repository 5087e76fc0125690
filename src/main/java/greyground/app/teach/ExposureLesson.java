package greyground.app.teach;

import greyground.app.chart.WedgePlan;
import greyground.app.files.Lesson;
import greyground.finding.Findings;
import greyground.fit.FigureChange;
import greyground.fit.FitReading;
import greyground.plan.StepWedge;
import greyground.plan.TestStrip;
import greyground.quantity.Durations;
import greyground.quantity.Refusal;
import greyground.scan.ScanReading;
import greyground.scan.StripReading;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The proof of an exposure test, read: which strip's dots opened and lands held, which strip to take, and the workshop's wanted wedge
 * step that gives its exposure.
 *
 * <p>More light makes smaller lands hold and shuts smaller openings. The strip is taken whose smallest opening and smallest land are
 * smallest together, by their product (assumed); of equals the one nearest the middle. Strips are a wedge's step apart, so taking the
 * next one means wanting one step more: the plan's seconds and the virtual plate's dose both follow from that number.
 */
final class ExposureLesson {
    private static final String PATH = "exposure.targetStep";

    /** A strip's exposure is right to within half a step, evenly likely. */
    private static final double ERROR = 1 / Math.sqrt(12);

    private ExposureLesson() {}

    static ReadOutcome of(TestFilm film, Workshop shop, PlateFindings found, LocalDate date) {
        ScanReading scan = found.scan()
                .orElseThrow(
                        () -> Refusal.use("an exposure test is read from a scan of its proof, not from values: its dots"
                                + " and holes show the strip"));
        List<StripReading> strips = StripReading.of(scan);
        TestStrip times = WedgePlan.strips(film.plate(), film.workshop())
                .orElseThrow(() -> Refusal.failure("the exposure test has no strips: make its film again"));
        Optional<StripReading> best = best(strips);
        Optional<FigureChange> change = best.map(strip -> change(shop, strip.number() - (strips.size() + 1) / 2.0));
        String chart = film.plate().id();
        String title = "exposure test " + chart;
        Findings findings = new Findings()
                .say("how", title + ", " + found.how(), found.how())
                .put("kind", "exposure")
                .put("chart", chart)
                .rows("strips", strips.stream().map(strip -> row(strip, times)).toList());
        best.ifPresentOrElse(
                strip -> findings.say(
                        "take",
                        name(strip, times) + " in all: its finest dots and lands are finest together"
                                + (change.filter(one -> one.after() == one.before())
                                                .isPresent()
                                        ? "; the planned exposure is right"
                                        : ""),
                        strip.number()),
                () -> findings.say(
                        "untaken",
                        "no strip shows both its dots and its lands: look at the developed resist with a loupe"));
        findings.rows("changes", ReadOutcome.changes(change.stream().toList(), List.of()))
                .list("notes", found.notes());
        return new ReadOutcome(
                title,
                findings,
                Optional.empty(),
                found.overlay(),
                change.map(one -> new Lesson(
                        shop,
                        LearnedWorkshop.of(shop, List.of(one), date, title).after(),
                        date + "-" + chart)));
    }

    private static Findings row(StripReading strip, TestStrip times) {
        return new Findings()
                .put("number", strip.number())
                .put("seconds", Math.rint(seconds(strip, times) * 100) / 100)
                .put("opening", strip.opening().words())
                .put("land", strip.land().words())
                .say(
                        "words",
                        name(strip, times) + ": " + strip.opening().words() + "; "
                                + strip.land().words());
    }

    private static double seconds(StripReading strip, TestStrip times) {
        return times.totals().get(strip.number() - 1);
    }

    private static String name(StripReading strip, TestStrip times) {
        return "strip " + strip.number() + ", " + Durations.format(Math.rint(seconds(strip, times)));
    }

    /** @param steps from the planned exposure, that of the middle strip, to the best strip's */
    private static FigureChange change(Workshop shop, double steps) {
        double before = shop.figure(PATH).value();
        double after = Refusal.checkRange(
                "wanted wedge step",
                before + steps,
                0,
                StepWedge.STEPS,
                "",
                "choose a strip by eye and write its time into the workshop");
        return LearnedWorkshop.change(shop, PATH, after, ERROR);
    }

    /** The strip whose dots and lands are finest together; empty where no strip tells both. */
    static Optional<StripReading> best(List<StripReading> strips) {
        StripReading best = null;
        double least = 0;
        double middle = (strips.size() + 1) / 2.0;
        for (StripReading strip : strips) {
            OptionalDouble product = product(strip);
            if (product.isPresent()) {
                boolean equal = best != null && Math.abs(product.getAsDouble() - least) < 1e-9;
                boolean nearer = best != null && Math.abs(strip.number() - middle) < Math.abs(best.number() - middle);
                if (best == null || (equal ? nearer : product.getAsDouble() < least)) {
                    best = strip;
                    least = product.getAsDouble();
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static OptionalDouble product(StripReading strip) {
        Optional<FitReading> opening = strip.opening().reading();
        Optional<FitReading> land = strip.land().reading();
        return opening.isPresent() && land.isPresent()
                ? OptionalDouble.of(opening.get().value() * land.get().value())
                : OptionalDouble.empty();
    }
}
