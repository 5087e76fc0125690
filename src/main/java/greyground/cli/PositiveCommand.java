package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.PositiveOutcome;
import greyground.film.job.Job;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prepares a positive. */
@Command(
        name = "positive",
        sortOptions = false,
        customSynopsis = "greyground positive ART --out=FILM.pdf [OPTION...]",
        description = {"Makes a film PDF at the plate's true size from ART, with marks, step wedge and plan.", ""},
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground positive harbour.tif --plate 200x250mm --out harbour.pdf",
            "      the usual: etched film, 180 µm grain at the workshop's resolution, ink side down",
            "  greyground positive harbour.tif --plate 8x10in --ruling 60 --angle 45 \\",
            "             --out harbour.pdf --tiff bits.tif",
            "      a halftone of 60 lines/cm; the same bits as a TIFF for a bureau",
            "  greyground positive book.tif --page 3 --crop 10%%,5%%,60%%,70%% --rotate 90 --white 82%% --black 3%% \\",
            "             --plate 100x150mm --out leaf.pdf",
            "      part of the third picture in a file, turned, with its paper and ink points given",
            "  greyground positive harbour.tif --process photogravure --plate 200x250mm --out harbour.pdf",
            "      a continuous-tone film, and the aquatint screen film as its second page",
            "  greyground positive harbour.tif --job harbour.pdf --workshop shop.json --out again.pdf",
            "      the same film again, by the job that an earlier film carries"
        })
final class PositiveCommand implements Callable<Integer> {
    @Parameters(paramLabel = "ART", description = "TIFF, PNG, JPEG, WebP, PSD, BMP or PNM")
    private Path art = Path.of("");

    @Option(names = "--out", paramLabel = "FILM.pdf", required = true, description = "the film to write")
    private Path film = Path.of("");

    @Option(names = "--tiff", paramLabel = "FILM.tif", description = "write the same bits as a TIFF too")
    private @Nullable Path tiff;

    @Option(
            names = "--plan-out",
            paramLabel = "PLAN.pdf",
            description = "write the plan as a PDF of its own, for paper")
    private @Nullable Path plan;

    @Mixin
    JobChoice choice = new JobChoice();

    @Mixin
    Terminal terminal;

    PositiveCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        Optional<Path> newJob = choice.jobFile().filter(Predicate.not(Files::exists));
        choice.named()
                .reads("art", art)
                .writes("film", film, NamedFiles.Content.FILM)
                .writes("TIFF", tiff, NamedFiles.Content.TIFF)
                .writes("plan", plan, NamedFiles.Content.FILM)
                .writes("job", newJob.orElse(null), NamedFiles.Content.KEPT);
        Optional<Job> base =
                newJob.isPresent() ? Optional.empty() : choice.jobFile().map(KeptFiles::job);
        Workshop shop = choice.workshop();
        ArtSource source = Greyground.art(art);
        Job wanted = choice.job(base, source::source, shop, LocalDate.now(ZoneId.systemDefault()));
        PositiveOutcome outcome = terminal.watching(
                progress -> Greyground.positive(source, wanted, shop, film, Optional.ofNullable(tiff), progress::show));
        base.ifPresent(outcome::reusing);
        if (newJob.isPresent()) {
            KeptFiles.saveJob(newJob.get(), outcome.job());
        }
        Map<String, Path> files = new LinkedHashMap<>();
        files.put("film", film);
        if (tiff != null) {
            files.put("tiff", tiff);
        }
        if (plan != null) {
            Greyground.plan(film).write(plan);
            files.put("planFile", plan);
        }
        // As JSON "job" is the job itself.
        choice.jobFile().ifPresent(file -> files.put("jobFile", file));
        terminal.tell(files, outcome.findings());
        return CommandLine.done();
    }
}
