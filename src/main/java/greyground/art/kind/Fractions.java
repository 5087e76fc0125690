package greyground.art.kind;

import greyground.art.page.SampleReading;
import greyground.art.page.Unreadable;
import java.nio.ByteBuffer;

/** Samples of 32-bit fractions, 0 black and 1 white, as sixteen bits. */
final class Fractions {
    /** Assumed: how far over white light may be stated, and is then white; beyond it the scale must be another one. */
    private static final float OVER_WHITE = 16;

    private Fractions() {}

    /** Codes all fractions of {@code from} at the start of {@code into}, big end first. */
    static void code(ByteBuffer from, byte[] into) throws Unreadable {
        code(from, into, 0);
    }

    static void code(ByteBuffer from, byte[] into, int at) throws Unreadable {
        for (int i = at; from.hasRemaining(); i += 2) {
            float sample = from.getFloat();
            if (!(sample <= OVER_WHITE)) {
                throw new Unreadable("its fractional samples reach " + sample
                        + " where 1 is white: save it with 16 bits as TIFF or PNG");
            }
            SampleReading.putTwo(into, i, (int) (Math.min(1, Math.max(0, sample)) * 65_535.0 + 0.5), true);
        }
    }
}
