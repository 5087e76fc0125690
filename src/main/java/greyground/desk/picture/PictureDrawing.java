package greyground.desk.picture;

import greyground.desk.look.Pen;
import greyground.desk.look.RoomLight;
import greyground.desk.model.CropFrame;
import greyground.desk.model.RulerTicks;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** What is drawn over and beside the picture. Nothing is told by colour alone. */
final class PictureDrawing {
    private static final int RULER = 24;

    private final Pen pen;
    private final GraphicsContext context;
    private final RoomLight light;
    private final boolean inches;

    PictureDrawing(Pen pen, RoomLight light, boolean inches) {
        this.pen = pen;
        this.context = pen.context();
        this.light = light;
        this.inches = inches;
    }

    private double x(Viewport port, double planeX) {
        return port.pixelX(planeX);
    }

    private double y(Viewport port, double planeY) {
        return port.pixelY(planeY);
    }

    private void twice(Runnable line) {
        pen.onAnything(light.copper(), 1.25, line);
    }

    private Color paper() {
        return light.safe() ? light.bench() : Color.WHITE;
    }

    /** Shades what is cut off. */
    void crop(Viewport port, Viewport.Area area) {
        double left = x(port, area.left());
        double top = y(port, area.top());
        double width = area.width() / port.perPixel();
        double height = area.height() / port.perPixel();
        double right = port.width();
        double bottom = port.height();
        Color shade = light.surround().deriveColor(0, 1, 1, 0.6);
        pen.fill(shade, 0, 0, port.width(), Math.max(0, top));
        pen.fill(shade, 0, top + height, port.width(), Math.max(0, bottom - top - height));
        pen.fill(shade, 0, top, Math.max(0, left), height);
        pen.fill(shade, left + width, top, Math.max(0, right - left - width), height);
        twice(() -> context.strokeRect(left, top, width, height));
    }

    /** A fragment's grips: squares on its corners and edges, to be pulled. */
    void grips(Viewport port, CropFrame frame) {
        for (CropFrame.Grip grip : frame.grips()) {
            double atX = x(port, frame.x(grip));
            double atY = y(port, frame.y(grip));
            pen.fill(paper(), atX - 4, atY - 4, 8, 8);
            pen.stroke(light.copper(), 1.25);
            context.strokeRect(atX - 4, atY - 4, 8, 8);
        }
    }

    /** The line along what should be level. */
    void line(double[] ends) {
        twice(() -> pen.line(ends[0], ends[1], ends[2], ends[3]));
    }

    /** The platemark, and on the film the bevel within it. */
    void plate(Viewport port, Viewport.Area plate, double bevel, Station station) {
        pen.stroke(light.onSurround(), 1);
        context.strokeRect(
                Math.rint(x(port, plate.left())) - 0.5,
                Math.rint(y(port, plate.top())) - 0.5,
                Math.rint(plate.width() / port.perPixel()) + 1,
                Math.rint(plate.height() / port.perPixel()) + 1);
        if (station == Station.FILM && bevel > 0) {
            pen.stroke(light.quiet(), 1, 4, 4);
            context.strokeRect(
                    x(port, plate.left() + bevel),
                    y(port, plate.top() + bevel),
                    (plate.width() - 2 * bevel) / port.perPixel(),
                    (plate.height() - 2 * bevel) / port.perPixel());
        }
    }

    /** A shape that is being drawn from corner to corner. */
    void box(Viewport port, Viewport.Area area, boolean round) {
        double left = x(port, area.left());
        double top = y(port, area.top());
        double width = area.width() / port.perPixel();
        double height = area.height() / port.perPixel();
        twice(() -> {
            if (round) {
                context.strokeOval(left, top, width, height);
            } else {
                context.strokeRect(left, top, width, height);
            }
        });
    }

    /** The brush where the pointer is, and the way that it has gone. */
    void brush(Viewport port, DrawnPath path) {
        path.pointer().ifPresent(place -> {
            double across = path.brush() / port.perPixel();
            double atX = x(port, place.acrossMillimetres());
            double atY = y(port, place.downMillimetres());
            twice(() -> context.strokeOval(atX - across / 2, atY - across / 2, across, across));
        });
        way(port, path.points());
    }

    /** The corners that have been set, and the side that follows the pointer. */
    void corners(Viewport port, DrawnPath path) {
        List<Offset> sides = new ArrayList<>(path.points());
        if (!sides.isEmpty()) {
            path.pointer().ifPresent(sides::add);
        }
        way(port, sides);
        for (Offset corner : path.points()) {
            double atX = x(port, corner.acrossMillimetres());
            double atY = y(port, corner.downMillimetres());
            pen.fill(paper(), atX - 4, atY - 4, 8, 8);
            pen.stroke(light.copper(), 1.25);
            context.strokeRect(atX - 4, atY - 4, 8, 8);
        }
    }

    private void way(Viewport port, List<Offset> points) {
        double[] xs = points.stream()
                .mapToDouble(point -> x(port, point.acrossMillimetres()))
                .toArray();
        double[] ys = points.stream()
                .mapToDouble(point -> y(port, point.downMillimetres()))
                .toArray();
        twice(() -> pen.curve(xs, ys));
    }

