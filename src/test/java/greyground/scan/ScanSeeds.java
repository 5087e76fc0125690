package greyground.scan;

import greyground.chart.TestPlate;
import greyground.raster.GreyPlane;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Makes scans of {@code ScanFuzz}'s test plate at the lowest resolution, as seeds of mutation: argument FOLDER. */
final class ScanSeeds {
    private static final int PIXELS_PER_INCH = 160;
    private static final int BY_HAND = 1;

    private ScanSeeds() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        TestPlate plate = greyground.fuzz.ScanFuzz.PLATE;
        PaintedScan scan = PaintedScan.of(plate, PaintedScan::usualTone)
                .at(PIXELS_PER_INCH)
                .margin(4);
        write(folder.resolve("upright"), scan.plane(), 0, List.of());
        write(folder.resolve("by-hand"), scan.plane(), BY_HAND, scan.corners());
        write(folder.resolve("turned"), scan.turned(183).plane(), 0, List.of());
    }

    private static void write(Path file, GreyPlane plane, int chosen, List<Double> corners) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeShort(plane.width());
        out.write(chosen);
        for (double corner : corners) {
            out.writeShort((int) Math.round(corner));
        }
        short[] row = new short[plane.width()];
        int held = 0;
        int byteOfFour = 0;
        for (int y = 0; y < plane.height(); y++) {
            plane.readRow(y, row);
            for (short grey : row) {
                byteOfFour |= Math.min(3, (int) Math.round((grey & 0xFFFF) / (double) 0x5555)) << 2 * held;
                held = (held + 1) % 4;
                if (held == 0) {
                    out.write(byteOfFour);
                    byteOfFour = 0;
                }
            }
        }
        Files.write(file, bytes.toByteArray());
        System.out.println(file + ": " + plane.width() + " x " + plane.height());
    }
}
