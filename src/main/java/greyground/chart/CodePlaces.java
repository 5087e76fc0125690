package greyground.chart;

import greyground.quantity.Refusal;
import java.util.List;

/**
 * Where the codes of a plate stand, and the room that is left.
 *
 * @param inner the plate inside its bevel and margin
 * @param module side of a module of the codes
 */
record CodePlaces(Area inner, int module) {
    /** Clear film between the bevel and everything on the plate. */
    static final int MARGIN = 1000;

    static CodePlaces of(Recipe recipe) {
        int away = recipe.bevelMicrometres() + MARGIN;
        Area inner = new Area(away, away, recipe.widthMicrometres() - 2 * away, recipe.heightMicrometres() - 2 * away);
        return new CodePlaces(inner, recipe.codeModuleMicrometres());
    }

    /** Side of a code with its quiet zone. */
    int side() {
        return CornerCode.WITH_QUIET * module;
    }

    /** One in each corner, or, on a narrow strip, one at each end. */
    List<Area> corners() {
        int right = inner.right() - side();
        int bottom = inner.bottom() - side();
        if (inner.width() >= 2 * side() + 4000 && inner.height() >= 2 * side() + 4000) {
            return List.of(
                    code(inner.left(), inner.top()),
                    code(right, inner.top()),
                    code(inner.left(), bottom),
                    code(right, bottom));
        }
        if (inner.width() < side() || inner.height() < side()) {
            throw Refusal.use("inside its bevel the plate measures " + inner.width() / 1000.0 + " x "
                    + inner.height() / 1000.0 + " mm; a code takes " + side() / 1000.0
                    + " mm each way: use a narrower bevel or a larger plate");
        }
        int across = inner.left() + (inner.width() - side()) / 2;
        int down = inner.top() + (inner.height() - side()) / 2;
        return inner.width() >= inner.height()
                ? List.of(code(inner.left(), down), code(right, down))
                : List.of(code(across, inner.top()), code(across, bottom));
    }

    /** The bands between the codes along the plate's top and bottom; none where the codes don't stand in four corners. */
    List<Area> bands() {
        if (corners().size() < 4) {
            return List.of();
        }
        int width = inner.width() - 2 * side();
        return List.of(
                new Area(inner.left() + side(), inner.top(), width, side()),
                new Area(inner.left() + side(), inner.bottom() - side(), width, side()));
    }

    /** A code whose quiet zone starts there. */
    Area code(int left, int top) {
        int quiet = CornerCode.QUIET * module;
        return new Area(left + quiet, top + quiet, CornerCode.MODULES * module, CornerCode.MODULES * module);
    }
}
