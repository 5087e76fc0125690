package greyground.simulation;

import greyground.chart.Levels;
import greyground.fit.MeasuredLevel;
import greyground.fit.SharedErrors;
import java.util.Locale;

/** How far bands and claims hold in foreign shops, line by line. */
public final class ForeignReport {
    private ForeignReport() {}

    /** Bands about the tones. */
    public static void bands(int cases, long first) {
        int outliers = 0;
        int[][] kinds = new int[3][4];
        int[][] byLevel = new int[26][2];
        for (long seed = first; seed < first + cases; seed++) {
            ForeignTrial trial = ForeignTrial.of(seed);
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
                    "%s: %s gamma %.2f glare %.3f told %.3f L* %.1f to %.1f at %.0f %%, worst %.1f, held %d and %d of %d (mean half %.1f), out %d",
                    trial.shop(),
                    trial.scan().scale(),
                    trial.scan().gamma(),
                    trial.scan().glare(),
                    trial.scan().glareTold(),
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

    private static void row(String name, int[] count) {
        say(
                "| %s | %.1f %% | %.1f %% | %.1f %% | of %d |",
                name, 100.0 * count[3] / count[2], 100.0 * count[0] / count[2], 100.0 * count[1] / count[2], count[2]);
    }

    private static void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
