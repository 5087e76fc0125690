package greyground.app.recipe;

import greyground.app.files.KeptFiles;
import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.job.PlacingFields;
import greyground.quantity.PaperShrink;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A job in the words a person gives, such as plate "200x250mm" and grain "180um"; each one left out keeps what the job file,
 * or habit, says.
 *
 * @param given words by the names of {@link JobFields}; other names are ignored
 */
public record JobWords(Map<String, String> given) {
    public JobWords {
        given = Map.copyOf(given);
    }

    /** The page asked for, or that of the job reused, or the first. */
    public int page(Optional<Job> base) {
        String page = given.get(ArtFields.PAGE.name());
        return page == null
                ? base.map(job -> job.art().page()).orElse(1)
                : ArtFields.PAGE.parse(page, Kind.Art.UNKNOWN).intValue();
    }

    /**
     * The job these words describe.
     *
     * @param base from a job file, if one is reused
     * @param workshop gives the film printer's resolution and the paper's shrinkage to a job that says neither
     * @param today for a new job without a date
     */
    public Job job(Optional<Job> base, SourceArt art, Workshop workshop, String today) {
        if (base.isEmpty() && !given.containsKey(FilmFields.PLATE.name())) {
            throw Refusal.use("no plate size is given: add --plate with the copper's size, such as --plate 200x250mm");
        }
        Job job = base.map(art::under).orElseGet(() -> fresh(art, workshop, today));
        Map<String, String> words = new HashMap<>(given);
        JobFields.ALL.forEach(field -> words.computeIfPresent(field.name(), (name, text) -> held(field, text)));
        return JobFields.told(job, words, new Kind.Art(art.width(), art.height()));
    }

    /** What a setting is told: the words themselves, or what stands in the file that they name. */
    public static String held(JobField<?> field, String words) {
        return field.namesFile(words) ? KeptFiles.text(field.name(), Path.of(words.strip())) : words;
    }

    /** A new job as usual: for a printer and a paper of the workshop, under the art's own name. */
    public static Job fresh(SourceArt art, Workshop workshop, String today) {
        Job named = FilmFields.TITLE.with(FilmFields.DATE.with(JobFields.usual(), today), art.title());
        Job printed = FilmFields.RESOLUTION.with(
                named, new Resolution(workshop.filmPrinter().resolutionDpi().value()).dotsPerInch());
        PaperShrink shrink = new PaperShrink(
                workshop.paper().shrinkXPercent().value(),
                workshop.paper().shrinkYPercent().value());
        return art.under(PlacingFields.PAPER_SHRINK.with(printed, shrink));
    }
}
