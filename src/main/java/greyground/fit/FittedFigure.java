package greyground.fit;

import greyground.quantity.Refusal;

/** What a test plate says about one number. */
public sealed interface FittedFigure {
    /** Which number. */
    FitParameter parameter();

    /**
     * The plate determined it.
     *
     * @param before its value before the fit, as the workshop had it
     * @param value the estimate
     * @param standardError of it, {@code sqrt} of the diagonal of the covariance, with what the numbers left fixed may do to it
     * @param low end of the 95 % interval
     * @param high end of the 95 % interval
     */
    record Determined(
            FitParameter parameter, double before, double value, double standardError, double low, double high)
            implements FittedFigure {}

    /**
     * The plate could not determine it; it stays as it was.
     *
     * @param reason in words, such as which number it can't be told from
     */
    record Undetermined(FitParameter parameter, double before, String reason) implements FittedFigure {
        /** One line for a person. */
        public String words() {
            String unit = parameter.allowed().unit().symbol(false);
            return parameter.words() + " stays at " + Refusal.plain(before) + (unit.isEmpty() ? "" : " " + unit) + ": "
                    + reason;
        }
    }
}
