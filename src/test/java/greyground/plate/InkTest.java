package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkTest {
    private static final Ink INK = new Ink(1.7, 0.15, 0.8, 8);

    /** Tollenaar and Ernst's equation, from memory; values by arithmetic. */
    @ParameterizedTest
    @CsvSource({"1, 0.236796", "2, 0.440609", "5, 0.896977", "10, 1.32068", "20, 1.61536", "30, 1.68111"})
    void densityRisesToItsLimit(double film, double density) {
        assertEquals(density, INK.density(film), 1e-5);
    }

    /** Yule-Nielsen: D0 0.06, solid 1.6, half covered; n 1 is Murray-Davies. */
    @ParameterizedTest
    @CsvSource({"1, 0.348682", "1.7, 0.485318", "2, 0.525819"})
    void lightSpreadDarkensATint(double gain, double density) {
        Paper paper = new Paper(0.06, gain);
        double mean = (paper.root(0) + paper.root(1.54)) / 2;
        assertEquals(density, -Math.log10(paper.reflectance(mean)), 1e-5);
    }

    /** CIE 15:2004. */
    @Test
    void lightness() {
        assertEquals(49.4961, Paper.lightness(0.18), 1e-4);
        assertEquals(17.9723, Paper.lightness(Math.pow(10, -1.6)), 1e-4);
        assertEquals(100, Paper.lightness(1), 1e-12);
    }

    @Test
    void noInkIsLostOrMadeOnTheWayToThePaper() {
        Grid grid = new Grid(200, 200, 2, Rim.WRAPPED);
        float[] held = new float[grid.area()];
        double sum = 0;
        for (int i = 0; i < held.length; i++) {
            held[i] = Math.hypot(i % 200 - 100, i / 200 - 90) < 30 ? 12 : 0;
            sum += held[i];
        }
        float[] print = INK.onPaper(held, grid);
        double printed = 0;
        double share = 0;
        for (float film : print) {
            printed += film;
            share += film > 1e-3 ? 1 : 0;
            assertTrue(film >= 0);
        }
        assertEquals(0.8 * sum, printed, 0.8 * sum * 1e-4);
        // 30 px and 8 um: a disc of 34 px radius.
        assertEquals(Math.PI * 34 * 34, share, Math.PI * 34 * 34 * 0.04);
    }

    @Test
    void tabulatedRootsAreThoseOfTheFormula() {
        Paper paper = new Paper(0.06, 1.7);
        RootTable table = new RootTable(INK, paper, new float[] {0, 50, 3});
        for (float film = 0; film <= 50; film += 0.37f) {
            assertEquals(paper.root(INK.density(film)), table.root(film), 3e-6);
        }
    }
}
