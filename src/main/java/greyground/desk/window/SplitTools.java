package greyground.desk.window;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.Controls;
import greyground.desk.look.Icon;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Station;
import greyground.desk.picture.PictureView;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;

/** Compares in the picture itself: the art where it lies on the plate, or what was seen before a change, left of a line that is moved; and tints what is lost. */
final class SplitTools extends VBox {
    private final PlateSight sight;
    private final LiveDesk live;
    private final PictureView picture;
    private final ToggleButton art = Controls.drawn(
            Controls.toggle(
                    "Against the art", "against-art", "Against the art, left of a line (N); hold O for all of it"),
            Icon.AGAINST);
    private final ToggleButton kept = Controls.drawn(
            Controls.toggle(
                    "Keep this picture",
                    "against-kept",
                    "Keep this picture: what is seen now stays left of a line, against what you change (J)"),
            Icon.KEPT);

    private final ToggleButton lost = Controls.drawn(
            Controls.toggle(
                    "What is lost",
                    "show-lost",
                    "What is lost: copper tints what becomes bare paper, blue what becomes full black (G)"),
            Icon.LOST);

    SplitTools(PlateSight sight, LiveDesk live) {
        super(2);
        this.sight = sight;
        this.live = live;
        this.picture = sight.picture();
        art.setOnAction(pressed -> againstArt(art.isSelected()));
        kept.setOnAction(pressed -> keep(kept.isSelected()));
        lost.setOnAction(pressed -> tint(lost.isSelected()));
        getChildren().addAll(art, kept, lost);
        sight.whenPictureMoves(() -> {
            ask();
            askLost();
        });
    }

    /** While O is held, all of the picture is the art. */
    void listen(Node root) {
        root.addEventHandler(KeyEvent.KEY_RELEASED, key -> {
            if (key.getCode() == KeyCode.O) {
                picture.against().hold(false);
                if (!picture.against().isOn()) {
                    picture.against().part(false);
                }
                picture.draw();
            }
        });
    }

    void hold() {
        if (picture.station() != Station.ART && !kept.isSelected()) {
            picture.against().hold(true);
            ask();
        }
    }

    void againstArt(boolean wanted) {
        boolean possible = wanted && picture.station() != Station.ART;
        art.setSelected(possible);
        kept.setSelected(false);
        picture.against().part(possible);
        picture.draw();
        ask();
    }

    void toggleLost() {
        tint(!lost.isSelected());
    }

    private void tint(boolean wanted) {
        lost.setSelected(wanted);
        picture.forgetLost();
        askLost();
    }

    private void askLost() {
        if (lost.isSelected() && sight.plate().isPresent()) {
            LiveView view = picture.view();
            Station seen = picture.station();
            live.lost(seen, view, tints -> {
                if (seen == picture.station() && lost.isSelected()) {
                    picture.showLost(tints, view);
                }
            });
        }
    }

    void toggleArt() {
        againstArt(!art.isSelected());
    }

    void toggleKept() {
        keep(!kept.isSelected());
    }

    private void keep(boolean wanted) {
        boolean possible = wanted && picture.keep();
        kept.setSelected(possible);
        art.setSelected(false);
        if (!possible) {
            picture.against().part(false);
            picture.draw();
        }
    }

    /** Another station, or other art: nothing is compared any more. */
    void choose(Station station) {
        art.setSelected(false);
        kept.setSelected(false);
        art.setDisable(station == Station.ART);
    }

    private void ask() {
        boolean wanted = art.isSelected() || picture.against().isHeld();
        if (wanted && sight.plate().isPresent() && picture.station() != Station.ART) {
            LiveView view = picture.view();
            Station seen = picture.station();
            live.artOnPlate(view, (LivePicture shown) -> {
                if (seen == picture.station()
                        && (art.isSelected() || picture.against().isHeld())) {
                    picture.against().show(shown, view, "Art");
                    picture.draw();
                }
            });
        }
    }
}
