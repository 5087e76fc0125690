package greyground.picture;

import greyground.picture.Drawing.Anchor;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lays one picture on a mat, with its scale bar, its legend and its words below. */
public final class Mount {
    private static final int NARROWEST_PIXELS = 560;
    private static final double MICROMETRES_PER_INCH = 25_400;

    private Mount() {}

    /**
     * Mounts a picture.
     *
     * @param picture of true size
     * @param title a few words, set heavier
     * @param words what to know about it; broken into lines as is needed
     * @param legend of its colours, or null
     */
    public static Picture of(Picture picture, String title, List<String> words, @Nullable DepthLegend legend) {
        Lettering lettering = Lettering.load();
        int inner = Math.max(NARROWEST_PIXELS, picture.width());
        double letter = Math.max(14, Math.min(44, inner / 70.0));
        int margin = (int) Math.round(letter * 1.8);
        List<String> lines = new ArrayList<>();
        words.forEach(sentence -> lines.addAll(lettering.lines(sentence, letter, inner)));
        int width = inner + 2 * margin;
        double barAt = margin + picture.height() + letter * 1.7;
        double titleAt = barAt + letter * 2.3;
        int height = (int) Math.ceil(titleAt + letter * 1.45 * lines.size() + margin);
        Picture mat = Picture.filled(width, height, picture.dotsPerInch(), Palette.MAT);
        mat.lay(picture, margin, margin);
        Drawing drawing = new Drawing(width, height);
        double perMicrometre = picture.dotsPerInch() / MICROMETRES_PER_INCH;
        ScaleBar.within(picture.width() / perMicrometre / 4).draw(drawing, margin, barAt, perMicrometre, letter);
        if (legend != null) {
            legend.draw(drawing, margin + inner - 16 * letter, barAt, 12 * letter, letter);
        }
        drawing.heavyWords(margin, titleAt, letter * 1.1, Anchor.START, Palette.INK, title);
        double at = titleAt;
        for (String line : lines) {
            at += letter * 1.45;
            drawing.words(margin, at, letter, Anchor.START, Palette.INK, line);
        }
        return DrawnPixels.over(mat, drawing, 1, lettering);
    }
}
