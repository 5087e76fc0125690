package greyground.art.tiff;

import greyground.art.page.TiffDirectory;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.List;

/**
 * What the numbers of a TIFF page's samples mean (TIFF 6.0 section 19).
 *
 * @param bits bits of a sample
 * @param form how they make a number
 * @param black the number that is black, or no ink
 * @param white the number that is white, or full ink
 * @param turned whether the library takes a sample's three bytes in the wrong order
 */
record TiffNumbers(int bits, Form form, double black, double white, boolean turned) {
    /** TIFF tag 339. */
    enum Form {
        WHOLE,
        SIGNED,
        FRACTION
    }

    /** Assumed: how far over white light may be stated, and is then white; beyond it the scale must be another one. */
    private static final double OVER_WHITE = 16;

    private static final List<Integer> WHOLE_BITS = List.of(1, 2, 4, 6, 8, 10, 12, 14, 16, 24, 32);

    private static final String ANEW = ": save it with 8 or 16 bits, unsigned";

    /** Whether samples can be taken as they lie, or spread to bytes. */
    boolean plain() {
        return form == Form.WHOLE && (bits == 1 || bits == 2 || bits == 4 || bits == 8 || bits == 16);
    }

    static TiffNumbers of(TiffDirectory directory) throws IOException {
        long[] depths = directory.numbers(258);
        int bits = depths.length == 0 ? 1 : (int) Math.min(1000, depths[0]);
        for (long other : depths) {
            if (other != bits) {
                throw new Unreadable("its samples differ in depth" + ANEW);
            }
        }
        long form = directory.number(339, 1);
        // L* alone is used of L*a*b*: it has no sign where a* and b* have one, and stands as it is in fractions.
        boolean lab = directory.number(262, 1) == 8;
        form = lab && form == 2 ? 1 : form;
        if (form == 2 && (bits == 8 || bits == 16 || bits == 32)) {
            double most = StrictMath.pow(2, bits - 1) - 1;
            // The default of the smallest sample's tag is the smallest number there is.
            return new TiffNumbers(bits, Form.SIGNED, -most - 1, most, false);
        }
        if (form == 3 && (bits == 16 || bits == 32 || bits == 64)) {
            return new TiffNumbers(bits, Form.FRACTION, 0, lab ? 100 : 1, false);
        }
        boolean whole = form == 1 || form == 4;
        if (!whole || !WHOLE_BITS.contains(bits)) {
            String kind = whole ? "" : form == 2 ? "signed " : form == 3 ? "fractional " : "unusual ";
            throw new Unreadable("its samples are " + bits + "-bit " + kind
                    + "numbers; whole ones of 1, 2, 4, 6, 8, 10, 12, 14, 16, 24 and 32 bits, signed ones of 8, 16 and 32"
                    + " and fractions of 16, 32 and 64 can be read" + ANEW);
        }
        return new TiffNumbers(bits, Form.WHOLE, 0, StrictMath.pow(2, bits) - 1, bits == 24 && !directory.bigEndian());
    }

    /** Refuses pages whose samples can't lie on the scale that their kind has. */
    void check(double least, double most) throws IOException {
        if (form == Form.FRACTION && (most > OVER_WHITE * white || Double.isNaN(most))) {
            throw new Unreadable(
                    "its fractional samples reach " + (float) most + " where " + (int) white + " is white" + ANEW);
        }
        if (form == Form.SIGNED && least >= 0) {
            throw new Unreadable(
                    "its signed samples hold no negative number, so that black may be 0 or " + (long) black + ANEW);
        }
        if (bits > 16 && form == Form.WHOLE && most < white / 256) {
            throw new Unreadable(
                    "its " + bits + "-bit samples reach only " + (long) most + " of " + (long) white + ANEW);
        }
    }

    /** The number that a sample stands for: the library gives 32 bits a sign, and 8 none. */
    double number(double sample) {
        return switch (form) {
            case FRACTION -> sample;
            case SIGNED -> sample > white ? sample - 256 : sample;
            case WHOLE -> turned ? Integer.reverseBytes((int) sample) >>> 8 : sample < 0 ? sample + 0x1p32 : sample;
        };
    }

    /** The sample as a code from 0 to {@code most}. */
    int code(double sample, int most) {
        double share = (number(sample) - black) / (white - black);
        return (int) (Math.min(1, Math.max(0, share)) * most + 0.5);
    }
}
