package greyground.app.recipe;

import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.LevelledArt;
import greyground.film.job.Placing;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/** What deserves a word about art on a plate: its file, its tones, its fit and its fineness. */
final class ArtWarnings {
    /** Cutting off more of the art than this deserves a word (assumed). */
    private static final double MOST_LOST_UNSAID = 0.1;

    /** Intaglio blacks print L* 11 to 30 (common practice); a paler one is worth another split of light. */
    private static final double PALE_BLACK_LIGHTNESS = 30;

    private ArtWarnings() {}

    /** {@code remarks} are those of the art's file. */
    static List<String> of(FilmRecipe recipe, List<String> remarks) {
        Job job = recipe.job();
        List<String> warnings = new ArrayList<>(remarks);
        recipe.tones().note().ifPresent(warnings::add);
        double darkest = recipe.tones().printableRange().darkest();
        if (job.process() instanceof PlateProcess.Photogravure && darkest > PALE_BLACK_LIGHTNESS) {
            warnings.add("these two exposures leave the darkest tone at L* " + Refusal.plain(Math.rint(darkest))
                    + ": 'greyground plan --search-exposure' looks for better ones");
        }
        ArtChoice.Crop crop = job.art().crop();
        if (LevelledArt.of(recipe.art().width(), recipe.art().height(), job.art())
                .leavesBlank(crop, job.placing(), job.plate())) {
            warnings.add("corners of the plate stay blank, since art turned by "
                    + Refusal.plain(job.art().straightenDegrees())
                    + " degrees does not reach them: crop to what it covers, with --crop covered");
        }
        double across = recipe.art().width() * crop.width() / job.plate().widthMillimetres();
        double down = recipe.art().height() * crop.height() / job.plate().heightMillimetres();
        boolean fill = job.placing().fit() == Placing.Fit.FILL;
        double perInch = (fill ? Math.min(across, down) : Math.max(across, down)) * 25.4;
        double lost = 1 - Math.min(across, down) / Math.max(across, down);
        if (fill && lost > MOST_LOST_UNSAID) {
            warnings.add(Refusal.plain(Math.rint(lost * 100))
                    + " % of the art does not fit the plate's proportions and is cut off "
                    + (across > down ? "left and right" : "above and below")
                    + ": turn the plate or the art, crop, or show it whole");
        }
        double grainPerInch = FilmWords.dotsPerInch(job);
        if (perInch < grainPerInch) {
            warnings.add("the art has " + Refusal.plain(Math.rint(perInch))
                    + " pixels per inch of plate, fewer than the film's " + Refusal.plain(Math.rint(grainPerInch))
                    + " dots per inch: fine detail will be soft");
        }
        return warnings;
    }
}
