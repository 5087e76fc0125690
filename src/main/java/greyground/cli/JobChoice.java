package greyground.cli;

import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.film.job.Job;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which job and which workshop: what every command that begins with art is told alike. */
final class JobChoice {
    @Option(
            names = "--workshop",
            paramLabel = "FILE",
            description =
                    "the workshop's own numbers, or a film PDF that carries them (usual: those of the film that is given, itself or as --job, else documented assumptions)")
    private @Nullable Path workshop;

    @Option(
            names = "--job",
            paramLabel = "FILE",
            description =
                    "for ART: reuse this job, or that of a film PDF; 'positive' writes a file that does not exist yet")
    private @Nullable Path job;

    @Mixin
    CommandSpec options = JobOptions.all();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command = CommandSpec.create();

    Map<String, String> given() {
        return JobOptions.given(command.commandLine().getParseResult());
    }

    Optional<Path> jobFile() {
        return Optional.ofNullable(job);
    }

    NamedFiles named() {
        NamedFiles named = new NamedFiles()
                .reads("workshop", workshop)
                .reads("job", jobFile().filter(Files::exists).orElse(null));
        JobOptions.files(given()).forEach(named::reads);
        return named;
    }

    Optional<Workshop> namedWorkshop() {
        return Optional.ofNullable(workshop).map(KeptFiles::workshop);
    }

    /** The workshop named; else the one inside the film whose job is reused; else the assumptions. */
    Workshop workshop() {
        return namedWorkshop()
                .or(() -> jobFile().filter(KeptFiles::isPdf).map(KeptFiles::workshop))
                .orElseGet(Workshop::assumed);
    }

    /**
     * The job these options describe.
     *
     * @param base reused
     * @param sources what is known of each page of the art
     */
    Job job(Optional<Job> base, IntFunction<SourceArt> sources, Workshop shop, LocalDate today) {
        JobWords words = new JobWords(given());
        return words.job(base, sources.apply(words.page(base)), shop, today.toString());
    }

    /** Refuses whatever would change the job of a film that is prepared already. */
    void checkUnchanged(Path film) {
        TreeSet<String> changes = new TreeSet<>(given().keySet());
        changes.retainAll(JobOptions.names());
        if (job != null) {
            changes.add("job");
        }
        if (!changes.isEmpty()) {
            throw Refusal.use("--" + changes.first() + " can't change a film that is already prepared: leave it out,"
                    + " or give the art instead of " + film.getFileName());
        }
    }
}
