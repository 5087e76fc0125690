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
     * This model would have it, but not what else may be: it stays as it was, and is told as this model sees it.
     *
     * @param value by the model as it is
     * @param low end of the 95 % interval, were the model and the scanner right
     * @param high end of that interval
     */
    record AsSeen(FitParameter parameter, double before, double value, double low, double high)
            implements FittedFigure {
        /** Why it is no more than that. */
        public String reason() {
            return "as this model sees it " + withUnit(parameter, Math.rint(value * 100) / 100) + " (" + rounded(low)
                    + " to " + rounded(high) + "), but a plate or scanner a little unlike it would print the same";
        }

        /** One line for a person. */
        public String words() {
            return stays(parameter, before, reason());
        }

        private static String rounded(double value) {
            return Refusal.plain(Math.rint(value * 100) / 100);
        }
    }

    /**
     * The plate could not determine it; it stays as it was.
     *
     * @param reason in words, such as which number it can't be told from
     */
    record Undetermined(FitParameter parameter, double before, String reason) implements FittedFigure {
        /** One line for a person. */
        public String words() {
            return stays(parameter, before, reason);
        }
    }

    private static String stays(FitParameter parameter, double before, String reason) {
        return parameter.words() + " stays at " + withUnit(parameter, before) + ": " + reason;
    }

    private static String withUnit(FitParameter parameter, double value) {
        String unit = parameter.allowed().unit().symbol(false);
        return Refusal.plain(value) + (unit.isEmpty() ? "" : " " + unit);
    }
}
