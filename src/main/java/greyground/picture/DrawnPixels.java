package greyground.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.List;

/** Draws a {@link Drawing} over a picture, smoothed at its edges; needs no screen and none of the machine's fonts. */
final class DrawnPixels {
    private DrawnPixels() {}

    /** The drawing alone, on an even ground, {@code scale} pixels to its unit. */
    static Picture alone(Drawing drawing, double scale, double dotsPerInch, int ground, Lettering lettering) {
        Picture blank = Picture.filled(
                (int) Math.round(drawing.width() * scale),
                (int) Math.round(drawing.height() * scale),
                dotsPerInch,
                ground);
        return over(blank, drawing, scale, lettering);
    }

    /** The picture with the drawing on it. */
    static Picture over(Picture picture, Drawing drawing, double scale, Lettering lettering) {
        int width = picture.width();
        int height = picture.height();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] pixels = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = picture.colour(i % width, i / width);
        }
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pen.scale(scale, scale);
        for (Drawing.Mark mark : drawing.marks()) {
            draw(pen, mark, lettering);
        }
        pen.dispose();
        byte[] samples = new byte[3 * pixels.length];
        for (int i = 0; i < pixels.length; i++) {
            samples[3 * i] = (byte) (pixels[i] >> 16);
            samples[3 * i + 1] = (byte) (pixels[i] >> 8);
            samples[3 * i + 2] = (byte) pixels[i];
        }
        return new Picture(width, height, picture.dotsPerInch(), samples);
    }

    private static void draw(Graphics2D pen, Drawing.Mark mark, Lettering lettering) {
        if (mark instanceof Drawing.Line line) {
            pen.setColor(new Color(line.colour()));
            float[] dash = line.dash() > 0 ? new float[] {(float) line.dash()} : null;
            pen.setStroke(
                    new BasicStroke((float) line.weight(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dash, 0));
            pen.draw(path(line.points(), false));
        } else if (mark instanceof Drawing.Area area) {
            pen.setColor(new Color(area.colour()));
            pen.fill(path(area.points(), true));
        } else if (mark instanceof Drawing.Dot dot) {
            double r = dot.radius();
            Ellipse2D circle =
                    new Ellipse2D.Double(dot.middle().x() - r, dot.middle().y() - r, 2 * r, 2 * r);
            pen.setColor(new Color(dot.colour()));
            pen.fill(circle);
            if (dot.ring() >= 0) {
                pen.setColor(new Color(dot.ring()));
                pen.setStroke(new BasicStroke((float) (r / 2.5)));
                pen.draw(circle);
            }
        } else if (mark instanceof Drawing.Words words) {
            AffineTransform before = pen.getTransform();
            pen.translate(words.at().x(), words.at().y());
            pen.rotate(words.quarterTurns() * Math.PI / 2);
            double length = lettering.width(words.text(), words.size());
            pen.translate(-length * words.anchor().share(), 0);
            Path2D outline = lettering.outline(words.text(), words.size());
            pen.setColor(new Color(words.colour()));
            pen.fill(outline);
            if (words.heavy()) {
                pen.setStroke(new BasicStroke((float) (Lettering.HEAVIER * words.size())));
                pen.draw(outline);
            }
            pen.setTransform(before);
        }
    }

    private static Path2D path(List<Drawing.Point> points, boolean closed) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.size(); i++) {
            Drawing.Point point = points.get(i);
            if (i == 0) {
                path.moveTo(point.x(), point.y());
            } else {
                path.lineTo(point.x(), point.y());
            }
        }
        if (closed) {
            path.closePath();
        }
        return path;
    }
}
