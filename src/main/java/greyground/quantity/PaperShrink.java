package greyground.quantity;

/**
 * How much a damp sheet shrinks from the press to dry, so that the film can be made larger by as much: a plate of size P
 * prints P (1 - s), and a wanted print of size P asks for a film of P / (1 - s), in each direction by itself.
 *
 * <p>Cotton etching papers move 0.5 to 2 % across the grain and 0.2 to 0.8 % along it (from memory, unverified); the shop
 * measures its own.
 *
 * @param acrossPercent along the film's width, -5 to 10; a negative value is a sheet that grows
 * @param downPercent along the film's height, -5 to 10
 */
public record PaperShrink(double acrossPercent, double downPercent) {
    /** How much papers move. */
    public static final Range PERCENT =
            new Range(-5, 10, Unit.PERCENT, "measure a printed sheet damp and dry; 0.2 to 2 is usual");

    /** Paper that keeps its size. */
    public static final PaperShrink NONE = new PaperShrink(0, 0);

    public PaperShrink {
        PERCENT.check("paper shrinkage across", acrossPercent);
        PERCENT.check("paper shrinkage down", downPercent);
    }

    /**
     * Reads {@code "0.7%,0.4%"} (across, down), or one value for both.
     *
     * @param what the trade's name, used when refusing
     */
    public static PaperShrink parse(String what, String text) {
        String[] pair = Measure.pair(text);
        double across = Unit.PERCENT.parse(what, pair[0]);
        return new PaperShrink(across, pair.length == 1 ? across : Unit.PERCENT.parse(what, pair[1]));
    }

    /** Film width for a print of width 1. */
    public double filmScaleAcross() {
        return 1 / (1 - acrossPercent / 100);
    }

    /** Film height for a print of height 1. */
    public double filmScaleDown() {
        return 1 / (1 - downPercent / 100);
    }
}
