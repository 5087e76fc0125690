package greyground.output;

import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.SourceNotes;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets a plan on A4 pages: the bench card, then every step in two columns, with what can hurt, its numbers, how each is known and what to
 * watch, and at the end where the numbers come from. One document owns it; one thread.
 */
final class PlanPages {
    /** A4, ISO 216: 210 x 297 mm. */
    static final double PAGE_WIDTH = 210 * 72 / 25.4;

    static final double PAGE_HEIGHT = 297 * 72 / 25.4;

    static final double LEFT = 44;
    static final double RIGHT = PAGE_WIDTH - 40;

    private static final double FOOT = PAGE_HEIGHT - 30;
    private static final double BOTTOM = FOOT - 8;
    private static final double TOP = 52;
    private static final double GAP = 22;
    private static final double COLUMN = (RIGHT - LEFT - GAP) / 2;
    private static final double GUTTER = 20;
    private static final double VALUE = GUTTER + 104;
    private static final double MARK = VALUE + 57;
    private static final double KNOWN = MARK + 9;
    private static final double BODY = 8.6;
    private static final double ROW = 10.5;
    private static final double SMALL = 7.2;
    private static final double SMALL_ROW = 8.4;
    private static final double QUIET = 0.35;
    private static final double STEP_GAP = 3;

    /** A step goes to the next column whole, unless that would leave more than this of the column bare. */
    private static final double[] MOST_BARE = {150, 100, 60, 0};

    private static final double PLOT = 80;
    private static final int PLOT_DIVISIONS = 4;
    private static final double PLOT_GREY = 0.72;

    private final PlanDocument document;
    private final double mostBare;
    private final UsedGlyphs glyphs;
    private static final String MEASURED = "measured ";
    private static final String TYPED = "as typed ";

    private final List<PageDrawing> pages = new ArrayList<>();
    private final SourceNotes notes = new SourceNotes();
    private PageDrawing page;
    private double x = LEFT;
    private double y = TOP;

    private PlanPages(PlanDocument document, String paper, double mostBare, UsedGlyphs glyphs) {
        this.document = document;
        this.mostBare = mostBare;
        this.glyphs = glyphs;
        this.page = newPage();
        BenchCard.draw(document, paper, page, FOOT - 16);
    }

    /**
     * Sets all pages; none if the plan has no step. Steps are kept whole as far as that takes no more pages.
     *
     * @param paper what is printed on film and what on paper; may be empty
     */
    static List<PageDrawing> set(PlanDocument document, String paper, UsedGlyphs glyphs) {
        if (document.plan().steps().isEmpty()) {
            return List.of();
        }
        List<PageDrawing> fewest = List.of();
        for (double mostBare : MOST_BARE) {
            PlanPages plan = new PlanPages(document, paper, mostBare, glyphs);
            plan.all();
            if (fewest.isEmpty() || plan.pages.size() < fewest.size()) {
                fewest = plan.pages;
            }
        }
        return fewest;
    }

    private void all() {
        turnPage();
        film();
        int number = 1;
        for (Step step : document.plan().atTheBench()) {
            step(number++, step);
        }
        origins();
        feet();
    }

    /** A piece of a step: what it needs and how it is drawn from {@code y} down. */
    private record Piece(double height, Runnable draw) {}

    /** What the film is, and its tone curve. */
    private void film() {
        page.heavyText(x, y + 2, 11, 0, BenchOrder.FILM);
        y += 16;
        double value = 76;
        for (Line line : document.particulars()) {
            page.text(x, y, BODY, QUIET, line.label());
            y = page.column(x + value, y, ROW, BODY, 0, page.lines(line.value(), BODY, COLUMN - value));
        }
        if (!document.curve().isEmpty()) {
            y += 4;
            plot(x + value + 26, y + PLOT);
            y += PLOT + 34;
        }
        y += STEP_GAP;
    }

