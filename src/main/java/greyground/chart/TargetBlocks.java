package greyground.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Puts groups of targets into the bands between the codes, each with its number at its left, as far as there is room. A group that
 * fits nowhere is left out whole and named.
 */
final class TargetBlocks {
    /** Clear film between groups, and between a group and anything else. */
    static final int GAP = 1000;

    private static final int LABEL = 1800;
    private static final int BAR_GAP = 800;
    private static final int BAR_LENGTH = 6000;
    static final int DOT_STEP = 1900;
    private static final int DOT_FIELD = 1500;
    private static final int DOT_HEIGHT = 2000;
    private static final int BAND_HEIGHT = 600;

    /** Dots and, below them, holes. */
    static final int DOT_ROW_HEIGHT = DOT_HEIGHT + BAND_HEIGHT + 400;

    static final int LINE_STEP = 2300;
    private static final int LINE_FIELD = 1900;

    /** A large dark and the clear film beside it that holds two small ones. */
    private static final int DARK_WIDTH = 12_000;

    private static final int LIGHT_WIDTH = 16_000;
    private static final int SMALL_DARK = 3_000;
    private static final int[] DARK_HEIGHTS = {15_000, 13_000, 11_000, 9_000};

    final List<Target> targets = new ArrayList<>();

    /** Room taken by the groups. */
    final List<Area> taken = new ArrayList<>();

    final List<String> legend = new ArrayList<>();
    final List<String> leftOut = new ArrayList<>();
    private final List<Band> bands;

    private TargetBlocks(List<Area> rooms) {
        this.bands = rooms.stream().map(Band::new).toList();
    }

    /**
     * Fills the bands.
     *
     * @param rooms the preferred first; a second one takes dots and lines
     */
    static TargetBlocks in(List<Area> rooms) {
        TargetBlocks blocks = new TargetBlocks(rooms);
        int last = rooms.size() - 1;
        blocks.bars(0, true);
        blocks.bare(0);
        blocks.dots(last);
        blocks.lines(last);
        blocks.bars(0, false);
        return blocks;
    }

    private void bars(int preferred, boolean upright) {
        int run =
                Target.Bar.WIDTHS.stream().mapToInt(Integer::intValue).sum() + (Target.Bar.WIDTHS.size() - 1) * BAR_GAP;
        Area room = upright
                ? place(preferred, LABEL + run, BAR_LENGTH, "the bar gauge")
                : place(preferred, LABEL + BAR_LENGTH, run, "the second bar gauge, lying across the first");
        if (room == null) {
            return;
        }
        int at = upright ? room.left() + LABEL : room.top();
        for (int bar : Target.Bar.WIDTHS) {
            Area area = upright
                    ? new Area(at, room.top(), bar, BAR_LENGTH)
                    : new Area(room.left() + LABEL, at, BAR_LENGTH, bar);
            targets.add(new Target.Bar(area, upright));
            at += bar + BAR_GAP;
        }
        label(
                room,
                upright
                        ? "bars " + sizes(Target.Bar.WIDTHS)
                                + " µm wide: the widest that prints black gives the wiping radius"
                        : "the same bars lying across, from the top");
    }

    private void bare(int preferred) {
        Band band = bands.get(preferred);
        boolean wide = band.room.width() > 70_000;
        int width = wide ? 40_000 : 18_000;
        int height = wide ? 6_000 : 3_000;
        Area room = place(preferred, LABEL + width, height, "the bare strip for depth");
        if (room != null) {
            targets.add(new Target.Bare(new Area(room.left() + LABEL, room.top(), width, height)));
            label(
                    room,
                    "bare strip " + width / 1000 + " x " + height / 1000
                            + " mm: measure the bitten depth here, by its step");
        }
    }

    private void dots(int preferred) {
        List<Integer> sizes = Target.Dots.DIAMETERS;
        Area room = place(preferred, LABEL + sizes.size() * DOT_STEP, DOT_ROW_HEIGHT, "dots and holes");
        if (room != null) {
            targets.addAll(dots(room.left() + LABEL, room.top(), sizes.size()));
            label(room, "dots, and below them holes, " + sizes(sizes) + " µm: smallest opening and smallest land");
        }
    }

