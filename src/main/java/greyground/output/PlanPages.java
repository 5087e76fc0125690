package greyground.output;

import greyground.output.FilmDocument.CurvePoint;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets the exposure and bite plan on A4 pages to be pinned on a wall: a numbered column of steps, each with its numbers,
 * how each is known, what to watch and what can hurt. One document owns it; one thread.
 */
final class PlanPages {
    /** A4, ISO 216: 210 x 297 mm. */
    static final double PAGE_WIDTH = 210 * 72 / 25.4;

    static final double PAGE_HEIGHT = 297 * 72 / 25.4;

    private static final double LEFT = 48;
    private static final double RIGHT = PAGE_WIDTH - 42;
    private static final double TOP = 62;
    private static final double BOTTOM = PAGE_HEIGHT - 62;
    private static final double TEXT = LEFT + 36;
    private static final double VALUE = TEXT + 128;
    private static final double MARK = VALUE + 118;
    private static final double KNOWN = MARK + 11;
    private static final double PLOT = 118;
    private static final double PLOT_ROOM = PLOT + 34;
    private static final double PLOT_LETTER = 7.5;
    private static final int PLOT_DIVISIONS = 4;
    private static final double PLOT_GREY = 0.72;
    private static final double BODY = 10;
    private static final double SMALL = 8;
    private static final double QUIET = 0.35;
    private static final double ROW = 14.5;
    private static final double SMALL_ROW = 10.5;

    private final FilmDocument document;
    private final UsedGlyphs glyphs;
    private final List<PageDrawing> pages = new ArrayList<>();
    private PageDrawing page;
    private double y;

    private PlanPages(FilmDocument document, UsedGlyphs glyphs) {
        this.document = document;
        this.glyphs = glyphs;
        this.page = new PageDrawing(PAGE_HEIGHT, glyphs);
        pages.add(page);
    }

    /** Sets all pages; none if the plan has no step. */
    static List<PageDrawing> set(FilmDocument document, UsedGlyphs glyphs) {
        if (document.plan().steps().isEmpty()) {
            return List.of();
        }
        PlanPages plan = new PlanPages(document, glyphs);
        plan.head();
        int number = 1;
        for (ExposurePlan.Step step : document.plan().steps()) {
            // The film's own facts stand at the head.
            if (!step.title().equals(BenchOrder.FILM)) {
                plan.step(number++, step);
            }
        }
        plan.feet();
        return plan.pages;
    }

    /** A piece of a step: what it needs and how it is drawn from {@code y} down. */
    private record Piece(double height, Runnable draw) {}

    private void head() {
        y = 66;
        page.text(LEFT, 44, SMALL, QUIET, "EXPOSURE AND BITE PLAN");
        page.textEndingAt(RIGHT, 44, SMALL, QUIET, document.date().toString());
        for (String line : page.lines(document.title(), 22, RIGHT - LEFT)) {
            page.heavyText(LEFT, y + 4, 22, 0, line);
            y += 25;
        }
        for (String line : page.lines(document.plan().summary(), 11.5, RIGHT - LEFT)) {
            page.text(LEFT, y, 11.5, 0, line);
            y += 15;
        }
        y -= 4;
        page.line(LEFT, y, RIGHT, y, 1.6, 0);
        double below = y;
        boolean plotted = !document.curve().isEmpty();
        double right = plotted ? RIGHT - PLOT_ROOM - 14 : RIGHT;
        y += 20;
        for (ExposurePlan.Line line : document.particulars()) {
            particular(line, right);
        }
        if (plotted) {
            plot(RIGHT - PLOT - 7, below + 14 + PLOT, PLOT);
            y = Math.max(y, below + 14 + PLOT + 34);
        }
        y += 2;
        Piece lead = caution(LEFT, List.of(document.plan().caution()));
        lead.draw().run();
        y += 12;
    }

