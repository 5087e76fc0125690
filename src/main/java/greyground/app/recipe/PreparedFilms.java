package greyground.app.recipe;

import greyground.film.compose.Mend;
import greyground.film.job.Job;
import greyground.output.FilmDocument;
import greyground.plan.ExposurePlan;
import greyground.raster.GreyPlane;
import greyground.tone.Compensation;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Optional;

/**
 * A job's films, ready to be made row by row, and all that was settled on the way.
 *
 * @param job with everything settled: digest, white and black as numbers
 * @param compensation the tone curve and what it could not keep
 * @param tones that set the curve
 * @param greys pixels of the art's fragment by grey code, 65 536 counts
 * @param films the positive first, then the screen film if there is one; each may be several tiles
 * @param mend of the positive, where the job asks for one
 * @param warnings what was odd about the art
 * @param art from which the films' rows are made; closed with this
 */
@SuppressWarnings("ArrayRecordComponent") // counts are handed on without copying; equality is never asked
public record PreparedFilms(
        Job job,
        Workshop workshop,
        Compensation compensation,
        JobTones tones,
        ExposurePlan plan,
        long[] greys,
        List<FilmDocument.Film> films,
        Optional<Mend> mend,
        List<String> warnings,
        GreyPlane art)
        implements AutoCloseable {
    @Override
    public void close() {
        art.close();
    }
}
