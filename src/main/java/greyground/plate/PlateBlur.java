package greyground.plate;

import greyground.tone.UsableCoverage;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * How much a plate blurs fine detail, as the standard deviation s of a Gaussian whose transfer is {@code exp(-2 pi² s² f²)}.
 *
 * <p>Film whose coverage follows a cosine of two and of four dots' spacings goes through the virtual plate; what is left of its amplitude in
 * the print, against the film's own, is compared with that of a cosine of twelve spacings. Dots themselves blur nothing in the mean; least
 * widths, soft edges and ink do. With an assumed workshop it is 20 to 27 µm
 * on grains of 120 to 260 µm and 11 µm unetched, and repeats within 2 µm on another piece of the grain.
 */
public final class PlateBlur {
    /** Raised with every change that moves a blur. */
    public static final int ALGORITHM = 1;

    /** Dots' spacings across the film that is asked for. */
    public static final int SPACINGS = 24;

    /** Cosines over that film; the first is the one that the others are compared with. */
    private static final int[] WAVES = {2, 6, 12};

    /** Cosines of each kind, each begun a quarter of a wave after the one before, so that dots meet other tones. */
    private static final int BEGINNINGS = 4;

    /** Most amplitude in coverage, about the middle of what the plate holds: a detail that is plainly seen (assumed). */
    private static final double AMPLITUDE = 0.2;

    /** Less left than this says no more (assumed). */
    private static final double LEAST_LEFT = 0.01;

    private PlateBlur() {}

    /**
     * Measures it.
     *
     * @param plate that the film goes through
     * @param positive makes film {@link #SPACINGS} wide whose coverage is told by the share of its width, 0 to 1; wrapped and tapered
     * @param spacingMicrometres of the dots, above 0
     * @return s in micrometres on the plate, 0 where nothing is lost
     */
    public static double micrometres(
            VirtualPlate plate,
            Function<DoubleUnaryOperator, FilmPatch> positive,
            UsableCoverage usable,
            double spacingMicrometres) {
        double middle = (usable.least() + usable.most()) / 2;
        double amplitude = Math.min(AMPLITUDE, (usable.most() - usable.least()) / 4);
        List<double[]> amplitudes = IntStream.range(0, WAVES.length * BEGINNINGS)
                .parallel()
                .mapToObj(i -> {
                    double begins = (double) (i % BEGINNINGS) / BEGINNINGS;
                    int waves = WAVES[Math.floorDiv(i, BEGINNINGS)];
                    DoubleUnaryOperator wave = share -> StrictMath.cos(2 * StrictMath.PI * (waves * share + begins));
                    FilmPatch film = positive.apply(share -> middle + amplitude * wave.applyAsDouble(share));
                    return new double[] {film.isBits() ? inFilm(film, wave) : amplitude / 2, inPrint(plate, film, wave)
                    };
                })
                .toList();
        double[] left = IntStream.range(0, WAVES.length)
                .mapToDouble(kind -> {
                    List<double[]> own = amplitudes.subList(kind * BEGINNINGS, (kind + 1) * BEGINNINGS);
                    return own.stream().mapToDouble(one -> one[1]).sum()
                            / own.stream().mapToDouble(one -> one[0]).sum();
                })
                .toArray();
        double width = SPACINGS * spacingMicrometres;
        double lost = 0;
        double squares = 0;
        for (int kind = 1; kind < WAVES.length; kind++) {
            double steps = (WAVES[kind] * WAVES[kind] - WAVES[0] * WAVES[0]) / (width * width);
            lost -= steps * StrictMath.log(Math.max(LEAST_LEFT, left[kind] / left[0]));
            squares += steps * steps;
        }
        return Math.sqrt(Math.max(0, lost / squares / 2)) / Math.PI;
    }

    /** Amplitude of the film's black along a wave, by half. */
    private static double inFilm(FilmPatch film, DoubleUnaryOperator wave) {
        return along(wave, film, film.width(), film.height(), (x, y) -> film.black(x, y) ? 1 : 0);
    }

    /** Amplitude of the print's darkness along a wave, as ink darkens the paper it shares with white (Yule and Nielsen). */
    private static double inPrint(VirtualPlate plate, FilmPatch film, DoubleUnaryOperator wave) {
        PlateStates states = plate.statesBeyondFilm(film);
        float[] print = states.printMicrometres();
        int width = states.grid().width();
        RootTable roots =
                new RootTable(plate.conditions().ink(), plate.conditions().paper(), print);
        return along(wave, film, width, states.grid().height(), (x, y) -> -roots.root(print[y * width + x]));
    }

    private interface Sample {
        double at(int x, int y);
    }

    private static double along(DoubleUnaryOperator wave, FilmPatch base, int width, int height, Sample sample) {
        double[] across = base.weightsAcross(width);
        double[] down = base.weightsDown(height);
        double sum = 0;
        double all = 0;
        for (int x = 0; x < width; x++) {
            double turned = wave.applyAsDouble((x + 0.5) / width);
            for (int y = 0; y < height; y++) {
                double weight = across[x] * down[y];
                sum += weight * turned * sample.at(x, y);
                all += weight;
            }
        }
        return sum / all;
    }
}
