package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.Attempt;
import greyground.output.ExternalTool;
import java.awt.image.Raster;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * A film's page as poppler draws it, one of its pixels for one of the film's, measured in millimetres right of and below the plate's upper
 * left corner, which is where poppler finds the trim box.
 *
 * @param pixels below half is black
 * @param pitch millimetres of a pixel
 * @param left of the plate on the page, in millimetres
 * @param top of the plate on the page, in millimetres
 */
record PrintedPage(Raster pixels, double pitch, double left, double top) {
    private static final double POINT_MILLIMETRES = 25.4 / 72;

    /**
     * A black run along a row or a column.
     *
     * @param from its beginning, in millimetres from the plate's corner
     * @param to its end
     */
    record Run(double from, double to) {
        double length() {
            return to - from;
        }

        double middle() {
            return (from + to) / 2;
        }
    }

    /** Place and share of the black in a window. */
    record Black(double middleAcross, double middleDown, double share) {}

    /** Makes the film of art whose greys are taken as they are, from paper white to ink black. */
    static Attempt make(Path film, Path art, String plate, int dotsPerInch, Object... further) {
        List<Object> words = new ArrayList<>(List.of("positive", art, "--plate", plate, "--resolution", dotsPerInch));
        words.addAll(List.of("--white", "100%", "--black", "0%", "--out", film));
        words.addAll(List.of(further));
        return Attempt.done(words.toArray());
    }

    /** The first film of a PDF. */
    static PrintedPage of(Path film, int dotsPerInch) throws Exception {
        Path folder = film.toAbsolutePath().getParent();
        String name = film.getFileName().toString();
        String resolution = Integer.toString(dotsPerInch);
        ExternalTool.run(
                folder,
                "pdftoppm",
                "-r",
                resolution,
                "-f",
                "1",
                "-l",
                "1",
                "-singlefile",
                "-png",
                "-gray",
                "-aa",
                "no",
                name,
                name);
        String boxes = ExternalTool.run(folder, "pdfinfo", "-box", "-f", "1", "-l", "1", name);
        double[] media = box(boxes, "MediaBox");
        double[] trim = box(boxes, "TrimBox");
        return new PrintedPage(
                ImageIO.read(folder.resolve(name + ".png").toFile()).getRaster(),
                25.4 / dotsPerInch,
                (trim[0] - media[0]) * POINT_MILLIMETRES,
                (media[3] - trim[3]) * POINT_MILLIMETRES);
    }

    private static double[] box(String boxes, String name) {
        Matcher found = Pattern.compile(name + ":\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)")
                .matcher(boxes);
        assertTrue(found.find(), boxes);
        double[] box = new double[4];
        for (int i = 0; i < 4; i++) {
            box[i] = Double.parseDouble(found.group(i + 1));
        }
        return box;
    }

    private boolean black(int x, int y) {
        return pixels.getSample(x, y, 0) < 128;
    }

    /** The pixel in which a place lies. */
    private int pixel(double millimetres, double plate) {
        return (int) Math.floor((millimetres + plate) / pitch + 1e-6);
    }

    /** Black runs of the row at a height, between two places. */
    List<Run> across(double down, double from, double to) {
        int y = pixel(down, top);
        return runs(pixel(from, left), pixel(to, left), left, x -> black(x, y));
    }

    /** Black runs of a column, between two heights. */
    List<Run> down(double across, double from, double to) {
        int x = pixel(across, left);
        return runs(pixel(from, top), pixel(to, top), top, y -> black(x, y));
    }

    private List<Run> runs(int from, int to, double plate, java.util.function.IntPredicate black) {
        List<Run> runs = new ArrayList<>();
        int start = -1;
        for (int i = from; i <= to; i++) {
            boolean dark = i < to && black.test(i);
            if (dark && start < 0) {
                start = i;
            } else if (!dark && start >= 0) {
                runs.add(new Run(start * pitch - plate, i * pitch - plate));
                start = -1;
            }
        }
        return runs;
    }

    /** The black within a window. */
    Black black(double fromAcross, double fromDown, double toAcross, double toDown) {
        long count = 0;
        double sumX = 0;
        double sumY = 0;
        int right = pixel(toAcross, left);
        int bottom = pixel(toDown, top);
        for (int y = pixel(fromDown, top); y < bottom; y++) {
            for (int x = pixel(fromAcross, left); x < right; x++) {
                if (black(x, y)) {
                    count++;
                    sumX += x + 0.5;
                    sumY += y + 0.5;
                }
            }
        }
        double all = (double) (right - pixel(fromAcross, left)) * (bottom - pixel(fromDown, top));
        return new Black(sumX / count * pitch - left, sumY / count * pitch - top, count / all);
    }
}