    /** The tone curve with its lower left corner at a place: lightness of the art across, coverage of the film up. */
    private void plot(double left, double foot) {
        List<PlanDocument.CurvePoint> curve = document.curve();
        for (int i = 0; i <= PLOT_DIVISIONS; i++) {
            double at = PLOT * i / PLOT_DIVISIONS;
            if (i > 0 && i < PLOT_DIVISIONS) {
                page.line(left + at, foot, left + at, foot - PLOT, 0.35, PLOT_GREY);
                page.line(left, foot - at, left + PLOT, foot - at, 0.35, PLOT_GREY);
            }
            String value = Integer.toString(100 * i / PLOT_DIVISIONS);
            page.text(left + at - page.width(value, SMALL) / 2, foot + SMALL + 3, SMALL, 0.2, value);
            page.textEndingAt(left - 4, foot - at + SMALL * 0.35, SMALL, 0.2, value);
        }
        page.frame(left, foot - PLOT, PLOT, PLOT, 0.7, 0);
        String across = "art L*";
        page.text(left + (PLOT - page.width(across, SMALL)) / 2, foot + 2 * SMALL + 7, SMALL, 0, across);
        String up = "film coverage %";
        page.turnedText(left - 25, foot - (PLOT - page.width(up, SMALL)) / 2, SMALL, 3, up);
        double[] xs = new double[curve.size()];
        double[] ys = new double[curve.size()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = left + PLOT * curve.get(i).artLightness() / 100;
            ys[i] = foot - PLOT * curve.get(i).filmCoverage();
        }
        page.path(xs, ys, 1.5, 0);
    }

