package greyground.desk.window;

import greyground.desk.look.Surround;
import greyground.desk.model.DeskHabits;
import greyground.desk.page.PreferencesPage;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import javafx.stage.Screen;

/** What the person wishes of the window, kept between runs. */
final class DeskWishes implements PreferencesPage.Wishes {
    private static final String INCHES = "inches";
    private static final String SURROUND = "surround";
    private static final String PIXELS = "pixelsPerInch";
    private static final String PLATE = "plate";
    /** From a projected wall to a telephone (assumed). */
    private static final Range PIXELS_PER_INCH = new Range(10, 1200, Unit.RATIO, "measure the line again");

    private final DeskWindow desk;
    private final DeskHabits habits;

    DeskWishes(DeskWindow desk, DeskHabits habits) {
        this.desk = desk;
        this.habits = habits;
    }

    @Override
    public boolean inches() {
        return habits.chosen(INCHES).orElse(false);
    }

    @Override
    public void inches(boolean wanted) {
        habits.choose(INCHES, wanted);
        desk.refreshUnits();
    }

    @Override
    public Surround surround() {
        return Surround.of(habits.word(SURROUND));
    }

    @Override
    public void surround(Surround wanted) {
        habits.keep(SURROUND, wanted.word());
        desk.shineSafely(desk.isSafe());
    }

    @Override
    public double pixelsPerInch() {
        return habits.number(PIXELS, PIXELS_PER_INCH.least(), PIXELS_PER_INCH.most())
                .orElseGet(() -> Screen.getPrimary().getDpi());
    }

    @Override
    public void pixelsPerInch(double wanted) {
        habits.keep(PIXELS, PIXELS_PER_INCH.check("pixels to the inch", wanted));
    }

    @Override
    public String plate() {
        String typed = habits.word(PLATE);
        try {
            Size.parse("usual plate", typed);
            return typed;
        } catch (Refusal noneOrSpoilt) {
            return "";
        }
    }

    @Override
    public void plate(String typed) {
        if (!typed.isEmpty()) {
            Size.parse("usual plate", typed);
        }
        habits.keep(PLATE, typed);
    }
}
