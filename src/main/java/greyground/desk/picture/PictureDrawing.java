package greyground.desk.picture;

import greyground.desk.look.Light;
import greyground.desk.model.CropFrame;
import greyground.desk.model.PictureMarks;
import greyground.desk.model.RulerTicks;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;

/** What is drawn over and beside the picture. Nothing is told by colour alone. */
final class PictureDrawing {
    private static final int RULER = PictureView.RULER;
    private static final double LETTER = 13;

    private final GraphicsContext pen;
    private final Light light;
    private final boolean inches;

    PictureDrawing(GraphicsContext pen, Light light, boolean inches) {
        this.pen = pen;
        this.light = light;
        this.inches = inches;
        pen.setFont(Font.font(LETTER));
    }

    void clear(double width, double height) {
        pen.clearRect(0, 0, width, height);
    }

    void focus(double width, double height) {
        pen.setStroke(light.copper());
        pen.setLineWidth(2);
        pen.strokeRect(1, 1, width - 2, height - 2);
    }

    private double x(Viewport port, double planeX) {
        return RULER + port.pixelX(planeX);
    }

    private double y(Viewport port, double planeY) {
        return RULER + port.pixelY(planeY);
    }

    /** A line that shows on light and on dark. */
    private void twice(Runnable stroke) {
        pen.setStroke(Color.color(1, 1, 1, light.safe() ? 0 : 0.75));
        pen.setLineWidth(3);
        stroke.run();
        pen.setStroke(light.copper());
        pen.setLineWidth(1.25);
        stroke.run();
    }

    /** Shades what is cut off. */
    void crop(Viewport port, Viewport.Area area) {
        double left = x(port, area.left());
        double top = y(port, area.top());
        double width = area.width() / port.perPixel();
        double height = area.height() / port.perPixel();
        double right = RULER + port.width();
        double bottom = RULER + port.height();
        Color bench = light.bench();
        pen.setFill(Color.color(bench.getRed(), bench.getGreen(), bench.getBlue(), 0.6));
        pen.fillRect(RULER, RULER, port.width(), Math.max(0, top - RULER));
        pen.fillRect(RULER, top + height, port.width(), Math.max(0, bottom - top - height));
        pen.fillRect(RULER, top, Math.max(0, left - RULER), height);
        pen.fillRect(left + width, top, Math.max(0, right - left - width), height);
        twice(() -> pen.strokeRect(left, top, width, height));
    }

    /** A fragment's grips: squares on its corners and edges, to be pulled. */
    void grips(Viewport port, CropFrame frame) {
        for (CropFrame.Grip grip : frame.grips()) {
            double atX = x(port, frame.x(grip));
            double atY = y(port, frame.y(grip));
            pen.setFill(light.safe() ? light.bench() : Color.WHITE);
            pen.fillRect(atX - 4, atY - 4, 8, 8);
            pen.setStroke(light.copper());
            pen.setLineWidth(1.25);
            pen.strokeRect(atX - 4, atY - 4, 8, 8);
        }
    }

    /** The line along what should be level. */
    void line(double[] ends) {
        twice(() -> pen.strokeLine(RULER + ends[0], RULER + ends[1], RULER + ends[2], RULER + ends[3]));
    }

    /** The platemark, and on the film the bevel within it. */
    void plate(Viewport port, Viewport.Area plate, double bevel, Station station) {
        pen.setStroke(light.quiet());
        pen.setLineWidth(1);
        pen.strokeRect(
                Math.rint(x(port, plate.left())) - 0.5,
                Math.rint(y(port, plate.top())) - 0.5,
                Math.rint(plate.width() / port.perPixel()) + 1,
                Math.rint(plate.height() / port.perPixel()) + 1);
        if (station == Station.FILM && bevel > 0) {
            pen.setLineDashes(4, 4);
            pen.strokeRect(
                    x(port, plate.left() + bevel),
                    y(port, plate.top() + bevel),
                    (plate.width() - 2 * bevel) / port.perPixel(),
                    (plate.height() - 2 * bevel) / port.perPixel());
            pen.setLineDashes();
        }
    }

    /** Places of warnings: a ring and the number that the list has. */
    void places(Viewport port, PictureMarks marks) {
        List<Viewport.Area> places = marks.places();
        for (int i = 0; i < places.size(); i++) {
            double atX = x(port, places.get(i).left());
            double atY = y(port, places.get(i).top());
            double radius = Math.max(7, places.get(i).width() / port.perPixel() / 2 + 5);
            twice(() -> pen.strokeOval(atX - radius, atY - radius, 2 * radius, 2 * radius));
            if (i == marks.chosen()) {
                twice(() -> {
                    pen.strokeLine(atX - radius - 10, atY, atX - radius, atY);
                    pen.strokeLine(atX + radius, atY, atX + radius + 10, atY);
                    pen.strokeLine(atX, atY - radius - 10, atX, atY - radius);
                    pen.strokeLine(atX, atY + radius, atX, atY + radius + 10);
                });
            }
            number(atX + radius * 0.75 + 9, atY - radius * 0.75 - 9, Integer.toString(i + 1));
        }
    }

