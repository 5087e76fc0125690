package greyground.picture;

import greyground.quantity.Refusal;

/**
 * What copper's colour says of depth: a strip from the plate's face to the deepest floor.
 *
 * @param fullDepthMicrometres of the deepest floor, 0 or more
 */
public record DepthLegend(double fullDepthMicrometres) {
    private static final int STEPS = 60;

    /** Draws the strip; the words stand to its left and right. */
    void draw(Drawing drawing, double left, double middle, double length, double letter) {
        double tall = letter * 0.9;
        for (int step = 0; step < STEPS; step++) {
            double brightness = CopperRelief.flat((step + 0.5) / STEPS, 1);
            // Each reaches to the end and the next lies on it, so that no seam shows between two steps.
            double from = length * step / STEPS;
            drawing.rectangle(left + from, middle - tall / 2, length - from, tall, Palette.copper(brightness));
        }
        drawing.words(
                left - letter * 0.5, middle + letter * 0.36, letter, Drawing.Anchor.END, Palette.INK, "plate's face");
        drawing.words(
                left + length + letter * 0.5,
                middle + letter * 0.36,
                letter,
                Drawing.Anchor.START,
                Palette.INK,
                Refusal.plain(Math.rint(fullDepthMicrometres * 10) / 10) + " \u00b5m");
    }
}
