package greyground.desk.model;

import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.film.job.Job;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that decides the film, at one moment. Immutable.
 *
 * @param art the picture's file
 * @param source what is known of it
 * @param job what to make of it
 * @param workshop where
 */
public record BenchState(Path art, SourceArt source, Job job, Workshop workshop) {
    private static final List<List<String>> KIN = List.of(List.of("ruling", "angle", "dots"), List.of("grain", "seed"));

    /** A new picture: a job as usual, on a plate of the picture's proportions. */
    public static BenchState fresh(Path art, SourceArt source, Workshop workshop, String today) {
        Job job = new JobWords(Map.of("plate", usualPlate(source))).job(Optional.empty(), source, workshop, today);
        return new BenchState(art, source, job, workshop);
    }

    /** 148 x 210 mm, A5 (ISO 216), on the side that suits the picture: a plate that fits most bevelled presses. */
    private static String usualPlate(SourceArt source) {
        return source.width() > source.height() ? "210x148mm" : "148x210mm";
    }

    /** The same with parts of the job told anew, as {@link JobWords} reads them. */
    public BenchState told(Map<String, String> words) {
        Map<String, String> present = words();
        Map<String, String> told = new HashMap<>(words);
        // What goes with a halftone or a grain is told with it, or it would be as usual again.
        for (List<String> kin : KIN) {
            if (kin.stream().anyMatch(words::containsKey)) {
                kin.stream()
                        .filter(present::containsKey)
                        .forEach(word -> told.putIfAbsent(word, present.getOrDefault(word, "")));
            }
        }
        Job changed = new JobWords(told).job(Optional.of(job), source, workshop, job.date());
        return new BenchState(art, source, changed, workshop);
    }

    /** The job in words. */
    public Map<String, String> words() {
        return JobWords.of(job).given();
    }

    /** Whether both make the same film in the same workshop, whatever was written down beside. */
    public boolean makesTheSameAs(BenchState other) {
        return art.equals(other.art)
                && workshop.equals(other.workshop)
                && BenchNotes.without(job).equals(BenchNotes.without(other.job));
    }

    /** The same plate in another workshop. */
    public BenchState in(Workshop other) {
        return new BenchState(art, source, job, other);
    }

    /** The same picture under another job; what the job says of the picture's name gives way to this picture's. */
    public BenchState under(Job other) {
        Job settled = new JobWords(Map.of()).job(Optional.of(other), source, workshop, other.date());
        return new BenchState(art, source, settled, workshop);
    }
}
