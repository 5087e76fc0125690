package greyground.output;

import greyground.plan.CardNumber;
import greyground.plan.ExposurePlan;
import java.util.ArrayList;
import java.util.List;

/**
 * Sets a plan's first page, the card that hangs over the bench: the few numbers that matter in type that is read from where one stands,
 * room beside each for what really happened, the steps to tick off, and a table for the states that are proofed.
 */
final class BenchCard {
    private static final double LEFT = PlanPages.LEFT;
    private static final double RIGHT = PlanPages.RIGHT;
    private static final double NUMBER = LEFT + 118;
    private static final double WRITE = LEFT + 300;
    private static final double ROW = 62;
    private static final double DIGITS = 44;
    private static final double UNIT = 17;
    private static final double ACT = 20;
    private static final double BODY = 11;
    private static final double SMALL = 9;
    private static final double QUIET = 0.35;
    private static final double STEP_ROW = 15.5;
    private static final double LEAST_STATE_ROW = 20;
    private static final double MOST_STATE_ROW = 58;
    private static final int TITLE_LINES = 2;
    private static final int STATES = 3;
    private static final List<String> BITTEN =
            List.of("bitten in all, min", "bath, °C", "depth, µm", "solid, density", "paper and ink", "next time");
    private static final List<String> UNBITTEN =
            List.of("solid, density", "paper, density", "paper and ink", "pressure, wiping", "next time");

    private final PlanDocument document;
    private final String paper;
    private final PageDrawing page;
    private double y;

    private BenchCard(PlanDocument document, String paper, PageDrawing page) {
        this.document = document;
        this.paper = paper;
        this.page = page;
    }

    /**
     * Draws the card.
     *
     * @param paper what is printed on film and what on paper; may be empty
     * @param bottom where the foot begins
     */
    static void draw(PlanDocument document, String paper, PageDrawing page, double bottom) {
        BenchCard card = new BenchCard(document, paper, page);
        card.head();
        document.plan().card().forEach(card::number);
        card.steps();
        card.states(bottom);
    }

    private void head() {
        page.text(LEFT, 40, SMALL, QUIET, "BENCH CARD");
        page.textEndingAt(RIGHT, 40, SMALL, QUIET, document.date().toString());
        y = 66;
        List<String> title = page.lines(document.title(), 24, RIGHT - LEFT - 24);
        for (int i = 0; i < Math.min(TITLE_LINES, title.size()); i++) {
            boolean cut = i == TITLE_LINES - 1 && title.size() > TITLE_LINES;
            page.heavyText(LEFT, y, 24, 0, title.get(i) + (cut ? " \u2026" : ""));
            y += 26;
        }
        y -= 9;
        y = page.column(LEFT, y, 14, BODY, 0, page.lines(document.subject(), BODY, RIGHT - LEFT));
        if (!paper.isEmpty()) {
            page.heavyText(LEFT, y + 1, BODY, 0, "Print " + paper + ".");
            y += 14;
        }
        long warnings = document.plan().warnings().size();
        if (warnings > 0) {
            String words = warnings == 1 ? "1 warning" : warnings + " warnings";
            page.frame(LEFT, y - 6, RIGHT - LEFT, 20, 1.6, 0);
            page.heavyText(LEFT + 8, y + 8, BODY, 0, "! " + words + " on the next pages: read before you begin.");
            y += 26;
        }
        page.line(LEFT, y - 4, RIGHT, y - 4, 1.8, 0);
        y -= 4;
    }

    /** Act and conditions at the left, the number, and lines to write on. */
    private void number(CardNumber number) {
        double base = y + 41;
        page.heavyText(LEFT, y + 27, ACT, 0, number.act());
        page.column(
                LEFT,
                y + 41,
                10.5,
                SMALL,
                0.15,
                page.lines(number.conditions(), SMALL, NUMBER - LEFT - 20).stream()
                        .limit(2)
                        .toList());
        page.known(NUMBER + 1, base + 9.5, 1.1, number.provenance());
        page.text(NUMBER + 11, base + 12.5, SMALL, QUIET, number.known());
        int unit = number.value().indexOf(' ');
        String digits = unit < 0 ? number.value() : number.value().substring(0, unit);
        page.heavyText(NUMBER, base, DIGITS, 0, digits);
        if (unit >= 0) {
            page.text(
                    NUMBER + page.width(digits, DIGITS) + 7,
                    base,
                    UNIT,
                    0,
                    number.value().substring(unit + 1));
        }
        double gap = 12;
        double line = (RIGHT - WRITE - gap * (number.blanks().size() - 1))
                / number.blanks().size();
        for (int i = 0; i < number.blanks().size(); i++) {
            double x = WRITE + i * (line + gap);
            page.line(x, base, x + line, base, 0.7, 0);
            page.text(x, base + 11, SMALL, QUIET, number.blanks().get(i));
        }
        y += ROW;
        page.line(LEFT, y, RIGHT, y, 0.5, 0);
    }

    /** What comes next, to tick off: down the first column, then down the second. */
    private void steps() {
        List<ExposurePlan.Step> steps = document.plan().atTheBench();
        int rows = (steps.size() + 1) / 2;
        y += 18;
        page.text(LEFT, y, SMALL, QUIET, "NEXT");
        y += 15;
        double half = (RIGHT - LEFT) / 2;
        for (int i = 0; i < steps.size(); i++) {
            double x = i < rows ? LEFT : LEFT + half;
            double at = y + (i % rows) * STEP_ROW;
            page.frame(x, at - 8.5, 9.5, 9.5, 0.9, 0);
            page.textEndingAt(x + 29, at, BODY, 0, Integer.toString(i + 1));
            String warned = steps.get(i).warnings().isEmpty() ? "" : "  !";
            page.text(x + 36, at, BODY, 0, steps.get(i).title() + warned);
        }
        y += rows * STEP_ROW - 4;
        List<String> care = page.lines(document.plan().caution(), SMALL, RIGHT - LEFT - 20);
        page.warningSign(LEFT, y + 9.5, 11);
        y = page.column(LEFT + 18, y + 8, 11, SMALL, 0, care);
    }

    private void states(double bottom) {
        boolean bitten =
                document.plan().card().stream().anyMatch(number -> number.act().equals("Bite"));
        List<String> rows = new ArrayList<>(bitten ? BITTEN : UNBITTEN);
        double first = LEFT + 92;
        double across = (RIGHT - first) / STATES;
        double head = 18;
        double room = bottom - 6 - y - head;
        while (rows.size() > 1 && room / rows.size() < LEAST_STATE_ROW) {
            rows.remove(rows.size() - 2);
        }
        double row = Math.min(MOST_STATE_ROW, room / rows.size());
        double top = y + 2;
        for (int i = 0; i < STATES; i++) {
            page.heavyText(first + i * across + 5, top + 12, BODY, 0, "State " + (i + 1));
        }
        for (int i = 0; i <= rows.size(); i++) {
            double at = top + head + i * row;
            page.line(LEFT, at, RIGHT, at, i == 0 ? 1.2 : 0.5, 0);
            if (i < rows.size()) {
                page.text(LEFT, at + row - 6, SMALL, 0.15, rows.get(i));
            }
        }
        for (int i = 0; i < STATES; i++) {
            page.line(first + i * across, top, first + i * across, top + head + rows.size() * row, 0.5, 0);
        }
    }
}
