package greyground.desk.look;

import javafx.scene.Node;
import javafx.scene.layout.Pane;
import javafx.scene.shape.SVGPath;

/** Small drawings of what a tool does, on a square of 20; each tool is named in words besides. */
public enum Icon {
    LOUPE("M15 8.5 A6.5 6.5 0 1 1 2 8.5 A6.5 6.5 0 1 1 15 8.5 M13.2 13.2 L18.5 18.5"),
    BESIDE("M2 4 H8.5 V16 H2 Z M11.5 4 H18 V16 H11.5 Z"),
    BITES("M1 5 H3 V8 Q3 11 5.5 11 Q8 11 8 8 V5 H11 V13 Q11 17 14 17 Q17 17 17 13 V5 H19"),
    ALL("M2 6 V2 H6 M14 2 H18 V6 M18 14 V18 H14 M6 18 H2 V14 M6 7 H14 V13 H6 Z"),
    TRUE_SIZE("M1.5 6.5 H18.5 V13.5 H1.5 Z M5 7 V10.5 M8.3 7 V9 M11.6 7 V10.5 M15 7 V9"),
    PAPER("M4 2 H12 L16 6 V18 H4 Z M12 2 V6 H16"),
    INK("M10 2 C13 7 16 9.5 16 13 A6 6 0 0 1 4 13 C4 9.5 7 7 10 2 Z M7 13 A3 3 0 0 0 10 16"),
    ENDS("M3 3 V17 M17 3 V17 M6 14 L14 6 M10.5 6 H14 V9.5 M6 10.5 V14 H9.5"),
    CUT("M5 1 V5 H1 M15 1 V5 H19 M5 19 V15 H1 M15 19 V15 H19 M7.5 7.5 H12.5 V12.5 H7.5 Z"),
    PROPORTION("M2 4.5 H18 V15.5 H2 Z M2 15.5 L18 4.5"),
    WHOLE("M6.5 6.5 H13.5 V13.5 H6.5 Z M6.5 6.5 L2 2 M13.5 6.5 L18 2 M6.5 13.5 L2 18 M13.5 13.5 L18 18"),
    COVER("M7 1.5 L18.5 6 L13 18.5 L1.5 14 Z M7 7 H13 V13 H7 Z"),
    LEFT("M4 8 A7 7 0 1 1 4.5 13 M4 3 V8 H9"),
    RIGHT("M16 8 A7 7 0 1 0 15.5 13 M16 3 V8 H11"),
    STRAIGHTEN("M1.5 13 H18.5 M3.5 17 L16.5 5"),
    BACK("M4 7 H12 A4.5 4.5 0 0 1 12 16 H7 M8 3 L4 7 L8 11"),
    AGAIN("M16 7 H8 A4.5 4.5 0 0 0 8 16 H13 M12 3 L16 7 L12 11"),
    SETTINGS("M2 6 H18 M2 14 H18 M7 3.5 V8.5 M13 11.5 V16.5"),
    TONES("M3 2 V17 H18 M4 15 C10 15 11 5 17 4"),
    SHEET("M4 2 H16 V18 H4 Z M7 6 H13 M7 9 H13 M7 14 H9"),
    AGAINST("M2 4 H18 V16 H2 Z M10 1.5 V18.5 M4.5 8 L7.5 12 M7.5 8 L4.5 12"),
    KEPT("M2 4 H18 V16 H2 Z M10 1.5 V18.5 M4 10 L5.5 12 L8 8"),
    LOST("M2 16 L8 5 L11 10 L13.5 7 L18 16 Z M14 2 V4 M14 11 V11.5 M4 2 H9"),
    BURNISH("M3 17 L11 9 C13 5 16 3 18 2 C17 4 15 7 11 9 M2 6 H8 M5 3 V9"),
    DEEPEN("M10 10 L17 3 M10 14 A4 4 0 1 1 2 14 A4 4 0 1 1 10 14 Z M6 14 V14.5 M12 16 H18"),
    BOX("M2 4 H13 V12 H2 Z M13 12 L18 17 M18 13 V17 H14"),
    ROUND("M2 8 A6 5 0 1 1 14 8 A6 5 0 1 1 2 8 Z M13 12 L18 17 M18 13 V17 H14"),
    CORNERS("M3 15 L5 5 L13 2.5 L17.5 10 L11.5 17 Z M10 9 V9.5"),
    MENU("M4.5 7.5 L10 13 L15.5 7.5");

    private static final double SIDE = 20;

    private final String path;

    Icon(String path) {
        this.path = path;
    }

    /** The drawing, in the colour of its button's words. */
    public Node drawn() {
        SVGPath drawing = new SVGPath();
        drawing.setContent(path);
        drawing.getStyleClass().add("icon");
        Pane square = new Pane(drawing);
        square.setMinSize(SIDE, SIDE);
        square.setPrefSize(SIDE, SIDE);
        square.setMaxSize(SIDE, SIDE);
        return square;
    }
}
