package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.NamedFiles;
import greyground.app.gather.GatherWork;
import greyground.finding.Findings;
import greyground.quantity.Lengths;
import greyground.quantity.Size;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Gathers films on sheets. */
@Command(
        name = "gather",
        sortOptions = false,
        customSynopsis = "greyground gather FILM.pdf... --sheet=SIZE --out=SHEET.pdf [OPTION...]",
        description = {
            "Lays finished films out on one sheet of film, pixel by pixel as they are, each with its marks and its number, with lines"
                    + " to cut along and their plans behind.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground gather harbour.pdf leaf.pdf jug.pdf --sheet A3 --out sheet.pdf",
            "      three films on an upright A3 sheet",
            "  greyground gather films/*.pdf --sheet 420x297mm --most-sheets 3 --out sheets.pdf",
            "      as many as there are, on three sheets at the most"
        })
final class GatherCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILM.pdf", arity = "1..*", description = "films made by this program, of one resolution")
    private List<Path> films = List.of();

    @Option(
            names = "--sheet",
            paramLabel = "SIZE",
            required = true,
            description = "the sheet of film, such as 420x297mm or A3; its printer's margin stays clear")
    private String sheet = "";

    @Option(names = "--out", paramLabel = "SHEET.pdf", required = true, description = "the sheet to write")
    private Path out = Path.of("");

    @Option(
            names = "--gap",
            paramLabel = "LENGTH",
            description = "from film to film, 2 to 50 mm, the line to cut along in its middle (usual: 4mm)")
    private String gap = "4mm";

    @Option(
            names = "--most-sheets",
            paramLabel = "N",
            description = "sheets that the films may take, each a page (usual: 1)")
    private int mostSheets = 1;

    @Option(
            names = "--upright",
            description =
                    "turn none (usual: a quarter turn where it saves film and the film allows it; a screen of lines, a test"
                            + " plate and a printer of two scales don't)")
    private boolean upright;

    @Mixin
    Terminal terminal;

    GatherCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        NamedFiles named = new NamedFiles();
        films.forEach(film -> named.reads("film", film));
        named.writes("sheet", out, NamedFiles.Content.FILM);
        GatherWork.Order order = new GatherWork.Order(
                films, Size.parse("sheet", sheet), Lengths.parseMillimetres("gap", gap), mostSheets, !upright);
        Findings findings = terminal.watching(progress -> Greyground.gather(order, out, progress::show));
        terminal.tell(Map.of("sheet", out), findings);
        return CommandLine.done();
    }
}
