package greyground.desk.picture;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Viewport;
import javafx.scene.image.ImageView;
import org.jspecify.annotations.Nullable;

/** A picture that lies where it belongs, however the window has moved since it was computed, in the light that shines now. */
final class LaidPicture {
    private final ImageView image = new ImageView();
    private @Nullable LivePicture picture;
    private @Nullable LiveView view;

    LaidPicture() {
        image.setPreserveRatio(false);
        image.setSmooth(true);
    }

    ImageView node() {
        return image;
    }

    @Nullable
    LivePicture picture() {
        return picture;
    }

    /** What of the plane it shows; null where there is none. */
    @Nullable
    LiveView view() {
        return view;
    }

    void show(LivePicture shown, LiveView of, RoomLight light) {
        picture = shown;
        view = of;
        look(light);
    }

    /** At once in another light: no lit pixel waits for a new picture. */
    void look(RoomLight light) {
        LivePicture shown = picture;
        if (shown != null) {
            image.setImage(light.image(shown));
        }
    }

    void forget() {
        picture = null;
        view = null;
        image.setImage(null);
    }

    void place(Viewport port) {
        LiveView seen = view;
        if (seen != null) {
            image.setX(port.pixelX(seen.left()));
            image.setY(port.pixelY(seen.top()));
            image.setFitWidth(seen.width() * seen.perPixel() / port.perPixel());
            image.setFitHeight(seen.height() * seen.perPixel() / port.perPixel());
        }
    }
}
