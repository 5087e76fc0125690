package greyground.app.recipe;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.output.FilmPdfReader;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.PlateFilm;
import greyground.plate.edge.Rim;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.raster.BitPlane;
import greyground.raster.PixelRect;
import greyground.workshop.FilmPrinter;
import java.io.Closeable;
import java.io.IOException;
import java.util.Arrays;

/**
 * A film sheet as it lies on the plate: its rows, made from art or read from a film PDF, turned to read like the print.
 *
 * <p>Pixels that the printer makes oblong are laid on square ones as wide: rows are repeated or skipped, so that no place is out by
 * more than half a pixel and the plate keeps its true size.
 */
public final class FilmOnPlate implements PlateFilm {
    private final Source source;
    private final SheetShape shape;
    private final double pitchMicrometres;
    private final double rowsPerSquare;
    private final boolean mirrored;
    private final Film printed;

    private FilmOnPlate(Source source, SheetShape shape, FilmPixels pixels, boolean mirrored, Film printed) {
        this.source = source;
        this.shape = shape;
        this.pitchMicrometres = pixels.pitchAcrossMicrometres();
        this.rowsPerSquare = pixels.areSquare() ? 1 : pixels.scaleX() / pixels.scaleY();
        this.mirrored = mirrored;
        this.printed = printed;
    }

    /** Where a film's strips come from. */
    private interface Source {
        Rows open(FilmOnPlate film);
    }

    /** Rows of a sheet, read downwards. */
    private interface Sheets {
        /** Reads rows of the sheet that follow those read before, or lie below them. */
        byte[] read(int first, int count) throws IOException;
    }

    /** Size and depth of the sheet, and the plate on it. */
    private record SheetShape(int width, int height, int bits, int bytesPerRow, PixelRect plate) {
        static SheetShape of(Sheet sheet, FilmRows rows) {
            return new SheetShape(rows.width(), rows.height(), rows.bitsPerSample(), rows.bytesPerRow(), sheet.plate());
        }
    }

    /**
     * A film composed from art.
     *
     * @param mirrored whether the sheet shows the picture mirrored
     * @param printed what its printer lays down, which turns samples to densities
     */
    public static FilmOnPlate composed(Sheet sheet, FilmRows rows, boolean mirrored, Film printed) {
        Source source = film -> film.inOrder(rows.maker()::make, () -> {});
        return new FilmOnPlate(source, SheetShape.of(sheet, rows), sheet.pixels(), mirrored, printed);
    }

    /** Any part of a film, composed when it is asked for. */
    @FunctionalInterface
    public interface Parts {
        /** Rows that are right within a rectangle of the sheet. */
        FilmRows within(PixelRect part);
    }

    /**
     * A film of which only what is looked at is composed: a loupe needs a few columns of a wide sheet.
     *
     * @param whole its size; its rows are never made
     * @param parts the same film
     */
    static FilmOnPlate inParts(Sheet sheet, FilmRows whole, Parts parts, boolean mirrored, Film printed) {
        Source source = film -> rows(
                (firstRow, rowCount) -> (left, width) -> film.part(parts, left, width, firstRow, rowCount), () -> {});
        return new FilmOnPlate(source, SheetShape.of(sheet, whole), sheet.pixels(), mirrored, printed);
    }

    private FilmPatch part(Parts parts, int left, int width, int firstRow, int rowCount) {
        int from =
                mirrored ? shape.plate().right() - left - width : shape.plate().left() + left;
        int first = Math.max(0, Math.min(shape.width() - 1, from));
        int last = Math.max(first + 1, Math.min(shape.width(), from + width));
        Sheets seen = (top, count) -> parts.within(new PixelRect(first, top, last - first, count))
                .maker()
                .make(top, count);
        try {
            return strip(seen, firstRow, rowCount).cut(left, width);
        } catch (IOException failed) {
            throw Refusal.failure("a part of the film can't be made: close other work, and open it again", failed);
        }
    }

