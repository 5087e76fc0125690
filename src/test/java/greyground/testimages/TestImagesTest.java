package greyground.testimages;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The committed pictures are those that the generator makes; guards against change, no outside authority. */
class TestImagesTest {
    static Stream<Picture> pictures() {
        return TestImages.all().stream();
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void someRowsMadeAgainEqualTheCommittedOnes(Picture picture) throws IOException {
        Raster committed =
                ImageIO.read(TestImages.FOLDER.resolve(picture.file()).toFile()).getRaster();
        assertEquals(picture.width(), committed.getWidth());
        assertEquals(picture.height(), committed.getHeight());
        assertEquals(picture.bands(), committed.getNumBands());
        assertEquals(picture.bits(), committed.getSampleModel().getSampleSize(0));
        int[] samples = new int[picture.width() * picture.bands()];
        // Rows are independent of one another; a few dozen stand for all, since tracing every ray takes a minute.
        for (int y = 13; y < picture.height(); y += 97) {
            picture.row(y, samples);
            int[] expected = committed.getPixels(0, y, picture.width(), 1, (int[]) null);
            assertArrayEquals(expected, samples, picture.file() + " row " + y);
        }
    }

    @Test
    void theSketchbookHasThreePages() throws IOException {
        List<Picture> pages = TestImages.sketchbook();
        for (int page = 0; page < pages.size(); page++) {
            Raster committed = page("sketchbook.tif", page, pages.size());
            Picture picture = pages.get(page);
            int[] samples = new int[picture.width() * 3];
            picture.row(200, samples);
            assertArrayEquals(committed.getPixels(0, 200, picture.width(), 1, (int[]) null), samples, "page " + page);
        }
    }

    @Test
    void theSidewaysSheetIsStoredLying() throws IOException {
        Picture upright = TestImages.turnedSheet();
        Raster committed = page("sideways.tif", 0, 1);
        assertEquals(upright.height(), committed.getWidth());
        int[] samples = new int[upright.width() * 3];
        upright.row(300, samples);
        for (int x = 0; x < upright.width(); x += 7) {
            int[] lying = committed.getPixel(300, upright.width() - 1 - x, (int[]) null);
            assertEquals(samples[3 * x], lying[0]);
        }
    }

    private static Raster page(String file, int page, int pages) throws IOException {
        try (ImageInputStream in =
                ImageIO.createImageInputStream(TestImages.FOLDER.resolve(file).toFile())) {
            ImageReader reader = ImageIO.getImageReaders(in).next();
            reader.setInput(in);
            assertEquals(pages, reader.getNumImages(true));
            Raster raster = reader.read(page).getRaster();
            reader.dispose();
            return raster;
        }
    }

    @Test
    void everyFileIsListedWithItsOriginAndSmallEnough() throws IOException {
        String list = Files.readString(TestImages.FOLDER.resolve("README.md"));
        try (Stream<Path> files = Files.list(TestImages.FOLDER)) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                assertTrue(name.equals("README.md") || list.contains("| `" + name + "` |"), name + " is not listed");
                assertTrue(Files.size(file) < 1_500_000, name + " is too large");
            }
        }
    }
}
