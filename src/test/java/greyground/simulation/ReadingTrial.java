package greyground.simulation;

import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.Projective;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One simulated scan, read back and held against the truth.
 *
 * @param reading empty if the reader said no
 * @param refusal what it said then
 * @param errors read less printed lightness of every field, uneven wiping being part of what was printed
 * @param wipedErrors read less evenly wiped lightness
 * @param placeError greatest distance on the plate, in micrometres, between where a corner or the middle is and where it was found
 * @param seconds the reader took
 */
record ReadingTrial(
        SimulatedShop given,
        Optional<ScanReading> reading,
        String refusal,
        List<Double> errors,
        List<Double> wipedErrors,
        double placeError,
        double seconds) {
    static ReadingTrial of(SimulatedShop.Case given) {
        return of(given, given.shop().chart());
    }

    /** Reads a scan for a plate that it may not show. */
    static ReadingTrial of(SimulatedShop.Case given, TestPlate expected) {
        ScanChoices choices = new ScanChoices(
                List.of(),
                List.of(),
                Optional.of(given.shop().scanner().flare()),
                given.shop().tones().paperLightness());
        long start = System.nanoTime();
        try {
            ScanReading reading = ChartReader.read(given.scan().plane(), expected, choices, Progress.NONE);
            double seconds = (System.nanoTime() - start) / 1e9;
            List<Double> errors = new ArrayList<>();
            List<Double> wiped = new ArrayList<>();
            for (MeasuredPatch patch : reading.patches()) {
                PaintedPrint.Field field = nearest(given.print(), patch);
                errors.add(patch.lightness() - field.printed());
                wiped.add(patch.lightness() - field.lightness());
            }
            return new ReadingTrial(
                    given.shop(), Optional.of(reading), "", errors, wiped, placeError(given, reading.place()), seconds);
        } catch (Refusal refused) {
            double seconds = (System.nanoTime() - start) / 1e9;
            return new ReadingTrial(
                    given.shop(),
                    Optional.empty(),
                    String.valueOf(refused.getMessage()),
                    List.of(),
                    List.of(),
                    Double.NaN,
                    seconds);
        }
    }

    boolean found() {
        return reading.isPresent();
    }

    private static PaintedPrint.Field nearest(PaintedPrint print, MeasuredPatch patch) {
        PaintedPrint.Field best = print.fields().get(0);
        double least = Double.MAX_VALUE;
        for (PaintedPrint.Field field : print.fields()) {
            double off = Math.hypot(
                    field.xMillimetres() - patch.xMillimetres(), field.yMillimetres() - patch.yMillimetres());
            if (off < least) {
                least = off;
                best = field;
            }
        }
        return best;
    }

    private static double placeError(SimulatedShop.Case given, Projective found) {
        double width = given.print().width();
        double height = given.print().height();
        double worst = 0;
        for (int i = 0; i < 5; i++) {
            double x = i == 4 ? width / 2 : i % 2 * width;
            double y = i == 4 ? height / 2 : i / 2 * height;
            double pixels = Math.hypot(
                    found.x(x, y) - given.scan().x(x, y),
                    found.y(x, y) - given.scan().y(x, y));
            worst = Math.max(worst, pixels * 25_400 / given.shop().scanner().pixelsPerInch());
        }
        return worst;
    }
}
