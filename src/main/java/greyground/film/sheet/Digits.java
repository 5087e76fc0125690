package greyground.film.sheet;

import greyground.chart.Area;
import greyground.chart.Target;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** A numeral of straight strokes: each digit some of seven bars. */
public final class Digits {
    /** Strokes of 0 to 9, as bits: top, upper left, upper right, middle, lower left, lower right, bottom. */
    private static final int[] STROKES = {
        0b1110111, 0b0100100, 0b1011101, 0b1101101, 0b0101110, 0b1101011, 0b1111011, 0b0100101, 0b1111111, 0b1101111
    };

    private Digits() {}

    /** The strokes, each turned into film pixels. */
    public static List<Mark> of(Target.Numeral numeral, Function<Area, PixelRect> pixels) {
        List<Mark> bars = new ArrayList<>();
        int left = numeral.area().left();
        for (char digit : Integer.toString(numeral.number()).toCharArray()) {
            List<Area> strokes = strokes(left, numeral.area().top());
            for (int stroke = 0; stroke < strokes.size(); stroke++) {
                if ((STROKES[digit - '0'] & (1 << stroke)) != 0) {
                    bars.add(new Mark.Bar(pixels.apply(strokes.get(stroke))));
                }
            }
            left += Target.Numeral.ADVANCE;
        }
        return bars;
    }

    private static List<Area> strokes(int left, int top) {
        int wide = Target.Numeral.DIGIT_WIDTH;
        int thick = Target.Numeral.STROKE;
        int half = (Target.Numeral.HEIGHT + thick) / 2;
        int right = left + wide - thick;
        int middle = top + half - thick;
        return List.of(
                new Area(left, top, wide, thick),
                new Area(left, top, thick, half),
                new Area(right, top, thick, half),
                new Area(left, middle, wide, thick),
                new Area(left, middle, thick, half),
                new Area(right, middle, thick, half),
                new Area(left, top + Target.Numeral.HEIGHT - thick, wide, thick));
    }
}
