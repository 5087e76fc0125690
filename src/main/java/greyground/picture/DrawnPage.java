package greyground.picture;

import greyground.picture.Drawing.Anchor;
import java.io.IOException;
import java.io.OutputStream;

/** A diagram that can be had as SVG, as pixels and as a PDF. It is drawn once, by its maker, and stays as it is. */
public abstract sealed class DrawnPage permits ResidualPlot, ResponseCurve, ToneDiagram {
    /** Height of the usual letters, in the drawing's units. */
    static final double LETTER = 15;

    /** Of letters beside ticks and lines. */
    static final double SMALL = LETTER * 0.87;

    private static final double PIXELS_A_UNIT = 1.5;

    /** What is drawn. */
    final Drawing drawing;

    private final String name;

    /**
     * An empty page.
     *
     * @param name by which readers of files list it
     */
    DrawnPage(double width, double height, String name) {
        this.drawing = new Drawing(width, height);
        this.name = name;
    }

    /** As SVG. */
    public final String svg() {
        return DrawnSvg.of(drawing, name, Palette.PAGE);
    }

    /** As pixels, half as many again as the drawing has units. */
    public final Picture picture() {
        return DrawnPixels.alone(drawing, PIXELS_A_UNIT, 0, Palette.PAGE, Lettering.load());
    }

    /** As a PDF of one page; the stream stays open. */
    public final void writePdf(OutputStream out) throws IOException {
        DrawnPdf.write(drawing, name, Palette.PAGE, out);
    }

    /** What the page shows, and below that whose it is. */
    final void heading(double left, String shows, String whose) {
        drawing.heavyWords(left, 48, LETTER * 1.35, Anchor.START, Palette.INK, shows);
        drawing.words(left, 74, LETTER, Anchor.START, Palette.QUIET, whose);
    }
}
