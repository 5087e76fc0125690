package greyground.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Paper;
import greyground.plate.PlateMap;
import greyground.plate.PlateWindow;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import greyground.quantity.Refusal;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadataNode;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class PictureTest {
    private static final Paper PAPER = new Paper(0.06, 1.7);

    private static PlateMap even(int columns, int rows, double cell, double value) {
        float[] values = new float[columns * rows];
        java.util.Arrays.fill(values, (float) value);
        return new PlateMap(new PlateWindow(0, 0, cell, columns, rows), values);
    }

    /** Density 0.06 is Y 0.870964; IEC 61966-2-1 codes it 1.055 Y^(1/2.4) - 0.055 = 0.94099, times 255 = 239.95. */
    @Test
    void paperIsAsGreyAsItsDensitySays() {
        Picture picture = Colouring.print(even(5, 4, 170, PAPER.root(0)), PAPER);
        assertTrue(picture.isGrey());
        assertEquals(0xF0F0F0, picture.colour(2, 2));
    }

    /** L* 50 is Y 0.184187 (CIE 15), whose sRGB code is 119 (1.055 x 0.184187^(1/2.4) - 0.055 = 0.46633). */
    @Test
    void aMiddleGreyIsCodedAsItsLightness() {
        assertEquals(119 * 0x010101, Palette.ofLightness(50));
    }

    @Test
    void flatCopperIsEvenAndDeeperCopperIsDarker() {
        Grid grid = new Grid(20, 20, 8, Rim.BOUNDED);
        double before = 2;
        for (float depth : new float[] {0, 10, 20, 40}) {
            float[] plane = new float[grid.area()];
            java.util.Arrays.fill(plane, depth);
            float[] bright = CopperRelief.asPrinted().of(plane, grid, 40);
            for (float value : bright) {
                assertEquals(CopperRelief.flat(depth, 40), value, 1e-6);
            }
            assertTrue(bright[0] < before);
            before = bright[0];
        }
        assertEquals(1, CopperRelief.flat(0, 40));
    }

    /** The lamp stands on the diagonal: a plate mirrored at it is lit alike; and from the top left a pit's far walls shine. */
    @Test
    void reliefIsLitFromTheTopLeftAndAlikeOnBothSidesOfTheDiagonal() {
        int side = 41;
        Grid grid = new Grid(side, side, 8, Rim.BOUNDED);
        float[] pit = new float[side * side];
        float[] turned = new float[side * side];
        Random random = new Random(2);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double from = Math.hypot(x - 20, y - 20);
                float depth = (float) (from < 10 ? 30 + random.nextDouble() : 0);
                pit[y * side + x] = depth;
                turned[x * side + y] = depth;
            }
        }
        float[] bright = CopperRelief.asPrinted().of(pit, grid, 31);
        float[] brightTurned = CopperRelief.asPrinted().of(turned, grid, 31);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                assertEquals(bright[y * side + x], brightTurned[x * side + y], 1e-5);
            }
        }
        assertTrue(bright[20 * side + 30] > bright[20 * side + 10], "right wall over left wall");
        assertTrue(bright[30 * side + 20] > bright[10 * side + 20], "lower wall over upper wall");
        float[] mirror = CopperRelief.toMirror().of(pit, grid, 31);
        assertTrue(mirror[20 * side + 10] > mirror[20 * side + 30], "left wall over right wall before mirroring");
    }

    @Test
    void scaleBarsAreRoundAndFit() {
        assertEquals("50 mm", ScaleBar.within(52_500).words());
        assertEquals("500 \u00b5m", ScaleBar.within(999.9).words());
        assertEquals("1 mm", ScaleBar.within(1000).words());
        Random random = new Random(8);
        for (int i = 0; i < 1000; i++) {
            double most = Math.pow(10, 1 + 5 * random.nextDouble());
            double bar = ScaleBar.within(most).micrometres();
            assertTrue(bar <= most && bar > most / 2.51, bar + " within " + most);
        }
    }

    /** On a mounted picture of 600 cells of 100 um the bar says 10 mm, and is 100 pixels long. */
    @Test
    void theScaleBarIsAsLongAsItSays() {
        Picture plain = Colouring.print(even(600, 80, 100, 0.9), PAPER);
        Picture mounted = Mount.of(plain, "Print", List.of("words"), null);
        int most = 0;
        for (int y = 110; y < mounted.height(); y++) {
            int run = 0;
            for (int x = 0; x < mounted.width(); x++) {
                run = mounted.colour(x, y) == Palette.INK ? run + 1 : 0;
                most = Math.max(most, run);
            }
        }
        assertEquals(100, most, 1);
        assertEquals(plain.dotsPerInch(), mounted.dotsPerInch());
    }

    @Test
    void pngKeepsEveryPixelItsDensityAndItsCoding() throws Exception {
        Random random = new Random(3);
        for (boolean grey : new boolean[] {true, false}) {
            byte[] samples = new byte[3 * 61 * 37];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = grey && i % 3 > 0 ? samples[i - 1] : (byte) (i / 7 + random.nextInt(9));
            }
            Picture picture = new Picture(61, 37, 150, samples);
            assertEquals(grey, picture.isGrey());
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            PngFile.write(picture, "a test", out);
            ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
            reader.setInput(ImageIO.createImageInputStream(new ByteArrayInputStream(out.toByteArray())));
            BufferedImage read = reader.read(0);
            for (int y = 0; y < 37; y++) {
                for (int x = 0; x < 61; x++) {
                    int[] pixel = read.getRaster().getPixel(x, y, new int[4]);
                    assertEquals((picture.colour(x, y) >> 16) & 0xFF, pixel[0]);
                    assertEquals(picture.colour(x, y) & 0xFF, pixel[grey ? 0 : 2]);
                }
            }
            IIOMetadataNode chunks =
                    (IIOMetadataNode) reader.getImageMetadata(0).getAsTree("javax_imageio_png_1.0");
            Element density = (Element) chunks.getElementsByTagName("pHYs").item(0);
            // 150 dots per inch are 5905.5 per metre.
            assertEquals("5906", density.getAttribute("pixelsPerUnitXAxis"));
            assertNotNull(chunks.getElementsByTagName("sRGB").item(0));
        }
    }

    @Test
    void mirroringTwiceChangesNothing() {
        byte[] samples = new byte[3 * 7 * 5];
        new Random(1).nextBytes(samples);
        Picture picture = new Picture(7, 5, 0, samples);
        org.junit.jupiter.api.Assertions.assertArrayEquals(
                samples, picture.mirrored().mirrored().samples());
        assertEquals(picture.colour(0, 2), picture.mirrored().colour(6, 2));
    }

    @Test
    void picturesBeyondReasonAreRefusedInOneLine() {
        Refusal refusal = assertThrows(Refusal.class, () -> new PlateWindow(0, 0, 17, 90_000, 90_000));
        assertTrue(refusal.getMessage().contains("fewer dots per inch"), refusal.getMessage());
    }
}
