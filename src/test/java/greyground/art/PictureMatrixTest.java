package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Right pixels: each cell of the matrix opens as what an independent program decodes, or is refused by its name. */
class PictureMatrixTest {
    /** Luminance, of paper white 1: what another decoder's chroma or rounding may make of a sound file. */
    private static final double MEAN = 0.002;

    private static final double HUNDREDTH = 0.03;
    /** A sixteenth bit is 0.00001 of luminance; eight bits in place of sixteen err by some 0.0007 on average. */
    private static final double EXACT_MEAN = 0.0001;
    /** What 16 colours and strong compression take from a picture at the most; a negative or a shear strays by 0.2 and more. */
    private static final double STRAYED = 0.06;

    @TempDir
    static Path folder;

    @TestFactory
    Stream<DynamicTest> cells() throws Exception {
        List<PictureMatrix.Cell> cells = PictureMatrix.in(folder, Sweep.of(PictureMatrix.lines()));
        return cells.stream().map(cell -> DynamicTest.dynamicTest(cell.toString(), () -> check(cell)));
    }

    private static void check(PictureMatrix.Cell cell) throws Exception {
        if (cell.refusal() != null) {
            String said = assertThrows(
                            Refusal.class, () -> Picture.decode(cell.file()).close())
                    .getMessage();
            assertTrue(said.contains(cell.refusal()) && said.lines().count() == 1, said);
            return;
        }
        assertTrue(cell.strayed() < STRAYED, () -> "the independent programs disagree: " + cell.strayed());
        double[] distances = cell.distances();
        double mean = PictureMatrix.mean(distances);
        double hundredth = PictureMatrix.hundredth(distances);
        String figures = "mean " + mean + ", 99th percentile " + hundredth + ", of " + cell.written();
        assertTrue(mean < (cell.exact() ? EXACT_MEAN : MEAN) && hundredth < HUNDREDTH, figures);
        assertEquals(cell.width() * cell.height(), distances.length);
    }
}
