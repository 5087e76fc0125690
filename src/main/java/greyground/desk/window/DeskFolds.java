package greyground.desk.window;

import greyground.desk.model.DeskHabits;

/** What of the window is folded away: as it was left, and until it is touched as the window has room for. */
final class DeskFolds {
    private static final double WIDE = 1280;
    private static final double TALL = 1200;

    private final DeskWindow desk;
    private final DeskHabits habits;

    DeskFolds(DeskWindow desk, DeskHabits habits) {
        this.desk = desk;
        this.habits = habits;
    }

    /** Whether the settings are seen. */
    boolean settings() {
        return habits.chosen("settings").orElse(desk.frame.getWidth() >= WIDE);
    }

    /** Whether histogram and diagram are seen. */
    boolean tones() {
        return habits.chosen("tones").orElse(desk.frame.getWidth() >= WIDE && desk.frame.getHeight() >= TALL);
    }

    boolean rulers() {
        return habits.chosen("rulers").orElse(false);
    }

    void settings(boolean wanted) {
        choose("settings", wanted);
    }

    void tones(boolean wanted) {
        choose("tones", wanted);
    }

    void rulers(boolean wanted) {
        choose("rulers", wanted);
    }

    private void choose(String part, boolean wanted) {
        habits.choose(part, wanted);
        refresh();
    }

    /** Lays the window out as it is folded now. */
    void refresh() {
        desk.middle.arrangeFolds();
        desk.picture.measure(rulers());
        desk.sheet.picture().measure(rulers());
        desk.head.refresh();
    }
}
