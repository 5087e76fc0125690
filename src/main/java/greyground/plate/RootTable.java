package greyground.plate;

/**
 * R^(1/n) of inked paper by film, tabulated because a patch asks for it at every pixel. Straight between 4096 films from
 * none to the thickest, which is within 3e-6 for films to 50 um and m 0.15 per um, and within 3e-4 at 100 um and m 0.5.
 */
final class RootTable {
    private static final int STEPS = 4096;

    private final double[] roots = new double[STEPS + 2];
    private final double stepsPerMicrometre;

    /**
     * Tabulates as far as is needed.
     *
     * @param films every film that will be asked for, in micrometres
     */
    RootTable(Ink ink, Paper paper, float[] films) {
        float thickest = 1e-3f;
        for (float film : films) {
            thickest = film > thickest ? film : thickest;
        }
        stepsPerMicrometre = STEPS / (double) thickest;
        for (int i = 0; i < roots.length; i++) {
            roots[i] = paper.root(ink.density(i / stepsPerMicrometre));
        }
    }

    /** R^(1/n) of a film. */
    double root(float filmMicrometres) {
        double at = filmMicrometres * stepsPerMicrometre;
        int below = (int) at;
        return roots[below] + (at - below) * (roots[below + 1] - roots[below]);
    }
}
