package greyground.desk.look;

import greyground.app.sight.LivePicture;
import java.nio.IntBuffer;
import java.util.stream.IntStream;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;

/**
 * The colours of what is drawn by hand, in daylight or under the safelight.
 *
 * @param safe whether only amber may shine
 * @param round what lies round a picture by daylight
 */
public record RoomLight(boolean safe, Surround round) {
    private static final double SAFE_GREEN = 0.62;

    public RoomLight(boolean safe) {
        this(safe, Surround.LIGHT);
    }

    /** What lies round the picture. */
    public Color surround() {
        return safe ? bench() : round.grey();
    }

    /** Lines and words on what lies round the picture. */
    public Color onSurround() {
        return safe ? quiet() : round.line();
    }

    public Color bench() {
        return safe ? Color.web("#050200") : Color.web("#c8c8c8");
    }

    public Color panel() {
        return safe ? Color.web("#0c0600") : Color.web("#dcdcdc");
    }

    public Color field() {
        return safe ? Color.web("#120900") : Color.web("#f6f6f6");
    }

    public Color ink() {
        return safe ? Color.web("#ffa41c") : Color.web("#1c1c1c");
    }

    public Color quiet() {
        return safe ? Color.web("#d98510") : Color.web("#4c4c4c");
    }

    public Color rule() {
        return safe ? Color.web("#5c3805") : Color.web("#a8a8a8");
    }

    public Color faint() {
        return safe ? Color.web("#2b1a02") : Color.web("#cacaca");
    }

    public Color copper() {
        return safe ? Color.web("#ffb84a") : Color.web("#8c4320");
    }

    /** A picture as it may shine. */
    public WritableImage image(LivePicture picture) {
        int width = picture.width();
        int[] pixels =
                safe ? IntStream.of(picture.pixels()).map(RoomLight::amber).toArray() : picture.pixels();
        WritableImage image = new WritableImage(width, picture.height());
        PixelFormat<IntBuffer> format = PixelFormat.getIntArgbInstance();
        image.getPixelWriter().setPixels(0, 0, width, picture.height(), format, pixels, 0, width);
        return image;
    }

    /** As much amber as a pixel has light (Rec. 709 weights). */
    private static int amber(int argb) {
        int light = ((argb >> 16 & 0xFF) * 54 + (argb >> 8 & 0xFF) * 183 + (argb & 0xFF) * 19) >> 8;
        return (argb & 0xFF000000) | (light << 16) | ((int) (light * SAFE_GREEN) << 8);
    }
}
