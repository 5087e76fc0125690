package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.record.RecordWords;
import greyground.app.record.RecordWork;
import greyground.states.PlateRecord;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Keeps a plate's record. */
@Command(
        name = "record",
        sortOptions = false,
        customSynopsis = "greyground record PLATE.json [--film=FILM.pdf] [OPTION...]",
        description = {
            "Keeps a plate's record in one file: exposures, bites, proofs, depths, numbers of the edition. Each call adds what is told, in"
                    + " one go; without anything told it shows the record.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground record harbour.json --film harbour.pdf --exposed 60s+90s",
            "      begins the record of the plate that this film was made for",
            "  greyground record harbour.json --bitten 12min --bath-temperature 19C --proof scan.tif",
            "      its first bite, and the proof of its first state",
            "  greyground record harbour.json --printed 1-10/25 --date 2026-03-04 --card card.pdf",
            "      ten prints of the edition, and the card for the drawer"
        })
final class RecordCommand implements Callable<Integer> {
    @Spec
    CommandSpec command = CommandSpec.create();

    @Parameters(paramLabel = "PLATE.json", description = "the record; begun where there is none, or a card to look at")
    private Path file = Path.of("");

    @Option(
            names = "--film",
            paramLabel = "FILM.pdf",
            description = "begin the record with this film's title, plate and plan")
    private @Nullable Path film;

    /** What was done; {@code app.record} reads the words. */
    @Mixin
    CommandSpec done = JobOptions.of(
            JobOptions.word("--title", "TEXT", "begin it without a film, or under another title"),
            JobOptions.word("--date", "DAY", "when it was done, such as 2026-03-04 (usual: today)"),
            JobOptions.word("--exposed", "TIME", "image time, or screen and image time, such as 60s+90s"),
            JobOptions.word("--bitten", "TIME", "this bite alone, such as 12min"),
            JobOptions.word("--bath-temperature", "T", "the bath's, such as 18C"),
            JobOptions.word("--bath-copper", "G", "copper in the bath, such as 20g/L"),
            JobOptions.word("--reworked", "TEXT", "what was done by hand, such as \"burnished the sky\""),
            JobOptions.word("--depth", "LENGTH", "measured depth, such as 38um"),
            JobOptions.word("--weighed", "GRAMS", "what the plate lost in the bath, such as 9.4g"),
            OptionSpec.builder("--proof")
                    .type(Path.class)
                    .arity("0..1")
                    .fallbackValue("")
                    .paramLabel("SCAN")
                    .description("a proof was pulled; the scan's name, length and SHA-256 are kept, not the scan")
                    .build(),
            JobOptions.word(
                    "--proof-density", "D", "density of a deep solid on the proof, paper included, such as 1.1"),
            JobOptions.word("--printed", "N-M/E", "numbers of the edition and its size, such as 1-10/25"),
            JobOptions.word("--note", "TEXT", "anything else worth knowing"),
            JobOptions.word("--strike", "N", "strike entry N out; it stays readable and counts for nothing"));

    @Option(
            names = "--card",
            paramLabel = "CARD.pdf",
            description = "print the record as pages for paper, which carry its file too")
    private @Nullable Path card;

    @Mixin
    Terminal terminal;

    RecordCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        Map<String, String> given = JobOptions.given(command.commandLine().getParseResult());
        NamedFiles named = new NamedFiles().reads("film", film);
        Optional.ofNullable(given.get("proof"))
                .filter(name -> !name.isEmpty())
                .ifPresent(name -> named.reads("scan", Path.of(name)));
        if (KeptFiles.isPdf(file)) {
            named.reads("record", file);
        } else {
            named.writes("record", file, NamedFiles.Content.KEPT);
        }
        named.writes("card", card, NamedFiles.Content.FILM);
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        PlateRecord record = Greyground.record(file, Optional.ofNullable(film), new RecordWords(given), today);
        Map<String, Path> files = new LinkedHashMap<>();
        files.put("record", file);
        if (card != null) {
            Greyground.recordCard(record, today, card);
            files.put("card", card);
        }
        terminal.tell(files, RecordWork.findings(record));
        return CommandLine.done();
    }
}
