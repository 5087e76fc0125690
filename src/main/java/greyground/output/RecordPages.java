package greyground.output;

import greyground.output.RecordDocument.Part;
import greyground.output.RecordDocument.Row;
import java.util.ArrayList;
import java.util.List;

/** Sets a plate's record on A4 pages, with rows left to write in by hand. One document owns it; one thread. */
final class RecordPages {
    private static final double LEFT = PlanPages.LEFT;
    private static final double RIGHT = PlanPages.RIGHT;
    private static final double FOOT = PlanPages.PAGE_HEIGHT - 30;
    private static final double BOTTOM = FOOT - 18;
    private static final double TOP = 56;
    private static final double WORDS = LEFT + 76;
    private static final double TITLE = 24;
    private static final double PART = 13;
    private static final double BODY = 10.5;
    private static final double SMALL = 9;
    private static final double ROW = 15;
    private static final double FURTHER = 12.5;
    private static final double WRITTEN = 24;
    private static final double QUIET = 0.35;

    /** What a hand writes beside each blank row, and where its column begins. */
    private static final List<String> BLANKS = List.of("date", "what", "min", "\u00b0C", "\u00b5m", "solid D");

    private static final double[] COLUMNS = {LEFT, WORDS, RIGHT - 190, RIGHT - 140, RIGHT - 95, RIGHT - 48};

    private final RecordDocument document;
    private final UsedGlyphs glyphs;
    private final List<PageDrawing> pages = new ArrayList<>();
    private PageDrawing page;
    private double y = TOP;

    private RecordPages(RecordDocument document, UsedGlyphs glyphs) {
        this.document = document;
        this.glyphs = glyphs;
        this.page = turned();
    }

    static List<PageDrawing> set(RecordDocument document, UsedGlyphs glyphs) {
        RecordPages record = new RecordPages(document, glyphs);
        record.head();
        document.parts().forEach(record::part);
        record.blanks();
        record.feet();
        return record.pages;
    }

    private PageDrawing turned() {
        PageDrawing fresh = new PageDrawing(PlanPages.PAGE_HEIGHT, glyphs);
        pages.add(fresh);
        fresh.text(LEFT, 36, SMALL, QUIET, "PLATE RECORD");
        fresh.textEndingAt(RIGHT, 36, SMALL, QUIET, document.date().toString());
        y = TOP;
        return fresh;
    }

    private void head() {
        y += 10;
        for (String line : page.lines(document.title(), TITLE, RIGHT - LEFT)) {
            page.heavyText(LEFT, y, TITLE, 0, line);
            y += TITLE + 2;
        }
        y -= 6;
        for (String line : document.lines()) {
            y = page.column(LEFT, y, FURTHER + 1, BODY, 0, page.lines(line, BODY, RIGHT - LEFT));
        }
        page.line(LEFT, y - 4, RIGHT, y - 4, 1.8, 0);
        y += 16;
    }

    private void part(Part part) {
        double first = part.rows().isEmpty() ? 0 : height(part.rows().get(0));
        if (y + PART + first > BOTTOM) {
            page = turned();
        }
        page.heavyText(LEFT, y, PART, 0, part.title());
        y += 7;
        for (Row row : part.rows()) {
            if (y + height(row) > BOTTOM) {
                page = turned();
            }
            page.line(LEFT, y, RIGHT, y, 0.5, 0);
            page.text(LEFT, y + 11, BODY, QUIET, row.date());
            page.column(WORDS, y + 11, FURTHER, BODY, 0, page.lines(row.words(), BODY, RIGHT - WORDS));
            y += height(row);
        }
        page.line(LEFT, y, RIGHT, y, 0.5, 0);
        y += 24;
    }

    private double height(Row row) {
        return ROW + (page.lines(row.words(), BODY, RIGHT - WORDS).size() - 1) * FURTHER;
    }

    /** Room for what comes next, on the last page as far as it reaches. */
    private void blanks() {
        if (y + 2 * WRITTEN > BOTTOM) {
            return;
        }
        for (int i = 0; i < BLANKS.size(); i++) {
            page.text(COLUMNS[i] + (i == 0 ? 0 : 3), y, SMALL, QUIET, BLANKS.get(i));
        }
        y += 4;
        double top = y;
        while (y + WRITTEN <= BOTTOM) {
            page.line(LEFT, y, RIGHT, y, 0.5, 0);
            y += WRITTEN;
        }
        page.line(LEFT, y, RIGHT, y, 0.5, 0);
        for (int i = 1; i < COLUMNS.length; i++) {
            page.line(COLUMNS[i], top, COLUMNS[i], y, 0.35, QUIET);
        }
    }

    private void feet() {
        for (int i = 0; i < pages.size(); i++) {
            PageDrawing each = pages.get(i);
            each.text(LEFT, FOOT, SMALL, QUIET, "the file travels inside this PDF: " + Attachment.RECORD);
            each.textEndingAt(RIGHT - 110, FOOT, SMALL, QUIET, document.program());
            each.textEndingAt(RIGHT, FOOT, SMALL, 0, "record page " + (i + 1) + " of " + pages.size());
        }
    }
}
