package greyground.simulation;

import greyground.output.FilmPdfReader;
import greyground.plate.DrawnFilm;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;
import greyground.plate.PlateWindow;
import greyground.plate.WholePlate;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** The very bits of a film PDF, bitten and printed whole in a hidden workshop: nothing is painted. */
final class BittenFilm {
    private static final double MARGIN = 14_000;

    /** How far light spreads in the paper, at least as far as dots lie apart, as the law of Yule and Nielsen takes it. */
    private static final double SPREAD = 500;

    private final byte[][] rows;
    private final PixelRect plate;
    private final double pitch;

    private BittenFilm(byte[][] rows, PixelRect plate, double pitch) {
        this.rows = rows;
        this.plate = plate;
        this.pitch = pitch;
    }

    /** Reads an unmirrored film. */
    static BittenFilm read(Path pdf) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(pdf)) {
            FilmPdfReader.ReadFilm film = reader.films().get(0);
            byte[][] rows = new byte[film.heightPixels()][film.bytesPerRow()];
            try (FilmPdfReader.FilmStream stream = reader.stream(0)) {
                for (byte[] row : rows) {
                    stream.read(row, 0, 1);
                }
            }
            return new BittenFilm(rows, film.plate(), film.resolution().pitchMicrometres());
        }
    }

    /** The print and paper round it, in cells. */
    Canvas print(PlateConditions conditions, double cell, double widestPixel) throws Exception {
        double across = plate.width() * pitch;
        double down = plate.height() * pitch;
        Canvas canvas = new Canvas(across, down, MARGIN, cell);
        Arrays.fill(canvas.reflectance, (float) Math.pow(10, -conditions.paper().density()));
        int columns = (int) (across / cell);
        int lines = (int) (down / cell);
        PlateWindow window = new PlateWindow(0, 0, cell, columns, lines);
        PlateFilm film = new DrawnFilm(plate.width(), plate.height(), pitch, (x, y) -> black(x, y) ? 1 : 0);
        PlateMap map = new WholePlate(film, null, widestPixel)
                .look(window, List.of(new WholePlate.Look(conditions, PlateView.printRoot())), 2, Progress.NONE)
                .get(0);
        double gain = conditions.paper().opticalGain();
        float[] apart = new float[map.values().length];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = (float) Math.pow(map.values()[i], gain);
        }
        // Light spreads in paper over more than a cell: round each place it gives what the mean root says, not the mean
        // light.
        int reach = (int) Math.ceil(SPREAD / cell);
        float[] roots = mean(map.values(), columns, lines, reach);
        float[] lights = mean(apart, columns, lines, reach);
        for (int row = 0; row < lines; row++) {
            for (int column = 0; column < columns; column++) {
                int at = row * columns + column;
                double spread = apart[at] * Math.pow(roots[at], gain) / lights[at];
                canvas.reflectance[canvas.column(row * cell) * canvas.width + canvas.column(column * cell)] =
                        (float) Math.min(1, spread);
            }
        }
        return canvas;
    }

    /** Over a square round each cell. */
    private static float[] mean(float[] values, int columns, int rows, int reach) {
        double[] sums = new double[(columns + 1) * (rows + 1)];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                sums[(row + 1) * (columns + 1) + column + 1] = values[row * columns + column]
                        + sums[row * (columns + 1) + column + 1]
                        + sums[(row + 1) * (columns + 1) + column]
                        - sums[row * (columns + 1) + column];
            }
        }
        float[] mean = new float[values.length];
        for (int row = 0; row < rows; row++) {
            int top = Math.max(0, row - reach);
            int bottom = Math.min(rows, row + reach + 1);
            for (int column = 0; column < columns; column++) {
                int left = Math.max(0, column - reach);
                int right = Math.min(columns, column + reach + 1);
                double sum = sums[bottom * (columns + 1) + right]
                        - sums[top * (columns + 1) + right]
                        - sums[bottom * (columns + 1) + left]
                        + sums[top * (columns + 1) + left];
                mean[row * columns + column] = (float) (sum / (bottom - top) / (right - left));
            }
        }
        return mean;
    }

    private boolean black(int x, int y) {
        int column = plate.left() + x;
        int row = plate.top() + y;
        boolean onPlate = x >= 0 && y >= 0 && x < plate.width() && y < plate.height();
        return onPlate && (rows[row][column >> 3] & 0x80 >> (column & 7)) != 0;
    }
}
