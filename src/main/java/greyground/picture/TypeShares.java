package greyground.picture;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;

/**
 * Lines of type on a window over a page, in the face that our films are set in: which share of each pixel is black. Lengths in
 * millimetres of the page. One thread.
 */
public final class TypeShares {
    private final double left;
    private final double top;
    private final double perPixel;
    private final BufferedImage shares;
    private final Lettering face = Lettering.load();

    /**
     * A window without type.
     *
     * @param left of its left edge on the page
     * @param top of its upper edge
     * @param perPixel length of a pixel, above 0
     * @param width its pixels across, at least 1
     * @param height its pixels down, at least 1
     */
    public TypeShares(double left, double top, double perPixel, int width, int height) {
        this.left = left;
        this.top = top;
        this.perPixel = perPixel;
        this.shares = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
    }

    /**
     * Sets a line.
     *
     * @param x of its start
     * @param baseline of its letters' feet
     * @param capHeight of a capital
     * @param quarterTurns turned clockwise about its start
     * @param scaleX by which the page is stretched across
     * @param scaleY by which it is stretched down
     */
    public void line(
            String text, double x, double baseline, double capHeight, int quarterTurns, double scaleX, double scaleY) {
        Path2D outline = face.outline(text, capHeight / face.capHeight());
        AffineTransform place = AffineTransform.getScaleInstance(1 / perPixel, 1 / perPixel);
        place.translate(x - left, baseline - top);
        place.scale(scaleX, scaleY);
        place.quadrantRotate(quarterTurns);
        Graphics2D pen = shares.createGraphics();
        try {
            pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            pen.setColor(Color.WHITE);
            pen.fill(place.createTransformedShape(outline));
        } finally {
            pen.dispose();
        }
    }

    /** A pixel's share, 0 to 1. */
    public float share(int pixel) {
        return (((DataBufferByte) shares.getRaster().getDataBuffer()).getData()[pixel] & 0xFF) / 255f;
    }
}
