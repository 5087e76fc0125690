package greyground.scan;

import greyground.chart.Area;
import greyground.chart.Target;
import greyground.raster.GreyPlane;
import java.util.ArrayList;
import java.util.List;

/** Measures targets, each from the scan's own pixels, since they are small. */
final class TargetMeter {
    /** A bar's middle third must be as wide, in pixels, to have a tone of its own: half a pixel of softness on both sides. */
    private static final double LEAST_MIDDLE = 1.4;

    /** Share of a small field's side that is read. */
    private static final double RIMLESS = 0.85;

    /** Share of the bare strip's side: its rim holds ink. */
    private static final double BARE_SHARE = 0.6;

    /** Side of a cell. */
    private static final int CELL = 400;

    private TargetMeter() {}

    /** One reading for each target that has a tone, where the scan is fine enough to tell it. */
    static List<TargetReading> read(GreyPlane scan, List<Target> targets, Projective place, FieldMeter meter) {
        List<TargetReading> readings = new ArrayList<>();
        for (Target target : targets) {
            if (ScanWords.readable(target)) {
                Area area = target.area();
                double pixels = place.scale(area.left() + area.width() / 2.0, area.top() + area.height() / 2.0);
                if (target instanceof Target.Bar bar) {
                    double thin = (bar.upright() ? area.width() : area.height()) / 3.0;
                    Cells middle = new Cells(1, thin);
                    Cells along = new Cells(12, 0.7 * Math.max(area.width(), area.height()));
                    if (thin * pixels >= LEAST_MIDDLE) {
                        readings.add(
                                bar.upright()
                                        ? read(scan, target, place, meter, middle, along)
                                        : read(scan, target, place, meter, along, middle));
                    }
                } else {
                    readings.add(read(scan, target, place, meter));
                }
            }
        }
        return readings;
    }

    /** A field, inside its rim, in cells of whole periods: then it doesn't matter where lines or dots begin. */
    private static TargetReading read(GreyPlane scan, Target target, Projective place, FieldMeter meter) {
        Area area = target.area();
        if (target instanceof Target.Dots dots) {
            return read(
                    scan,
                    target,
                    place,
                    meter,
                    Cells.of(area.width(), RIMLESS, dots.pitch()),
                    Cells.of(area.height(), RIMLESS, dots.pitch()));
        }
        if (target instanceof Target.Holes holes) {
            return read(
                    scan,
                    target,
                    place,
                    meter,
                    Cells.of(area.width(), RIMLESS, holes.pitch()),
                    Cells.of(area.height(), RIMLESS, holes.pitch()));
        }
        if (target instanceof Target.Lines lines) {
            Cells along = Cells.of(area.width(), RIMLESS, CELL);
            Cells across = Cells.of(area.width(), RIMLESS, lines.period());
            return lines.upright()
                    ? read(scan, target, place, meter, across, along)
                    : read(scan, target, place, meter, along, across);
        }
        return read(
                scan,
                target,
                place,
                meter,
                Cells.of(area.width(), BARE_SHARE, 2 * CELL),
                Cells.of(area.height(), BARE_SHARE, 2 * CELL));
    }

    /**
     * Cells along one side of a field.
     *
     * @param count of them
     * @param length of all, in micrometres
     */
    private record Cells(int count, double length) {
        /** As many as fit into a share of a length, each a whole number of periods and, where it can, about a cell long. */
        static Cells of(int length, double share, int period) {
            int size = Math.max(1, Math.round((float) CELL / period)) * period;
            int count = (int) Math.max(1, Math.floor(share * length / size));
            return new Cells(count, Math.min(length, (double) count * size));
        }
    }

    private static TargetReading read(
            GreyPlane scan, Target target, Projective place, FieldMeter meter, Cells across, Cells down) {
        Area area = target.area();
        double width = across.length();
        double height = down.length();
        double left = area.left() + (area.width() - width) / 2;
        double top = area.top() + (area.height() - height) / 2;
        LightMap part = part(scan, place, left, top, width, height);
        FieldReading reading = meter.read(part::at, left, top, width, height, across.count(), down.count(), 1, true);
        return new TargetReading(target, reading.lightness(), reading.spread());
    }

    private static LightMap part(
            GreyPlane scan, Projective place, double left, double top, double width, double height) {
        double fromX = Double.MAX_VALUE;
        double fromY = Double.MAX_VALUE;
        double toX = -Double.MAX_VALUE;
        double toY = -Double.MAX_VALUE;
        for (int i = 0; i < 4; i++) {
            double x = left + (i % 2) * width;
            double y = top + (i < 2 ? 0 : height);
            fromX = Math.min(fromX, place.x(x, y));
            toX = Math.max(toX, place.x(x, y));
            fromY = Math.min(fromY, place.y(x, y));
            toY = Math.max(toY, place.y(x, y));
        }
        return LightMap.part(
                scan,
                (int) Math.floor(fromX) - 2,
                (int) Math.floor(fromY) - 2,
                (int) Math.ceil(toX) + 2,
                (int) Math.ceil(toY) + 2);
    }
}
