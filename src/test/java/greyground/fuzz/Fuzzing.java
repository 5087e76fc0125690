package greyground.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Fuzzes every way in, two at a time, each in a process of its own with bounded memory and time: arguments SECONDS FOLDER
 * [WAY...]. SECONDS is for all ways together; FOLDER keeps the corpus that grows and, under {@code found}, what broke. Ends with 1 if anything
 * did.
 */
public final class Fuzzing {
    /** Where seeds and past findings lie, a folder for each way in. */
    static final Path KEPT = Path.of("src/test/resources/greyground/fuzz");

    /** By way in: the class, whose branches guide the mutation, and the largest input in bytes. */
    static final Map<String, Way> WAYS = ways();

    private static final String HEAP = "-Xmx512m";
    private static final int MOST_SECONDS_EACH = 10;
    private static final int MOST_RESIDENT_MIB = 1500;
    private static final int MOST_AT_ONCE = 2;
    private static final int LEAST_SECONDS = 20;
    private static final int MOST_FINDINGS = 40;
    private static final Pattern EXECUTIONS = Pattern.compile("stat::number_of_executed_units:\\s*(\\d+)");

    private Fuzzing() {}

    /** One way in. */
    record Way(String className, String watched, int mostBytes) {}

    private static Map<String, Way> ways() {
        Map<String, Way> ways = new LinkedHashMap<>();
        ways.put("art", new Way("greyground.fuzz.ArtFuzz", "greyground.art.**:com.twelvemonkeys.imageio.**", 8_192));
        ways.put(
                "film",
                new Way(
                        "greyground.fuzz.FilmPdfFuzz",
                        "greyground.output.**:greyground.app.**:org.apache.pdfbox.**",
                        49_152));
        ways.put(
                "kept", new Way("greyground.fuzz.KeptTextFuzz", "greyground.**:com.fasterxml.jackson.core.**", 20_480));
        ways.put(
                "tables",
                new Way(
                        "greyground.app.teach.TableFuzz",
                        "greyground.app.**:greyground.chart.**:greyground.fit.**",
                        2_048));
        ways.put("scans", new Way("greyground.fuzz.ScanFuzz", "greyground.scan.**:com.google.zxing.**", 65_536));
        ways.put(
                "words",
                new Way(
                        "greyground.cli.WordsFuzz",
                        "greyground.app.**:greyground.quantity.**:greyground.chart.**:picocli.**",
                        1_024));
        return ways;
    }

    public static void main(String[] arguments) throws Exception {
        int seconds = Integer.parseInt(arguments[0]);
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        List<String> names =
                arguments.length > 2 ? List.of(arguments).subList(2, arguments.length) : List.copyOf(WAYS.keySet());
        Path found = Files.createDirectories(folder.resolve("found"));
        int atOnce = Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors());
        int each = Math.max(1, seconds * atOnce / names.size());
        ExecutorService fuzzers = Executors.newFixedThreadPool(atOnce);
        List<Future<Long>> rounds = names.stream()
                .map(name -> fuzzers.submit(() -> round(name, each, folder, found)))
                .toList();
        long executions = 0;
        for (Future<Long> round : rounds) {
            executions += round.get();
        }
        fuzzers.shutdown();
        long findings = count(found);
        System.out.println("in all: " + executions + " executions, " + findings + " findings"
                + (findings == 0 ? "" : ", kept in " + found));
        System.exit(findings == 0 ? 0 : 1);
    }

    /** A finding ends the fuzzer; it goes on with what it has learnt until the time is used up. */
    private static long round(String name, int seconds, Path folder, Path found) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        long executions = 0;
        int left = seconds;
        do {
            executions += run(name, left, folder, found);
            left = (int) TimeUnit.NANOSECONDS.toSeconds(end - System.nanoTime());
        } while (left > LEAST_SECONDS && count(found) < MOST_FINDINGS);
        return executions;
    }

    private static long run(String name, int seconds, Path folder, Path found) throws Exception {
        Way way = WAYS.get(name);
        Path corpus = Files.createDirectories(folder.resolve(name));
        Path log = Files.createTempFile(folder, name + "-", ".log");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                HEAP,
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                "com.code_intelligence.jazzer.Jazzer",
                "--target_class=" + way.className(),
                "--instrumentation_includes=" + way.watched(),
                "-max_total_time=" + seconds,
                "-max_len=" + way.mostBytes(),
                "-timeout=" + MOST_SECONDS_EACH,
                "-rss_limit_mb=" + MOST_RESIDENT_MIB,
                "-print_final_stats=1",
                "-artifact_prefix=" + found.toAbsolutePath() + "/" + name + "-",
                "--reproducer_path=" + folder.toAbsolutePath(),
                corpus.toString()));
        for (String kind : List.of("seeds", "found")) {
            Path kept = KEPT.resolve(name).resolve(kind);
            if (Files.isDirectory(kept)) {
                command.add(kept.toString());
            }
        }
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        try {
            if (!process.waitFor(seconds + 120L, TimeUnit.SECONDS)) {
                Files.writeString(found.resolve(name + "-hang"), "it did not end\n");
            }
        } finally {
            process.destroyForcibly().waitFor();
        }
        String said = Files.readString(log, java.nio.charset.StandardCharsets.ISO_8859_1);
        long executions = 0;
        for (Matcher matcher = EXECUTIONS.matcher(said); matcher.find(); ) {
            executions += Long.parseLong(matcher.group(1));
        }
        System.out.println(name + ": " + executions + " executions, exit " + process.exitValue() + ", log " + log);
        if (process.exitValue() != 0 && count(found) == 0) {
            Files.writeString(found.resolve(name + "-log"), said);
        }
        return executions;
    }

    private static long count(Path found) throws IOException {
        try (Stream<Path> files = Files.list(found)) {
            return files.count();
        }
    }
}