    /** Places of warnings: a ring and the number that the list has. */
    void places(Viewport port, PictureView.Marks marks) {
        List<Viewport.Area> places = marks.places();
        for (int i = 0; i < places.size(); i++) {
            double atX = x(port, places.get(i).left());
            double atY = y(port, places.get(i).top());
            double radius = Math.max(7, places.get(i).width() / port.perPixel() / 2 + 5);
            twice(() -> context.strokeOval(atX - radius, atY - radius, 2 * radius, 2 * radius));
            if (i == marks.chosen()) {
                twice(() -> {
                    pen.line(atX - radius - 10, atY, atX - radius, atY);
                    pen.line(atX + radius, atY, atX + radius + 10, atY);
                    pen.line(atX, atY - radius - 10, atX, atY - radius);
                    pen.line(atX, atY + radius, atX, atY + radius + 10);
                });
            }
            number(atX + radius * 0.75 + 9, atY - radius * 0.75 - 9, Integer.toString(i + 1));
        }
    }

    private void number(double x, double y, String words) {
        context.setFill(light.copper());
        context.fillOval(x - 9, y - 9, 18, 18);
        pen.words(words, x, y, TextAlignment.CENTER, paper());
    }

    /** The loupe where it lies, with a bar of a known length. */
    void loupe(Viewport port, Loupe loupe, Station station, double opacity) {
        boolean ofArt = station == Station.ART;
        double across = Loupe.across(station);
        Image image = loupe.image();
        double side = Loupe.SIDE;
        double left = x(port, loupe.x()) - side / 2;
        double top = y(port, loupe.y()) - side / 2;
        context.save();
        context.beginPath();
        context.arc(left + side / 2, top + side / 2, side / 2, side / 2, 0, 360);
        context.closePath();
        context.clip();
        pen.fill(light.surround(), left, top, side, side);
        if (image != null) {
            context.setGlobalAlpha(opacity);
            context.drawImage(image, left, top, side, side);
            context.setGlobalAlpha(1);
        }
        double bar = ofArt ? 20 : 0.5;
        double length = bar / across * side;
        double barTop = top + side - 48;
        context.setFill(light.panel());
        context.fillRoundRect(left + side / 2 - length / 2 - 10, barTop - 18, length + 20, 32, 4, 4);
        pen.fill(light.ink(), left + side / 2 - length / 2, barTop + 4, length, 3);
        String known = ofArt ? "20 px" : inches ? "0.020 in" : "0.5 mm";
        pen.words(known, left + side / 2, barTop - 7, TextAlignment.CENTER, light.ink());
        context.restore();
        pen.stroke(light.panel(), 6);
        context.strokeOval(left, top, side, side);
        pen.stroke(light.copper(), 2);
        context.strokeOval(left - 2, top - 2, side + 4, side + 4);
    }

    /** A word on what is seen, in the upper left. */
    void says(String words, boolean belowRuler) {
        double at = belowRuler ? RULER + 8 : 8;
        pen.fill(light.panel(), at, at, Pen.width(words) + 12, 22);
        pen.words(words, at + 6, at + 11, TextAlignment.LEFT, light.ink());
    }

    /** Rulers over the picture's upper and left edges. */
    void rulers(Viewport port, boolean ofArt) {
        double width = port.width();
        double height = port.height();
        pen.fill(light.panel(), 0, 0, width, RULER);
        pen.fill(light.panel(), 0, 0, RULER, height);
        pen.stroke(light.rule(), 1);
        pen.line(RULER - 0.5, RULER - 0.5, width, RULER - 0.5);
        pen.line(RULER - 0.5, RULER - 0.5, RULER - 0.5, height);
        double unit = ofArt || !inches ? 1 : Viewport.MILLIMETRES_PER_INCH;
        double per = port.perPixel() / unit;
        pen.stroke(light.quiet(), 1);
        for (RulerTicks.Tick tick : RulerTicks.of(port.left() / unit, per, port.width())) {
            double at = Math.rint(tick.pixel()) + 0.5;
            pen.line(at, RULER - (tick.numbered() ? 9 : 4), at, RULER - 1);
            if (tick.numbered() && at > RULER + 2) {
                pen.words(RulerTicks.words(tick.value(), per), at + 3, 9, TextAlignment.LEFT, light.quiet());
            }
        }
        for (RulerTicks.Tick tick : RulerTicks.of(port.top() / unit, per, port.height())) {
            double at = Math.rint(tick.pixel()) + 0.5;
            pen.line(RULER - (tick.numbered() ? 9 : 4), at, RULER - 1, at);
            if (tick.numbered() && at > RULER + 24) {
                pen.wordsUp(RulerTicks.words(tick.value(), per), 9, at - 3, TextAlignment.LEFT, light.quiet());
            }
        }
        pen.fill(light.panel(), 0, 0, RULER - 1, RULER - 1);
        String symbol = ofArt ? "px" : inches ? "in" : "mm";
        pen.words(symbol, RULER / 2.0, RULER / 2.0, TextAlignment.CENTER, light.quiet());
    }
}
