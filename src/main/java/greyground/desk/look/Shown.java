package greyground.desk.look;

import greyground.app.sight.LivePicture;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/** Turns the bench's pixels into what JavaFX draws. */
public final class Shown {
    private Shown() {}

    public static WritableImage image(LivePicture picture, Light light) {
        int[] pixels = picture.pixels();
        if (light.safe()) {
            pixels = pixels.clone();
            for (int i = 0; i < pixels.length; i++) {
                pixels[i] = light.shown(pixels[i]);
            }
        }
        WritableImage image = new WritableImage(picture.width(), picture.height());
        image.getPixelWriter()
                .setPixels(
                        0,
                        0,
                        picture.width(),
                        picture.height(),
                        PixelFormat.getIntArgbInstance(),
                        pixels,
                        0,
                        picture.width());
        return image;
    }
}
