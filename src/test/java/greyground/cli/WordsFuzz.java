package greyground.cli;

import greyground.app.bite.BiteWords;
import greyground.app.chart.WedgeWork;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.app.teach.ReadWords;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.fuzz.Hostile;
import greyground.workshop.Workshop;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * Command lines, one word to a line: parsed, and the words turned into a job, a reading, a bath and a test plate. No command is carried
 * out, so that no mutated name is ever written to.
 */
public final class WordsFuzz {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 31);
    private static final String TODAY = DAY.toString();
    private static final SourceArt ART = new SourceArt("art.tif", "art", "", 6000, 8000);

    private WordsFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("words", WordsFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        String[] words = new String(bytes, StandardCharsets.UTF_8).split("\n", -1);
        PrintStream quiet = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        ParseResult parsed;
        try {
            parsed = CommandLine.parser("", quiet, quiet, file -> {}).parseArgs(words);
        } catch (ParameterException wrongUse) {
            return;
        }
        while (parsed.hasSubcommand()) {
            parsed = parsed.subcommand();
        }
        Map<String, String> given = JobOptions.given(parsed);
        Hostile.answered(() -> job(new JobWords(given)));
        Hostile.answered(() -> reading(new ReadWords(given)));
        Hostile.answered(() -> WedgeWork.of(given, Optional.empty(), Workshop.assumed(), TODAY));
        Hostile.answered(() -> new BiteWords(given).bath(Workshop.assumed(), DAY));
    }

    private static void job(JobWords words) {
        Job job = words.job(Optional.empty(), ART, Workshop.assumed(), TODAY);
        if (!JobFile.text(JobFile.read(JobFile.text(job))).equals(JobFile.text(job))) {
            throw new AssertionError("a job that its own file does not give back: " + JobFile.text(job));
        }
    }

    private static void reading(ReadWords words) {
        words.biteMinutes();
        words.depth();
        words.paperLightness();
        words.flareShare();
        words.corners();
        words.date(DAY);
    }
}
