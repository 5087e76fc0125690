package greyground.cli;

import greyground.app.Greyground;
import greyground.app.chart.WedgeWork;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.plates.InkTestWork;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
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
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the film of a test plate. */
@Command(
        name = "wedge",
        sortOptions = false,
        customSynopsis = "greyground wedge --out=TEST.pdf [OPTION...]",
        description = {
            "Makes the film PDF of a test plate: a wedge of coverages at shuffled places, targets of known size, and codes by"
                    + " which a scan of its proof is recognised.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground wedge --plate 150x200mm --out test.pdf",
            "      wedge and targets, in the usual grain at the workshop's resolution",
            "  greyground wedge --kind strip --plate 150x40mm --ruling 60 --out strip.pdf",
            "      the wedge only, on an offcut, in a halftone of 60 lines/cm",
            "  greyground wedge --kind exposure --plate 100x150mm --workshop shop.json --out times.pdf",
            "      strips to cover one after the other round the workshop's exposure, with their times",
            "  greyground wedge --inks inks.json --out colours.pdf",
            "      a test plate for each ink of a set, to be printed over one another"
        })
final class WedgeCommand implements Callable<Integer> {
    @Option(names = "--out", paramLabel = "TEST.pdf", required = true, description = "the film to write")
    private Path film = Path.of("");

    @Option(
            names = "--plan-out",
            paramLabel = "PLAN.pdf",
            description = "write the plan as a PDF of its own, for paper")
    private @Nullable Path plan;

    @Option(
            names = "--kind",
            paramLabel = "WORD",
            description =
                    "full (usual: wedge and targets), strip (wedge only), exposure (strips of rising exposure) or check (tones that"
                            + " should print at stated lightness)")
    @Nullable
    String kind;

    @Option(
            names = "--inks",
            paramLabel = "INKS.json",
            description =
                    "make a test plate for each ink of a set, to be printed over one another on one sheet, by which 'read"
                            + " --inks' learns their colours")
    private @Nullable Path inks;

    @Mixin
    CommandSpec options = JobOptions.testPlate();

    @Option(
            names = "--workshop",
            paramLabel = "FILE",
            description = "the workshop's own numbers, or a film PDF that carries them (usual: documented assumptions)")
    private @Nullable Path workshop;

    @Mixin
    Terminal terminal;

    @Spec
    CommandSpec command = CommandSpec.create();

    WedgeCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        new NamedFiles()
                .reads("workshop", workshop)
                .reads("inks", inks)
                .writes("film", film, NamedFiles.Content.FILM)
                .writes("plan", plan, NamedFiles.Content.FILM);
        Workshop shop = workshop != null ? KeptFiles.workshop(workshop) : Workshop.assumed();
        Map<String, String> given = JobOptions.given(command.commandLine().getParseResult());
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        Findings findings;
        if (inks != null) {
            if (plan != null) {
                throw Refusal.use(
                        "--plan-out writes the plan of one plate; the films of inks' test plates carry the plans of"
                                + " all behind them: leave it out");
            }
            InkTestWork test = Greyground.inkTest(given, KeptFiles.inks(inks), shop, today);
            findings = terminal.watching(progress -> test.make(film, progress::show));
        } else {
            WedgeWork work = Greyground.testPlate(given, Optional.empty(), shop, today);
            findings = terminal.watching(progress -> work.make(film, progress::show));
        }
        Map<String, Path> files = new LinkedHashMap<>(Map.of("film", film));
        if (plan != null) {
            Greyground.plan(film).write(plan);
            files.put("planFile", plan);
        }
        terminal.tell(files, findings);
        return CommandLine.done();
    }
}
