package greyground.raster;

import greyground.quantity.Refusal;
import java.io.IOException;

/**
 * Art turned by quarters and then straightened by a small angle, both clockwise, made band by band.
 *
 * <p>The straightened art keeps its size and turns about its middle; corners that the art no longer reaches become its paper
 * white, which is clear film. Quarter turns copy pixels exactly. Straightening takes a cubic through four by four art pixels:
 * Keys R.G. 1981, "Cubic convolution interpolation for digital image processing", IEEE Trans. ASSP 29, 1153-1160, with
 * a = -1/2 (from memory, unverified).
 *
 * @param art as it was read; whoever opened it closes it
 * @param quarterTurns clockwise, 0 to 3
 * @param straightenDegrees clockwise, -45 to 45
 */
public record TurnedArt(GreyPlane art, int quarterTurns, double straightenDegrees) {
    private static final int ROWS = 256;
    private static final int COLUMNS = 512;
    private static final int REACH = 2;

    public TurnedArt {
        Refusal.checkRange("quarter turns", quarterTurns, 0, 3, "", "a whole turn is 0");
        Refusal.checkRange("straightening", straightenDegrees, -45, 45, "degrees", "turn by quarters first");
    }

    public int width() {
        return quarterTurns % 2 == 0 ? art.width() : art.height();
    }

    public int height() {
        return quarterTurns % 2 == 0 ? art.height() : art.width();
    }

    /** True where turning changes nothing, so that the art may be used as it is. */
    public boolean unchanged() {
        return quarterTurns == 0 && straightenDegrees == 0;
    }

    /**
     * Makes the turned rows and hands them on from the top, row after row in one array.
     *
     * @param threads at least 1
     * @param taker of the bands, on the calling thread
     */
    public void rows(int threads, Bands.Taker<short[]> taker, Progress progress) throws IOException {
        Bands.inOrder(height(), ROWS, threads, Worker::new, taker, progress);
    }

    /** Where an unturned place lies on the art: {@code x} and {@code y} in art pixels from the top left corner. */
    private double artX(double turnedX, double turnedY) {
        return switch (quarterTurns) {
            case 1 -> turnedY;
            case 2 -> art.width() - turnedX;
            case 3 -> art.width() - turnedY;
            default -> turnedX;
        };
    }

    private double artY(double turnedX, double turnedY) {
        return switch (quarterTurns) {
            case 1 -> art.height() - turnedX;
            case 2 -> art.height() - turnedY;
            case 3 -> turnedX;
            default -> turnedY;
        };
    }

    /** Owned by one thread: a window of art pixels, refilled for every tile of the band. */
    private final class Worker implements Bands.Maker<short[]> {
        private final double cosine = StrictMath.cos(StrictMath.toRadians(straightenDegrees));
        private final double sine = StrictMath.sin(StrictMath.toRadians(straightenDegrees));
        private final double middleX = width() / 2.0;
        private final double middleY = height() / 2.0;
        private final double[] weightsX = new double[4];
        private final double[] weightsY = new double[4];
        private short[] window = new short[0];
        private int left;
        private int top;
        private int across;
        private int down;

        @Override
        public short[] make(int firstRow, int rowCount) {
            short[] band = new short[Math.multiplyExact(rowCount, width())];
            for (int x = 0; x < width(); x += COLUMNS) {
                int count = Math.min(COLUMNS, width() - x);
                open(x, firstRow, count, rowCount);
                for (int row = 0; row < rowCount; row++) {
                    for (int column = 0; column < count; column++) {
                        double turnedX = beforeX(x + column + 0.5, firstRow + row + 0.5);
                        double turnedY = beforeY(x + column + 0.5, firstRow + row + 0.5);
                        band[row * width() + x + column] = (short) grey(artX(turnedX, turnedY), artY(turnedX, turnedY));
                    }
                }
            }
            return band;
        }

        private double beforeX(double x, double y) {
            return straightenDegrees == 0 ? x : middleX + cosine * (x - middleX) + sine * (y - middleY);
        }

        private double beforeY(double x, double y) {
            return straightenDegrees == 0 ? y : middleY - sine * (x - middleX) + cosine * (y - middleY);
        }

        /** Reads the art under one tile of the band, found from the tile's corners. */
        private void open(int x, int y, int count, int rowCount) {
            double least = Double.MAX_VALUE;
            double most = -Double.MAX_VALUE;
            double highest = Double.MAX_VALUE;
            double lowest = -Double.MAX_VALUE;
            for (int corner = 0; corner < 4; corner++) {
                double cornerX = x + (corner % 2) * count;
                double cornerY = y + (corner / 2) * rowCount;
                double turnedX = beforeX(cornerX, cornerY);
                double turnedY = beforeY(cornerX, cornerY);
                least = Math.min(least, artX(turnedX, turnedY));
                most = Math.max(most, artX(turnedX, turnedY));
                highest = Math.min(highest, artY(turnedX, turnedY));
                lowest = Math.max(lowest, artY(turnedX, turnedY));
            }
            left = hold((int) Math.floor(least) - REACH, art.width() - 1);
            top = hold((int) Math.floor(highest) - REACH, art.height() - 1);
            across = hold((int) Math.ceil(most) + REACH, art.width() - 1) + 1 - left;
            down = hold((int) Math.ceil(lowest) + REACH, art.height() - 1) + 1 - top;
            if (window.length < across * down) {
                window = new short[across * down];
            }
            for (int row = 0; row < down; row++) {
                // Art on its side is cut into narrow tiles: whole rows would be read sixty times over for a large scan.
                art.readRun(left, top + row, across, window, row * across);
            }
        }

        private int grey(double x, double y) {
            if (x < 0 || y < 0 || x > art.width() || y > art.height()) {
                return GreyPlane.WHITE;
            }
            int column = (int) Math.floor(x - 0.5);
            int row = (int) Math.floor(y - 0.5);
            if (straightenDegrees == 0) {
                return at(column, row);
            }
            cubic(x - 0.5 - column, weightsX);
            cubic(y - 0.5 - row, weightsY);
            double sum = 0;
            for (int j = 0; j < 4; j++) {
                double line = 0;
                for (int i = 0; i < 4; i++) {
                    line += weightsX[i] * at(column + i - 1, row + j - 1);
                }
                sum += weightsY[j] * line;
            }
            return hold((int) Math.rint(sum), GreyPlane.WHITE);
        }

        private int at(int column, int row) {
            int x = hold(column, art.width() - 1) - left;
            int y = hold(row, art.height() - 1) - top;
            return window[y * across + x] & 0xFFFF;
        }
    }

    /** Keys 1981 with a = -1/2: weights of four neighbours at distance {@code t} past the second, 0 to 1. */
    private static void cubic(double t, double[] into) {
        into[0] = ((-0.5 * t + 1) * t - 0.5) * t;
        into[1] = (1.5 * t - 2.5) * t * t + 1;
        into[2] = ((-1.5 * t + 2) * t + 0.5) * t;
        into[3] = (0.5 * t - 0.5) * t * t;
    }

    private static int hold(int value, int most) {
        return Math.max(0, Math.min(most, value));
    }
}