    /**
     * A film of a film PDF.
     *
     * @param printer that prints it
     * @param index of the film, from 0
     */
    public static FilmOnPlate read(
            FilmPdfReader reader, int index, boolean mirrored, FilmPrinter printer, Film printed) {
        FilmPdfReader.ReadFilm film = reader.films().get(index);
        SheetShape shape = new SheetShape(
                film.widthPixels(), film.heightPixels(), film.bitsPerSample(), film.bytesPerRow(), film.plate());
        if (shape.plate().right() > shape.width() || shape.plate().bottom() > shape.height()) {
            throw Refusal.failure("the film's plate reaches past its sheet: give a film PDF as this program wrote it");
        }
        Source source = onPlate -> {
            FilmPdfReader.FilmStream stream = reader.stream(index);
            return onPlate.inOrder(new PdfRows(stream, film.bytesPerRow()), stream);
        };
        return new FilmOnPlate(source, shape, printer.pixels(film.resolution()), mirrored, printed);
    }

    /** Keeps the rows last read, since strips overlap and a stream does not go back. */
    private static final class PdfRows implements Sheets {
        private final FilmPdfReader.FilmStream stream;
        private final int bytesPerRow;
        private byte[] held = new byte[0];
        private int heldFirst;
        private int heldCount;

        PdfRows(FilmPdfReader.FilmStream stream, int bytesPerRow) {
            this.stream = stream;
            this.bytesPerRow = bytesPerRow;
        }

        @Override
        public byte[] read(int first, int count) {
            byte[] rows = new byte[Math.multiplyExact(count, bytesPerRow)];
            int next = heldFirst + heldCount;
            for (; next < first; next++) {
                byte[] passed = new byte[bytesPerRow];
                stream.read(passed, 0, 1);
            }
            int again = Math.min(count, next - first);
            if (again > 0) {
                System.arraycopy(held, (first - heldFirst) * bytesPerRow, rows, 0, again * bytesPerRow);
            }
            if (count > again) {
                stream.read(rows, again * bytesPerRow, count - again);
            }
            held = rows;
            heldFirst = first;
            heldCount = count;
            return rows;
        }
    }

    @Override
    public int width() {
        return shape.plate().width();
    }

    @Override
    public int height() {
        return (int) Math.round(shape.plate().height() / rowsPerSquare);
    }

    /** The sheet's row under the middle of a row of square pixels, which count from the plate's top. */
    private int sheetRow(int row) {
        return shape.plate().top() + (int) Math.floor((row + 0.5) * rowsPerSquare);
    }

    @Override
    public double pitchMicrometres() {
        return pitchMicrometres;
    }

    @Override
    public Rows open() {
        return source.open(this);
    }

    private Rows inOrder(Sheets sheets, Closeable end) {
        return rows((firstRow, rowCount) -> strip(sheets, firstRow, rowCount), end);
    }

    /** Gives strips of the film, one after another. */
    private interface Strips {
        Strip strip(int firstRow, int rowCount) throws IOException;
    }

    private static Rows rows(Strips strips, Closeable end) {
        return new Rows() {
            @Override
            public Strip strip(int firstRow, int rowCount) throws IOException {
                return strips.strip(firstRow, rowCount);
            }

            @Override
            public void close() throws IOException {
                end.close();
            }
        };
    }

    private Held strip(Sheets sheets, int firstRow, int rowCount) throws IOException {
        int from = firstRow;
        int to = firstRow + rowCount;
        while (from < to && sheetRow(from) < 0) {
            from++;
        }
        while (to > from && sheetRow(to - 1) >= shape.height()) {
            to--;
        }
        return new Held(rows(sheets, from, to), from - firstRow, to - from, firstRow, rowCount);
    }

