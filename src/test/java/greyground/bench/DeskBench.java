package greyground.bench;

import com.sun.management.OperatingSystemMXBean;
import greyground.app.live.LiveBench;
import greyground.app.live.LivePlate;
import greyground.app.recipe.JobWords;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.film.job.Job;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Times what a hand at the desk waits for: a picture of 1600 x 1200 pixels after a setting has changed, and the loupe. The argument
 * is art; the medians of {@value #ROUNDS} changes are printed.
 */
public final class DeskBench {
    private static final int ROUNDS = 15;

    private DeskBench() {}

    @FunctionalInterface
    private interface Work {
        void run(int round) throws Exception;
    }

    /** Prints one line for each kind of wait. */
    public static void main(String[] arguments) throws Exception {
        try (LiveBench bench = LiveBench.open(Path.of(arguments[0]))) {
            Workshop shop = Workshop.assumed();
            Job job = job(bench, Map.of("plate", "210x148mm"), Optional.empty());
            LiveView fit = new LiveView(-10, -10, 230.0 / 1600, 1600, 1200);
            LivePlate[] plate = new LivePlate[1];
            time("first picture, art read and plate computed or kept", 1, round -> {
                plate[0] = bench.plate(job, shop, Progress.NONE);
                plate[0].tones(Stage.PRINT, fit);
            });
            for (Stage stage : Stage.values()) {
                time("tones of " + stage.word() + ", first", 1, round -> plate[0].tones(stage, fit));
            }
            for (Stage stage : Stage.values()) {
                time("art white changed, " + stage.word() + " at 1600 x 1200", ROUNDS, round -> {
                    Job changed = job(bench, Map.of("white", 80 + round % 9 + "%"), Optional.of(job));
                    plate[0] = bench.plate(changed, shop, Progress.NONE);
                    plate[0].tones(stage, fit);
                });
            }
            time("crop changed, print at 1600 x 1200", ROUNDS, round -> {
                Job changed = job(bench, Map.of("crop", round + "%,5%,80%,80%"), Optional.of(job));
                plate[0] = bench.plate(changed, shop, Progress.NONE);
                plate[0].tones(Stage.PRINT, fit);
            });
            time("turned by a quarter, art at 1600 x 1200", ROUNDS, round -> {
                Job changed = job(bench, Map.of("rotate", 90 * (round % 4) + ""), Optional.of(job));
                plate[0] = bench.plate(changed, shop, Progress.NONE);
                plate[0].art(new LiveView(0, 0, 2, 1600, 1200));
            });
            time(
                    "moved, print at 1600 x 1200",
                    ROUNDS,
                    round -> plate[0].tones(
                            Stage.PRINT, new LiveView(-10 - round * 0.3, -10, 230.0 / 1600, 1600, 1200)));
            for (Stage stage : Stage.values()) {
                time(
                        "loupe of 2 mm, " + stage.word() + " at 240 x 240",
                        ROUNDS,
                        round -> plate[0].close(
                                stage, new LiveView(40 + round * 5, 60, 2.0 / 240, 240, 240), true, Progress.NONE));
            }
            time("warnings, first", 1, round -> plate[0].remarks(Progress.NONE));
            time("art white changed, warnings", ROUNDS, round -> {
                Job changed = job(bench, Map.of("white", 80 + round % 9 + "%"), Optional.of(job));
                bench.plate(changed, shop, Progress.NONE).remarks(Progress.NONE);
            });
            time("every dot of the film checked", 1, round -> plate[0].check(Progress.NONE));
        }
    }

    private static Job job(LiveBench bench, Map<String, String> words, Optional<Job> base) {
        return new JobWords(words).job(base, bench.source(1), Workshop.assumed(), "2026-11-25");
    }

    private static void time(String what, int rounds, Work work) throws Exception {
        OperatingSystemMXBean machine = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        long startBusy = machine.getProcessCpuTime();
        List<Double> times = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            long start = System.nanoTime();
            work.run(round);
            times.add((System.nanoTime() - start) / 1e6);
        }
        List<Double> sorted = times.stream().sorted().toList();
        System.out.printf(
                Locale.ROOT,
                "%-54s median %6.0f ms, most %6.0f ms, processors %6.0f ms%n",
                what,
                sorted.get(sorted.size() / 2),
                sorted.get(sorted.size() - 1),
                (machine.getProcessCpuTime() - startBusy) / 1e6 / rounds);
    }
}
