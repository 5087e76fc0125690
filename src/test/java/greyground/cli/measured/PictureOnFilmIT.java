package greyground.cli.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.Attempt;
import greyground.output.ExternalTool;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a place of the art lies on the film, in millimetres. Outside authority: poppler's pixels and boxes. */
class PictureOnFilmIT {
    private static final int DPI = 720;
    private static final int ART_WIDE = 800;
    private static final int ART_HIGH = 600;
    private static final int SQUARE = 40;

    /** Middles of four black squares in the art, in its pixels. */
    private static final int[] COLUMNS = {250, 550};

    private static final int[] ROWS = {150, 350};

    /** A square's middle by its grain: a film pixel and a half. */
    private static final double NEAR = 0.05;

    @TempDir
    private static Path folder;

    private static Path art;

    @BeforeAll
    static void drawArt() throws Exception {
        BufferedImage image = new BufferedImage(ART_WIDE, ART_HIGH, BufferedImage.TYPE_BYTE_GRAY);
        int[] white = new int[ART_WIDE * ART_HIGH];
        Arrays.fill(white, 255);
        image.getRaster().setSamples(0, 0, ART_WIDE, ART_HIGH, 0, white);
        for (int column : COLUMNS) {
            for (int row : ROWS) {
                image.getRaster()
                        .setSamples(column - SQUARE / 2, row - SQUARE / 2, SQUARE, SQUARE, 0, new int[SQUARE * SQUARE]);
            }
        }
        art = folder.resolve("squares.png");
        ImageIO.write(image, "png", art.toFile());
    }

    private static PrintedPage page(Object... further) throws Exception {
        Path film = folder.resolve("film.pdf");
        PrintedPage.make(film, art, "80x60mm", DPI, further);
        return PrintedPage.of(film, DPI);
    }

    /** The four squares' middles must lie at these columns and rows. */
    private static void checkSquares(PrintedPage page, double[] across, double[] down) {
        for (double x : across) {
            for (double y : down) {
                PrintedPage.Black black = page.black(x - 5, y - 5, x + 5, y + 5);
                assertTrue(black.share() > 0.1, "a square at " + x + ", " + y);
                assertEquals(x, black.middleAcross(), NEAR, "square at " + x + ", " + y);
                assertEquals(y, black.middleDown(), NEAR, "square at " + x + ", " + y);
            }
        }
    }

    @Test
    void theWholeArtLiesOnThePlateInItsProportion() throws Exception {
        checkSquares(page(), new double[] {25, 55}, new double[] {15, 35});
    }

    /** From a fifth and a tenth, 480 x 360 art pixels fill 80 x 60 mm: 6 to the millimetre. */
    @Test
    void aCropLiesAcrossAndDownWhereItWasCut() throws Exception {
        checkSquares(
                page("--crop", "20%,10%,60%,60%"),
                new double[] {(250 - 160) / 6.0, (550 - 160) / 6.0},
                new double[] {(150 - 60) / 6.0, (350 - 60) / 6.0});
    }

    @Test
    void aQuarterTurnTurnsClockwise() throws Exception {
        // 600 x 800 pixels after the turn; 80 mm across show 600 of them, so 7.5 to the millimetre and 450 of 800 down.
        checkSquares(page("--rotate", "90"), new double[] {(600 - 350) / 7.5, (600 - 150) / 7.5}, new double[] {
            (250 - 175) / 7.5, (550 - 175) / 7.5
        });
    }

    /**
     * Paper that shrinks by a and b leaves 1 - a and 1 - b of what the plate prints; the dry picture must have the art's proportion, and
     * the side that shrinks less fills the plate.
     */
    @ParameterizedTest
    @CsvSource({"4, 1", "1, 4", "0, 3", "-2, 2"})
    void aShrinkingPaperDriesToTheArtsProportion(double across, double down) throws Exception {
        PrintedPage page = page("--paper-shrink", across + "%," + down + "%");
        double dry = Math.max(1 - across / 100, 1 - down / 100);
        double wide = 0.1 * dry / (1 - across / 100);
        double high = 0.1 * dry / (1 - down / 100);
        checkSquares(page, new double[] {40 + (250 - 400) * wide, 40 + (550 - 400) * wide}, new double[] {
            30 + (150 - 300) * high, 30 + (350 - 300) * high
        });
    }

