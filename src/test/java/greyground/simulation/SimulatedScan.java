package greyground.simulation;

import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * A scan and where the plate truly lies on it.
 *
 * @param codes row by row, as the scanner writes them
 * @param place a to h of the projective map from plate micrometres to scan pixels
 */
@SuppressWarnings("ArrayRecordComponent")
record SimulatedScan(int width, int height, char[] codes, double[] place, Scanner scanner) {
    double x(double xMicrometres, double yMicrometres) {
        return (place[0] * xMicrometres + place[1] * yMicrometres + place[2])
                / (place[6] * xMicrometres + place[7] * yMicrometres + 1);
    }

    double y(double xMicrometres, double yMicrometres) {
        return (place[3] * xMicrometres + place[4] * yMicrometres + place[5])
                / (place[6] * xMicrometres + place[7] * yMicrometres + 1);
    }

    /** The scan decoded: linear light. */
    GreyPlane plane() {
        boolean wide = scanner.coding() == Scanner.Coding.LINEAR_16;
        int[] linear = new int[wide ? 65_536 : 256];
        for (int code = 0; code < linear.length; code++) {
            linear[code] = (int) Math.round(GreyPlane.WHITE * scanner.light(code));
        }
        return ArrayPlane.of(width, height, (x, y) -> linear[codes[y * width + x]]);
    }

    /** Writes a file as a scanner would, grey or colour, 8 bits; the kind is the name's ending. */
    void write(Path file, boolean colour) throws Exception {
        BufferedImage image =
                new BufferedImage(width, height, colour ? BufferedImage.TYPE_INT_RGB : BufferedImage.TYPE_BYTE_GRAY);
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int code = codes[row * width + column];
                int grey = scanner.coding() == Scanner.Coding.LINEAR_16 ? code >> 8 : code;
                if (colour) {
                    image.setRGB(column, row, grey << 16 | grey << 8 | grey);
                } else {
                    image.getRaster().setSample(column, row, 0, grey);
                }
            }
        }
        String name = file.getFileName().toString();
        if (!ImageIO.write(image, name.substring(name.lastIndexOf('.') + 1), file.toFile())) {
            throw new IllegalArgumentException("no writer for " + name);
        }
    }
}
