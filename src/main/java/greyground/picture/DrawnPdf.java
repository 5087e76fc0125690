package greyground.picture;

import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Matrix;

/** Writes a {@link Drawing} as a PDF of one page, its unit one point, with the face embedded. */
final class DrawnPdf {
    /** A circle as four Bezier curves: handle over radius, 4/3 (sqrt 2 - 1). */
    private static final float HANDLE = (float) (4.0 / 3 * (Math.sqrt(2) - 1));

    private DrawnPdf() {}

    /** Writes the document; the stream stays open. */
    static void write(Drawing drawing, String title, int ground, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument();
                InputStream face = Lettering.open()) {
            // No clock in the file: the same drawing is the same bytes.
            document.setDocumentId(1L);
            PDDocumentInformation information = new PDDocumentInformation();
            information.setTitle(title);
            document.setDocumentInformation(information);
            PDPage page = new PDPage(new PDRectangle((float) drawing.width(), (float) drawing.height()));
            document.addPage(page);
            PDFont font = PDType0Font.load(document, face, true);
            try (PDPageContentStream pen = new PDPageContentStream(document, page)) {
                pen.setNonStrokingColor(new Color(ground));
                pen.addRect(0, 0, (float) drawing.width(), (float) drawing.height());
                pen.fill();
                for (Drawing.Mark mark : drawing.marks()) {
                    draw(pen, mark, font, (float) drawing.height());
                }
            }
            document.save(out);
        }
    }

    private static void draw(PDPageContentStream pen, Drawing.Mark mark, PDFont font, float height) throws IOException {
        if (mark instanceof Drawing.Line line) {
            pen.setStrokingColor(new Color(line.colour()));
            pen.setLineWidth((float) line.weight());
            pen.setLineJoinStyle(1);
            pen.setLineDashPattern(line.dash() > 0 ? new float[] {(float) line.dash()} : new float[0], 0);
            path(pen, line.points(), height);
            pen.stroke();
        } else if (mark instanceof Drawing.Area area) {
            pen.setNonStrokingColor(new Color(area.colour()));
            path(pen, area.points(), height);
            pen.fill();
        } else if (mark instanceof Drawing.Dot dot) {
            pen.setNonStrokingColor(new Color(dot.colour()));
            circle(pen, dot, height);
            if (dot.ring() < 0) {
                pen.fill();
            } else {
                pen.setStrokingColor(new Color(dot.ring()));
                pen.setLineWidth((float) (dot.radius() / 2.5));
                pen.setLineDashPattern(new float[0], 0);
                pen.fillAndStroke();
            }
        } else if (mark instanceof Drawing.Words words) {
            words(pen, words, font, height);
        }
    }

    private static void words(PDPageContentStream pen, Drawing.Words words, PDFont font, float height)
            throws IOException {
        float size = (float) words.size();
        double length = font.getStringWidth(words.text()) / 1000 * size;
        double back = length * words.anchor().share();
        // Turning clockwise on the page is turning by a negative angle in PDF's upward axes.
        double angle = -words.quarterTurns() * Math.PI / 2;
        pen.beginText();
        pen.setFont(font, size);
        pen.setNonStrokingColor(new Color(words.colour()));
        pen.setRenderingMode(words.heavy() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        if (words.heavy()) {
            pen.setStrokingColor(new Color(words.colour()));
            pen.setLineWidth((float) (Lettering.HEAVIER * size));
            pen.setLineDashPattern(new float[0], 0);
        }
        pen.setTextMatrix(
                Matrix.getRotateInstance(angle, (float) (words.at().x() - back * StrictMath.cos(angle)), (float)
                        (height - words.at().y() - back * StrictMath.sin(angle))));
        pen.showText(words.text());
        pen.endText();
    }

    private static void path(PDPageContentStream pen, List<Drawing.Point> points, float height) throws IOException {
        for (int i = 0; i < points.size(); i++) {
            float x = (float) points.get(i).x();
            float y = height - (float) points.get(i).y();
            if (i == 0) {
                pen.moveTo(x, y);
            } else {
                pen.lineTo(x, y);
            }
        }
    }

    private static void circle(PDPageContentStream pen, Drawing.Dot dot, float height) throws IOException {
        float x = (float) dot.middle().x();
        float y = height - (float) dot.middle().y();
        float r = (float) dot.radius();
        float k = r * HANDLE;
        pen.moveTo(x + r, y);
        pen.curveTo(x + r, y + k, x + k, y + r, x, y + r);
        pen.curveTo(x - k, y + r, x - r, y + k, x - r, y);
        pen.curveTo(x - r, y - k, x - k, y - r, x, y - r);
        pen.curveTo(x + k, y - r, x + r, y - k, x + r, y);
        pen.closePath();
    }
}
