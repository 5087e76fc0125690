package greyground.desk.model;

import java.util.List;

/** Every key of the window, in the order a hand needs them. */
public final class KeyList {
    public static final List<Group> ALL = List.of(
            new Group(
                    "Places",
                    new Line("1 to 5", "go to Art, Film, Resist, Copper or Print", "1"),
                    new Line("F2", "the plan as a wall card, and back", "F2"),
                    new Line("F5", "the test plate, and back", "F5"),
                    new Line("F9", "every number of the workshop, and back", "F9"),
                    new Line("F7", "settings beside the picture, or not", "F7"),
                    new Line("F8", "histogram and tone diagram below it, or not", "F8"),
                    new Line("F11", "the whole screen, and back", ""),
                    new Line("F10", "the menu: all that can be done with the whole", "F10"),
                    new Line("F6", "on to the next part: stations, picture, settings, warnings", "F6"),
                    new Line("Tab", "on to the next control, with Shift to the one before", ""),
                    new Line("F1", "these keys, and back", "F1")),
            new Group(
                    "Picture",
                    new Line("Arrow keys", "move the picture, or the loupe while it lies there", ""),
                    new Line("+ and -", "nearer and farther", ""),
                    new Line("A", "show all of it", "A"),
                    new Line("T", "true size", "T"),
                    new Line("E", "each pixel of the film one of the screen's, and back to all", "E"),
                    new Line("D", "a darker surround, after the darkest the light one", "D"),
                    new Line("L", "lay the loupe down, or lift it", "L"),
                    new Line("R", "rulers, or none", "R"),
                    new Line("W", "the warnings, or not", "W"),
                    new Line("S", "the whole film sheet, and back", "S"),
                    new Line("U", "turn the sheet over: as printed, or on the plate", ""),
                    new Line("F", "freeze what the loupe shows, to compare", ""),
                    new Line("M", "the same place at two bites", ""),
                    new Line("G", "tints what becomes bare paper or full black, or not", "G"),
                    new Line("O", "while it is held, the art in place of the plate", "O"),
                    new Line("N", "the art left of a line, the plate right of it", "N"),
                    new Line("J", "keep this picture left of a line, against what you change", "J")),
            new Group(
                    "Tools in hand",
                    new Line("P", "pick the paper white; Enter takes what lies under the loupe", "P"),
                    new Line("K", "pick the ink black", "K"),
                    new Line("X", "draw the crop", "X"),
                    new Line("H", "keep the plate's proportion, or not", "H"),
                    new Line("V", "straighten: draw along what shall be level or upright", "V"),
                    new Line("Q", "a quarter turn to the right, with Shift to the left", "Q"),
                    new Line(
                            "Enter",
                            "at the loupe: a dab of the brush, a corner of the outline; else closes the outline",
                            ""),
                    new Line("Escape", "put the tool down", "")),
            new Group(
                    "Numbers",
                    new Line("Enter", "take what was typed", ""),
                    new Line("Up and down", "a step more or less, with Shift ten steps", ""),
                    new Line("Escape", "as it was before typing", "")),
            new Group(
                    "Plan",
                    new Line("Space", "start the clock, stop it, continue it", ""),
                    new Line("Page Up and Page Down", "turn to another step, one at a time", ""),
                    new Line("Tab", "leaves a note and goes on", "")),
            new Group(
                    "Whole",
                    new Line("Ctrl+O", "open a picture, a job or a film", "Shortcut+O"),
                    new Line("Ctrl+Shift+O", "open a recent file", ""),
                    new Line("Ctrl+S", "save the job; with Shift under another name", "Shortcut+S"),
                    new Line("Ctrl+M", "make the film", "Shortcut+M"),
                    new Line("Ctrl+P", "print the film", "Shortcut+P"),
                    new Line("Ctrl+Z", "take the last change back", "Shortcut+Z"),
                    new Line("Ctrl+Shift+Z", "do it again; Ctrl+Y, too", "Shortcut+Shift+Z"),
                    new Line("F3", "safelight: amber on black", "F3"),
                    new Line("F4", "inches, and back", "F4")),
            new Group(
                    "Questions and warnings",
                    new Line("Enter", "presses the button that has the keys; goes to a warning's place", ""),
                    new Line("Escape", "the last answer, which changes nothing", "")));

    private KeyList() {}

    public record Group(String title, List<Line> lines) {
        Group(String title, Line... lines) {
            this(title, List.of(lines));
        }
    }

    /**
     * A key.
     *
     * @param keys as they are shown
     * @param words what they do
     * @param anywhere as a program names the key, where it works wherever the keys go; else empty
     */
    public record Line(String keys, String words, String anywhere) {}
}
