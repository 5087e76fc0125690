package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Legend;
import greyground.film.sheet.Sheet;
import greyground.output.FilmDocument.Film;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.Progress;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;
import java.util.Locale;

/**
 * Writes the films as a TIFF (TIFF 6.0, 1992) for a bureau, one page each, with the same samples as the film PDF.
 *
 * <p>Black: a 1-bit film is min-is-white (PhotometricInterpretation 0), so its bytes are the film's own. An 8- or 16-bit film
 * is min-is-black (1), since readers of deep min-is-white pictures are rare: sample 0 is the blackest, the largest is clear.
 * Deep samples are little-endian like the rest of the file.
 *
 * <p>Legends stand in ImageDescription; they are not drawn. Strips are deflated on all threads; neither their number nor
 * their bytes depend on how many. A file that could pass 4 GiB is a BigTIFF from the start.
 */
public final class FilmTiff {
    /** What a strip holds before deflating, about; small enough to keep many threads busy on a small film. */
    private static final int STRIP_BYTES = 1 << 18;

    /** Readers of classic TIFF hold offsets in 32 bits. */
    private static final long CLASSIC_LIMIT = 0xFFFF_FFFFL;

    /** Of Compression: zlib, scheme 8. */
    private static final int DEFLATE = 8;

    private FilmTiff() {}

    /**
     * Writes the whole file from the channel's start; it stays open.
     *
     * @param out empty, and owned by this call while it runs; it is sought once, to note where the directory lies
     * @param threads at least 1
     * @throws IOException if {@code out} fails; half a file may then lie in it
     */
    public static void write(FilmDocument document, SeekableByteChannel out, int threads, Progress progress)
            throws IOException {
        write(document, out, threads, progress, largestSize(document) > CLASSIC_LIMIT);
    }

    static void write(FilmDocument document, SeekableByteChannel out, int threads, Progress progress, boolean big)
            throws IOException {
        put(out, TiffFields.header(big, 0));
        long link = big ? 8 : 4;
        for (int i = 0; i < document.films().size(); i++) {
            Film film = document.films().get(i);
            Progress share = progress.share(i, document.films().size());
            long[][] strips = strips(film.rows(), out, threads, share);
            TiffFields directory = directory(document, film, strips, big);
            if (out.position() % 2 != 0) {
                put(out, new byte[1]);
            }
            long position = out.position();
            put(out, directory.bytes(position, 0));
            long end = out.position();
            out.position(link);
            byte[] header = TiffFields.header(big, position);
            int width = big ? 8 : 4;
            put(out, Arrays.copyOfRange(header, header.length - width, header.length));
            out.position(end);
            link = position + directory.nextAt();
        }
    }

    /** No packing makes the file longer than this; Deflate stores what it can't shrink with 5 bytes in 16 KiB more. */
    static long largestSize(FilmDocument document) {
        long bytes = 1 << 16;
        for (Film film : document.films()) {
            FilmRows rows = film.rows();
            long raw = Math.multiplyExact((long) rows.bytesPerRow(), rows.height());
            long strips = rows.height() / rowsPerStrip(rows) + 1L;
            bytes = Math.addExact(bytes, raw + raw / 1000 + strips * 64 + (1 << 20));
        }
        return bytes;
    }

    private static int rowsPerStrip(FilmRows rows) {
        return Math.max(1, Math.min(rows.height(), STRIP_BYTES / rows.bytesPerRow()));
    }

    /** Writes the strips; returns their positions and lengths. */
    private static long[][] strips(FilmRows rows, SeekableByteChannel out, int threads, Progress progress)
            throws IOException {
        int rowsPerStrip = rowsPerStrip(rows);
        int count = (rows.height() + rowsPerStrip - 1) / rowsPerStrip;
        long[] positions = new long[count];
        long[] lengths = new long[count];
        Bands.inOrder(
                rows.height(),
                rowsPerStrip,
                threads,
                () -> packed(rows),
                (first, taken, strip) -> {
                    positions[first / rowsPerStrip] = out.position();
                    lengths[first / rowsPerStrip] = strip.length;
                    put(out, strip);
                },
                progress);
        return new long[][] {positions, lengths};
    }

    /** Bands as the file counts and orders their samples, deflated. */
    private static Bands.Maker<byte[]> packed(FilmRows rows) {
        Bands.Maker<byte[]> maker = rows.maker();
        return (first, count) -> {
            byte[] band = maker.make(first, count);
            if (rows.bitsPerSample() > 1) {
                Blackness.turn(band, 0, band.length);
            }
            for (int i = 0; rows.bitsPerSample() == 16 && i + 1 < band.length; i += 2) {
                byte high = band[i];
                band[i] = band[i + 1];
                band[i + 1] = high;
            }
            return PdfObjects.deflated(band, 1);
        };
    }

    private static TiffFields directory(FilmDocument document, Film film, long[][] strips, boolean big) {
        FilmRows rows = film.rows();
        TiffFields directory = new TiffFields(big);
        directory.longs(256, rows.width());
        directory.longs(257, rows.height());
        directory.shorts(258, rows.bitsPerSample());
        directory.shorts(259, DEFLATE);
        directory.shorts(262, rows.bitsPerSample() == 1 ? 0 : 1);
        directory.words(270, description(document, film.sheet()));
        directory.positions(273, strips[0]);
        directory.shorts(274, 1);
        directory.shorts(277, 1);
        directory.longs(278, rowsPerStrip(rows));
        directory.positions(279, strips[1]);
        resolution(directory, film.sheet().resolution().dotsPerInch());
        directory.words(305, document.program());
        directory.words(306, document.date().toString().replace('-', ':') + " 00:00:00");
        return directory;
    }

    /** Exact for every resolution of at most four decimals. */
    private static void resolution(TiffFields directory, double dotsPerInch) {
        int denominator = dotsPerInch == Math.rint(dotsPerInch) ? 1 : 10_000;
        int numerator = Math.toIntExact(Math.round(dotsPerInch * denominator));
        directory.rational(282, numerator, denominator);
        directory.rational(283, numerator, denominator);
        directory.shorts(296, 2);
    }

    private static String description(FilmDocument document, Sheet sheet) {
        StringBuilder words = new StringBuilder(document.title());
        words.append(String.format(
                Locale.ROOT,
                "\nplate at %s, %s mm from the sheet's left and top, %s x %s mm",
                plain(sheet, sheet.plate().left()),
                plain(sheet, sheet.plate().top()),
                plain(sheet, sheet.plate().width()),
                plain(sheet, sheet.plate().height())));
        for (Legend legend : sheet.legends()) {
            words.append('\n').append(legend.text());
        }
        return words.toString();
    }

    private static String plain(Sheet sheet, int pixels) {
        return Refusal.plain(sheet.resolution().millimetres(pixels));
    }

    private static void put(SeekableByteChannel out, byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            out.write(buffer);
        }
    }
}
