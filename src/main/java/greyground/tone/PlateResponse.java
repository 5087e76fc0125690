package greyground.tone;

/**
 * How dark a plate prints for each coverage of the film: the seam between the tone curve and whatever knows the plate, be
 * it the virtual plate or a measured test plate.
 *
 * <p>A response need not be monotone: past the turning point more black on the film prints paler (open bite), and at the
 * light end the smallest openings do not wash out. {@link #usable()} names the interval that the curve may use.
 */
public interface PlateResponse {
    /**
     * The print's lightness.
     *
     * @param coverage film coverage, 0 (clear) to 1 (solid black)
     * @return CIE L*, absolute (a perfect white is 100), paper included
     */
    double lightness(double coverage);

    /** The coverages over which lightness falls strictly, so that an inverse exists. */
    UsableCoverage usable();

    /** A short name for legends and records, such as "virtual plate, a 40 µm bite". */
    String name();
}
