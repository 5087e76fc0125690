package greyground.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.output.FilmDocument.Film;
import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FilmTiffTest {
    @TempDir
    Path folder;

    /** Outside authority: libtiff's tiffcp unpacks the strips, poppler's pdfimages the PDF. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theTiffHoldsTheSameBitsAsThePdf(boolean big) throws Exception {
        Film film = SampleFilm.film(720, 80, 70, 1);
        FilmDocument document = SampleFilm.document(film);
        Path tiff = Written.tiff(folder, document, big);
        String seen = ExternalTool.run(folder, "tiffinfo", tiff.toString());
        assertTrue(seen.contains("Photometric Interpretation: min-is-white"), seen);
        byte[] fromTiff = unpacked(tiff, film);
        Path pdf = Written.pdf(folder, document);
        ExternalTool.run(folder, "pdfimages", pdf.toString(), "out");
        byte[] bitmap = Files.readAllBytes(folder.resolve("out-000.pbm"));
        byte[] fromPdf = Arrays.copyOfRange(bitmap, bitmap.length - fromTiff.length, bitmap.length);
        assertArrayEquals(fromPdf, fromTiff);
        assertArrayEquals(Written.rows(film), fromTiff);
    }

    /** The rows after tiffcp has put them into one plain strip that starts after the 8 bytes of the header. */
    private byte[] unpacked(Path tiff, Film film) throws Exception {
        String rows = Integer.toString(film.rows().height());
        ExternalTool.run(folder, "tiffcp", "-c", "none", "-r", rows, tiff.toString(), "plain.tif");
        byte[] plain = Files.readAllBytes(folder.resolve("plain.tif"));
        boolean bigPlain = plain[2] == 43;
        int start = bigPlain ? 16 : 8;
        return Arrays.copyOfRange(
                plain, start, start + film.rows().bytesPerRow() * film.rows().height());
    }

    @Test
    void librariesReadItsSizeItsResolutionAndItsWords() throws Exception {
        Path tiff = Written.tiff(folder, SampleFilm.document(SampleFilm.film(1440, 80, 70, 1)), false);
        String seen = ExternalTool.run(folder, "tiffinfo", tiff.toString());
        for (String words : List.of(
                "Image Width: 4535 Image Length: 3969",
                "Resolution: 1440, 1440 pixels/inch",
                "Bits/Sample: 1",
                "DateTime: 2026:03:04 00:00:00",
                "Software: Greyground 0.2.0",
                "INK SIDE: reads right when the ink faces you")) {
            assertTrue(seen.contains(words), seen);
        }
        assertFalse(seen.contains("Warning"), seen);
    }

    /** Outside authority: libvips converts to raw samples; a deep film's 0 is its blackest. */
    @ParameterizedTest
    @CsvSource({"8,false", "16,false", "16,true"})
    void deepSamplesCountLight(int bits, boolean big) throws Exception {
        Film film = SampleFilm.film(180, 80, 70, bits);
        Path tiff = Written.tiff(folder, SampleFilm.document(film), big);
        ExternalTool.run(folder, "vips", "rawsave", tiff.toString(), "samples.raw");
        byte[] raw = Files.readAllBytes(folder.resolve("samples.raw"));
        SampleFilm.Pattern pattern = (SampleFilm.Pattern) film.rows();
        int most = (1 << bits) - 1;
        ByteBuffer samples = ByteBuffer.wrap(raw).order(ByteOrder.nativeOrder());
        assertEquals(pattern.width() * pattern.height() * bits / 8, raw.length);
        for (int i = 0; i < pattern.width() * pattern.height(); i++) {
            int sample = bits == 8 ? raw[i] & 0xFF : samples.getShort(2 * i) & 0xFFFF;
            assertEquals(most - pattern.sample(i % pattern.width(), i / pattern.width()), sample);
        }
    }

    @Test
    void severalFilmsBecomeSeveralPages() throws Exception {
        FilmDocument document = SampleFilm.document(SampleFilm.film(180, 80, 70, 16), SampleFilm.film(720, 80, 70, 1));
        Path tiff = Written.tiff(folder, document, false);
        String seen = ExternalTool.run(folder, "tiffinfo", tiff.toString());
        assertTrue(seen.contains("Bits/Sample: 16") && seen.contains("Bits/Sample: 1\n"), seen);
    }

    @Test
    void onlyAFileThatCouldPassFourGibibytesIsBig() {
        assertFalse(FilmTiff.largestSize(SampleFilm.document(hollow(100_000, 300_000))) > 0xFFFF_FFFFL);
        assertTrue(FilmTiff.largestSize(SampleFilm.document(hollow(100_000, 343_598))) > 0xFFFF_FFFFL);
    }

    /** A film that is too large to be made. */
    private static Film hollow(int width, int height) {
        FilmRows rows = new FilmRows() {
            @Override
            public int width() {
                return width;
            }

            @Override
            public int height() {
                return height;
            }

            @Override
            public int bitsPerSample() {
                return 1;
            }

            @Override
            public Bands.Maker<byte[]> maker() {
                throw new AssertionError("nobody asked for rows");
            }
        };
        PixelRect plate = new PixelRect(0, 0, width, height);
        return new Film(new Sheet(FilmPixels.of(new Resolution(2400)), width, height, plate, plate, List.of()), rows);
    }
}
