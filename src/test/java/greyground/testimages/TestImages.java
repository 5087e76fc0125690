package greyground.testimages;

import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Makes the pictures of {@code testimages}: run {@link #main} from the repository's root, with file names to make only those.
 * The packing of the files may differ with the machine's deflate; the samples do not.
 */
public final class TestImages {
    static final Path FOLDER = Path.of("testimages");

    private TestImages() {}

    static List<Picture> all() {
        return new ArrayList<>(List.of(
                new StillLifePhotograph(), new HatchedDrawing(), new WashDrawing(), new StepChart(), new Leaf()));
    }

    /** Pages of the sketchbook: three small washes. */
    static List<Picture> sketchbook() {
        return List.of(
                new WashDrawing("", 840, 620, 11),
                new WashDrawing("", 840, 620, 12),
                new WashDrawing("", 620, 460, 14));
    }

    /** The sheet that was laid on the scanner sideways. */
    static Picture turnedSheet() {
        return new WashDrawing("", 840, 620, 21);
    }

    /** Makes all pictures, or those named. */
    public static void main(String[] names) throws IOException {
        Path folder = FOLDER;
        Files.createDirectories(folder);
        for (Picture picture : all()) {
            if (names.length == 0 || List.of(names).contains(picture.file())) {
                Path file = folder.resolve(picture.file());
                ImageIO.write(render(picture), "png", file.toFile());
                System.out.println(file + " " + Files.size(file) / 1024 + " KiB");
            }
        }
        if (names.length == 0 || List.of(names).contains("sketchbook.tif")) {
            List<WritableRaster> pages = new ArrayList<>();
            for (Picture page : sketchbook()) {
                pages.add(render(page).getRaster());
            }
            PlainTiff.write(folder.resolve("sketchbook.tif"), pages, PlainTiff.UPRIGHT);
        }
        if (names.length == 0 || List.of(names).contains("sideways.tif")) {
            WritableRaster lying = quarterTurnLeft(render(turnedSheet()).getRaster());
            PlainTiff.write(folder.resolve("sideways.tif"), List.of(lying), PlainTiff.TURN_RIGHT);
        }
    }

    static WritableRaster quarterTurnLeft(WritableRaster upright) {
        int width = upright.getWidth();
        WritableRaster lying = upright.createCompatibleWritableRaster(upright.getHeight(), width);
        int[] pixel = new int[upright.getNumBands()];
        for (int y = 0; y < upright.getHeight(); y++) {
            for (int x = 0; x < width; x++) {
                lying.setPixel(y, width - 1 - x, upright.getPixel(x, y, pixel));
            }
        }
        return lying;
    }

    static BufferedImage render(Picture picture) {
        int space = picture.bands() == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB;
        boolean alpha = picture.bands() == 4;
        ComponentColorModel model = new ComponentColorModel(
                ColorSpace.getInstance(space),
                alpha,
                false,
                alpha ? Transparency.TRANSLUCENT : Transparency.OPAQUE,
                picture.bits() == 8 ? DataBuffer.TYPE_BYTE : DataBuffer.TYPE_USHORT);
        WritableRaster raster = model.createCompatibleWritableRaster(picture.width(), picture.height());
        int[] samples = new int[picture.width() * picture.bands()];
        for (int y = 0; y < picture.height(); y++) {
            picture.row(y, samples);
            raster.setPixels(0, y, picture.width(), 1, samples);
        }
        return new BufferedImage(model, raster, false, null);
    }
}
