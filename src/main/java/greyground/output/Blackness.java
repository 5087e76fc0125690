package greyground.output;

/** How a film's samples, which count black, become samples that count light, and the other way. */
final class Blackness {
    private Blackness() {}

    /**
     * Turns part of a band over where it lies: every sample is taken from its largest value, which turns every bit over, those that only
     * fill a row up too.
     */
    static void turn(byte[] band, int offset, int count) {
        for (int i = offset; i < offset + count; i++) {
            band[i] = (byte) ~band[i];
        }
    }
}
