package greyground.plate;

/** What is looked at on a plate: a number for each pixel of its states, whose mean over a cell means something. */
@FunctionalInterface
public interface PlateView {
    /**
     * Looks at a patch. Called by many threads at once.
     *
     * @param states of a plate under these conditions; the view must not change them
     * @return one value a pixel
     */
    float[] of(PlateConditions conditions, PlateStates states);

    /** Whether the view needs the film's transmission and nothing else; other views find that left out of the states. */
    default boolean seesFilmAlone() {
        return false;
    }

    /** R^(1/n) of the print, whose mean gives the reflectance of the cell ({@link Paper#reflectance}). */
    static PlateView printRoot() {
        return (conditions, states) -> printRoot(conditions.ink()).of(conditions, states);
    }

    /** The same with an ink that differs from the plate's own in its densities alone, so that its film lies alike. */
    static PlateView printRoot(Ink ink) {
        return (conditions, states) -> {
            float[] film = states.printMicrometres();
            RootTable table = new RootTable(ink, conditions.paper(), film);
            float[] roots = new float[film.length];
            for (int i = 0; i < roots.length; i++) {
                roots[i] = (float) table.root(film[i]);
            }
            return roots;
        };
    }

    /** Light that the positive film lets through, 0 to 1. */
    static PlateView filmLight() {
        return new PlateView() {
            @Override
            public float[] of(PlateConditions conditions, PlateStates states) {
                return states.transmission();
            }

            @Override
            public boolean seesFilmAlone() {
                return true;
            }
        };
    }

    /** 1 where resist or sprayed ground keeps the bath off, else 0: the share of a cell that is covered. */
    static PlateView covered() {
        return (conditions, states) -> {
            float[] share = new float[states.covered().length];
            for (int i = 0; i < share.length; i++) {
                share[i] = states.covered()[i] ? 1 : 0;
            }
            return share;
        };
    }
}
