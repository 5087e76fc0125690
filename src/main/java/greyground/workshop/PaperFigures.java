package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * The printing paper.
 *
 * @param whiteDensity visual density of the bare sheet, 0 to 0.6, absolute
 * @param shrinkXPercent from damp to dry across the plate, -5 to 5
 * @param shrinkYPercent from damp to dry down the plate, -5 to 5
 */
public record PaperFigures(Figure whiteDensity, Figure shrinkXPercent, Figure shrinkYPercent) {
    public static final Range WHITE_DENSITY = new Range(0, 0.6, Unit.DENSITY, "measure the bare sheet");

    public PaperFigures {
        whiteDensity.within("paper.whiteDensity", WHITE_DENSITY);
        shrinkXPercent.within("paper.shrinkXPercent", -5, 5, "%", "measure a platemark damp and dry");
        shrinkYPercent.within("paper.shrinkYPercent", -5, 5, "%", "measure a platemark damp and dry");
    }

    /** White cotton paper that keeps its size. */
    public static PaperFigures assumed() {
        String shrink = "assumed none until measured; from memory cotton paper moves 0.2-2 %, unverified";
        return new PaperFigures(
                Figure.assumed(0.06, "from memory: white cotton paper, L* about 95, unverified"),
                Figure.assumed(0, shrink),
                Figure.assumed(0, shrink));
    }
}
