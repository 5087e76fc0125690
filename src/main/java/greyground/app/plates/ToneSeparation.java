package greyground.app.plates;

import greyground.app.files.SafeFile;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobReserve;
import greyground.app.recipe.JobTones;
import greyground.colour.ToneSplit;
import greyground.film.job.Job;
import greyground.film.job.Origin;
import greyground.ink.InkSet;
import greyground.output.GreyTiff;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Compensation;
import greyground.tone.Lightness;
import greyground.tone.PrintRange;
import greyground.tone.Srgb;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Parts the tones of one picture between two plates of one hue, as grey art of each plate: {@link ToneSplit}. What the two print over one
 * another is as light as one plate of the whole range would print it.
 *
 * <p>Densities are those above paper and below the light of the ink's surface, in the light that the inks take most of; plate tone is part of
 * each plate's lightest tone.
 */
final class ToneSeparation {
    private final double paper;
    private final double surface;
    private final List<PrintRange> ranges;

    /**
     * Two plates' ranges on one paper.
     *
     * @param paper luminance of the bare sheet
     * @param surface light that every print reflects at least
     * @param ranges what each plate prints alone
     */
    ToneSeparation(double paper, double surface, List<PrintRange> ranges) {
        this.paper = paper;
        this.surface = surface;
        this.ranges = List.copyOf(ranges);
    }

    /** Of a set's two plates, with the numbers of the workshop. */
    static ToneSeparation of(List<Job> jobs, InkSet inks, Workshop shop) {
        double paper = StrictMath.pow(10, -shop.paper().whiteDensity().value());
        double surface =
                paper * StrictMath.pow(10, -shop.ink().saturationDensity().value());
        List<PrintRange> ranges = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            JobPlate plate = JobPlate.of(inks.shop(i, shop), jobs.get(i));
            JobTones tones = plate.tones();
            ranges.add(PrintRange.of(JobReserve.of(plate, tones).within(tones.response())));
        }
        return new ToneSeparation(paper, surface, ranges);
    }

    private double density(double lightness) {
        double light = Lightness.toLuminance(lightness);
        return -StrictMath.log10((light - surface) / (paper - surface));
    }

    private double lightness(double density) {
        return Lightness.ofLuminance(surface + (paper - surface) * StrictMath.pow(10, -density));
    }

    private double least(int plate) {
        return density(ranges.get(plate).paperLightness());
    }

    private double full(int plate) {
        return density(ranges.get(plate).darkestLightness()) - least(plate);
    }

    /** The plate that carries the lights, 0 or 1. */
    int pale() {
        return full(0) <= full(1) ? 0 : 1;
    }

    /** What both print over one another. */
    PrintRange together() {
        double lightest = least(0) + least(1);
        return new PrintRange(lightness(lightest), lightness(lightest + full(0) + full(1)));
    }

    /** What each plate prints of a tone of the print, absolute L* of it alone. */
    double[] parted(double wished) {
        ToneSplit split = new ToneSplit(full(pale()), full(1 - pale()));
        double density = Math.max(0, Math.min(split.fullDensity(), density(wished) - least(0) - least(1)));
        double[] alone = new double[2];
        alone[pale()] = lightness(least(pale()) + split.pale(density));
        alone[1 - pale()] = lightness(least(1 - pale()) + split.dark(density));
        return alone;
    }

    /**
     * Writes the grey art of both plates: evenly in L* from the plate's lightest tone, white, to its darkest, black.
     *
     * @param art closed by who opened it
     * @param files one for each plate
     */
    void write(ArtSource art, Job base, Workshop shop, List<Path> files, Progress progress) throws IOException {
        if (base.art().hand().origin() == Origin.LINE) {
            throw Refusal.use(
                    "line art has no tones to be shared between two plates: leave out the settings of line art, or use"
                            + " --by hand with a drawing for each plate");
        }
        FilmRecipe recipe = FilmRecipe.of(art, base, shop, progress);
        DoubleUnaryOperator wishes =
                Compensation.wishes(recipe.range(), base.art().hand().wish(), base.rangeMapping(), together());
        char[][] codes = new char[2][ToneCurve.CODES];
        for (int grey = 0; grey < ToneCurve.CODES; grey++) {
            double[] alone = parted(wishes.applyAsDouble((double) grey / GreyPlane.WHITE));
            for (int plate = 0; plate < 2; plate++) {
                PrintRange range = ranges.get(plate);
                double share =
                        (alone[plate] - range.darkestLightness()) / (range.paperLightness() - range.darkestLightness());
                double light = Lightness.toLuminance(100 * Math.max(0, Math.min(1, share)));
                codes[plate][grey] = (char) Math.round(GreyPlane.WHITE * Srgb.encode(light));
            }
        }
        for (int plate = 0; plate < 2; plate++) {
            char[] own = codes[plate];
            SafeFile.write("separation", files.get(plate), channel -> GreyTiff.write(recipe.art(), own, channel));
        }
    }
}
