package greyground.plate.split;

/**
 * Two exposures of one plate, through the aquatint screen film and through the positive. Doses add: E = Es Ts + Ei Ti. Doses are
 * relative to the one that hardens the film, so a place is land where E is at least 1. The order of the two does not matter here;
 * a film that loses light's effect between them (low-intensity reciprocity failure) is not covered.
 *
 * <p>Whatever the doses, land is where the screen lets through at least one critical share of light. The doses only say which
 * density of the image sets which critical share.
 *
 * @param screenDose Es, behind no film
 * @param imageDose Ei, behind no film
 */
public record DoubleExposure(double screenDose, double imageDose) {
    /**
     * Screen transmission at which a place just hardens under an image density: (1 - Ei Ti) / Es. Zero or less: hard under any
     * screen; more than the clear screen's: soft everywhere.
     */
    public double criticalScreenTransmission(double imageDensity) {
        return (1 - imageDose * StrictMath.pow(10, -imageDensity)) / screenDose;
    }

    /**
     * Image density under which the screen's critical transmission is the stated one, the inverse of
     * {@link #criticalScreenTransmission}: log10(Ei / (1 - Es Ts)).
     *
     * @return positive infinity where even an opaque image leaves more than that to harden
     */
    public double imageDensityFor(double criticalScreenTransmission) {
        double missing = 1 - screenDose * criticalScreenTransmission;
        return missing <= 0 ? Double.POSITIVE_INFINITY : StrictMath.log10(imageDose / missing);
    }
}