    private void number(double x, double y, String words) {
        pen.setFill(light.copper());
        pen.fillOval(x - 9, y - 9, 18, 18);
        pen.setFill(light.safe() ? light.bench() : Color.WHITE);
        pen.setFont(Font.font(null, FontWeight.BOLD, LETTER));
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.CENTER);
        pen.fillText(words, x, y);
        pen.setFont(Font.font(LETTER));
    }

    /** The loupe where it lies, with a bar of a known length. */
    void loupe(Viewport port, Loupe loupe, Station station) {
        boolean ofArt = station == Station.ART;
        double across = Loupe.across(station);
        Image image = loupe.image();
        double side = Loupe.SIDE;
        double left = x(port, loupe.x()) - side / 2;
        double top = y(port, loupe.y()) - side / 2;
        pen.save();
        pen.beginPath();
        pen.arc(left + side / 2, top + side / 2, side / 2, side / 2, 0, 360);
        pen.closePath();
        pen.clip();
        pen.setFill(light.bench());
        pen.fillRect(left, top, side, side);
        if (image != null) {
            pen.drawImage(image, left, top, side, side);
        }
        double bar = ofArt ? 20 : 0.5;
        double length = bar / across * side;
        double barTop = top + side - 48;
        pen.setFill(light.panel());
        pen.fillRoundRect(left + side / 2 - length / 2 - 10, barTop - 18, length + 20, 32, 4, 4);
        pen.setFill(light.ink());
        pen.fillRect(left + side / 2 - length / 2, barTop + 4, length, 3);
        pen.setTextAlign(TextAlignment.CENTER);
        pen.setTextBaseline(VPos.BASELINE);
        pen.fillText(ofArt ? "20 px" : inches ? "0.020 in" : "0.5 mm", left + side / 2, barTop - 3);
        pen.restore();
        pen.setStroke(light.panel());
        pen.setLineWidth(6);
        pen.strokeOval(left, top, side, side);
        pen.setStroke(light.copper());
        pen.setLineWidth(2);
        pen.strokeOval(left - 2, top - 2, side + 4, side + 4);
    }

    /** Rulers above and to the left. */
    void rulers(Viewport port, boolean ofArt) {
        double width = RULER + port.width();
        double height = RULER + port.height();
        pen.setFill(light.panel());
        pen.fillRect(0, 0, width, RULER);
        pen.fillRect(0, 0, RULER, height);
        pen.setStroke(light.rule());
        pen.setLineWidth(1);
        pen.strokeLine(RULER - 0.5, RULER - 0.5, width, RULER - 0.5);
        pen.strokeLine(RULER - 0.5, RULER - 0.5, RULER - 0.5, height);
        double unit = ofArt || !inches ? 1 : Viewport.MILLIMETRES_PER_INCH;
        pen.setFill(light.quiet());
        pen.setStroke(light.quiet());
        pen.setTextBaseline(VPos.CENTER);
        pen.setFont(Font.font(LETTER));
        double per = port.perPixel() / unit;
        pen.setTextAlign(TextAlignment.LEFT);
        for (RulerTicks.Tick tick : RulerTicks.of(port.left() / unit, per, port.width())) {
            double at = Math.rint(RULER + tick.pixel()) + 0.5;
            pen.strokeLine(at, RULER - (tick.numbered() ? 10 : 4), at, RULER - 1);
            if (tick.numbered() && at > RULER + 2) {
                pen.fillText(RulerTicks.words(tick.value(), per), at + 3, 10);
            }
        }
        for (RulerTicks.Tick tick : RulerTicks.of(port.top() / unit, per, port.height())) {
            double at = Math.rint(RULER + tick.pixel()) + 0.5;
            pen.strokeLine(RULER - (tick.numbered() ? 10 : 4), at, RULER - 1, at);
            if (tick.numbered() && at > RULER + 24) {
                pen.save();
                pen.translate(10, at - 3);
                pen.rotate(-90);
                pen.fillText(RulerTicks.words(tick.value(), per), 0, 0);
                pen.restore();
            }
        }
        pen.setFill(light.panel());
        pen.fillRect(0, 0, RULER - 1, RULER - 1);
        pen.setFill(light.quiet());
        pen.setTextAlign(TextAlignment.CENTER);
        pen.fillText(ofArt ? "px" : inches ? "in" : "mm", RULER / 2.0, RULER / 2.0);
        pen.setFont(Font.font(LETTER));
    }
}
