package greyground.film.sheet;

/** Digits of seven bars, which need no type face: top, upper left, upper right, middle, lower left, lower right, bottom. */
public final class BarDigits {
    private static final int[] BARS = {
        0b1110111, 0b0100100, 0b1011101, 0b1101101, 0b0101110, 0b1101011, 0b1111011, 0b0100101, 0b1111111, 0b1101111
    };

    private BarDigits() {}

    /**
     * Whether a digit has a bar.
     *
     * @param digit '0' to '9'
     * @param bar 0 to 6 in the order above
     */
    public static boolean has(char digit, int bar) {
        return (BARS[digit - '0'] & (1 << bar)) != 0;
    }
}
