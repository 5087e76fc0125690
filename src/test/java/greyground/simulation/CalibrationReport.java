package greyground.simulation;

import greyground.fit.FittedFigure;
import greyground.grain.Grain;
import greyground.quantity.Ruling;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** The study's tables, line by line as they come. */
public final class CalibrationReport {
    private static final int SHOPS = 7;
    private static final int WORKERS = 4;

    private static final List<Grain> GRAINS = List.of(
            new Grain.Stochastic(180, 1),
            new Grain.Stochastic(150, 2),
            new Grain.Stochastic(180, 1),
            new Grain.Stochastic(220, 3),
            new Grain.Stochastic(180, 1),
            new Grain.Halftone(new Ruling(50), 45, Grain.DotShape.ROUND));

    private CalibrationReport() {}

    /** Scans read. */
    public static void read(int cases, long first) throws Exception {
        int found = 0;
        int wrong = 0;
        int wrongTaken = 0;
        List<Double> errors = new ArrayList<>();
        List<Double> wiped = new ArrayList<>();
        List<Double> medians = new ArrayList<>();
        List<Double> places = new ArrayList<>();
        List<Double> seconds = new ArrayList<>();
        ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
        List<Future<ReadingTrial[]>> under = new ArrayList<>();
        for (long seed = first; seed < first + cases; seed++) {
            long one = seed;
            under.add(workers.submit(() -> tried(one)));
        }
        workers.shutdown();
        for (Future<ReadingTrial[]> future : under) {
            ReadingTrial[] both = future.get();
            ReadingTrial trial = both[0];
            SimulatedShop shop = trial.given();
            long seed = shop.seed();
            wrong += both.length - 1;
            wrongTaken += both.length > 1 && both[1].found() ? 1 : 0;
            Spread spread = Spread.of(trial.errors());
            found += trial.found() ? 1 : 0;
            errors.addAll(trial.errors());
            wiped.addAll(trial.wipedErrors());
            medians.add(spread.median());
            places.add(trial.placeError());
            seconds.add(trial.seconds());
            say(
                    "%d %s %s %.0fx%.0f mm %.0f ppi turned %.1f%s blur %.2f flare %.3f %s %.2f s: median %.2f 95%% %.2f worst %.2f"
                            + " mean %+.2f place %.0f um %s",
                    seed,
                    trial.found() ? "found" : "NOT FOUND",
                    shop.grain(),
                    shop.chart().recipe().widthMicrometres() / 1000.0,
                    shop.chart().recipe().heightMicrometres() / 1000.0,
                    shop.scanner().pixelsPerInch(),
                    shop.scanner().degrees(),
                    shop.scanner().mirrored() ? " mirrored" : "",
                    shop.scanner().blurPixels(),
                    shop.scanner().flare(),
                    shop.scanner().coding(),
                    trial.seconds(),
                    spread.median(),
                    spread.ninetyFive(),
                    spread.worst(),
                    spread.mean(),
                    trial.placeError(),
                    trial.refusal());
        }
        say(
                "cases %d, found %d, another plate's chart tried %d times and taken %d times",
                cases, found, wrong, wrongTaken);
        row("L* of fields as they were printed", errors);
        row("L* of fields, wiping not taken out", wiped);
        row("median of a case, L*", medians);
        row("place on the plate, um", places);
        row("seconds to read", seconds);
    }

    /** The right plate; in every fifth case another one as well, which is not there. */
    private static ReadingTrial[] tried(long seed) throws Exception {
        SimulatedShop shop = SimulatedShop.of(seed, SHOPS);
        SimulatedShop.Case given = shop.made();
        ReadingTrial right = ReadingTrial.of(given);
        return seed % 5 == 0
                ? new ReadingTrial[] {right, ReadingTrial.of(given, shop.anotherChart())}
                : new ReadingTrial[] {right};
    }

    /** Loops without a lesson: only whether the next plate prints as wished. */
    public static void print(int cases, long first) throws Exception {
        ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
        List<Future<CalibrationTrial>> under = new ArrayList<>();
        for (long seed = first; seed < first + cases; seed++) {
            long one = seed;
            Grain grain = GRAINS.get((int) Math.floorMod(seed, (long) GRAINS.size()));
            under.add(workers.submit(() -> CalibrationTrial.of(one, grain, new double[] {60, 80}, 0, false)));
        }
        workers.shutdown();
        List<Double> before = new ArrayList<>();
        List<Double> after = new ArrayList<>();
        for (Future<CalibrationTrial> future : under) {
            CalibrationTrial trial = future.get();
            before.add(CalibrationTrial.worst(trial.uncalibrated()));
            after.add(CalibrationTrial.worst(trial.calibrated()));
            say(
                    "%d %s L* %.1f to %.1f: uncalibrated %.2f calibrated %.2f",
                    trial.given().shop().seed(),
                    trial.given().shop().grain(),
                    trial.range().bare(),
                    trial.range().darkest(),
                    before.get(before.size() - 1),
                    after.get(after.size() - 1));
        }
        row("worst L* of a case, uncalibrated", before);
        row("worst L* of a case, calibrated", after);
    }