    /** A bitmap with its rows and columns, or with its columns for rows. */
    private record Bits(BufferedImage image, boolean turned) {
        int along() {
            return turned ? image.getHeight() : image.getWidth();
        }

        int beside() {
            return turned ? image.getWidth() : image.getHeight();
        }

        boolean black(int along, int beside) {
            return (image.getRGB(turned ? beside : along, turned ? along : beside) & 0xFF) < 128;
        }
    }

    private static List<Bits> bits(boolean turned, Object... sheet) throws Exception {
        List<Object> words = new ArrayList<>(List.of(
                "positive",
                Path.of("testimages/still-life.png"),
                "--plate",
                "60x40mm",
                "--resolution",
                DPI,
                "--out",
                folder.resolve("tiles.pdf")));
        words.addAll(List.of(sheet));
        Attempt.done(words.toArray());
        Path out = Files.createTempDirectory(folder, "bits");
        ExternalTool.run(out, "pdfimages", "-png", "../tiles.pdf", "tile");
        List<Bits> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(out)) {
            for (Path file : files.sorted().toList()) {
                all.add(new Bits(ImageIO.read(file.toFile()), turned));
            }
        }
        return all;
    }

    /** Cut along their marks and laid edge to edge, the tiles are the film that a larger sheet would have taken, bit for bit. */
    @ParameterizedTest
    @CsvSource({
        "114x154mm, down, false, 2",
        "200x80mm, down, true, 3",
        "114x154mm, up, false, 2",
        "200x80mm, up, true, 3"
    })
    void tilesCutAlongTheirMarksJoinToTheWholeFilm(String sheet, String inkSide, boolean down, int count)
            throws Exception {
        Bits whole = bits(down, "--ink-side", inkSide).get(0);
        List<Bits> tiles = bits(down, "--ink-side", inkSide, "--sheet", sheet, "--tile");
        assertEquals(count, tiles.size());
        int joined = 0;
        for (int i = 0; i < count; i++) {
            Bits tile = tiles.get(i);
            // 8 mm in whole bytes; broken legends may make the tiles' sheet taller at its foot.
            int border = (int) Math.ceil(Math.rint(8 / 25.4 * DPI) / 8) * 8;
            assertTrue(tile.beside() >= whole.beside() + 2 * border, "clear border");
            List<Integer> ticks = new ArrayList<>();
            for (int x = 0; x < tile.along(); x++) {
                // Crosses of 6 mm round circles of 3 mm stand in the middle of the border; a cut is at their lines'
                // second pixel.
                int inCross = border / 2 - (int) (2.2 / 25.4 * DPI);
                int aboveCross = border / 2 - (int) (3.4 / 25.4 * DPI);
                boolean line =
                        x >= 2 && tile.black(x, inCross) && tile.black(x - 1, inCross) && !tile.black(x - 2, inCross);
                if (line && !tile.black(x, aboveCross)) {
                    ticks.add(x);
                }
            }
            assertEquals(i == 0 || i == count - 1 ? 1 : 2, ticks.size(), "seams of tile " + i);
            int from = i == 0 ? border : ticks.get(0);
            int to = i == count - 1 ? tile.along() - border : ticks.get(ticks.size() - 1);
            if (i < count - 1) {
                assertEquals(5, (tile.along() - border - to) * 25.4 / DPI, 0.2, "half of what neighbours share");
            }
            for (int x = from; x < to; x++) {
                for (int y = 0; y < whole.beside(); y++) {
                    if (whole.black(joined + x - from, y) != tile.black(x, border + y)) {
                        throw new AssertionError("tile " + i + " differs at " + x + ", " + y);
                    }
                }
            }
            joined += to - from;
        }
        assertEquals(whole.along(), joined);
    }
}
