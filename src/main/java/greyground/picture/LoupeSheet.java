package greyground.picture;

import greyground.picture.Drawing.Anchor;
import java.util.List;

/** One place of the plate at four stages, side by side and to one scale. */
public final class LoupeSheet {
    private static final double LETTER = 17;
    private static final int GAP = 18;
    private static final int MARGIN = 30;

    private LoupeSheet() {}

    /**
     * One stage.
     *
     * @param title one word
     * @param words a short line below it
     * @param picture all of one size
     */
    public record Panel(String title, String words, Picture picture) {}

    /**
     * Lays the stages out.
     *
     * @param panels from film to print, all of one size
     * @param words where the loupe lies and how it is read, one line each
     */
    public static Picture of(List<Panel> panels, List<String> words, DepthLegend legend) {
        Lettering lettering = Lettering.load();
        Picture first = panels.get(0).picture();
        int width = 2 * MARGIN + panels.size() * first.width() + (panels.size() - 1) * GAP;
        double top = MARGIN + LETTER * 3.1;
        double barAt = top + first.height() + LETTER * 1.6;
        double wordsAt = barAt + LETTER * 2.2;
        int height = (int) Math.ceil(wordsAt + LETTER * 1.45 * (words.size() - 1) + MARGIN);
        Picture mat = Picture.filled(width, height, 0, Palette.MAT);
        Drawing drawing = new Drawing(width, height);
        for (int i = 0; i < panels.size(); i++) {
            Panel panel = panels.get(i);
            int left = MARGIN + i * (first.width() + GAP);
            mat.lay(panel.picture(), left, (int) top);
            drawing.heavyWords(left, MARGIN + LETTER, LETTER * 1.2, Anchor.START, Palette.INK, panel.title());
            drawing.words(left, MARGIN + LETTER * 2.45, LETTER, Anchor.START, Palette.QUIET, panel.words());
        }
        double perMicrometre = first.dotsPerInch() / 25_400;
        ScaleBar.within(first.width() / perMicrometre / 2).draw(drawing, MARGIN, barAt, perMicrometre, LETTER);
        if (panels.size() > 2) {
            double copper = MARGIN + 2.0 * (first.width() + GAP);
            legend.draw(drawing, copper + 6.2 * LETTER, barAt, first.width() - 11 * LETTER, LETTER);
        }
        for (int i = 0; i < words.size(); i++) {
            drawing.words(MARGIN, wordsAt + i * LETTER * 1.45, LETTER, Anchor.START, Palette.INK, words.get(i));
        }
        return DrawnPixels.over(mat, drawing, 1, lettering);
    }
}