    private void step(int number, Step step) {
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Piece(27, () -> title(number, step.title())));
        step.cautions().forEach(caution -> pieces.add(caution(caution)));
        step.lines().forEach(line -> pieces.add(numberLine(line)));
        step.warnings().forEach(warning -> pieces.add(words("! " + warning, true)));
        step.advice().forEach(advice -> pieces.add(words(advice, false)));
        flow(pieces);
    }

    /** Sets pieces one below the other, in the next column where this one is full. */
    private void flow(List<Piece> pieces) {
        double height = pieces.stream().mapToDouble(Piece::height).sum();
        if (y + height > BOTTOM && BOTTOM - y < mostBare) {
            turnColumn();
        }
        for (int i = 0; i < pieces.size(); i++) {
            // A title never stands alone at the foot of a column.
            double needed = pieces.get(i).height()
                    + (i == 0 && pieces.size() > 1 ? pieces.get(1).height() : 0);
            if (y + needed > BOTTOM) {
                turnColumn();
            }
            pieces.get(i).draw().run();
        }
        y += STEP_GAP;
    }

    private void title(int number, String words) {
        page.line(x, y, x + COLUMN, y, 0.6, 0);
        page.heavyText(x, y + 13.5, 11.5, 0, Integer.toString(number));
        page.heavyText(x + GUTTER, y + 14, 11, 0, words);
        page.frame(x + COLUMN - 9, y + 5.5, 9, 9, 0.8, 0);
        y += 27;
    }

    private Piece numberLine(Line line) {
        List<String> labels = page.lines(line.label(), BODY, VALUE - GUTTER - 6);
        boolean known = !line.provenance().isEmpty();
        List<String> values = page.lines(line.value(), BODY, (known ? MARK - 4 : COLUMN) - VALUE);
        double height = Math.max(labels.size(), values.size()) * ROW + 1;
        return new Piece(height, () -> {
            page.column(x + GUTTER, y, ROW, BODY, 0, labels);
            for (int i = 0; i < values.size(); i++) {
                page.heavyText(x + VALUE, y + i * ROW, BODY, 0, values.get(i));
            }
            page.known(x + MARK, y - 3, 1, line.provenance());
            page.text(x + KNOWN, y, SMALL, QUIET, known(line) + notes.mark(line.basis()));
            y += height;
        });
    }

    /** The circle already says that it was measured; a date says when. */
    private static String known(Line line) {
        String known = line.known();
        if (known.startsWith(MEASURED)) {
            return known.substring(MEASURED.length());
        }
        return known.startsWith(TYPED) ? "typed" : known;
    }

    private Piece words(String words, boolean heavy) {
        List<String> lines = page.lines(words, BODY, COLUMN - GUTTER);
        double height = lines.size() * ROW + 2.5;
        return new Piece(height, () -> {
            for (int i = 0; i < lines.size(); i++) {
                if (heavy) {
                    page.heavyText(x + GUTTER, y + 1 + i * ROW, BODY, 0, lines.get(i));
                } else {
                    page.text(x + GUTTER, y + 1 + i * ROW, BODY, 0.12, lines.get(i));
                }
            }
            y += height;
        });
    }

    /** A bar and a sign beside it, that nobody overlooks it. */
    private Piece caution(String words) {
        List<String> lines = page.lines(words, BODY, COLUMN - GUTTER - 6);
        double height = lines.size() * ROW + 5;
        return new Piece(height, () -> {
            page.warningSign(x + 2, y + 3, 12);
            page.line(x + GUTTER, y - 6.5, x + GUTTER, y + (lines.size() - 1) * ROW + 4.5, 1.6, 0);
            page.column(x + GUTTER + 6, y + 1, ROW, BODY, 0, lines);
            y += height;
        });
    }

    /** Where the numbers come from. */
    private void origins() {
        List<String> sources = notes.all();
        if (sources.isEmpty()) {
            return;
        }
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Piece(20, () -> {
            page.line(x, y, x + COLUMN, y, 0.6, 0);
            page.heavyText(x, y + 12, BODY, 0, "Where the numbers come from");
            y += 22;
        }));
        for (int i = 0; i < sources.size(); i++) {
            String mark = "[" + (i + 1) + "]";
            List<String> lines = page.lines(sources.get(i), SMALL, COLUMN - GUTTER);
            pieces.add(new Piece(lines.size() * SMALL_ROW, () -> {
                page.text(x, y, SMALL, QUIET, mark);
                y = page.column(x + GUTTER, y, SMALL_ROW, SMALL, QUIET, lines);
            }));
        }
        flow(pieces);
    }

    private void turnColumn() {
        if (x == LEFT) {
            x = LEFT + COLUMN + GAP;
            y = TOP;
        } else {
            turnPage();
        }
    }

    private void turnPage() {
        page = newPage();
        List<String> titles = page.lines(document.title(), SMALL, RIGHT - LEFT - 150);
        page.text(LEFT, 36, SMALL, QUIET, titles.isEmpty() ? "" : titles.get(0));
        page.textEndingAt(RIGHT, 36, SMALL, QUIET, document.date().toString());
        x = LEFT;
        y = TOP;
    }

    private PageDrawing newPage() {
        PageDrawing fresh = new PageDrawing(PAGE_HEIGHT, glyphs);
        pages.add(fresh);
        return fresh;
    }

    private void feet() {
        for (int i = 0; i < pages.size(); i++) {
            PageDrawing each = pages.get(i);
            each.line(LEFT, FOOT - 12, RIGHT, FOOT - 12, 0.5, 0);
            each.known(LEFT, FOOT - 2.7, 1, "assumed");
            each.text(LEFT + 10, FOOT, SMALL, QUIET, "rests on what nobody has measured in this workshop: test it");
            each.known(LEFT + 224, FOOT - 2.7, 1, "measured");
            each.text(LEFT + 234, FOOT, SMALL, QUIET, "measured in this workshop");
            each.textEndingAt(RIGHT - 90, FOOT, SMALL, QUIET, document.program());
            each.textEndingAt(RIGHT, FOOT, SMALL, 0, "plan page " + (i + 1) + " of " + pages.size());
        }
    }
}
