package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.plates.PlatesWork;
import greyground.app.recipe.ArtSource;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.quantity.Unit;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes the films of several plates for one print. */
@Command(
        name = "plates",
        sortOptions = false,
        customSynopsis = "greyground plates ART... --inks=INKS.json --out=SET.pdf [OPTION...]",
        description = {
            "Makes one PDF with a film for each of several plates that are printed over one another, an ink each: all of one"
                    + " size, their marks at the same places, each with a grain of its own, and the order at the press.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground plates yellow.tif blue.tif key.tif --inks inks.json --plate 200x250mm --out set.pdf",
            "      a picture drawn for each plate, in the order of printing, pale to dark",
            "  greyground plates layers.tif --inks inks.json --plate 200x250mm --out set.pdf",
            "      the same from one file that holds a picture for each plate",
            "  greyground plates harbour.tif --by tone --inks greys.json --plate 200x250mm --out set.pdf",
            "      two plates of one hue that share the tones, a pale and a dark one",
            "  greyground plates harbour.tif --by colour --inks dusk.json --plate 200x250mm --out set.pdf",
            "      a plate for each of two to four inks, which share the picture's colours",
            "",
            "The inks file names the inks in the order of printing, each with its colour on paper: docs/plates.md."
        })
final class PlatesCommand implements Callable<Integer> {
    @Parameters(paramLabel = "ART", arity = "1..*", description = "art as for 'positive'")
    private List<Path> arts = List.of();

    @Option(
            names = "--inks",
            paramLabel = "INKS.json",
            required = true,
            description = "the inks in the order of printing, or a set that carries them")
    private Path inks = Path.of("");

    @Option(names = "--out", paramLabel = "SET.pdf", required = true, description = "the set of films to write")
    private Path out = Path.of("");

    @Option(
            names = "--by",
            paramLabel = "WAY",
            description =
                    "how the picture is parted: hand, each plate has art of its own (usual), tone, two plates of one hue"
                            + " share it, or colour, two to four inks share its colours")
    private String by = PlatesWork.By.HAND.word();

    @Option(
            names = "--key",
            paramLabel = "PERCENT",
            description =
                    "with --by colour and four inks: how much of the grey that it could the darkest ink carries, 0 to 100%%"
                            + " (usual 60%%)")
    private @Nullable String key;

    @Option(
            names = "--separations",
            paramLabel = "FOLDER",
            description = "keep the grey art of each plate here as TIFF, to look at or to work on")
    private @Nullable Path separations;

    @Mixin
    JobChoice choice = new JobChoice();

    @Mixin
    Terminal terminal;

    PlatesCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        NamedFiles named = choice.named().reads("inks", inks);
        arts.forEach(art -> named.reads("art", art));
        named.writes("set", out, NamedFiles.Content.FILM);
        PlatesWork.Order order = new PlatesWork.Order(
                arts,
                PlatesWork.By.named(by),
                KeptFiles.inks(inks),
                Optional.ofNullable(separations),
                Optional.ofNullable(key).map(text -> Unit.PERCENT.parse("--key", text)));
        Workshop shop = choice.workshop();
        Job job;
        try (ArtSource art = Greyground.art(arts.get(0))) {
            job = choice.job(
                    choice.jobFile().map(KeptFiles::job), art::source, shop, LocalDate.now(ZoneId.systemDefault()));
        }
        Findings findings = terminal.watching(progress -> Greyground.plates(order, job, shop, out, progress::show));
        terminal.tell(Map.of("set", out), findings);
        return CommandLine.done();
    }
}
