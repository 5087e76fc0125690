package greyground.app.live;

import greyground.app.check.PlateWarning;
import greyground.app.sight.LiveView;
import greyground.quantity.Offset;
import greyground.quantity.Size;
import greyground.tone.Compensation;
import greyground.tone.ToneCurve;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/** Tones of the art that the plate can't print: how much of the art they are, and the field of the plate that holds most of them. */
final class LostTones {
    /** Less of the art than this is not worth a word (assumed). */
    private static final double LEAST_SHARE_SAID = 0.001;

    /** Fields along the plate's longer side, and pixels along a field, in which they are counted (assumed). */
    private static final int FIELDS = 16;

    private static final int FIELD_PIXELS = 16;

    /** Tints that let the picture through: copper over lights, blue over darks. */
    private static final int LIGHT = 0xA0C8501E;

    private static final int DARK = 0xA01E78D2;

    private LostTones() {}

    /**
     * A tint for each grey code that becomes bare paper or full black, or that the plate can't print as wished; 0 for all others.
     *
     * @param white linear luminance that prints as bare paper
     * @param black linear luminance that prints darkest
     */
    static int[] tints(Compensation compensation, double white, double black) {
        int[] tints = new int[ToneCurve.CODES];
        Arrays.fill(
                tints, (int) Math.min(tints.length, Math.round(white * (tints.length - 1)) + 1), tints.length, LIGHT);
        Arrays.fill(tints, 0, (int) Math.round(black * (tints.length - 1)), DARK);
        tint(tints, compensation.light(), LIGHT);
        tint(tints, compensation.dark(), DARK);
        return tints;
    }

    private static void tint(int[] tints, Compensation.Unattained run, int colour) {
        for (int grey = run.firstGrey(); grey <= run.lastGrey(); grey++) {
            tints[grey] = colour;
        }
    }

    /**
     * What is to be said of them; the light ones first.
     *
     * @param greys pixels of the art's fragment by grey code
     */
    static List<PlateWarning> of(Compensation compensation, long[] greys, LivePlacing placing, Size plate) {
        return Stream.of(
                        say(
                                "lost-light",
                                "lighter than the lightest tone that holds",
                                compensation.light(),
                                greys,
                                placing,
                                plate),
                        say("lost-dark", "darker than the plate can print", compensation.dark(), greys, placing, plate))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<PlateWarning> say(
            String kind, String what, Compensation.Unattained tones, long[] greys, LivePlacing placing, Size plate) {
        double share = tones.pixels(greys) / (double) LongStream.of(greys).sum();
        if (share < LEAST_SHARE_SAID) {
            return Optional.empty();
        }
        Optional<Offset> most = mostOf(tones, placing, plate);
        String words = String.format(Locale.ROOT, "%.1f %% of the art is %s", share * 100, what);
        double area = share * plate.widthMillimetres() * plate.heightMillimetres();
        return Optional.of(
                most.isEmpty()
                        ? new PlateWarning(kind, words, most, 0, area, "")
                        : new PlateWarning(kind, words + "; most", most, longerSide(plate) / FIELDS, area, ""));
    }

    private static double longerSide(Size plate) {
        return Math.max(plate.widthMillimetres(), plate.heightMillimetres());
    }

    /** The middle of the field of the plate that holds most of some tones; empty where a coarse look meets none. */
    private static Optional<Offset> mostOf(Compensation.Unattained tones, LivePlacing placing, Size plate) {
        double perPixel = longerSide(plate) / (FIELDS * FIELD_PIXELS);
        int width = Math.max(1, (int) (plate.widthMillimetres() / perPixel));
        int height = Math.max(1, (int) (plate.heightMillimetres() / perPixel));
        short[] seen = placing.greys(new LiveView(0, 0, perPixel, width, height));
        LivePlacing.Cover art = placing.cover(0);
        int across = (width + FIELD_PIXELS - 1) / FIELD_PIXELS;
        int[] counts = new int[across * ((height + FIELD_PIXELS - 1) / FIELD_PIXELS)];
        int most = 0;
        for (int i = 0; i < seen.length; i++) {
            int row = i / width;
            int grey = seen[i] & 0xFFFF;
            boolean covered = art.has((i % width + 0.5) * perPixel, (row + 0.5) * perPixel);
            int field = row / FIELD_PIXELS * across + i % width / FIELD_PIXELS;
            if (covered && grey >= tones.firstGrey() && grey <= tones.lastGrey() && ++counts[field] > counts[most]) {
                most = field;
            }
        }
        if (counts[most] == 0) {
            return Optional.empty();
        }
        double side = FIELD_PIXELS * perPixel;
        int fieldsDown = most / across;
        return Optional.of(new Offset(
                Math.min(plate.widthMillimetres(), (most % across + 0.5) * side),
                Math.min(plate.heightMillimetres(), (fieldsDown + 0.5) * side)));
    }
}
