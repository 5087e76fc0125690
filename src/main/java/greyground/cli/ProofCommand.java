package greyground.cli;

import greyground.app.Greyground;
import greyground.app.bite.BiteTimes;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.proof.ProofFiles;
import greyground.app.proof.ProofFindings;
import greyground.app.proof.ProofWork;
import greyground.app.proof.SetProof;
import greyground.app.recipe.ArtSource;
import greyground.app.sight.Stage;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.quantity.Lengths;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows a plate before it is bitten. */
@Command(
        name = "proof",
        sortOptions = false,
        customSynopsis = "greyground proof ART|FILM.pdf [OPTION...]",
        description = {
            "Predicts print, copper and resist from ART, or from a film PDF, before any copper is spent.",
            "Only what is asked for is computed; without a file to write, the report alone is printed.",
            "A set of plates, as 'plates' makes it, is shown as one print in colour.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground proof harbour.pdf --out print.png",
            "      the print that this film will give, at 150 dpi",
            "  greyground proof harbour.tif --plate 200x250mm --out print.png --copper copper.png --at 300dpi",
            "      straight from the art, and the bitten plate in relief",
            "  greyground proof harbour.pdf --loupe 60mm,80mm --loupe-out close.png",
            "      film, resist, copper and print at one place, 60 mm from the left and 80 mm from the top",
            "  greyground proof harbour.pdf --bite 5,10,20,40min --bite-out bites.png",
            "      one sheet with the plate at four bite times",
            "  greyground proof set.pdf --after 2 --register 0.3mm --out state.png",
            "      two plates of a set over one another, the second 0.3 mm out of register",
            "  greyground proof harbour.pdf --diagram tones.pdf --json",
            "      the four-quadrant diagram of tone, and the numbers behind it",
            "",
            "Places count from the plate's top left, as the print reads."
        })
final class ProofCommand implements Callable<Integer> {
    private static final String USUAL_RESOLUTION = "150dpi";
    private static final String USUAL_LOUPE = "2mm";

    /** Share of the work that makes the film ready. */
    private static final double PREPARED = 0.1;

    /** Share of the work before the film is looked through. */
    private static final double CHECKED = 0.9;

    @Parameters(paramLabel = "ART|FILM.pdf", description = "art as for 'positive', or a film PDF made by it")
    private Path source = Path.of("");

    @Option(names = "--out", paramLabel = "PRINT.png", description = "the whole print, as it hangs")
    private @Nullable Path print;

    @Option(names = "--copper", paramLabel = "FILE.png", description = "the whole bitten plate in relief, face up")
    private @Nullable Path copper;

    @Option(names = "--resist", paramLabel = "FILE.png", description = "the whole developed plate, face up")
    private @Nullable Path resist;

    @Option(
            names = "--at",
            paramLabel = "DPI",
            description = "resolution of whole pictures (usual: " + USUAL_RESOLUTION + ")")
    private String at = USUAL_RESOLUTION;

    @Option(
            names = "--loupe",
            paramLabel = "X,Y",
            description =
                    "look closely at this place, such as 60mm,80mm; written beside --out unless --loupe-out says where")
    private @Nullable String loupe;

    @Option(
            names = "--loupe-width",
            paramLabel = "LENGTH",
            description = "how much the loupe shows (usual: " + USUAL_LOUPE + ")")
    private String loupeWidth = USUAL_LOUPE;

    @Option(names = "--loupe-out", paramLabel = "FILE.png", description = "the loupe's picture")
    private @Nullable Path loupeOut;

    @Option(
            names = "--bite",
            paramLabel = "TIMES",
            description =
                    "show the plate at these bite times, such as 5,10,20,40min, about the loupe's place or the middle; written beside --out unless --bite-out says where")
    private @Nullable String bite;

    @Option(names = "--bite-out", paramLabel = "FILE.png", description = "the sheet of bites")
    private @Nullable Path biteOut;

    @Option(
            names = "--diagram",
            paramLabel = "FILE",
            description = "the four-quadrant diagram of tone, as .svg, .png or .pdf")
    private @Nullable Path diagram;

    @Option(
            names = "--after",
            paramLabel = "N",
            description = "of a set: the state when so many plates are printed, in their order")
    private @Nullable Integer after;

