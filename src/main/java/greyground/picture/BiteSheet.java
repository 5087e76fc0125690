package greyground.picture;

import greyground.picture.Drawing.Anchor;
import java.util.List;

/** A contact sheet of one plate bitten for several times: a row for each, what it prints first, then copper and print close. */
public final class BiteSheet {
    private static final double LETTER = 17;
    private static final int GAP = 18;
    private static final int MARGIN = 30;
    private static final int WORDS_WIDTH = 300;

    private BiteSheet() {}

    /**
     * One bite.
     *
     * @param title its time
     * @param words depth, tones, turning point
     * @param pictures one for each column
     */
    public record Row(String title, List<String> words, List<Picture> pictures) {}

    /**
     * A column of pictures of one size and scale.
     *
     * @param title what is seen
     */
    public record Column(String title) {}

    /**
     * Lays the bites out, shortest first as given.
     *
     * @param columns as many as each row has pictures
     * @param words about the whole sheet, one line each
     */
    public static Picture of(List<Column> columns, List<Row> rows, List<String> words) {
        Lettering lettering = Lettering.load();
        List<Picture> first = rows.get(0).pictures();
        int pictures = first.stream().mapToInt(picture -> picture.width() + GAP).sum();
        int rowHeight = first.stream().mapToInt(Picture::height).max().orElse(0);
        rowHeight = Math.max(rowHeight, (int) (LETTER * 8.5));
        int width = 2 * MARGIN + WORDS_WIDTH + pictures;
        double top = MARGIN + LETTER * 2;
        double barAt = top + rows.size() * (rowHeight + GAP) + LETTER * 0.6;
        double wordsAt = barAt + LETTER * 2.4;
        int height = (int) Math.ceil(wordsAt + LETTER * 1.45 * (words.size() - 1) + MARGIN);
        Picture mat = Picture.filled(width, height, 0, Palette.MAT);
        Drawing drawing = new Drawing(width, height);
        for (int r = 0; r < rows.size(); r++) {
            Row row = rows.get(r);
            double rowTop = top + r * (rowHeight + GAP);
            drawing.heavyWords(MARGIN, rowTop + LETTER * 1.4, LETTER * 1.7, Anchor.START, Palette.INK, row.title());
            double at = rowTop + LETTER * 3.2;
            for (String sentence : row.words()) {
                for (String line : lettering.lines(sentence, LETTER, WORDS_WIDTH - GAP)) {
                    drawing.words(MARGIN, at, LETTER, Anchor.START, Palette.INK, line);
                    at += LETTER * 1.4;
                }
            }
            int left = MARGIN + WORDS_WIDTH;
            for (int c = 0; c < columns.size(); c++) {
                Picture picture = row.pictures().get(c);
                mat.lay(picture, left, (int) rowTop);
                if (r == 0) {
                    drawing.heavyWords(
                            left,
                            MARGIN + LETTER,
                            LETTER,
                            Anchor.START,
                            Palette.INK,
                            columns.get(c).title());
                }
                if (r == rows.size() - 1) {
                    double perMicrometre = picture.dotsPerInch() / 25_400;
                    ScaleBar.within(picture.width() / perMicrometre / 3)
                            .draw(drawing, left, barAt, perMicrometre, LETTER);
                }
                left += picture.width() + GAP;
            }
        }
        for (int i = 0; i < words.size(); i++) {
            drawing.words(MARGIN, wordsAt + i * LETTER * 1.45, LETTER, Anchor.START, Palette.INK, words.get(i));
        }
        return DrawnPixels.over(mat, drawing, 1, lettering);
    }
}
