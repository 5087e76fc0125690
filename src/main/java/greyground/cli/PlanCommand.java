package greyground.cli;

import greyground.app.BenchAdvice;
import greyground.app.BiteWords;
import greyground.app.FilmPreparation;
import greyground.app.JobWords;
import greyground.app.KeptFiles;
import greyground.app.PlannedPlate;
import greyground.film.Job;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
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
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the exposure and bite plan of a film or of art, or the exposure or bite asked for. */
@Command(
        name = "plan",
        sortOptions = false,
        description = {
            "Prints the exposure and bite plan of a film PDF, or of ART whose film is not made yet; or, asked for a depth, a"
                    + " darkest tone, a second bite or the split of two exposures, the answer to that.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground plan harbour.pdf",
            "      the whole plan that the film carries",
            "  greyground plan harbour.tif --plate 200x250mm --process photogravure --search-exposure",
            "      how to share the light between screen and image, before the films are made",
            "  greyground plan harbour.pdf --darkest 24 --bath-temperature 18C --bath-copper 20g/L",
            "      minutes in today's bath for a darkest tone of L* 24, and what 20 %% less or more does",
            "  greyground plan harbour.pdf --depth 30um --bitten 12min --proof-density 1.1",
            "      how much longer after a proof"
        },
        mixinStandardHelpOptions = false)
final class PlanCommand implements Callable<Integer> {
    private final PrintStream out;
    private final PrintStream err;

    @Parameters(
            paramLabel = "FILM.pdf|ART",
            description = "a film made by 'greyground positive', or art with the options that describe its job")
    private Path file = Path.of("");

    @Mixin
    BiteOptions bite = new BiteOptions();

    @Option(
            names = "--search-exposure",
            description = "search the split of screen and image exposure, and foretell bands (photogravure)")
    private boolean searchExposure;

    @Option(
            names = "--workshop",
            paramLabel = "FILE",
            description = "the workshop's own numbers (usual: those of the film, else documented assumptions)")
    private @Nullable Path workshop;

    @Option(names = "--job", paramLabel = "FILE", description = "for ART: reuse this job, or that of a film PDF")
    private @Nullable Path job;

    @Mixin
    JobOptions options = new JobOptions();

    @Spec
    CommandSpec command = CommandSpec.create();

    @Option(names = "--json", description = "print JSON instead of text")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    boolean help;

    PlanCommand(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    @Override
    public Integer call() throws Exception {
        Map<String, String> given = JobOptions.given(command.commandLine().getParseResult());
        BiteWords words = new BiteWords(given);
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        TerminalProgress progress = new TerminalProgress(err);
        BenchAdvice advice;
        try {
            PlannedPlate plate =
                    KeptFiles.isPdf(file) ? film() : art(new JobWords(given), today, new Share(progress, 0, 0.4));
            advice = BenchAdvice.of(plate, words, searchExposure, today, new Share(progress, 0.4, 1)::show);
        } finally {
            progress.clear();
        }
        out.print(json ? advice.json() : advice.text());
        return CommandLine.done();
    }

    /** One stretch of the work, on the terminal's line. */
    private record Share(TerminalProgress progress, double from, double to) {
        void show(double fraction) {
            progress.show(from + (to - from) * fraction);
        }
    }

    private PlannedPlate film() {
        for (OptionSpec option : command.commandLine().getParseResult().matchedOptions()) {
            if (option.longestName().equals("--job") || JobOptions.describes(option)) {
                throw Refusal.use(option.longestName()
                        + " is given with a film, which carries its own job: leave it out," + " or give the art");
            }
        }
        PlannedPlate plate = PlannedPlate.ofFilm(file);
        return workshop == null ? plate : plate.in(KeptFiles.workshop(workshop));
    }

    private PlannedPlate art(JobWords words, LocalDate today, Share progress) throws Exception {
        Optional<Job> base = job == null ? Optional.empty() : Optional.of(KeptFiles.job(job));
        Workshop shop = shop();
        FilmPreparation art = FilmPreparation.open(file);
        Job wanted = words.job(
                base,
                art.source(words.page(base)),
                shop.filmPrinter().resolutionDpi().value(),
                today.toString());
        return PlannedPlate.ofArt(art, wanted, shop, progress::show);
    }

    /** The workshop named; else the one inside the film whose job is reused; else the assumptions. */
    private Workshop shop() {
        if (workshop != null) {
            return KeptFiles.workshop(workshop);
        }
        Path reused = job;
        return reused != null && KeptFiles.isPdf(reused) ? KeptFiles.workshop(reused) : Workshop.assumed();
    }
}
