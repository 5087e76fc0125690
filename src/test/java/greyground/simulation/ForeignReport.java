package greyground.simulation;

import greyground.chart.Levels;
import greyground.fit.CodePower;
import greyground.fit.FitParameter;
import greyground.fit.FittedFigure;
import greyground.fit.MeasuredLevel;
import greyground.fit.PlateLesson;
import greyground.fit.SharedErrors;
import greyground.quantity.Refusal;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** How far bands and claims hold in foreign shops, line by line. */
public final class ForeignReport {
    private ForeignReport() {}

    /** Bands about the tones, read from fields' mean light or from whole scans. */
    public static void bands(int cases, long first, boolean scanned) {
        int outliers = 0;
        int[][] kinds = new int[3][4];
        int[][] byLevel = new int[26][2];
        for (long seed = first; seed < first + cases; seed++) {
            Optional<ForeignTrial> made = trial(seed, scanned);
            if (made.isEmpty()) {
                continue;
            }
            ForeignTrial trial = made.get();
            SharedErrors errors = trial.errors();
            int alone = trial.held(trial.next(), level -> trial.measured().halfWidth(level.coverage()));
            int both = trial.held(trial.next(), level -> errors.halfWidth(trial.measured(), level.coverage()));
            int[] kind = kinds[trial.scan().scale().ordinal()];
            kind[0] += alone;
            kind[1] += both;
            kind[3] += trial.held(trial.own(), level -> trial.measured().halfWidth(level.coverage()));
            kind[2] += trial.next().size();
            outliers += trial.measured().outliers().size();
            double worst = 0;
            double width = 0;
            for (int i = 0; i < trial.next().size(); i++) {
                MeasuredLevel level = trial.measured().levels().get(i);
                double miss = trial.next().get(i) - level.lightness();
                double half = errors.halfWidth(trial.measured(), level.coverage());
                byLevel[i][0]++;
                byLevel[i][1] += Math.abs(miss) <= half ? 1 : 0;
                worst = Math.abs(miss) > Math.abs(worst) ? miss : worst;
                width += half / trial.next().size();
            }
            say(
                    "%s: %s gamma %.2f glare %.4f told %.3f seen %s L* %.1f to %.1f at %.0f %%, worst %.1f, held %d and %d of %d (mean half %.1f), out %d",
                    trial.shop(),
                    trial.scan().scale(),
                    trial.scan().gamma(),
                    trial.scan().glare(),
                    trial.scan().glareTold(),
                    trial.scan()
                            .seen()
                            .map(seen -> String.format(Locale.ROOT, "%.4f +- %.4f", seen.share(), seen.error()))
                            .orElse("none"),
                    trial.measured().printableRange().bare(),
                    trial.measured().printableRange().darkest(),
                    100 * trial.measured().turn().coverage(),
                    worst,
                    alone,
                    both,
                    trial.next().size(),
                    width,
                    trial.measured().outliers().size());
        }
        int[] all = new int[4];
        for (int kind = 0; kind < 3; kind++) {
            for (int i = 0; i < 4; i++) {
                all[i] += kinds[kind][i];
            }
            row(ForeignScan.Scale.values()[kind].name(), kinds[kind]);
        }
        row("all", all);
        say("fields left out: %d", outliers);
        for (int i = 0; i < Levels.WEDGE.size(); i++) {
            say("%d: %d of %d", Levels.WEDGE.get(i), byLevel[i][1], byLevel[i][0]);
        }
    }

    /** Numbers claimed, and those told as the model sees them. */
    public static void lessons(int cases, long first, boolean scanned) {
        Map<FitParameter, int[]> counts = new EnumMap<>(FitParameter.class);
        for (long seed = first; seed < first + cases; seed += Integer.getInteger("seeds.apart", 1)) {
            Optional<ForeignTrial> made = trial(seed, scanned);
            if (made.isEmpty()) {
                continue;
            }
            ForeignTrial trial = made.get();
            long start = System.nanoTime();
            PlateLesson lesson = trial.lesson(9);
            StringBuilder words = new StringBuilder();
            for (FittedFigure figure : lesson.figures()) {
                double truth = trial.shop().truth(figure.parameter());
                int[] count = counts.computeIfAbsent(figure.parameter(), none -> new int[4]);
                if (figure instanceof FittedFigure.Determined found) {
                    boolean held = truth >= found.low() && truth <= found.high();
                    count[0]++;
                    count[1] += held ? 1 : 0;
                    words.append(String.format(
                            Locale.ROOT,
                            "; %s%s %.2f in %.2f to %.2f",
                            held ? "" : "MISSED ",
                            figure.parameter().words(),
                            truth,
                            found.low(),
                            found.high()));
                } else if (figure instanceof FittedFigure.AsSeen seen) {
                    count[2]++;
                    count[3] += truth >= seen.low() && truth <= seen.high() ? 1 : 0;
                }
            }
            if (trial.scan().scale() == ForeignScan.Scale.UNSTATED) {
                CodePower power = lesson.power().orElseThrow();
                say(
                        "power %.2f seen as %.2f, half %.2f%s%s",
                        trial.scan().gamma(),
                        power.power(),
                        power.half95(),
                        Math.abs(power.power() - trial.scan().gamma()) > power.half95() ? " MISSED" : "",
                        power.isDoubtful() ? " doubtful" : "");
            }
            say(
                    "%d %s misfit %.2f, %.1f s%s",
                    seed, trial.scan().scale(), lesson.misfit(), (System.nanoTime() - start) / 1e9, words);
        }
        counts.forEach((number, count) ->
                say("| %s | %d | %d | %d | %d |", number.words(), count[0], count[1], count[2], count[3]));
        int[] all = new int[4];
        counts.values().forEach(count -> {
            for (int i = 0; i < all.length; i++) {
                all[i] += count[i];
            }
        });
        say("| all | %d | %d | %d | %d |", all[0], all[1], all[2], all[3]);
    }

    /** None where the reader refuses the scan, which is said. */
    private static Optional<ForeignTrial> trial(long seed, boolean scanned) {
        try {
            return Optional.of(scanned ? ForeignTrial.scanned(seed) : ForeignTrial.of(seed));
        } catch (Refusal refused) {
            say("%d refused: %s", seed, refused.getMessage());
            return Optional.empty();
        }
    }

    private static void row(String name, int[] count) {
        say(
                "| %s | %.1f %% | %.1f %% | %.1f %% | of %d |",
                name, 100.0 * count[3] / count[2], 100.0 * count[0] / count[2], 100.0 * count[1] / count[2], count[2]);
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
