package greyground.plate;

/**
 * The job's own film at every tone: the seam through which grain, halftone or continuous tone reaches the virtual plate.
 * Called by many threads at once.
 */
public interface FilmPatches {
    /**
     * A patch of uniform tone. All patches of one source have the same size.
     *
     * @param coverage what the tone curve would send to the film, 0 (clear) to 1 (solid black)
     */
    FilmPatch at(double coverage);

    /** Words that differ whenever any patch differs, such as "grain 180 um seed 7 at 1440 dpi"; part of the digest. */
    String name();

    /**
     * Continuous-tone film whose density runs evenly from clear to black.
     *
     * @param film its printer
     */
    static FilmPatches continuous(Film film) {
        return new FilmPatches() {
            @Override
            public FilmPatch at(double coverage) {
                return FilmPatch.uniform(film.clearDensity() + coverage * (film.blackDensity() - film.clearDensity()));
            }

            @Override
            public String name() {
                return "continuous tone " + film;
            }
        };
    }
}