    @Option(
            names = "--register",
            paramLabel = "LENGTH",
            description = "of a set: each plate after the first lies so far out of register, each in another direction")
    private @Nullable String register;

    @Mixin
    JobChoice choice = new JobChoice();

    @Mixin
    Terminal terminal;

    ProofCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        double dotsPerInch = Resolution.parse("picture's resolution", at).dotsPerInch();
        if (KeptFiles.isSet(source)) {
            return set(dotsPerInch);
        }
        if (after != null || register != null) {
            throw Refusal.use((after != null ? "--after" : "--register") + " is asked of a set of plates, and "
                    + source.getFileName() + " is none: leave it out, or give the set that 'plates' made");
        }
        double width = Lengths.parseMillimetres("loupe's width", loupeWidth);
        Optional<Offset> place = Optional.ofNullable(loupe).map(words -> Offset.parse("loupe's place", words));
        Optional<BiteTimes> times = Optional.ofNullable(bite).map(BiteTimes::parse);
        ProofFiles files = new ProofFiles(choice.named().reads("art or film", source));
        if (print != null) {
            files.wantWhole(Stage.PRINT, print);
        }
        if (copper != null) {
            files.wantWhole(Stage.COPPER, copper);
        }
        if (resist != null) {
            files.wantWhole(Stage.RESIST, resist);
        }
        if (place.isPresent()) {
            files.wantLoupe(beside("loupe", loupeOut, "--loupe"), place.get(), width);
        } else if (loupeOut != null) {
            throw notAsked("--loupe");
        }
        if (times.isPresent()) {
            files.wantBites(beside("bites", biteOut, "--bite"), times.get(), place);
        } else if (biteOut != null) {
            throw notAsked("--bite");
        }
        if (diagram != null) {
            files.wantDiagram(diagram);
        }
        Findings findings = terminal.watching(progress -> {
            try (ProofWork work = work(progress)) {
                files.write(work, dotsPerInch, fraction -> progress.show(PREPARED + (CHECKED - PREPARED) * fraction));
                return ProofFindings.of(
                        work, work.warnings(fraction -> progress.show(CHECKED + (1 - CHECKED) * fraction)));
            }
        });
        terminal.tell(files.named(), findings);
        return CommandLine.done();
    }

    /** The print of several plates. What is looked at on one plate is asked of its own film. */
    private int set(double dotsPerInch) throws IOException {
        choice.checkUnchanged(source);
        if (print == null || copper != null || resist != null || loupe != null || bite != null || diagram != null) {
            throw Refusal.use(
                    source.getFileName() + " is a set of plates, of which proof writes the print alone: give --out"
                            + " with a name for it and no other file; copper, loupe and bites are asked of one plate's film");
        }
        choice.named().reads("set", source).writes("print", print, NamedFiles.Content.PICTURE);
        SetProof.Order order = new SetProof.Order(
                print,
                dotsPerInch,
                Optional.ofNullable(after),
                register == null ? 0 : Lengths.parseMillimetres("register error", register));
        Findings findings = terminal.watching(
                progress -> Greyground.proofOfSet(source, choice.namedWorkshop(), order, progress::show));
        terminal.tell(Map.of("print", print), findings);
        return CommandLine.done();
    }

    private static Refusal notAsked(String option) {
        return Refusal.use(option + "-out names a file, but " + option + " is not given: add it");
    }

    /** Where a second picture goes: as told, else beside the print, under its name and one word more. */
    private Path beside(String what, @Nullable Path told, String option) {
        if (told != null) {
            return told;
        }
        if (print == null) {
            throw Refusal.use(option + " has nowhere to go: add " + option + "-out FILE.png, or --out");
        }
        String name = String.valueOf(print.getFileName()).replaceFirst("(?i)\\.png$", "");
        return print.resolveSibling(name + "-" + what + ".png");
    }

    private ProofWork work(TerminalProgress progress) throws IOException {
        if (KeptFiles.isPdf(source)) {
            choice.checkUnchanged(source);
            return Greyground.proof(source, choice.namedWorkshop());
        }
        Workshop shop = choice.workshop();
        ArtSource art = Greyground.art(source);
        Job wanted = choice.job(
                choice.jobFile().map(KeptFiles::job), art::source, shop, LocalDate.now(ZoneId.systemDefault()));
        return Greyground.proof(art, wanted, shop, fraction -> progress.show(PREPARED * fraction));
    }
}
