package greyground.wedge;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.Ink;
import greyground.plate.Light;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.Resist;
import greyground.plate.Wipe;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;

/** An invented workshop as it believes itself to be, and shops that secretly differ from it. */
final class HiddenShop {
    static final double DEPTH_MICROMETRES = 35;

    /** What the workshop assumes; least widths below a film pixel, so that edges move tones smoothly. */
    static final PlateConditions BELIEVED = new PlateConditions(
            List.of(new Exposure(2.3, Exposure.Sheet.POSITIVE, new Film(0.06, 3, 4, 3), new Light(20, 10, 1.65))),
            new Resist(30, 30, 0.0133, 1.66, 6, 6, 5),
            null,
            Bath.ofDepth(DEPTH_MICROMETRES, 2),
            new Wipe(1.5, 0),
            new Ink(1.7, 0.15, 0.8, 8),
            new Paper(0.06, 1.7));

    private HiddenShop() {}

    /** Each of {@code numbers} moved by up to a quarter of its allowed range either way, kept within nine tenths of it. */
    static PlateConditions hidden(Set<FitParameter> numbers, Random random) {
        PlateConditions hidden = BELIEVED;
        for (FitParameter number : numbers) {
            double move = number.range() * 0.25 * (2 * random.nextDouble() - 1);
            double margin = 0.05 * number.range();
            double at = Math.max(
                    number.coordinate(number.least()) + margin,
                    Math.min(number.coordinate(number.most()) - margin, number.coordinate(number.of(BELIEVED)) + move));
            hidden = number.with(hidden, number.value(at));
        }
        return hidden;
    }

    /** Levels of three readings each with seeded noise of {@code deviation}, their error estimated from thirty degrees. */
    static List<MeasuredLevel> read(double[] coverages, double[] lightness, double deviation, Random random) {
        double squares = 0;
        for (int i = 0; i < 30; i++) {
            double one = random.nextGaussian();
            squares += one * one / 30;
        }
        List<MeasuredLevel> levels = new ArrayList<>();
        for (int i = 0; i < coverages.length; i++) {
            double mean = lightness[i] + deviation / Math.sqrt(3) * random.nextGaussian();
            levels.add(new MeasuredLevel(coverages[i], mean, 3, deviation * Math.sqrt(squares), 30));
        }
        return levels;
    }
}
