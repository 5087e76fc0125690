package greyground.plate;

/**
 * The tones a plate can print in order, as absolute CIE L*.
 *
 * @param bare lightness of untouched plate on paper
 * @param lightest lightness of the lightest tone that bites; between it and {@code bare} nothing can be printed
 * @param darkest lightness at the turning point
 */
public record PrintableRange(double bare, double lightest, double darkest) {
    /** Lightness steps that no coverage gives, just below bare paper; near 0 where tones set in softly. */
    public double lightGap() {
        return bare - lightest;
    }
}
