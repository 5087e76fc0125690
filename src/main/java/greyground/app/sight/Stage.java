package greyground.app.sight;

/** Where a plate can be looked at, in the order it is made. */
public enum Stage {
    /** The positive on a light table. */
    FILM("film"),
    /** Resist, or sprayed ground, on the copper. */
    RESIST("resist"),
    /** The bitten plate, lit from the top left. */
    COPPER("copper"),
    /** The inked paper. */
    PRINT("print");

    private final String word;

    Stage(String word) {
        this.word = word;
    }

    /** The word on the command line and in captions. */
    public String word() {
        return word;
    }
}
