package greyground.plate;

/** No bite: the ink lies where light has hardened the film only part of the way, or where it washed out. */
public record FilmRelief() implements Wells {
    /**
     * Depth of the wells in the film itself: thickness less what is retained, but nothing where an opening is too narrow to
     * wash out, and all of it where a land is too narrow to hold.
     *
     * @return micrometres, 0 at the film's top
     */
    static float[] depth(float[] dose, boolean[] hard, Resist resist) {
        float[] depth = new float[dose.length];
        double throughCure = resist.throughCureDoseRatio();
        for (int i = 0; i < depth.length; i++) {
            boolean lightHardens = dose[i] >= throughCure;
            if (!hard[i]) {
                double kept = lightHardens ? 0 : resist.retained(dose[i]);
                depth[i] = (float) (resist.thicknessMicrometres() * (1 - kept));
            }
        }
        return depth;
    }
}
