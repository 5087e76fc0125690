package greyground.app.sight;

import greyground.app.recipe.JobTones;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.PlateMap;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.PlateWindow;
import greyground.plate.ToneAlignment;
import greyground.plate.ToneTerms;
import greyground.plate.VirtualPlate;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * How an even tone looks at each stage, as a colour for every coverage of the film: the mean of what the virtual plate shows of the
 * job's own grain, which is what the eye makes of it from afar. The print's is the response that sets the curve, measured or predicted.
 *
 * <p>Each stage is computed when it is first asked for. One thread uses it.
 */
public final class StageTones {
    /** Coverages that have a colour; 4096 is finer than a screen's 256 greys. */
    private static final int STEPS = 4096;

    /** Every fourth level of the response: film and copper run nearly straight in between, and one waits for them. */
    private static final int STRIDE = 4;

    private final VirtualPlate plate;
    private final FilmPatches patches;
    private final JobTones tones;
    private final Map<Stage, int[]> colours = new EnumMap<>(Stage.class);
    private final Map<Double, ToneAlignment> alignments = new HashMap<>();
    private double @Nullable [][] film;
    private double @Nullable [][] copper;

    public StageTones(VirtualPlate plate, FilmPatches patches, JobTones tones) {
        this.plate = plate;
        this.patches = patches;
        this.tones = tones;
    }

    /**
     * Moves the print's tones of a plate computed more coarsely onto the response.
     *
     * @param coarse the same plate on the pixels of a picture
     */
    public ToneAlignment alignment(VirtualPlate coarse, double widestPixelMicrometres) {
        return alignments.computeIfAbsent(
                widestPixelMicrometres, widest -> ToneAlignment.of(coarse, patches, tones.predicted()));
    }

    /** The colour of a coverage in 1/65 535, 0xRRGGBB. */
    public int colour(Stage stage, int coverage) {
        return table(stage)[(coverage + 8) >> 4];
    }

    /** The colours of {@value #STEPS} even steps of coverage and one more. */
    private int[] table(Stage stage) {
        return colours.computeIfAbsent(stage, this::made);
    }

    private int[] made(Stage stage) {
        PlateConditions conditions = plate.conditions();
        float[] values = new float[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            values[i] = (float) value(stage, (double) i / STEPS, conditions);
        }
        PlateMap map = new PlateMap(new PlateWindow(0, 0, 100, STEPS + 1, 1), values);
        int[] pixels = LivePicture.of(stage.coloured(map, conditions)).pixels();
        // The largest coverage rounds up to one step past the last.
        int[] table = new int[((ToneCurve.SOLID + 8) >> 4) + 1];
        System.arraycopy(pixels, 0, table, 0, pixels.length);
        return table;
    }

    private double value(Stage stage, double coverage, PlateConditions conditions) {
        return switch (stage) {
            case PRINT ->
                StrictMath.pow(
                        Lightness.toLuminance(tones.response().lightness(coverage)),
                        1 / conditions.paper().opticalGain());
            case RESIST -> 1 - between(coverage, openCoverages(), openShares());
            case FILM -> between(coverage, film()[0], film()[1]);
            case COPPER -> between(coverage, copper()[0], copper()[1]);
        };
    }

    private double[] openCoverages() {
        return tones.predicted().levels().stream()
                .mapToDouble(ToneTerms::coverage)
                .toArray();
    }

    private double[] openShares() {
        return tones.predicted().levels().stream()
                .mapToDouble(ToneTerms::openShare)
                .toArray();
    }

    /** The film's light needs nothing of the plate after it, so whoever looks at the film does not wait for the copper. */
    private double[][] film() {
        double[][] present = film;
        if (present == null) {
            present = means(Stage.FILM);
            film = present;
        }
        return present;
    }

    private double[][] copper() {
        double[][] present = copper;
        if (present == null) {
            present = means(Stage.COPPER);
            copper = present;
        }
        return present;
    }

    /** Coverages, and the mean of what is seen at each. */
    private double[][] means(Stage stage) {
        List<ToneTerms> levels = tones.predicted().levels();
        double[] coverages = IntStream.range(0, levels.size())
                .filter(i -> i % STRIDE == 0 || i == levels.size() - 1)
                .mapToDouble(i -> levels.get(i).coverage())
                .toArray();
        PlateView view = stage.view(false);
        double[] means = new double[coverages.length];
        IntStream.range(0, coverages.length).parallel().forEach(i -> {
            FilmPatch patch = patches.at(coverages[i]);
            PlateStates states = view.seesFilmAlone() ? plate.filmAlone(patch) : plate.states(patch);
            means[i] = mean(view.of(plate.conditions(), states));
        });
        return new double[][] {coverages, means};
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double between(double at, double[] places, double[] values) {
        int upper = 1;
        while (upper < places.length - 1 && places[upper] < at) {
            upper++;
        }
        double share = (at - places[upper - 1]) / (places[upper] - places[upper - 1]);
        return values[upper - 1] + share * (values[upper] - values[upper - 1]);
    }
}