    /** Whole loops. */
    public static void learn(int cases, long first) throws Exception {
        CalibrationTally all = new CalibrationTally();
        CalibrationTally[] byAids = {new CalibrationTally(), new CalibrationTally(), new CalibrationTally()};
        List<Double> before = new ArrayList<>();
        List<Double> after = new ArrayList<>();
        List<Double> seconds = new ArrayList<>();
        int turns = 0;
        int within = 0;
        int apart = 0;
        double[][] sizes = {{60, 80}, {80, 100}, {100, 120}};
        for (long seed = first; seed < first + cases; seed++) {
            int aids = (int) Math.floorMod(seed, 3L);
            Grain grain = GRAINS.get((int) Math.floorMod(seed, (long) GRAINS.size()));
            CalibrationTrial trial =
                    CalibrationTrial.of(seed, grain, sizes[(int) Math.floorMod(seed / 3, 3L)], aids, true);
            PlateLessonLine line = PlateLessonLine.of(trial);
            all.add(trial.lesson().orElseThrow(), trial.given().shop().shop());
            byAids[aids].add(trial.lesson().orElseThrow(), trial.given().shop().shop());
            double worstBefore = CalibrationTrial.worst(trial.uncalibrated());
            double worstAfter = CalibrationTrial.worst(trial.calibrated());
            before.add(worstBefore);
            after.add(worstAfter);
            seconds.add(trial.lessonSeconds());
            within += worstAfter <= 2 ? 1 : 0;
            apart += worstBefore > 8 ? 1 : 0;
            turns += trial.measured().turn().seen() ? 1 : 0;
            say(
                    "%d aids %d %s L* %.1f to %.1f: uncalibrated %.2f calibrated %.2f, lesson %.1f s misfit %.2f%s",
                    seed,
                    aids,
                    grain,
                    trial.range().lightest(),
                    trial.range().darkest(),
                    worstBefore,
                    worstAfter,
                    trial.lessonSeconds(),
                    trial.lesson().orElseThrow().misfit(),
                    line.words());
        }
        say(
                "cases %d; verification within 2 L* in %d; uncalibrated beyond 8 L* in %d; turn seen in %d",
                cases, within, apart, turns);
        row("worst L* of a case, uncalibrated", before);
        row("worst L* of a case, calibrated", after);
        row("seconds of a lesson", seconds);
        tally("all", all);
        tally("print alone", byAids[0]);
        tally("with bar gauge", byAids[1]);
        tally("with bar gauge and loupe", byAids[2]);
    }

    private static void tally(String name, CalibrationTally tally) {
        say("%s: %d determined of %d, %d hold", name, tally.determined(), tally.asked(), tally.held());
        tally.counts()
                .forEach((number, count) -> say("| %s | %d | %d | %d |", number.words(), count[0], count[1], count[2]));
    }

    private static void row(String name, List<Double> values) {
        Spread spread = Spread.of(values.stream().filter(Double::isFinite).toList());
        say(
                "| %s | %.3f | %.3f | %.3f | mean %+.3f | n %d |",
                name, spread.median(), spread.ninetyFive(), spread.worst(), spread.mean(), spread.count());
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    /** The determined numbers of one case beside the hidden ones. */
    private record PlateLessonLine(String words) {
        static PlateLessonLine of(CalibrationTrial trial) {
            StringBuilder words = new StringBuilder();
            for (FittedFigure figure : trial.lesson().orElseThrow().figures()) {
                if (figure instanceof FittedFigure.Determined found) {
                    double truth =
                            figure.parameter().of(trial.given().shop().shop().truth());
                    boolean held = truth >= found.low() && truth <= found.high();
                    words.append(String.format(
                            Locale.ROOT,
                            " | %s %.2f: %.2f (%.2f..%.2f)%s",
                            figure.parameter().words(),
                            truth,
                            found.value(),
                            found.low(),
                            found.high(),
                            held ? "" : " MISSED"));
                }
            }
            return new PlateLessonLine(words.toString());
        }
    }
}
