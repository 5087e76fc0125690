package greyground.scan;

import greyground.chart.Area;
import greyground.chart.Target;
import greyground.raster.GreyPlane;
import greyground.scan.ScanReading.TargetReading;
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

    /**
     * Cells along one side of a field.
     *
     * @param count of them
     * @param length of all, in micrometres
     */
    private record Cells(int count, double length) {
        /**
         * As many as fit into a share of a length, each a whole number of periods and, where it can, about a cell long: then it doesn't
         * matter where lines or dots begin.
         */
        static Cells of(int length, double share, int period) {
            int size = Math.max(1, Math.round((float) CELL / period)) * period;
            int count = (int) Math.max(1, Math.floor(share * length / size));
            return new Cells(count, Math.min(length, (double) count * size));
        }
    }

    /** One reading for each target that has a tone, where the scan is fine enough to tell it. */
    static List<TargetReading> read(GreyPlane scan, List<Target> targets, Projective place, FieldMeter meter) {
        List<TargetReading> readings = new ArrayList<>();
        for (Target target : targets) {
            boolean thin = target instanceof Target.Bar
                    && TargetFindings.width(target) / 3.0 * place.scale(target.area()) < LEAST_MIDDLE;
            List<Cells> cells = cells(target);
            if (!thin && !cells.isEmpty()) {
                readings.add(read(scan, target, place, meter, cells.get(0), cells.get(1)));
            }
        }
        return readings;
    }

    /** Across and down; none where a target has no tone that can be read. */
    private static List<Cells> cells(Target target) {
        Area area = target.area();
        if (target instanceof Target.Bar bar) {
            Cells middle = new Cells(1, TargetFindings.width(target) / 3.0);
            Cells along = new Cells(12, 0.7 * Math.max(area.width(), area.height()));
            return bar.upright() ? List.of(middle, along) : List.of(along, middle);
        }
        if (target instanceof Target.Lines lines) {
            Cells along = Cells.of(area.width(), RIMLESS, CELL);
            Cells across = Cells.of(area.width(), RIMLESS, lines.period());
            return lines.upright() ? List.of(across, along) : List.of(along, across);
        }
        if (target instanceof Target.Dots dots) {
            return cells(area, RIMLESS, dots.pitch());
        }
        if (target instanceof Target.Holes holes) {
            return cells(area, RIMLESS, holes.pitch());
        }
        return target instanceof Target.Bare ? cells(area, BARE_SHARE, 2 * CELL) : List.of();
    }

    private static List<Cells> cells(Area area, double share, int period) {
        return List.of(Cells.of(area.width(), share, period), Cells.of(area.height(), share, period));
    }

    private static TargetReading read(
            GreyPlane scan, Target target, Projective place, FieldMeter meter, Cells across, Cells down) {
        double width = across.length();
        double height = down.length();
        double left = target.area().left() + (target.area().width() - width) / 2;
        double top = target.area().top() + (target.area().height() - height) / 2;
        double[] x = new double[4];
        double[] y = new double[4];
        for (int i = 0; i < 4; i++) {
            x[i] = place.x(left + (i % 2 == 0 ? 0 : width), top + (i < 2 ? 0 : height));
            y[i] = place.y(left + (i % 2 == 0 ? 0 : width), top + (i < 2 ? 0 : height));
        }
        LightMap part = LightMap.about(scan, x, y);
        FieldMeter.Reading reading =
                meter.read(part::at, left, top, width, height, across.count(), down.count(), 1, true);
        return new TargetReading(target, reading.lightness());
    }
}