    /** Rows of square pixels, all of which lie on the sheet. */
    private byte[] rows(Sheets sheets, int from, int to) throws IOException {
        if (to == from) {
            return new byte[0];
        }
        int top = sheetRow(from);
        byte[] sheet = sheets.read(top, sheetRow(to - 1) + 1 - top);
        if (rowsPerSquare == 1) {
            return sheet;
        }
        byte[] rows = new byte[Math.multiplyExact(to - from, shape.bytesPerRow())];
        for (int row = from; row < to; row++) {
            int at = (sheetRow(row) - top) * shape.bytesPerRow();
            System.arraycopy(sheet, at, rows, (row - from) * shape.bytesPerRow(), shape.bytesPerRow());
        }
        return rows;
    }

    /** Rows in memory; {@code above} rows of the strip lie past the sheet's top edge, the rest that is missing below it. */
    private final class Held implements Strip {
        private final byte[] rows;
        private final int above;
        private final int count;
        private final int firstRow;
        private final int rowCount;

        Held(byte[] rows, int above, int count, int firstRow, int rowCount) {
            this.rows = rows;
            this.above = above;
            this.count = count;
            this.firstRow = firstRow;
            this.rowCount = rowCount;
        }

        @Override
        public FilmPatch cut(int left, int width) {
            double across = left * pitchMicrometres;
            double down = firstRow * pitchMicrometres;
            int[] columns = new int[width];
            for (int x = 0; x < width; x++) {
                int column = mirrored
                        ? shape.plate().right() - 1 - left - x
                        : shape.plate().left() + left + x;
                columns[x] = column >= 0 && column < shape.width() ? column : -1;
            }
            if (shape.bits() == 1) {
                return FilmPatch.cutting(width, rowCount, pitchMicrometres, across, down, bits(columns));
            }
            return FilmPatch.densities(
                    width, rowCount, pitchMicrometres, Rim.BOUNDED, across, down, densities(columns));
        }

        @Override
        public BitPlane bits(int left, int width) {
            BitPlane bits = new BitPlane((width + BitPlane.WORD - 1) / BitPlane.WORD, rowCount);
            for (int y = 0; y < count; y++) {
                int start = y * shape.bytesPerRow();
                if (mirrored) {
                    bits.takeMirrored(
                            above + y, rows, start, shape.width(), shape.plate().right() - 1 - left);
                } else {
                    bits.take(
                            above + y, rows, start, shape.width(), shape.plate().left() + left);
                }
            }
            return bits;
        }

        private byte[] bits(int[] columns) {
            int bytesPerRow = (columns.length + 7) / 8;
            byte[] packed = new byte[bytesPerRow * rowCount];
            for (int y = 0; y < count; y++) {
                int from = y * shape.bytesPerRow();
                int into = (above + y) * bytesPerRow;
                for (int x = 0; x < columns.length; x++) {
                    int column = columns[x];
                    if (column >= 0 && (rows[from + (column >> 3)] & (0x80 >> (column & 7))) != 0) {
                        packed[into + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                    }
                }
            }
            return packed;
        }

        private float[] densities(int[] columns) {
            float[] densities = new float[columns.length * rowCount];
            Arrays.fill(densities, (float) printed.clearDensity());
            double most = shape.bits() == 8 ? 0xFF : 0xFFFF;
            double range = printed.blackDensity() - printed.clearDensity();
            for (int y = 0; y < count; y++) {
                int from = y * shape.bytesPerRow();
                int into = (above + y) * columns.length;
                for (int x = 0; x < columns.length; x++) {
                    int column = columns[x];
                    if (column >= 0) {
                        int sample = shape.bits() == 8
                                ? rows[from + column] & 0xFF
                                : ((rows[from + 2 * column] & 0xFF) << 8) | (rows[from + 2 * column + 1] & 0xFF);
                        densities[into + x] = (float) (printed.clearDensity() + range * sample / most);
                    }
                }
            }
            return densities;
        }
    }
}
