package greyground.fit;

import greyground.quantity.Refusal;

/**
 * One number of the workshop that a test plate would change.
 *
 * @param path in the workshop's file, such as "bath.etchFactor"
 * @param before its value there
 * @param beforeProvenance how that was known, in words, such as "assumed"
 * @param after the fitted value
 * @param standardError of the fitted value, above 0
 */
public record FigureChange(String path, double before, String beforeProvenance, double after, double standardError) {
    public FigureChange {
        if (!Double.isFinite(after) || !(standardError > 0)) {
            throw Refusal.use("change of " + path + " is to " + after + " with error " + standardError
                    + "; the value must be finite and its error above 0: fit it again");
        }
    }

    /** Half the width of the interval that holds the true value 19 times in 20 (normal errors). */
    public double half95() {
        return new FilmPrinterFit.Estimate(after, standardError).half95();
    }

    /** One line for a person. */
    public String words() {
        return path + ": " + Refusal.plain(before) + " (" + beforeProvenance + ") becomes " + Refusal.plain(after)
                + ", standard error " + Refusal.plain(standardError);
    }
}
