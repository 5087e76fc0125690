package greyground.app.live;

import greyground.app.check.AssumedFigures;
import greyground.app.check.PlateWarning;
import greyground.film.job.Job;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Which assumed figures move the print, kept while workshop and plate stay what they are: a change of tone does not touch it. */
public final class LiveAssumed {
    private @Nullable Said last;

    private record Said(Workshop workshop, String plate, List<PlateWarning> words) {}

    /**
     * What {@link AssumedFigures} says.
     *
     * @param plate the digest of the job's foretold response
     */
    public List<PlateWarning> of(Workshop workshop, Job job, String plate, Progress progress) {
        Said present = last;
        if (present == null
                || !present.plate().equals(plate)
                || !present.workshop().equals(workshop)) {
            present = new Said(workshop, plate, AssumedFigures.of(workshop, job, progress));
            last = present;
        }
        return present.words();
    }
}
