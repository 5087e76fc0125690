package greyground.scan;

import greyground.raster.GreyPlane;
import greyground.wedge.Area;
import greyground.wedge.Target;
import java.util.ArrayList;
import java.util.List;

/** Measures targets, each from the scan's own pixels, since they are small. */
final class TargetMeter {
    /** A bar's middle third must be as wide, in pixels, to have a tone of its own: half a pixel of softness on both sides. */
    private static final double LEAST_MIDDLE = 1.4;

    private TargetMeter() {}

    /** One reading for each target that has a tone, where the scan is fine enough to tell it. */
    static List<TargetReading> read(GreyPlane scan, List<Target> targets, Projective place, FieldMeter meter) {
        List<TargetReading> readings = new ArrayList<>();
        for (Target target : targets) {
            if (ScanWords.readable(target)) {
                Area area = target.area();
                double pixels = place.scale(area.left() + area.width() / 2.0, area.top() + area.height() / 2.0);
                if (target instanceof Target.Bar bar) {
                    double shareX = bar.upright() ? 1.0 / 3 : 0.7;
                    double shareY = bar.upright() ? 0.7 : 1.0 / 3;
                    double thin = (bar.upright() ? area.width() : area.height()) / 3.0;
                    if (thin * pixels >= LEAST_MIDDLE) {
                        int along = 12;
                        readings.add(read(
                                scan,
                                target,
                                place,
                                meter,
                                shareX,
                                shareY,
                                bar.upright() ? 1 : along,
                                bar.upright() ? along : 1));
                    }
                } else {
                    int across = cells(area.width());
                    int down = cells(area.height());
                    double rim = target instanceof Target.Bare ? 0.6 : target instanceof Target.Holes ? 0.75 : 0.8;
                    readings.add(read(scan, target, place, meter, rim, rim, across, down));
                }
            }
        }
        return readings;
    }

    private static int cells(int length) {
        return Math.max(3, length / 1000);
    }

    private static TargetReading read(
            GreyPlane scan,
            Target target,
            Projective place,
            FieldMeter meter,
            double shareX,
            double shareY,
            int across,
            int down) {
        Area area = target.area();
        double width = area.width() * shareX;
        double height = area.height() * shareY;
        double left = area.left() + (area.width() - width) / 2;
        double top = area.top() + (area.height() - height) / 2;
        LightMap part = part(scan, place, left, top, width, height);
        FieldReading reading = meter.read(part::at, left, top, width, height, across, down, 1, true);
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
