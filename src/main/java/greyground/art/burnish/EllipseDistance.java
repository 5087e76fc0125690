package greyground.art.burnish;

/**
 * Distance to an ellipse about the origin, its axes along x and y.
 *
 * <p>The nearest point (a² u / (t + a²), b² v / (t + b²)) of a place (u, v) in the first quadrant has the t that solves
 * (a u / (t + a²))² + (b v / (t + b²))² = 1, which falls as t rises: found by halving (Eberly 1998-2020, Distance from a Point to an Ellipse; from
 * memory).
 *
 * @param a radius along x, above 0
 * @param b radius along y, above 0
 */
record EllipseDistance(double a, double b) {
    /** Halvings: a thousandth of a micrometre on any plate. */
    private static final int HALVINGS = 48;

    /** How far inside a place lies, below 0 outside; no more than {@code most} either way. */
    double inside(double x, double y, double most) {
        double u = Math.abs(x);
        double v = Math.abs(y);
        double q = Math.sqrt(u / a * (u / a) + v / b * (v / b));
        // q rises by at most 1 / min(a, b) to the unit, and it is convex: two bounds that spare the search.
        if ((1 - q) * Math.min(a, b) >= most) {
            return most;
        }
        double rise = q == 0 ? 0 : Math.sqrt(u / (a * a) * (u / (a * a)) + v / (b * b) * (v / (b * b))) / q;
        if (q > 1 && (q - 1) >= most * rise) {
            return -most;
        }
        double distance = distance(u, v);
        return q <= 1 ? Math.min(most, distance) : Math.max(-most, -distance);
    }

    private double distance(double u, double v) {
        boolean wide = a >= b;
        double major = wide ? a : b;
        double minor = wide ? b : a;
        double along = wide ? u : v;
        double beside = wide ? v : u;
        if (beside == 0) {
            return onAxis(along, major, minor);
        }
        // With s = t / minor², the root lies between these two.
        double ratio = major / minor * (major / minor);
        double z0 = along / major;
        double z1 = beside / minor;
        double low = z1 - 1;
        double high = Math.sqrt(ratio * z0 * ratio * z0 + z1 * z1) - 1;
        double s = 0;
        for (int i = 0; i < HALVINGS; i++) {
            s = (low + high) / 2;
            double one = ratio * z0 / (s + ratio);
            double two = z1 / (s + 1);
            if (one * one + two * two > 1) {
                low = s;
            } else {
                high = s;
            }
        }
        double x = ratio * along / (s + ratio) - along;
        double y = beside / (s + 1) - beside;
        return Math.sqrt(x * x + y * y);
    }

    private static double onAxis(double along, double major, double minor) {
        double spread = major * major - minor * minor;
        if (along * major >= spread) {
            return Math.abs(along - major);
        }
        double x = major * along / spread;
        double nearest = major * x - along;
        double y = minor * Math.sqrt(1 - x * x);
        return Math.sqrt(nearest * nearest + y * y);
    }
}
