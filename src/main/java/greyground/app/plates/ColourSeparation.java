package greyground.app.plates;

import greyground.app.files.SafeFile;
import greyground.app.proof.InkedTones;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobReserve;
import greyground.app.recipe.JobTones;
import greyground.colour.ColourParting;
import greyground.colour.InksInRegister;
import greyground.colour.Lab;
import greyground.colour.PrintLattice;
import greyground.colour.SmoothSpectrum;
import greyground.colour.Xyz;
import greyground.film.job.ArtChoice;
import greyground.film.job.Hand;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.output.GreyTiff;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ColourSight;
import greyground.tone.ColourWeights;
import greyground.tone.Compensation;
import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import greyground.tone.PrintRange;
import greyground.tone.ResponseInverse;
import greyground.tone.Srgb;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Parts one colour picture between two to four plates of a set's inks, as grey art of each plate. Tones go where {@code positive} would send them, onto
 * all that the plates print over one another; colours as {@link ColourParting} says, seen on the paper with its plate tone.
 */
final class ColourSeparation {
    private static final int SIDE = 33;
    private static final int SIDE_OF_FOUR = 17;
    private static final int ART_SIDE = 33;

    /** Full tones over one another that wet plates still hold (common practice, no source). */
    private static final double MOST_INK = 2.4;

    private static final double LEAST_TOLD = 0.01;

    private final List<double[][]> alone = new ArrayList<>();
    private final PrintLattice printed;
    private final ColourParting parting;
    private final int plates;

    private ColourSeparation(List<Job> jobs, InkSet inks, Workshop shop, double keyShare) {
        plates = jobs.size();
        int side = plates < ColourParting.MOST_PLATES ? SIDE : SIDE_OF_FOUR;
        List<double[]> full = new ArrayList<>();
        for (int i = 0; i < plates; i++) {
            alone.add(ramp(i, jobs.get(i), inks, shop, side, full));
        }
        InksInRegister print = inks.inRegister(shop, full);
        Xyz paper = SmoothSpectrum.colour(
                print.print(alone.stream().map(ramp -> ramp[0]).toList()));
        printed = new PrintLattice(
                plates,
                side,
                shares -> Lab.of(SmoothSpectrum.colour(print.print(IntStream.range(0, plates)
                                .mapToObj(i -> alone.get(i)[(int) Math.round(shares[i] * (side - 1))])
                                .toList()))
                        .over(paper)));
        int key = 0;
        for (int i = 1; i < plates; i++) {
            key = only(i).lightness() < only(key).lightness() ? i : key;
        }
        parting = new ColourParting(plates, printed, key, keyShare);
    }

    static ColourSeparation of(List<Job> jobs, InkSet inks, Workshop shop, double keyShare) {
        return new ColourSeparation(jobs, inks, shop, keyShare);
    }

    private Lab only(int plate) {
        double[] shares = new double[plates];
        shares[plate] = 1;
        return printed.of(shares);
    }

    /** What a plate prints alone at even steps of L* from its lightest tone to its darkest; its full tone is added to a list. */
    private static double[][] ramp(int index, Job job, InkSet inks, Workshop shop, int side, List<double[]> full) {
        JobPlate plate = JobPlate.of(inks.shop(index, shop), job);
        JobTones tones = plate.tones();
        PlateResponse own = JobReserve.of(plate, tones).within(tones.response());
        PrintRange range = PrintRange.of(own);
        ResponseInverse inverse = new ResponseInverse(own);
        InkedTones printed = new InkedTones(plate, inks.light(index, shop), inks.paperInBands(shop));
        double[] none = printed.light(0);
        double[][] ramp = new double[side][];
        for (int step = 0; step < side; step++) {
            double wished =
                    range.paperLightness() - step * (range.paperLightness() - range.darkestLightness()) / (side - 1);
            // Between paper and the lightest tone that holds nothing prints; a mean of both stands for it.
            double held = Math.min(wished, inverse.lightestLightness());
            double gap = inverse.paperLightness() - inverse.lightestLightness();
            double clear = gap <= 0 ? 0 : Math.max(0, wished - inverse.lightestLightness()) / gap;
            double[] tone = printed.light(inverse.coverage(held));
            for (int band = 0; band < tone.length; band++) {
                tone[band] += clear * (none[band] - tone[band]);
            }
            ramp[step] = tone;
        }
        full.add(printed.light(tones.turningPoint()));
        return ramp;
    }

    /**
     * How far the colours that are printed lie from those wished, over the art.
     *
     * @param share of it that is moved by more than 1 CIEDE2000
     * @param mean like the rest in CIEDE2000
     * @param most95 what 95 of 100 places are moved by at most
     * @param heavy share of it that carries more than {@link #MOST_INK} full tones
     */
    record Moved(double share, double mean, double most95, double worst, double heavy) {
        String words() {
            return String.format(
                    Locale.ROOT,
                    "%.0f %% of the picture is moved by more than 1 to what these inks print: %.1f on average, 95 in 100 by at"
                            + " most %.1f, the farthest %.1f (CIEDE2000)",
                    100 * share,
                    mean,
                    most95,
                    worst);
        }

        Findings figures() {
            return new Findings()
                    .put("movedShare", share)
                    .put("mean", mean)
                    .put("most95", most95)
                    .put("worst", worst)
                    .put("heavyShare", heavy);
        }

