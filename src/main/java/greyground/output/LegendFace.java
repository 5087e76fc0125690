package greyground.output;

import greyground.film.sheet.TextWidth;
import greyground.quantity.Refusal;
import java.io.IOException;

/** How wide legends become in the face that films are set in. */
public final class LegendFace {
    private LegendFace() {}

    /** Reads the face and measures with it. */
    public static TextWidth load() {
        try {
            TypeFace face = TypeFace.load();
            return (text, capHeightMillimetres) -> face.width(text) / face.capHeight() * capHeightMillimetres;
        } catch (IOException missing) {
            throw Refusal.failure("the program's type face can't be read: install the program again", missing);
        }
    }
}
