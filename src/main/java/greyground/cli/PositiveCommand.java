package greyground.cli;

import greyground.app.Greyground;
import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmSeries;
import greyground.app.recipe.PositiveOutcome;
import greyground.film.job.Job;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
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
        customSynopsis = {
            "greyground positive ART --out=FILM.pdf [OPTION...]",
            "greyground positive ART... --out-folder=FOLDER [OPTION...]"
        },
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
            "      the same film again, by the job that an earlier film carries",
            "  greyground positive scans/*.tif --plate 100x150mm --out-folder films",
            "      a film of each picture, all by one job; one that fails does not stop the others"
        })
final class PositiveCommand implements Callable<Integer> {
    @Parameters(paramLabel = "ART", arity = "1..*", description = "TIFF, PNG, JPEG, WebP, PSD, BMP or PNM")
    private List<Path> arts = List.of();

    @Option(names = "--out", paramLabel = "FILM.pdf", description = "the film to write")
    private @Nullable Path film;

    @Option(
            names = "--out-folder",
            paramLabel = "FOLDER",
            description = "a folder for films of all pictures given, each under its picture's name")
    private @Nullable Path folder;

    @Option(names = "--replace", description = "let films that are in --out-folder already give way")
    private boolean replace;

    @Option(names = "--tiff", paramLabel = "FILM.tif", description = "write the same bits as a TIFF too")
    private @Nullable Path tiff;

    @Option(
            names = "--plan-out",
            paramLabel = "PLAN.pdf",
            description = "write the plan as a PDF of its own, for paper")
    private @Nullable Path plan;

    @Option(
            names = "--spots-out",
            paramLabel = "FILE.json",
            description = "write the dust and scratches found, to choose from and give back as --spots")
    private @Nullable Path spots;

    @Option(
            names = "--spots-picture",
            paramLabel = "FILE.png",
            description = "draw ART with each of them ringed and numbered")
    private @Nullable Path spotsPicture;

    @Mixin
    JobChoice choice = new JobChoice();

    @Mixin
    Terminal terminal;

    PositiveCommand(PrintStream out, PrintStream err) {
        terminal = new Terminal(out, err);
    }

    @Override
    public Integer call() throws IOException {
        if (folder != null) {
            return series(folder);
        }
        if (film == null) {
            throw Refusal.use("no film is named: add --out with a name for it, such as --out film.pdf"
                    + (arts.size() > 1 ? ", or --out-folder with a folder for several" : ""));
        }
        if (arts.size() > 1) {
            throw Refusal.use(arts.size() + " pictures are given for one film, --out " + film
                    + ": give one, or --out-folder with a folder for their films in place of --out");
        }
        if (replace) {
            throw Refusal.use("--replace belongs to --out-folder: leave it out");
        }
        return one(arts.get(0), film);
    }

    /** A film of each picture. A new job would be that of any of them, and what goes to one file would be written over and over. */
    private int series(Path into) throws IOException {
        for (Map.Entry<String, Optional<Path>> other : Map.of(
                        "--out", Optional.ofNullable(film),
                        "--tiff", Optional.ofNullable(tiff),
                        "--plan-out", Optional.ofNullable(plan),
                        "--spots-out", Optional.ofNullable(spots),
                        "--spots-picture", Optional.ofNullable(spotsPicture),
                        "--job with a file that does not exist yet",
                                choice.jobFile().filter(Predicate.not(Files::exists)))
                .entrySet()) {
            if (other.getValue().isPresent()) {
                throw Refusal.use(
                        other.getKey() + " names one file, " + other.getValue().get()
                                + ", and --out-folder takes films of any number of pictures: leave one of them out");
            }
        }
        Optional<Job> base = choice.jobFile().map(KeptFiles::job);
        Workshop shop = choice.workshop();
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        FilmSeries films = Greyground.series(arts, into, replace, choice.named());
        List<FilmSeries.Made> all = terminal.watching(progress -> films.make(
                source -> choice.job(base, source::source, shop, today),
                shop,
                made -> {
                    progress.clear();
                    terminal.tell(made);
                },
                progress::show));
        long failed = all.stream().filter(made -> made.fault().isPresent()).count();
        terminal.tellAll(all, failed);
        return failed == 0 && all.size() == arts.size() ? CommandLine.done() : CommandLine.FAILED;
    }

    private int one(Path art, Path out) throws IOException {
        Optional<Path> newJob = choice.jobFile().filter(Predicate.not(Files::exists));
        choice.named()
                .reads("art", art)
                .writes("film", out, NamedFiles.Content.FILM)
                .writes("TIFF", tiff, NamedFiles.Content.TIFF)
                .writes("plan", plan, NamedFiles.Content.FILM)
                .writes("spots", spots, NamedFiles.Content.KEPT)
                .writes("spots picture", spotsPicture, NamedFiles.Content.PICTURE)
                .writes("job", newJob.orElse(null), NamedFiles.Content.KEPT);
        Optional<Job> base =
                newJob.isPresent() ? Optional.empty() : choice.jobFile().map(KeptFiles::job);
        Workshop shop = choice.workshop();
        ArtSource source = Greyground.art(art);
        Job wanted = choice.job(base, source::source, shop, LocalDate.now(ZoneId.systemDefault()));
        PositiveOutcome outcome = terminal.watching(
                progress -> Greyground.positive(source, wanted, shop, out, Optional.ofNullable(tiff), progress::show));
        base.ifPresent(outcome::reusing);
        if (newJob.isPresent()) {
            KeptFiles.saveJob(newJob.get(), outcome.job());
        }
        Map<String, Path> files = new LinkedHashMap<>();
        files.put("film", out);
        if (tiff != null) {
            files.put("tiff", tiff);
        }
        if (plan != null) {
            Greyground.plan(out).write(plan);
            files.put("planFile", plan);
        }
        if (spots != null || spotsPicture != null) {
            Greyground.spots(source, outcome.job(), Optional.ofNullable(spots), Optional.ofNullable(spotsPicture));
            Optional.ofNullable(spots).ifPresent(file -> files.put("spotsFile", file));
            Optional.ofNullable(spotsPicture).ifPresent(file -> files.put("spotsPicture", file));
        }
        // As JSON "job" is the job itself.
        choice.jobFile().ifPresent(file -> files.put("jobFile", file));
        terminal.tell(files, outcome.findings());
        return CommandLine.done();
    }
}
