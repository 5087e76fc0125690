package greyground.scan;

/**
 * Where a plate lies on a scan: the projective map from the plate, in micrometres from its top left as the print reads, to scan pixels
 * counted from the top left corner of the first.
 *
 * <p>x = (a X + b Y + c) / w, y = (d X + e Y + f) / w, w = g X + h Y + 1.
 */
public record PlateOnScan(double a, double b, double c, double d, double e, double f, double g, double h) {
    /** Scan pixel across, of a place on the plate. */
    public double x(double xMicrometres, double yMicrometres) {
        return (a * xMicrometres + b * yMicrometres + c) / (g * xMicrometres + h * yMicrometres + 1);
    }

    /** Scan pixel down, of a place on the plate. */
    public double y(double xMicrometres, double yMicrometres) {
        return (d * xMicrometres + e * yMicrometres + f) / (g * xMicrometres + h * yMicrometres + 1);
    }

    /** Whether the scan shows the plate's print from behind, or its copper. */
    public boolean mirrored() {
        return a * e - b * d < 0;
    }
}
