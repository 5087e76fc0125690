package greyground.output;

import greyground.film.sheet.Legend;
import greyground.quantity.Lengths;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.state.SetMatrix;
import org.apache.pdfbox.contentstream.operator.text.BeginText;
import org.apache.pdfbox.contentstream.operator.text.EndText;
import org.apache.pdfbox.contentstream.operator.text.SetFontAndSize;
import org.apache.pdfbox.contentstream.operator.text.ShowText;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;

/** Reads the words of a film page back to where they stand, as {@link PageDrawing#turnedText} set them. One page, one thread. */
final class LegendReader extends PDFStreamEngine {
    private static final double MILLIMETRES_PER_POINT = Lengths.MILLIMETRES_PER_INCH / Lengths.POINTS_PER_INCH;

    /** More lines than any film bears. */
    private static final int MOST_LEGENDS = 10_000;

    private final double heightPoints;
    private final double capHeight;
    private final List<Legend> legends = new ArrayList<>();

    private LegendReader(PDPage page) throws IOException {
        this.heightPoints = page.getMediaBox().getHeight();
        this.capHeight = TypeFace.load().capHeight();
        addOperator(new BeginText(this));
        addOperator(new EndText(this));
        addOperator(new SetFontAndSize(this));
        addOperator(new SetMatrix(this));
        addOperator(new ShowText(this));
    }

    static List<Legend> legends(PDPage page) throws IOException {
        LegendReader reader = new LegendReader(page);
        reader.processPage(page);
        return reader.legends;
    }

    @Override
    protected void showText(byte[] string) throws IOException {
        PDFont font = getGraphicsState().getTextState().getFont();
        if (font == null || legends.size() >= MOST_LEGENDS) {
            return;
        }
        StringBuilder words = new StringBuilder();
        try (InputStream codes = new ByteArrayInputStream(string)) {
            while (codes.available() > 0) {
                String letter = font.toUnicode(font.readCode(codes));
                words.append(letter == null ? "?" : letter);
            }
        }
        Matrix place = getTextMatrix();
        int quarterTurns = Math.floorMod(
                (int) Math.rint(-Math.toDegrees(StrictMath.atan2(place.getShearY(), place.getScaleX())) / 90), 4);
        legends.add(new Legend(
                place.getTranslateX() * MILLIMETRES_PER_POINT,
                (heightPoints - place.getTranslateY()) * MILLIMETRES_PER_POINT,
                getGraphicsState().getTextState().getFontSize() * capHeight * MILLIMETRES_PER_POINT,
                quarterTurns,
                words.toString()));
    }
}
