package greyground.film.job;

/** What the art is to begin with. */
public enum Origin {
    /** A print is told, and nothing is changed. */
    AUTOMATIC,
    /** A photograph, a drawing: its tones are its own, and no screen of dots is looked for. */
    CONTINUOUS,
    /** A page of a book, a poster: its dots are taken out before the film puts in its own. */
    PRINTED,
    /** Pen, woodcut, text: ink or paper and nothing between, so that its strokes get hard edges and no grain where the plate holds that. */
    LINE
}