    /** The tone curve as a small plot with its lower left corner at (x, y): lightness of the art across, coverage of the film up. */
    private void plot(double x, double y, double side) {
        List<CurvePoint> curve = document.curve();
        for (int i = 0; i <= PLOT_DIVISIONS; i++) {
            double at = side * i / PLOT_DIVISIONS;
            if (i > 0 && i < PLOT_DIVISIONS) {
                page.line(x + at, y, x + at, y - side, 0.35, PLOT_GREY);
                page.line(x, y - at, x + side, y - at, 0.35, PLOT_GREY);
            }
            String value = Integer.toString(100 * i / PLOT_DIVISIONS);
            page.text(x + at - page.width(value, PLOT_LETTER) / 2, y + PLOT_LETTER + 3, PLOT_LETTER, 0.2, value);
            page.textEndingAt(x - 4, y - at + PLOT_LETTER * 0.35, PLOT_LETTER, 0.2, value);
        }
        page.frame(x, y - side, side, side, 0.7, 0);
        String across = "art L*";
        page.text(x + (side - page.width(across, PLOT_LETTER)) / 2, y + 2 * PLOT_LETTER + 7, PLOT_LETTER, 0, across);
        String up = "film coverage %";
        page.turnedText(x - 25, y - (side - page.width(up, PLOT_LETTER)) / 2, PLOT_LETTER, 3, up);
        double[] xs = new double[curve.size()];
        double[] ys = new double[curve.size()];
        for (int i = 0; i < xs.length; i++) {
            xs[i] = x + side * curve.get(i).artLightness() / 100;
            ys[i] = y - side * curve.get(i).filmCoverage();
        }
        page.path(xs, ys, 1.5, 0);
    }

    private void particular(ExposurePlan.Line line, double right) {
        double value = LEFT + 84;
        double known = value + 122;
        page.text(LEFT, y, BODY, QUIET, line.label());
        List<String> values =
                page.lines(line.value(), BODY, (line.provenance().isEmpty() ? right : known - 14) - value);
        List<String> knowns = page.lines(line.provenance(), SMALL, right - known);
        column(value, y, 12, BODY, 0, values);
        mark(known - 11, y, line.provenance());
        column(known, y, SMALL_ROW, SMALL, QUIET, knowns);
        y += ROW + 12 * (Math.max(values.size(), knowns.size()) - 1);
    }

    private void step(int number, ExposurePlan.Step step) {
        List<Piece> pieces = new ArrayList<>();
        pieces.add(new Piece(40, () -> title(number, step.title())));
        for (ExposurePlan.Line line : step.lines()) {
            pieces.add(numberLine(line));
        }
        for (String warning : step.warnings()) {
            pieces.add(advice("! " + warning));
        }
        for (String advice : step.advice()) {
            pieces.add(advice(advice));
        }
        if (!step.cautions().isEmpty()) {
            pieces.add(caution(TEXT, step.cautions()));
        }
        double height = pieces.stream().mapToDouble(Piece::height).sum();
        if (y + height > BOTTOM && height <= BOTTOM - TOP - 20) {
            turnPage();
        }
        for (int i = 0; i < pieces.size(); i++) {
            // A title never stands alone at the foot of a page.
            double needed = pieces.get(i).height()
                    + (i == 0 && pieces.size() > 1 ? pieces.get(1).height() : 0);
            if (y + needed > BOTTOM) {
                turnPage();
            }
            pieces.get(i).draw().run();
        }
        y += 12;
    }

    private void title(int number, String words) {
        page.line(LEFT, y, RIGHT, y, 0.5, 0);
        String digits = Integer.toString(number);
        page.heavyText(LEFT, y + 20, 18, 0, digits);
        page.heavyText(TEXT, y + 19, 13, 0, words);
        double box = 11;
        page.frame(RIGHT - box, y + 8, box, box, 0.8, 0);
        page.textEndingAt(RIGHT - box - 6, y + 17, SMALL, QUIET, "done");
        y += 40;
    }