        /** A note where so much ink lies on one another that it may slide. */
        Optional<String> inked() {
            return heavy < LEAST_TOLD
                    ? Optional.empty()
                    : Optional.of(String.format(
                            Locale.ROOT,
                            "%.0f %% of the picture carries more than %.0f %% of ink over one another, which slides when"
                                    + " printed wet on wet: let a plate dry between, or give the key more with --key",
                            100 * heavy,
                            100 * MOST_INK));
        }
    }

    /** Shares of the plates, how far their colour is from the one wished and the sum of the shares, at even steps of the coded red, green and blue. */
    private float[] lattice(DoubleUnaryOperator wishes) {
        int values = plates + 2;
        float[] lattice = new float[ART_SIDE * ART_SIDE * ART_SIDE * values];
        IntStream.range(0, ART_SIDE * ART_SIDE * ART_SIDE).parallel().forEach(node -> {
            double[] light = new double[3];
            int rest = node;
            for (int i = 0; i < 3; i++) {
                light[i] = Srgb.decode((double) (rest % ART_SIDE) / (ART_SIDE - 1));
                rest /= ART_SIDE;
            }
            Lab seen = Lab.of(Xyz.ofLight(light));
            Lab wished = new Lab(
                    wishes.applyAsDouble(Math.max(0, Math.min(1, Lightness.toLuminance(seen.lightness())))),
                    seen.a(),
                    seen.b());
            double[] shares = parting.parted(wished);
            for (int i = 0; i < plates; i++) {
                lattice[node * values + i] = (float) shares[i];
            }
            lattice[node * values + plates] = (float) wished.difference(printed.of(shares));
            lattice[node * values + plates + 1] =
                    (float) DoubleStream.of(shares).sum();
        });
        return lattice;
    }

    /** Writes the grey art of the plates: evenly in L* from each plate's lightest tone, white, to its darkest, black. */
    Moved write(Path file, Job base, Workshop shop, List<Path> files, Progress progress) throws IOException {
        double[] all = new double[plates];
        Arrays.fill(all, 1);
        PrintRange range = new PrintRange(100, Math.max(0, printed.of(all).lightness()));
        try (ArtSource grey = ArtSource.open(file);
                ArtSource red = ArtSource.open(file);
                ArtSource green = ArtSource.open(file);
                ArtSource blue = ArtSource.open(file)) {
            if (!grey.coloured()) {
                throw Refusal.use(file.getFileName()
                        + " has no colours to be parted between inks: use --by tone for two plates of one hue, or --by"
                        + " hand with a picture for each plate");
            }
            FilmRecipe recipe = FilmRecipe.of(grey, base, shop, progress);
            float[] lattice = lattice(
                    Compensation.wishes(recipe.range(), base.art().hand().wish(), base.rangeMapping(), range));
            GreyPlane[] lights = {
                red.turned(sight(base, 1, 0, 0), Progress.NONE),
                green.turned(sight(base, 0, 1, 0), Progress.NONE),
                blue.turned(sight(base, 0, 0, 1), Progress.NONE)
            };
            char[] codes = new char[ToneCurve.CODES];
            for (int code = 0; code < codes.length; code++) {
                codes[code] = (char) Math.round(
                        GreyPlane.WHITE * Srgb.encode(Lightness.toLuminance(100.0 * code / GreyPlane.WHITE)));
            }
            for (int plate = 0; plate < plates; plate++) {
                PartedPlane plane = new PartedPlane(recipe.art(), lights, lattice, ART_SIDE, plates + 2, plate);
                SafeFile.write("separation", files.get(plate), channel -> GreyTiff.write(plane, codes, channel));
            }
            return moved(
                    new PartedPlane(recipe.art(), lights, lattice, ART_SIDE, plates + 2, plates),
                    new PartedPlane(recipe.art(), lights, lattice, ART_SIDE, plates + 2, plates + 1));
        }
    }

    private static Moved moved(PartedPlane differences, PartedPlane sums) {
        long[] counts = new long[2000];
        float[] row = new float[differences.width()];
        long heavy = 0;
        for (int y = 0; y < differences.height(); y++) {
            differences.values(y, row);
            for (float each : row) {
                counts[Math.min(counts.length - 1, (int) (each * 20))]++;
            }
            sums.values(y, row);
            for (float each : row) {
                heavy += each > MOST_INK ? 1 : 0;
            }
        }
        double total = (double) differences.width() * differences.height();
        double sum = 0;
        long sofar = 0;
        long far = 0;
        double most95 = -1;
        double worst = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i] * (i + 0.5) / 20;
            far += i >= 20 ? counts[i] : 0;
            sofar += counts[i];
            most95 = most95 < 0 && sofar >= 0.95 * total ? (i + 0.5) / 20 : most95;
            worst = counts[i] > 0 ? (i + 0.5) / 20 : worst;
        }
        return new Moved(far / total, sum / total, most95, worst, heavy / total);
    }

    private static ArtChoice sight(Job base, double red, double green, double blue) {
        ArtChoice art = base.art();
        Hand hand = art.hand();
        return new ArtChoice(
                art.fileName(),
                art.sha256(),
                art.page(),
                art.crop(),
                art.quarterTurns(),
                art.straightenDegrees(),
                art.white(),
                art.black(),
                new Hand(
                        new ColourSight(
                                ColourSight.Filter.NONE,
                                ColourSight.Emulsion.LUMINANCE,
                                Optional.of(new ColourWeights(red, green, blue))),
                        hand.origin(),
                        hand.evenPaper(),
                        hand.localContrast(),
                        hand.crispness(),
                        hand.crispRadius(),
                        hand.line(),
                        hand.wish(),
                        hand.retouching()));
    }
}
