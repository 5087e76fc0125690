package greyground.desk.look;

import javafx.scene.paint.Color;

/**
 * The neutral grey that lies round a picture by daylight: a print looks lighter on dark and darker on light, so it is judged against more than one.
 * L* 81, 45 and 25 are our own choice (assumed).
 */
public enum Surround {
    LIGHT("light", "#c8c8c8", "#4c4c4c"),
    MIDDLE("middle", "#6a6a6a", "#ffffff"),
    DARK("dark", "#3b3b3b", "#ffffff");

    private final String word;
    private final String grey;
    private final String line;

    Surround(String word, String grey, String line) {
        this.word = word;
        this.grey = grey;
        this.line = line;
    }

    /** The surround of this word; the light one where there is none. */
    public static Surround of(String word) {
        for (Surround each : values()) {
            if (each.word.equals(word)) {
                return each;
            }
        }
        return LIGHT;
    }

    public String word() {
        return word;
    }

    /** The next darker one, the lightest after the darkest. */
    public Surround next() {
        return switch (this) {
            case LIGHT -> MIDDLE;
            case MIDDLE -> DARK;
            case DARK -> LIGHT;
        };
    }

    Color grey() {
        return Color.web(grey);
    }

    /** What shows on it. */
    Color line() {
        return Color.web(line);
    }
}
