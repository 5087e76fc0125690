package greyground.film.sheet;

/** How long a legend becomes in the face it is set in. */
@FunctionalInterface
public interface TextWidth {
    /**
     * A generous guess for a plain sans-serif face, for layouts made before the face is known: 0.86 of the cap height a
     * character (assumed; about 0.62 of the type size, where text averages near 0.5).
     */
    TextWidth GENEROUS = (text, capHeightMillimetres) -> 0.86 * capHeightMillimetres * text.length();

    /** Millimetres from the first character's start to the last one's end. */
    double millimetres(String text, double capHeightMillimetres);
}
