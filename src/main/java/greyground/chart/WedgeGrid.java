package greyground.chart;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lays out a plate with a wedge: codes in the corners, groups of targets between them, and over all that is left a grid of cells for
 * the levels, as large as four repeats allow.
 */
final class WedgeGrid {
    /** Clear film between patches: a land that carries the wiping pad. */
    private static final int PATCH_GAP = 700;

    private static final int LARGEST_CELL = 12_000;
    private static final int SMALLEST_CELL = 3_800;
    private static final int CELL_STEP = 100;
    private static final int WANTED_REPEATS = 4;
    private static final int FEWEST_REPEATS = 3;
    private static final int STARS = 5;
    private static final int LARGEST_STAR = 6_000;

    private WedgeGrid() {}

    static TestPlate of(Recipe recipe) {
        return of(recipe, Levels.WEDGE, true);
    }

    static TestPlate withoutDarks(Recipe recipe) {
        return of(recipe, Levels.WEDGE, false);
    }

    /**
     * The same with other levels.
     *
     * @param wanted in tenths of a percent, each once
     */
    static TestPlate of(Recipe recipe, List<Integer> wanted) {
        return of(recipe, wanted, true);
    }

    private static TestPlate of(Recipe recipe, List<Integer> wanted, boolean darks) {
        CodePlaces places = CodePlaces.of(recipe);
        List<Area> corners = places.corners();
        boolean full = recipe.kind() == Recipe.Kind.FULL;
        List<Area> bands = full ? places.bands() : List.of();
        List<Target> targets = new ArrayList<>();
        List<Area> taken = new ArrayList<>();
        List<String> legend = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        // A code's quiet zone parts it from everything; the groups of targets bring none of their own.
        int quiet = CornerCode.QUIET * corners.get(0).width() / CornerCode.MODULES;
        corners.forEach(corner -> taken.add(corner.grown(quiet - PATCH_GAP / 2)));
        if (full && bands.isEmpty()) {
            leftOut.add("all numbered targets: the plate holds no more than two codes and the wedge");
        } else if (full) {
            TargetBlocks blocks = TargetBlocks.in(bands);
            if (darks) {
                blocks.darks(10 * recipe.codePercent());
            }
            targets.addAll(blocks.targets);
            blocks.taken.forEach(block -> taken.add(block.grown(TargetBlocks.GAP / 2)));
            legend.addAll(blocks.legend);
            leftOut.addAll(blocks.leftOut);
        }
        int stars = full ? STARS : 0;
        int fewest = recipe.kind() == Recipe.Kind.CHECK ? WANTED_REPEATS : FEWEST_REPEATS;
        List<Area> cells = cells(places.inner(), taken, stars, wanted.size(), fewest);
        if (full) {
            for (Area cell : starCells(places.inner(), places.side(), cells)) {
                cells.remove(cell);
                targets.add(new Target.Star(star(cell)));
            }
            legend.add("stars: the blur at their middle shows how far light and bath spread"
                    + (targets.stream().anyMatch(Target.Dark.class::isInstance)
                            ? "; grey squares: what stray light a scanner adds"
                            : ""));
        }
        List<Integer> levels = Shuffle.deal(cells, wanted, recipe.seed());
        List<LevelPatch> patches = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            patches.add(new LevelPatch(cells.get(i).grown(-PATCH_GAP / 2), levels.get(i)));
        }
        String id = TestPlate.idOf(patches, targets, corners);
        return new TestPlate(
                recipe, patches, targets, TestPlate.codes(recipe, corners, id), List.of(), legend, leftOut);
    }

    /** The largest cells that hold every level four times, or else as few times as will do. */
    private static List<Area> cells(Area inner, List<Area> taken, int stars, int levels, int fewest) {
        for (int repeats = WANTED_REPEATS; repeats >= fewest; repeats--) {
            for (int pitch = LARGEST_CELL; pitch >= SMALLEST_CELL; pitch -= CELL_STEP) {
                List<Area> cells = grid(inner, pitch, taken);
                if (cells.size() >= repeats * levels + stars) {
                    return cells;
                }
            }
        }
        throw Refusal.use("inside its bevel the plate measures " + inner.width() / 1000.0 + " x "
                + inner.height() / 1000.0 + " mm, too little for " + levels + " levels "
                + fewest + " times: use a narrower bevel or a larger plate");
    }

    /** Cells of about that width all over a plate, but where something lies. */
    static List<Area> grid(Area inner, int pitch, List<Area> taken) {
        int columns = inner.width() / pitch;
        int rows = inner.height() / pitch;
        List<Area> cells = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            int top = inner.top() + (int) ((long) row * inner.height() / rows);
            int bottom = inner.top() + (int) ((long) (row + 1) * inner.height() / rows);
            for (int column = 0; column < columns; column++) {
                int left = inner.left() + (int) ((long) column * inner.width() / columns);
                int right = inner.left() + (int) ((long) (column + 1) * inner.width() / columns);
                Area cell = new Area(left, top, right - left, bottom - top);
                if (taken.stream().noneMatch(cell::meets)) {
                    cells.add(cell);
                }
            }
        }
        return cells;
    }

    /** The cells nearest the plate's middle and those at its left and right edges next to the codes. */
    private static List<Area> starCells(Area inner, int codeSide, List<Area> cells) {
        List<Area> free = new ArrayList<>(cells);
        List<Area> chosen = new ArrayList<>();
        int[][] places = {
            {inner.left() + inner.width() / 2, inner.top() + inner.height() / 2},
            {inner.left(), inner.top() + codeSide},
            {inner.right(), inner.top() + codeSide},
            {inner.left(), inner.bottom() - codeSide},
            {inner.right(), inner.bottom() - codeSide}
        };
        for (int[] place : places) {
            Area nearest = free.stream()
                    .min(Comparator.comparingLong(cell -> square(cell.left() + cell.width() / 2 - place[0])
                            + square(cell.top() + cell.height() / 2 - place[1])))
                    .orElseThrow();
            free.remove(nearest);
            chosen.add(nearest);
        }
        return chosen;
    }

    private static Area star(Area cell) {
        int side = Math.min(LARGEST_STAR, Math.min(cell.width(), cell.height()) - PATCH_GAP);
        return new Area(cell.left() + (cell.width() - side) / 2, cell.top() + (cell.height() - side) / 2, side, side);
    }

    private static long square(long value) {
        return value * value;
    }
}
