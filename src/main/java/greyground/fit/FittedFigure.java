package greyground.fit;

import greyground.quantity.Refusal;

/** What a test plate says about one number. */
public sealed interface FittedFigure {
    /** Which number. */
    FitParameter parameter();

    /** Its value before the fit, as the workshop had it. */
    double before();

    /** One line for a person. */
    String words();

    /**
     * The plate determined it.
     *
     * @param value the estimate
     * @param standardError of it, {@code sqrt} of the diagonal of the covariance, with what the numbers left fixed may do to it
     * @param low end of the 95 % interval
     * @param high end of the 95 % interval
     */
    record Determined(
            FitParameter parameter, double before, double value, double standardError, double low, double high)
            implements FittedFigure {
        @Override
        public String words() {
            String unit = parameter.unit().isEmpty() ? "" : " " + parameter.unit();
            return parameter.words() + " " + Refusal.plain(value) + unit + " (95 %: " + Refusal.plain(low) + " to "
                    + Refusal.plain(high) + "); it was " + Refusal.plain(before);
        }
    }

    /**
     * The plate could not determine it; it stays as it was.
     *
     * @param reason in words, such as which number it can't be told from
     */
    record Undetermined(FitParameter parameter, double before, String reason) implements FittedFigure {
        @Override
        public String words() {
            String unit = parameter.unit().isEmpty() ? "" : " " + parameter.unit();
            return parameter.words() + " stays at " + Refusal.plain(before) + unit + ": " + reason;
        }
    }
}