    private Piece numberLine(ExposurePlan.Line line) {
        List<String> labels = page.lines(line.label(), BODY, VALUE - TEXT - 10);
        List<String> values = page.lines(line.value(), BODY + 1, MARK - VALUE - 12);
        List<String> bases = page.lines(line.basis(), SMALL, RIGHT - KNOWN);
        int rows = Math.max(labels.size(), values.size());
        double height = Math.max(rows * ROW, ROW + bases.size() * SMALL_ROW);
        return new Piece(height, () -> {
            column(TEXT, y, ROW, BODY, 0, labels);
            for (int i = 0; i < values.size(); i++) {
                page.heavyText(VALUE, y + i * ROW, BODY + 1, 0, values.get(i));
            }
            mark(MARK, y, line.provenance());
            page.text(KNOWN, y, BODY - 1, 0, line.provenance());
            column(KNOWN, y + SMALL_ROW, SMALL_ROW, SMALL, QUIET, bases);
            y += height;
        });
    }

    /** Open for what the shop has yet to measure, filled for what it has; nothing for what is computed. */
    private void mark(double x, double baseline, String provenance) {
        if (provenance.startsWith("assumed")) {
            page.openCircle(x + 3, baseline - 3, 2.7, 0.9);
        } else if (provenance.startsWith("measured")) {
            page.dot(x + 3, baseline - 3, 3.1);
        }
    }

    private Piece advice(String words) {
        List<String> lines = page.lines(words, BODY, RIGHT - TEXT);
        double height = lines.size() * 13.0 + 6;
        return new Piece(height, () -> {
            y += 3;
            column(TEXT, y, 13, BODY, 0.15, lines);
            y += height - 3;
        });
    }

    private Piece caution(double left, List<String> cautions) {
        double inside = left + 28;
        List<List<String>> notes = new ArrayList<>();
        int rows = 0;
        for (String caution : cautions) {
            List<String> lines = page.lines(caution, BODY - 0.5, RIGHT - inside - 10);
            notes.add(lines);
            rows += lines.size();
        }
        double box = 15 + (rows - 1) * 12.0 + (notes.size() - 1) * 3 + 7.5;
        return new Piece(box + 8, () -> {
            page.frame(left, y - 8, RIGHT - left, box, 1.1, 0);
            page.triangle(left + 8, y + 8.5, 12, 1);
            page.heavyText(left + 13, y + 7, 7, 0, "!");
            double at = y + 7;
            for (List<String> lines : notes) {
                column(inside, at, 12, BODY - 0.5, 0, lines);
                at += 12 * lines.size() + 3;
            }
            y += box + 8;
        });
    }

    /** Sets lines one below the other, the first with its baseline at {@code top}. */
    private void column(double x, double top, double row, double size, double grey, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            page.text(x, top + i * row, size, grey, lines.get(i));
        }
    }

    private void turnPage() {
        page = new PageDrawing(PAGE_HEIGHT, glyphs);
        pages.add(page);
        List<String> titles = page.lines(document.title(), SMALL, RIGHT - LEFT - 150);
        page.text(LEFT, 44, SMALL, QUIET, titles.isEmpty() ? "" : titles.get(0));
        page.textEndingAt(RIGHT, 44, SMALL, QUIET, document.date().toString());
        y = TOP;
    }

    private void feet() {
        double foot = PAGE_HEIGHT - 34;
        for (int i = 0; i < pages.size(); i++) {
            PageDrawing each = pages.get(i);
            each.line(LEFT, foot - 14, RIGHT, foot - 14, 0.5, 0);
            each.openCircle(LEFT + 3, foot - 2.7, 2.5, 0.9);
            each.text(LEFT + 10, foot, SMALL, QUIET, "assumed: test it in your own shop");
            each.dot(LEFT + 152, foot - 2.7, 2.9);
            each.text(LEFT + 159, foot, SMALL, QUIET, "measured in your shop");
            each.textEndingAt(RIGHT - 90, foot, SMALL, QUIET, document.program());
            each.textEndingAt(RIGHT, foot, SMALL, 0, "plan page " + (i + 1) + " of " + pages.size());
        }
    }
}
