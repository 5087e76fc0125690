package greyground.bench;

import greyground.art.colour.ArtKernels;
import greyground.cli.CommandLine;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Where the time of a film goes, stage by stage: {@code positive} from 6000 x 8000 pixels of 16-bit colour to 300 x 400 mm at 1440 dpi, first
 * as a new process finds it, then again and again in that process, when everything is compiled, and beside both what the bare loops
 * would take on all cores, measured at the end of the same run.
 *
 * <pre>
 * java -cp TEST-CLASS-PATH greyground.bench.FilmStages ART.tif
 * </pre>
 *
 * <p>The main thread is asked every millisecond what it is at; other threads work meanwhile, so a stage's time is that of the clock.
 */
public final class FilmStages {
    private static final int AGAIN = 5;
    private static final int CORES = Runtime.getRuntime().availableProcessors();

    private static final double ART_PIXELS = 6000.0 * 8000;
    /** Rows of art, each enlarged across once. */
    private static final double ACROSS_PIXELS = 17_008.0 * 8000;

    private static final double PLATE_PIXELS = 17_008.0 * 22_677;
    private static final double SHEET_PIXELS = 19_729.0 * 27_120;

    /** The method that marks each stage, looked for from the innermost call outward. */
    private static final Map<String, String> STAGES = new LinkedHashMap<>();

    static {
        STAGES.put("ArtSource.decode", "decode");
        STAGES.put("Decoded.sha256", "wait for the file's digest");
        STAGES.put("ArtSource.greysOfCrop", "count greys, find white and black");
        STAGES.put("FilmRecipe.films", "curve, plan, layout");
        STAGES.put("PositiveWork.write", "compose, deflate, write");
        STAGES.put("FilmFile.of", "attachments");
        STAGES.put("CommandLine.run", "read the command, look into the art");
    }

    private FilmStages() {}

    public static void main(String[] arguments) throws Exception {
        Path film = Files.createTempFile("film", ".pdf");
        String[] words = {
            "positive",
            arguments[0],
            "--plate",
            "300x400mm",
            "--bleed",
            "0mm",
            "--resolution",
            "1440",
            "--date",
            "2026-01-01",
            "--out",
            film.toString()
        };
        Map<String, Double> cold = stages(words);
        List<Map<String, Double>> warm = new ArrayList<>();
        for (int i = 0; i < AGAIN; i++) {
            warm.add(stages(words));
        }
        Files.delete(film);
        System.out.printf(Locale.ROOT, "%-40s %8s %8s   (ms)%n", "stage", "first", "again");
        for (String stage : cold.keySet()) {
            double[] each = warm.stream()
                    .mapToDouble(run -> run.getOrDefault(stage, 0.0))
                    .sorted()
                    .toArray();
            System.out.printf(Locale.ROOT, "%-40s %8.0f %8.0f%n", stage, cold.get(stage), each[each.length / 2]);
        }
        floors(Path.of(arguments[0]));
    }

    private static Map<String, Double> stages(String[] words) throws Exception {
        Map<String, Double> spent = new LinkedHashMap<>();
        for (String stage : STAGES.values()) {
            spent.put(stage, 0.0);
        }
        Thread watched = Thread.currentThread();
        AtomicBoolean done = new AtomicBoolean();
        Thread watcher = new Thread(() -> {
            long last = System.nanoTime();
            while (!done.get()) {
                String stage = stage(watched.getStackTrace());
                long now = System.nanoTime();
                spent.merge(stage, (now - last) / 1e6, Double::sum);
                last = now;
                try {
                    Thread.sleep(1);
                } catch (InterruptedException stopped) {
                    return;
                }
            }
        });
        watcher.setDaemon(true);
        watcher.start();
        PrintStream nowhere =
                new PrintStream(OutputStream.nullOutputStream(), false, java.nio.charset.StandardCharsets.UTF_8);
        int status = CommandLine.run(words, nowhere, System.err);
        done.set(true);
        watcher.join();
        if (status != 0) {
            throw new IOException("no film was made");
        }
        return spent;
    }

    private static String stage(StackTraceElement[] calls) {
        for (StackTraceElement call : calls) {
            String type = call.getClassName();
            String place = type.substring(Math.max(type.lastIndexOf('.'), type.lastIndexOf('$')) + 1) + "."
                    + call.getMethodName();
            String stage = STAGES.get(place);
            if (stage != null) {
                return stage;
            }
        }
        return "read the command, look into the art";
    }

    private static void floors(Path art) throws Exception {
        FilmKernels film = new FilmKernels();
        film.prepare();
        ArtKernels colour = new ArtKernels();
        colour.prepare();
        double luminance = milliseconds(colour::sixteenBitColour, 1 << 18) * ART_PIXELS;
        double across = milliseconds(film::enlargeAcross, 17_008) * ACROSS_PIXELS;
        double down = milliseconds(film::addDown, 17_008) * PLATE_PIXELS;
        double pack = milliseconds(film::pack, 17_008) * PLATE_PIXELS;
        double deflate = milliseconds(film::deflate, 19_729 * 200) * SHEET_PIXELS;
        colour.leave();
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        double[] readAndDigest = {0, 0};
        for (int i = 0; i < 3; i++) {
            readAndDigest[0] = read(art, piece -> {});
            readAndDigest[1] = read(art, digest::update) - readAndDigest[0];
        }
        System.out.printf(Locale.ROOT, "%nbare loops on one core, and on %d (ms)%n", CORES);
        say("read the file once", readAndDigest[0]);
        say("digest", readAndDigest[1]);
        say("luminance", luminance);
        say("enlarge across", across);
        say("add down", down);
        say("pack", pack);
        say("deflate", deflate);
        say("all", 2 * readAndDigest[0] + readAndDigest[1] + luminance + across + down + pack + deflate);
    }

    private static void say(String what, double milliseconds) {
        System.out.printf(Locale.ROOT, "%-40s %8.0f %8.0f%n", what, milliseconds, milliseconds / CORES);
    }

    private interface Loop {
        void run() throws Exception;
    }

    private interface Taker {
        void take(byte[] piece);
    }

    /** Milliseconds of one pass over the file. */
    private static double read(Path file, Taker taker) throws IOException {
        byte[] piece = new byte[1 << 16];
        long start = System.nanoTime();
        try (InputStream in = Files.newInputStream(file)) {
            while (in.readNBytes(piece, 0, piece.length) > 0) {
                taker.take(piece);
            }
        }
        return (System.nanoTime() - start) / 1e6;
    }

    /** Milliseconds to the item, the median of rounds of a quarter second. */
    private static double milliseconds(Loop loop, int items) throws Exception {
        double[] rounds = new double[9];
        for (int round = 0; round < rounds.length; round++) {
            long start = System.nanoTime();
            long times = 0;
            while (System.nanoTime() - start < 250_000_000L) {
                loop.run();
                times++;
            }
            rounds[round] = (System.nanoTime() - start) / 1e6 / times / items;
        }
        double[] settled = Arrays.copyOfRange(rounds, 2, rounds.length);
        Arrays.sort(settled);
        return settled[settled.length / 2];
    }
}
