package greyground.scan;

import greyground.chart.CornerCode;

/** A corner code as it should look, softened: what the scan is laid against to place it. */
final class CodePattern {
    /** Clear modules about the code that belong to it here. */
    private static final int RIM = 2;

    private static final int STEPS = 4;

    /** Softness in steps of the pattern, half a module: scan, bite and ink soften a print's edges (assumed). */
    private static final double SOFT = 2;

    private CodePattern() {}

    /** The pattern of a code over the plate. */
    static Pattern of(CornerCode code) {
        int modules = CornerCode.MODULES + 2 * RIM;
        int side = modules * STEPS;
        float[] dark = new float[side * side];
        for (CornerCode.Run run : code.runs()) {
            for (int y = (RIM + run.row()) * STEPS; y < (RIM + run.row() + 1) * STEPS; y++) {
                for (int x = (RIM + run.from()) * STEPS; x < (RIM + run.to()) * STEPS; x++) {
                    dark[y * side + x] = 1;
                }
            }
        }
        float[] soft = softened(softened(dark, side), side);
        double step = (double) code.area().width() / CornerCode.MODULES / STEPS;
        int inner = side / 2 - 1;
        int count = inner * inner;
        Pattern pattern = new Pattern(count);
        for (int j = 0; j < inner; j++) {
            for (int i = 0; i < inner; i++) {
                int x = 2 * i + 1;
                int y = 2 * j + 1;
                pattern.set(
                        j * inner + i,
                        code.area().left() + (x + 0.5 - RIM * STEPS) * step,
                        code.area().top() + (y + 0.5 - RIM * STEPS) * step,
                        soft[y * side + x],
                        (soft[y * side + x + 1] - soft[y * side + x - 1]) / (2 * step),
                        (soft[(y + 1) * side + x] - soft[(y - 1) * side + x]) / (2 * step));
            }
        }
        return pattern;
    }

    /** Along rows by a bell, and turned about its diagonal: twice is both ways. */
    private static float[] softened(float[] values, int side) {
        int reach = (int) Math.ceil(3 * SOFT);
        double[] bell = new double[reach + 1];
        double sum = 0;
        for (int i = -reach; i <= reach; i++) {
            bell[Math.abs(i)] = StrictMath.exp(-i * i / (2 * SOFT * SOFT));
            sum += bell[Math.abs(i)];
        }
        float[] turned = new float[values.length];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double mean = 0;
                for (int i = -reach; i <= reach; i++) {
                    int at = Math.max(0, Math.min(side - 1, x + i));
                    mean += bell[Math.abs(i)] * values[y * side + at];
                }
                turned[x * side + y] = (float) (mean / sum);
            }
        }
        return turned;
    }
}
