package greyground.scan;

/**
 * Places on the plate with the share of ink each should show and how that share rises across and down, per micrometre. The ink's and the
 * paper's light are not told: they come from the scan.
 */
final class Pattern {
    private final double[] x;
    private final double[] y;
    private final float[] ink;
    private final float[] riseX;
    private final float[] riseY;

    Pattern(int size) {
        this.x = new double[size];
        this.y = new double[size];
        this.ink = new float[size];
        this.riseX = new float[size];
        this.riseY = new float[size];
    }

    void set(int i, double atX, double atY, double share, double risingX, double risingY) {
        x[i] = atX;
        y[i] = atY;
        ink[i] = (float) share;
        riseX[i] = (float) risingX;
        riseY[i] = (float) risingY;
    }

    int size() {
        return x.length;
    }

    double x(int i) {
        return x[i];
    }

    double y(int i) {
        return y[i];
    }

    double ink(int i) {
        return ink[i];
    }

    double riseX(int i) {
        return riseX[i];
    }

    double riseY(int i) {
        return riseY[i];
    }

    /** How well the scan shows the pattern at a place, moved by some micrometres: 1 wholly, 0 not at all, -1 as its negative. */
    double likeness(LightMap roots, Projective place, double movedX, double movedY, int every) {
        double n = 0;
        double sumT = 0;
        double sumI = 0;
        double sumTT = 0;
        double sumII = 0;
        double sumTI = 0;
        for (int i = 0; i < x.length; i += every) {
            double px = x[i] + movedX;
            double py = y[i] + movedY;
            double light = roots.at(place.x(px, py), place.y(px, py));
            if (Double.isNaN(light)) {
                continue;
            }
            double t = -ink[i];
            n++;
            sumT += t;
            sumI += light;
            sumTT += t * t;
            sumII += light * light;
            sumTI += t * light;
        }
        double varianceT = sumTT - sumT * sumT / n;
        double varianceI = sumII - sumI * sumI / n;
        // Less than two thirds on the scan is no likeness.
        return n * every * 1.5 < x.length || !(varianceI > 0) || !(varianceT > 0)
                ? 0
                : (sumTI - sumT * sumI / n) / Math.sqrt(varianceT * varianceI);
    }
}
