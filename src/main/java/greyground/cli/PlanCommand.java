package greyground.cli;

import greyground.app.Greyground;
import greyground.app.bite.BenchAdvice;
import greyground.app.bite.BiteWords;
import greyground.app.bite.PlannedPlate;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.ArtSource;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the exposure and bite plan of a film or of art, or the exposure or bite asked for. */
@Command(
        name = "plan",
        sortOptions = false,
        customSynopsis = "greyground plan FILM.pdf|ART [OPTION...]",
        description = {
            "Prints the exposure and bite plan of a film PDF, or of ART whose film is not made yet; or, asked for a depth, a"
                    + " darkest tone, a second bite, the split of two exposures or what a scale says, the answer to that.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground plan harbour.pdf",
            "      the whole plan that the film carries",
            "  greyground plan harbour.pdf --plan-out card.pdf",
            "      the same on paper, as a PDF of its own: the bench card, then the steps",
            "  greyground plan harbour.tif --plate 200x250mm --process photogravure --search-exposure",
            "      how to share the light between screen and image, before the films are made",
            "  greyground plan harbour.pdf --darkest 24 --bath-temperature 18C --bath-copper 20g/L",
            "      minutes in today's bath for a darkest tone of L* 24, and what 20 %% less or more does",
            "  greyground plan harbour.pdf --depth 30um --bitten 12min --proof-density 1.1",
            "      how much longer after a proof",
            "  greyground plan harbour.pdf --bitten 8min --measured first.csv \\",
            "             --bitten 14min --measured second.csv",
            "      the bite log: how fast the bath bites, and what further minutes would do",
            "  greyground plan harbour.pdf --weighed 9.4g --proof-depth 38um",
            "      what the scale says of the bitten plate, and the copper in the bath now"
        },
        mixinStandardHelpOptions = false)
final class PlanCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "FILM.pdf|ART",
            description = "a film made by 'greyground positive', or art with the options that describe its job")
    private Path file = Path.of("");

    /** What asks for a bite; {@code app.bite} reads the words. */
    @Mixin
    CommandSpec bite = JobOptions.of(
            JobOptions.word("--depth", "LENGTH", "bite to this depth, such as 30um"),
            JobOptions.word("--darkest", "L*", "bite until the darkest tone prints so, such as 24"),
            JobOptions.repeated(
                    "--bitten",
                    String.class,
                    "TIME",
                    "bitten so far, such as 12min; plans the rest. Once for each --measured, in order"),
            JobOptions.repeated(
                    "--measured",
                    Path.class,
                    "FILE",
                    "tones read on the proof after that bite: comma-separated coverage and L* or density, or what"
                            + " 'read --json' printed; shows what further minutes would do"),
            JobOptions.word(
                    "--proof-density", "D", "density of a deep solid on the proof, paper included, such as 1.1"),
            JobOptions.word("--proof-depth", "LENGTH", "depth measured so far, such as 18um"),
            JobOptions.word(
                    "--weighed",
                    "GRAMS",
                    "what the bare, dry plate lost in the bath, such as 9.4g; compares it with what was computed, at"
                            + " --proof-depth if that is given too"),
            JobOptions.word("--bath-temperature", "T", "the bath's, now, such as 18C (usual: the workshop's)"),
            JobOptions.word("--bath-copper", "G", "copper in the bath now, such as 20g/L (usual: the workshop's)"));

    @Option(
            names = "--search-exposure",
            description = "search the split of screen and image exposure, and predict bands (photogravure)")
    private boolean searchExposure;

    @Option(
            names = "--plan-out",
            paramLabel = "PLAN.pdf",
            description = "write the whole plan as a PDF of its own, for paper")
    private @Nullable Path pages;

    @Option(
            names = "--record",
            paramLabel = "PLATE.json",
            description =
                    "write what is told of bite, proof and weight into the plate's record; see 'greyground record --help'")
    private @Nullable Path record;

    @Mixin
    JobChoice choice = new JobChoice();

    @Mixin
    Terminal terminal;

    PlanCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        choice.named()
                .reads(KeptFiles.isPdf(file) ? "film" : "art", file)
                .writes("plan", pages, NamedFiles.Content.FILM)
                .writes("record", record, NamedFiles.Content.KEPT);
        BiteWords words = new BiteWords(choice.given());
        if (pages != null && (searchExposure || words.asked() || words.logAsked())) {
            throw Refusal.use(
                    "--plan-out takes the whole plan, not the answer to a question: leave one of the two out");
        }
        if (record != null && !KeptFiles.isPdf(file)) {
            throw Refusal.use("--record belongs to a plate whose film is made: give the film PDF instead of art");
        }
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        BenchAdvice advice = terminal.watching(progress -> {
            PlannedPlate plate = KeptFiles.isPdf(file) ? film() : art(today, new Share(progress, 0, 0.4));
            return Greyground.advice(plate, words, searchExposure, today, new Share(progress, 0.4, 1)::show);
        });
        if (record != null) {
            Greyground.record(record, file, words, today);
        }
        if (pages != null) {
            advice.plate().write(pages);
            terminal.tell(Map.of("planFile", pages), new Findings());
        } else {
            terminal.print(advice::text, advice::json);
        }
        return CommandLine.done();
    }

    /** One stretch of the work, on the terminal's line. */
    private record Share(TerminalProgress progress, double from, double to) {
        void show(double fraction) {
            progress.show(from + (to - from) * fraction);
        }
    }

    private PlannedPlate film() {
        choice.checkUnchanged(file);
        PlannedPlate plate = Greyground.plan(file);
        return choice.namedWorkshop().map(plate::in).orElse(plate);
    }

    private PlannedPlate art(LocalDate today, Share progress) throws IOException {
        Workshop shop = choice.workshop();
        ArtSource art = Greyground.art(file);
        Job wanted = choice.job(choice.jobFile().map(KeptFiles::job), art::source, shop, today);
        return Greyground.plan(art, wanted, shop, progress::show);
    }
}
