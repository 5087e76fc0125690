package greyground.desk.picture;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.Drawn;
import greyground.desk.look.Pen;
import greyground.desk.model.DeskWords;
import greyground.desk.model.PlateFilling;
import greyground.desk.model.Viewport;
import greyground.quantity.Size;
import javafx.scene.image.Image;
import javafx.scene.text.TextAlignment;
import org.jspecify.annotations.Nullable;

/** A plate to scale with the picture in it, on a sheet of known size, so that a wrong size is seen at once. */
public final class PlateDrawn extends Drawn {
    /** ISO 216: what lies on every table to compare with. */
    private static final Size SHEET = new Size(210, 297);

    private static final double MARGIN = 40;

    private @Nullable PlateFilling filling;
    private @Nullable Image image;
    private @Nullable LiveView view;
    private Viewport.Area part = new Viewport.Area(0, 0, 1, 1);
    private boolean inches;

    public PlateDrawn() {
        super("plate-drawn");
        setFocusTraversable(false);
        setMinSize(200, 200);
        getChildren().add(canvas);
    }

    /**
     * The picture to lay on it.
     *
     * @param seen what of the art it shows, in art pixels
     */
    public void picture(LivePicture picture, LiveView seen) {
        image = light.image(picture);
        view = seen;
        draw();
    }

    /** Shows how it lies; {@code wanted} is the picture's part that is wanted, in art pixels. */
    public void show(PlateFilling lies, Viewport.Area wanted, boolean inInches) {
        filling = lies;
        part = wanted;
        inches = inInches;
        draw();
    }

    @Override
    protected void draw(Pen pen) {
        PlateFilling lies = filling;
        if (lies == null) {
            return;
        }
        boolean lying = lies.plate().widthMillimetres() > lies.plate().heightMillimetres();
        Size sheet = lying ? SHEET.turned() : SHEET;
        double across = Math.max(sheet.widthMillimetres(), lies.plate().widthMillimetres());
        double down = Math.max(sheet.heightMillimetres(), lies.plate().heightMillimetres());
        double scale = Math.min((canvas.getWidth() - 2 * MARGIN) / across, (canvas.getHeight() - 2 * MARGIN) / down);
        if (scale <= 0) {
            return;
        }
        double sheetLeft = left(sheet.widthMillimetres() * scale);
        double sheetTop = top(sheet.heightMillimetres() * scale);
        pen.stroke(light.quiet(), 1, 4, 4);
        pen.context()
                .strokeRect(sheetLeft, sheetTop, sheet.widthMillimetres() * scale, sheet.heightMillimetres() * scale);
        pen.words("a sheet of A4", sheetLeft, sheetTop - 12, TextAlignment.LEFT, light.quiet());
        double width = lies.plate().widthMillimetres() * scale;
        double height = lies.plate().heightMillimetres() * scale;
        double left = left(width);
        double top = top(height);
        pen.fill(light.field(), left, top, width, height);
        drawPicture(pen, lies, left, top, scale);
        pen.stroke(light.copper(), 2);
        pen.context().strokeRect(left, top, width, height);
        String size = DeskWords.lengths(
                inches,
                " \u00d7 ",
                lies.plate().widthMillimetres(),
                lies.plate().heightMillimetres());
        double below = Math.min(top + height + 16, canvas.getHeight() - 12);
        pen.fill(light.bench(), left + width / 2 - Pen.width(size) / 2 - 6, below - 9, Pen.width(size) + 12, 18);
        pen.words(size, left + width / 2, below, TextAlignment.CENTER, light.ink());
    }

    private double left(double width) {
        return (canvas.getWidth() - width) / 2;
    }

    private double top(double height) {
        return (canvas.getHeight() - height) / 2;
    }

    /** The wanted part, or the middle of it that suits the plate. */
    private void drawPicture(Pen pen, PlateFilling lies, double left, double top, double scale) {
        Image shown = image;
        LiveView seen = view;
        if (shown == null || seen == null) {
            return;
        }
        double shape = lies.seen().width() / lies.seen().height();
        double width = Math.min(part.width(), part.height() * shape);
        double height = width / shape;
        double fromX = part.left() + (part.width() - width) / 2;
        double fromY = part.top() + (part.height() - height) / 2;
        pen.context()
                .drawImage(
                        shown,
                        (fromX - seen.left()) / seen.perPixel(),
                        (fromY - seen.top()) / seen.perPixel(),
                        width / seen.perPixel(),
                        height / seen.perPixel(),
                        left + lies.seen().left() * scale,
                        top + lies.seen().top() * scale,
                        lies.seen().width() * scale,
                        lies.seen().height() * scale);
    }
}
