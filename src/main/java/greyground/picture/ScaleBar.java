package greyground.picture;

import greyground.quantity.Refusal;

/**
 * A bar of round length: 1, 2 or 5 times a power of ten, at most as long as allowed.
 *
 * @param micrometres its true length
 */
record ScaleBar(double micrometres) {
    /** The longest round bar within a length above 0. */
    static ScaleBar within(double mostMicrometres) {
        double power = StrictMath.pow(10, Math.floor(StrictMath.log10(mostMicrometres) + 1e-9));
        double leading = mostMicrometres / power + 1e-9;
        return new ScaleBar(power * (leading >= 5 ? 5 : leading >= 2 ? 2 : 1));
    }

    /** Its length as people say it. */
    String words() {
        return micrometres >= 1000
                ? Refusal.plain(micrometres / 1000) + " mm"
                : Refusal.plain(micrometres) + " \u00b5m";
    }

    /** Draws it with its left end at a place; the words stand to its right. */
    void draw(Drawing drawing, double left, double middle, double unitsPerMicrometre, double letter) {
        double length = micrometres * unitsPerMicrometre;
        double tall = Math.max(3, letter * 0.32);
        drawing.rectangle(left, middle - tall / 2, length, tall, Palette.INK);
        drawing.rectangle(left, middle - tall * 1.5, Math.max(1, tall / 3), tall * 3, Palette.INK);
        double tick = Math.max(1, tall / 3);
        drawing.rectangle(left + length - tick, middle - tall * 1.5, tick, tall * 3, Palette.INK);
        drawing.words(
                left + length + letter * 0.6,
                middle + letter * 0.36,
                letter,
                Drawing.Anchor.START,
                Palette.INK,
                words());
    }
}