    /** Dots and, below them, a band with holes, of the first sizes. */
    static List<Target> dots(int left, int top, int count) {
        List<Target> row = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int diameter = Target.Dots.DIAMETERS.get(i);
            int pitch = Math.max(3 * diameter, 60);
            int x = left + i * DOT_STEP;
            row.add(new Target.Dots(new Area(x, top, DOT_FIELD, DOT_HEIGHT), diameter, pitch));
            row.add(new Target.Holes(
                    new Area(x, top + DOT_HEIGHT + 400, DOT_FIELD, BAND_HEIGHT), diameter, Math.max(2 * diameter, 60)));
        }
        return row;
    }

    private void lines(int preferred) {
        List<Integer> periods = Target.Lines.PERIODS;
        Area room = place(
                preferred,
                LABEL + periods.size() * LINE_STEP - (LINE_STEP - LINE_FIELD),
                LINE_STEP + LINE_FIELD,
                "line pairs");
        if (room != null) {
            targets.addAll(lines(room.left() + LABEL, room.top(), periods.size(), true));
            targets.addAll(lines(room.left() + LABEL, room.top() + LINE_STEP, periods.size(), false));
            label(room, "line pairs, upright and lying, one black and one clear line in " + sizes(periods) + " µm");
        }
    }

    /** Line pairs of the first periods, side by side. */
    static List<Target> lines(int left, int top, int count, boolean upright) {
        List<Target> row = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            row.add(new Target.Lines(
                    new Area(left + i * LINE_STEP, top, LINE_FIELD, LINE_FIELD), Target.Lines.PERIODS.get(i), upright));
        }
        return row;
    }

    /** Dark grain amid dark and amid light, in every band that has room, as high as it has. They speak to a scanner, so bear no number. */
    void darks(int coveragePerMille) {
        int width = DARK_WIDTH + LIGHT_WIDTH;
        int before = targets.size();
        for (Band band : bands) {
            for (int height : DARK_HEIGHTS) {
                Area room = band.place(width, height);
                if (room != null) {
                    taken.add(room);
                    darks(room, coveragePerMille);
                    break;
                }
            }
        }
        if (targets.size() == before) {
            leftOut.add("the darks that show a scanner's stray light (" + takes(width, DARK_HEIGHTS[3]));
        }
    }

    private void darks(Area room, int coveragePerMille) {
        int clear = room.left() + DARK_WIDTH;
        int inset = 1_000;
        for (Area area : List.of(
                new Area(room.left(), room.top(), DARK_WIDTH, room.height()),
                new Area(clear + LIGHT_WIDTH / 4, room.top() + inset, SMALL_DARK, SMALL_DARK),
                new Area(
                        clear + LIGHT_WIDTH / 4 + SMALL_DARK + LIGHT_WIDTH / 4,
                        room.bottom() - inset - SMALL_DARK,
                        SMALL_DARK,
                        SMALL_DARK))) {
            targets.add(new Target.Dark(area, coveragePerMille));
        }
    }

    private static String takes(int width, int height) {
        return "takes " + width / 1000.0 + " x " + height / 1000.0 + " mm between the codes)";
    }

    static String sizes(List<Integer> sizes) {
        return sizes.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    private void label(Area room, String words) {
        int number = legend.size() + 1;
        targets.add(Target.Numeral.at(room.left(), room.top(), number));
        legend.add(number + ": " + words);
    }

    private @Nullable Area place(int preferred, int width, int height, String name) {
        for (int turn = 0; turn < bands.size(); turn++) {
            Area room = bands.get((preferred + turn) % bands.size()).place(width, height);
            if (room != null) {
                taken.add(room);
                return room;
            }
        }
        leftOut.add(name + " (" + takes(width, height));
        return null;
    }

    /** A band filled from the left in rows. Owned by one layout. */
    private static final class Band {
        private final Area room;
        private int x;
        private int y;
        private int rowHeight;

        Band(Area room) {
            this.room = room;
            this.x = room.left();
            this.y = room.top();
        }

        @Nullable
        Area place(int width, int height) {
            if (x + width > room.right() && x > room.left()) {
                int below = y + rowHeight + GAP;
                if (room.left() + width > room.right() || below + height > room.bottom()) {
                    return null;
                }
                y = below;
                x = room.left();
                rowHeight = 0;
            }
            if (x + width > room.right() || y + height > room.bottom()) {
                return null;
            }
            Area placed = new Area(x, y, width, height);
            x += width + GAP;
            rowHeight = Math.max(rowHeight, height);
            return placed;
        }
    }
}
