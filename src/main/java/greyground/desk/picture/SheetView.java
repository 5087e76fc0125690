package greyground.desk.picture;

import greyground.app.live.LiveSheet;
import greyground.app.live.SheetSide;
import greyground.app.sight.LiveView;
import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The whole film sheet with all its marks, as it comes out of the printer or as it lies on the plate. */
public final class SheetView extends VBox {
    private final LiveDesk live;
    private final Consumer<String> tellPlace;
    private final PictureView picture = new PictureView(this::askPicture, () -> {}, this::point);
    private final ToggleButton printed =
            Controls.toggle("As printed", "sheet-printed", "The side with the ink, as it leaves the printer");
    private final ToggleButton lying =
            Controls.toggle("On the plate  U", "sheet-lying", "As you lay it on the copper, seen from the lamp");
    private final ToggleButton positive = Controls.toggle("Positive", "sheet-positive", "The film with the picture");
    private final ToggleButton screen =
            Controls.toggle("Screen film", "sheet-screen", "The aquatint screen film, exposed by itself");
    private final ToggleButton opener =
            Controls.drawn(Controls.toggle("Whole sheet", "sheet-view", Place.SHEET.words() + " (S)"), Icon.SHEET);
    private final HBox films = new HBox(0, positive, screen);
    private final Label words = Controls.wrapped("");
    private final Label size = Controls.label("", "quiet");
    private @Nullable LiveSheet sheet;
    private @Nullable BenchState state;
    private boolean inches;

    public SheetView(LiveDesk live, Consumer<String> tellPlace) {
        this.live = live;
        this.tellPlace = tellPlace;
        getStyleClass().add("bench");
        setId("sheet");
        Controls.oneOf(this::changed, printed, lying);
        Controls.oneOf(this::refresh, positive, screen);
        words.setId("sheet-words");
        size.setId("sheet-size");
        Region gap = Controls.growing(new Region());
        HBox line = Controls.line(16, new HBox(0, printed, lying), films, gap, size);
        VBox strip = new VBox(8, line, words);
        strip.getStyleClass().add("strip");
        picture.setId("sheet-picture");
        picture.choose(Station.FILM);
        picture.setAccessibleText("Film sheet");
        VBox.setVgrow(picture, Priority.ALWAYS);
        getChildren().addAll(strip, picture);
        setVisible(false);
    }

    /** What goes to the sheet from the station Film, and back. */
    public ToggleButton opener(Runnable toggle) {
        opener.setOnAction(pressed -> toggle.run());
        return opener;
    }

    public void show(boolean wanted) {
        setVisible(wanted);
        opener.setSelected(wanted);
    }

    public PictureView picture() {
        return picture;
    }

    /** The sheet seen; null until it has been laid out. */
    @Nullable
    public LiveSheet sheet() {
        return sheet;
    }

    private SheetSide side() {
        return lying.isSelected() ? SheetSide.ON_THE_PLATE : SheetSide.AS_PRINTED;
    }

    /** Turns the sheet over: from the printer onto the plate and back. */
    public void turnOver() {
        (lying.isSelected() ? printed : lying).fire();
    }

    public void look(RoomLight light, boolean inInches) {
        inches = inInches;
        picture.look(light, inches);
        if (isVisible()) {
            changed();
        }
    }

    /** Whether the job has a screen film beside the positive. */
    public void screened(boolean wanted) {
        Controls.show(films, wanted);
        if (!wanted) {
            positive.setSelected(true);
        }
    }

    /** Something has changed: what is seen is of before. */
    public void stale(BenchState now) {
        state = now;
        picture.stale();
    }

    /** The plate or its settings have changed; nothing is asked for while the sheet is not seen. */
    public void refresh() {
        if (isVisible()) {
            live.layOut(screen.isSelected(), this::laid, this::refused);
        }
    }

    /** Nothing is on the bench, or another picture. */
    public void clear() {
        sheet = null;
        picture.clear();
    }

    private void laid(LiveSheet made) {
        sheet = made;
        Controls.look(words, "fault", false);
        picture.measure(1, 1, made.widthMillimetres(), made.heightMillimetres());
        changed();
    }

    private void refused(String why) {
        clear();
        words.setText(DeskWords.of(why));
        size.setText("");
        Controls.look(words, "fault", true);
    }

    private void changed() {
        LiveSheet seen = sheet;
        if (seen != null) {
            words.setText(seen.words(side()));
            size.setText("sheet "
                    + DeskWords.lengths(inches, " \u00d7 ", seen.widthMillimetres(), seen.heightMillimetres()));
            picture.edges(seen.outlines(side()));
            askPicture();
        }
    }

    private void askPicture() {
        BenchState from = state;
        if (sheet != null && from != null && isVisible()) {
            LiveView view = picture.view();
            SheetSide seen = side();
            live.sheet(seen, view, shown -> {
                if (seen == side()) {
                    picture.show(shown, view, Station.FILM, from);
                }
            });
        }
    }

    private void point(double x, double y) {
        tellPlace.accept(DeskWords.lengths(inches, ", ", x, y) + " from the sheet's corner");
    }
}
