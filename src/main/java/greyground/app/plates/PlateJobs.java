package greyground.app.plates;

import greyground.app.recipe.SourceArt;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.film.job.Hand;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Origin;
import greyground.grain.Grain;
import greyground.ink.InkSet;
import greyground.quantity.Refusal;
import greyground.tone.ColourSight;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The jobs of a set's plates: one job for all, each with a name and a grain of its own. */
final class PlateJobs {
    private static final int LONGEST_TITLE = 120;

    private PlateJobs() {}

    /** Refuses jobs that plates printed over one another can't have. */
    static void check(Job base, int plates) {
        if (base.placing().tiled()) {
            throw Refusal.use("the job asks for films in tiles of "
                    + base.placing().tile().orElseThrow()
                    + "; plates in register need each film whole: leave out --tile");
        }
        if (plates > 1 && !(base.grain() instanceof Grain.Stochastic)) {
            throw Refusal.use(base.grain().name() + " lies alike on every film, so that plates over one another would"
                    + " beat and change colour from print to print: use --grain, of which each plate gets its own");
        }
    }

    /** Refuses what makes greys or strokes of a picture whose colours are to be parted. */
    static void checkColours(Job base) {
        Hand hand = base.art().hand();
        if (!hand.sight().equals(ColourSight.EYE)) {
            throw Refusal.use(
                    "the job makes greys of colours, " + hand.sight().words().orElseThrow()
                            + ", and --by colour parts the colours themselves: leave out --through and --emulsion");
        }
        if (hand.origin() == Origin.LINE) {
            throw Refusal.use("--source line makes strokes of ink and paper, and --by colour parts the colours between:"
                    + " leave it out, or draw a picture for each plate");
        }
    }

    /**
     * A plate's job. The first plate has the job's own grain, each further one the next seed's; a set of one is the job itself.
     *
     * @param number from 1
     * @param page of the art's file, from 1
     */
    static Job of(Job base, SourceArt art, int page, int number, InkSet inks) {
        Job job = art.under(base);
        int count = inks.inks().size();
        if (page != job.art().page()) {
            job = ArtFields.PAGE.with(job, (long) page);
        }
        if (count == 1) {
            return job;
        }
        String plate = ": plate " + number + " of " + count + ", "
                + inks.inks().get(number - 1).name() + ", printed "
                + (number == count ? "last" : InkSet.ordinal(number));
        String title = base.title().isEmpty() ? "untitled" : base.title();
        int room = LONGEST_TITLE - plate.length();
        String cut = title.length() <= room ? title : title.substring(0, room - 3) + "...";
        return FilmFields.TITLE.with(FilmFields.SEED.with(job, FilmFields.SEED.of(base) + number - 1), cut + plate);
    }

    /** The job for art that was parted already: as it stands, white to black, without anything done to it a second time. */
    static Job parted(Job base) {
        ArtChoice art = base.art();
        ArtChoice plain = new ArtChoice(
                "", "", 1, art.crop(), 0, 0, new TonePoint.Given(1), new TonePoint.Given(0), Hand.AT_REST);
        return ArtFields.RANGE.with(base.settled(plain), ArtFields.RANGE.of(JobFields.usual()));
    }

    /** Refuses two plates of one grain: their dots would lie on one another here and beside one another there. */
    static void checkGrains(List<Job> jobs) {
        Set<Grain> grains = new HashSet<>();
        for (Job job : jobs) {
            if (!grains.add(job.grain())) {
                throw Refusal.use("two plates have one grain, " + job.grain().name() + " of seed "
                        + (job.grain() instanceof Grain.Stochastic grain ? grain.seed() : 0)
                        + "; colours would drift with every tenth of a millimetre that the plates are out: give each its"
                        + " own --seed");
            }
        }
    }
}
