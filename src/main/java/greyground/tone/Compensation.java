package greyground.tone;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * The tone curve of a job and what it could not keep: range mapping followed by the inverse of the plate's response.
 *
 * @param curve art to film
 * @param print the range aimed at
 * @param paperLightness L* of bare paper on this plate
 * @param lightestLightness L* of the lightest tone that holds
 * @param darkestLightness L* of the darkest tone before open bite
 * @param light greys whose wish lies between paper and the lightest tone, or above paper; they print as the nearer
 * @param dark greys whose wish is darker than the darkest tone; they print as it
 * @param steep tones that hang on less film than can be trusted; empty where there are none
 * @param unsure greys whose wish falls among these; they are set all the same
 * @param nodes the curve at {@value #NODE_COUNT} even steps of the art's L*, from black to white
 */
public record Compensation(
        ToneCurve curve,
        PrintRange print,
        double paperLightness,
        double lightestLightness,
        double darkestLightness,
        Unattained light,
        Unattained dark,
        Optional<SteepTones> steep,
        Unattained unsure,
        List<Node> nodes) {
    /** Number of nodes. */
    public static final int NODE_COUNT = 33;

    public Compensation {
        nodes = List.copyOf(nodes);
    }

    /**
     * A run of neighbouring grey codes that the plate can't print as wished.
     *
     * @param firstGrey first code, 0 to 65 535
     * @param lastGrey last code; below {@code firstGrey} when there are none
     */
    public record Unattained(int firstGrey, int lastGrey) {
        /**
         * How many pixels of the art.
         *
         * @param pixelsByGrey 65 536 counts, indexed by grey code
         */
        public long pixels(long[] pixelsByGrey) {
            if (pixelsByGrey.length != ToneCurve.CODES) {
                throw Refusal.use(
                        "a grey histogram has " + pixelsByGrey.length + " counts; it must have " + ToneCurve.CODES);
            }
            long pixels = 0;
            for (int grey = firstGrey; grey <= lastGrey; grey++) {
                pixels = Math.addExact(pixels, pixelsByGrey[grey]);
            }
            return pixels;
        }
    }

    /**
     * One point of the curve, for records and diagrams.
     *
     * @param artLightness L* of the art
     * @param wishedLightness L* that the range mapping asks for
     * @param coverage film coverage, 0 to 1
     * @param attained whether the plate prints the wish, and not by a chance of the film printer
     */
    public record Node(double artLightness, double wishedLightness, double coverage, boolean attained) {}

    /** Compensates for all that the plate can print, from paper to its turning point. */
    public static Compensation of(String name, ArtRange art, RangeMapping mapping, PlateResponse response) {
        return of(name, art, ToneWish.AS_THEY_ARE, mapping, response);
    }

    /** The same for tones that the printmaker wishes elsewhere. */
    public static Compensation of(
            String name, ArtRange art, ToneWish wish, RangeMapping mapping, PlateResponse response) {
        return of(name, art, wish, mapping, PrintRange.of(response), response);
    }

    /**
     * Makes a curve.
     *
     * @param name printed on the film
     * @param art what counts as white and black in the art
     * @param mapping how the art's range is fitted to the print's
     * @param print the range aimed at; parts of it that the plate can't reach are reported
     * @param response of the plate
     */
    public static Compensation of(
            String name, ArtRange art, RangeMapping mapping, PrintRange print, PlateResponse response) {
        return of(name, art, ToneWish.AS_THEY_ARE, mapping, print, response);
    }

    private static Compensation of(
            String name, ArtRange art, ToneWish wish, RangeMapping mapping, PrintRange print, PlateResponse response) {
        ResponseInverse inverse = new ResponseInverse(response);
        DoubleUnaryOperator wishes = wishes(art, wish, mapping, print);
        char[] table = new char[ToneCurve.CODES];
        int firstLight = ToneCurve.CODES;
        int lastLight = -1;
        int lastDark = -1;
        int before = ToneCurve.SOLID;
        Optional<SteepTones> steep = SteepTones.of(response);
        int firstUnsure = ToneCurve.CODES;
        int lastUnsure = -1;
        for (int grey = 0; grey < ToneCurve.CODES; grey++) {
            double wished = wishes.applyAsDouble(luminance(grey));
            // Rounding in the last digit must not make a lighter grey blacker.
            before = Math.min(before, inverse.samples(wished));
            table[grey] = (char) before;
            if (inverse.tooDark(wished)) {
                lastDark = grey;
            } else if (inverse.inLightGap(wished) || inverse.tooLight(wished)) {
                firstLight = Math.min(firstLight, grey);
                lastLight = grey;
            } else if (steep.isPresent() && steep.get().holds(wished)) {
                firstUnsure = Math.min(firstUnsure, grey);
                lastUnsure = grey;
            }
        }
        return new Compensation(
                new ToneCurve(name, table),
                print,
                inverse.paperLightness(),
                inverse.lightestLightness(),
                inverse.darkestLightness(),
                new Unattained(firstLight, lastLight),
                new Unattained(0, lastDark),
                steep,
                new Unattained(firstUnsure, lastUnsure),
                nodes(table, wishes, inverse, steep));
    }

    /** From linear luminance of the art, 0 to 1, to the print lightness wished for, absolute L* within the print's range. */
    public static DoubleUnaryOperator wishes(ArtRange art, ToneWish wish, RangeMapping mapping, PrintRange print) {
        DoubleUnaryOperator onto = mapping.onto(art, print);
        return wish.changesNothing() ? onto : onto.compose(wish.within(art));
    }

    private static List<Node> nodes(
            char[] table, DoubleUnaryOperator wishes, ResponseInverse inverse, Optional<SteepTones> steep) {
        List<Node> nodes = new ArrayList<>();
        for (int i = 0; i < NODE_COUNT; i++) {
            double artLightness = 100.0 * i / (NODE_COUNT - 1);
            int grey = (int) Math.round(Lightness.toLuminance(artLightness) * ToneCurve.SOLID);
            double wish = wishes.applyAsDouble(luminance(grey));
            boolean sure = steep.isEmpty() || !steep.get().holds(wish);
            nodes.add(new Node(
                    artLightness, wish, (double) table[grey] / ToneCurve.SOLID, sure && inverse.attainable(wish)));
        }
        return nodes;
    }

    private static double luminance(int grey) {
        return (double) grey / (ToneCurve.CODES - 1);
    }
}
