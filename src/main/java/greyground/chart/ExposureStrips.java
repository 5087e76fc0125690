package greyground.chart;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays out an exposure test: strips across the plate, all alike, that are covered one after the other from the top. Each carries a short
 * wedge in one shuffled order, line pairs, dots and holes. The codes stand half way down, where the exposure is near the usual one.
 */
final class ExposureStrips {
    private static final int MOST_STRIPS = 7;
    private static final int FEWER_STRIPS = 5;
    private static final int LEAST_STRIP = 10_000;
    private static final int TWO_CODES_FROM = 100_000;
    private static final int LABEL = 2_200;
    private static final int EDGE = 600;
    private static final int PATCH_GAP = 700;
    private static final int LEAST_CELL = 2_000;
    private static final int LARGEST_CELL = 14_000;

    private ExposureStrips() {}

    static TestPlate of(Recipe recipe) {
        CodePlaces places = CodePlaces.of(recipe);
        Area inner = places.inner();
        boolean two = recipe.widthMicrometres() >= TWO_CODES_FROM;
        int codeTop = inner.top() + (inner.height() - places.side()) / 2;
        List<Area> codes = new ArrayList<>();
        codes.add(places.code(inner.left(), codeTop));
        if (two) {
            codes.add(places.code(inner.right() - places.side(), codeTop));
        }
        int left = inner.left() + places.side();
        int right = inner.right() - (two ? places.side() : 0);
        if (right - left - LABEL < Levels.EXPOSURE.size() * LEAST_CELL || inner.height() < places.side()) {
            throw Refusal.use("beside its codes of " + places.side() / 1000.0
                    + " mm the plate has no room for strips: use a finer"
                    + " grain, a narrower bevel or a larger plate");
        }
        int count = inner.height() / MOST_STRIPS >= LEAST_STRIP ? MOST_STRIPS : FEWER_STRIPS;
        List<Integer> order = Shuffle.shuffled(Levels.EXPOSURE, recipe.seed());
        List<TestPlate.Strip> strips = new ArrayList<>();
        List<LevelPatch> patches = new ArrayList<>();
        List<Target> targets = new ArrayList<>();
        int fittingDots = 0;
        for (int number = 1; number <= count; number++) {
            int top = inner.top() + (int) ((long) (number - 1) * inner.height() / count);
            int bottom = inner.top() + (int) ((long) number * inner.height() / count);
            strips.add(new TestPlate.Strip(number, new Area(0, top, recipe.widthMicrometres(), bottom - top)));
            targets.add(Target.Numeral.at(left, top + EDGE, number));
            int room = bottom - top - 2 * EDGE;
            int from = left + LABEL;
            int cellHeight = Math.min(LARGEST_CELL, room - TargetBlocks.DOT_ROW_HEIGHT - EDGE);
            int cellWidth = Math.min(LARGEST_CELL, (right - from) / order.size());
            for (int i = 0; i < order.size(); i++) {
                Area cell = new Area(from + i * cellWidth, top + EDGE, cellWidth - PATCH_GAP, cellHeight);
                patches.add(new LevelPatch(cell, order.get(i)));
            }
            int row = top + EDGE + cellHeight + EDGE;
            int lines = Math.min(Target.Lines.PERIODS.size(), (right - from) / TargetBlocks.LINE_STEP);
            targets.addAll(TargetBlocks.lines(from, row, lines, true));
            int afterLines = from + lines * TargetBlocks.LINE_STEP;
            fittingDots = Math.min(Target.Dots.DIAMETERS.size(), (right - afterLines) / TargetBlocks.DOT_STEP);
            targets.addAll(TargetBlocks.dots(afterLines, row, fittingDots));
        }
        String id = TestPlate.idOf(patches, targets, codes);
        return new TestPlate(
                recipe,
                patches,
                targets,
                TestPlate.codes(recipe, codes, id),
                strips,
                List.of("each strip: film coverage " + percents(order) + " %; below, line pairs of "
                        + TargetBlocks.sizes(Target.Lines.PERIODS) + " µm, then dots and holes from 10 µm"),
                leftOut(count, fittingDots, two));
    }

    private static String percents(List<Integer> order) {
        return TargetBlocks.sizes(order.stream().map(level -> level / 10).toList());
    }

    private static List<String> leftOut(int strips, int dots, boolean two) {
        List<String> out = new ArrayList<>();
        if (strips < MOST_STRIPS) {
            out.add("two of seven strips: five remain");
        }
        if (dots < Target.Dots.DIAMETERS.size()) {
            out.add("dots and holes from " + Target.Dots.DIAMETERS.get(dots) + " µm up");
        }
        if (!two) {
            out.add("the second code: one remains");
        }
        return out;
    }
}
