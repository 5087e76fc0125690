package greyground.desk.model;

import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.function.UnaryOperator;

/**
 * Everything that decides the film, at one moment. Immutable.
 *
 * @param art the picture's file
 * @param source what is known of it
 * @param job what to make of it
 * @param workshop where
 */
public record BenchState(Path art, SourceArt source, Job job, Workshop workshop) {
    /** A new picture: a job as usual, on a plate of the picture's proportions. */
    public static BenchState fresh(Path art, SourceArt source, Workshop workshop, String today) {
        Job job = JobWords.fresh(source, workshop, today);
        Job lying = source.width() > source.height()
                ? FilmFields.PLATE.with(job, job.plate().turned())
                : job;
        return new BenchState(art, source, lying, workshop);
    }

    public BenchState with(UnaryOperator<Job> change) {
        return new BenchState(art, source, change.apply(job), workshop);
    }

    /** The same with a setting as it is typed, where need be as the file that is named holds it. */
    public BenchState told(JobField<?> field, String words) {
        return with(job -> field.told(job, JobWords.held(field, words)));
    }

    /** Whether both make the same film in the same workshop, whatever was written down beside. */
    public boolean makesTheSameAs(BenchState other) {
        return art.equals(other.art)
                && workshop.equals(other.workshop)
                && BenchNotes.without(job).equals(BenchNotes.without(other.job));
    }

    public BenchState in(Workshop other) {
        return new BenchState(art, source, job, other);
    }

    /** The same picture under another job; what the job says of the picture's name gives way to this picture's. */
    public BenchState under(Job other) {
        return new BenchState(art, source, source.under(other), workshop);
    }
}
