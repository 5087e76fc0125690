package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.edge.DoseEdge;
import greyground.plate.edge.EdgeDistance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.NoiseGrain;
import greyground.plate.edge.Rim;
import greyground.plate.edge.Softening;
import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResistTest {
    /** Straight-line contrast between E0 = 10 and E100 = 40 (a common textbook form): gamma 1 / log10 4. */
    @ParameterizedTest
    @CsvSource({"12, 0.131517", "20, 0.5", "30, 0.792481", "5, 0", "50, 1"})
    void retainsByTheContrastLine(double dose, double expected) {
        Resist resist = new Resist(30, 30, 0, 1 / Math.log10(4), 0, 0, 0);
        assertEquals(expected, resist.retained(dose / 40), 1e-5);
    }

    /** Beer's law: 30 um of decadic absorbance 0.4, thinned to half, needs 10^-0.2 of the dose. */
    @Test
    void thinnedFilmNeedsLessLight() {
        assertEquals(0.630957, new Resist(15, 30, 0.4 / 30, 1.66, 0, 0, 0).throughCureDoseRatio(), 1e-6);
        assertEquals(1, new Resist(30, 30, 0.4 / 30, 1.66, 0, 0, 0).throughCureDoseRatio(), 1e-12);
    }

    private static int count(boolean[] mask) {
        int count = 0;
        for (boolean pixel : mask) {
            count += pixel ? 1 : 0;
        }
        return count;
    }

    /** Lines of one width on a wide ground, in a dose that changes sharply, evenly about 1 in its logarithm. */
    private static float[] lines(Grid grid, int width, float inside, float outside) {
        float[] dose = new float[grid.area()];
        for (int i = 0; i < dose.length; i++) {
            int x = i % grid.width();
            dose[i] = x >= 40 && x < 40 + width ? inside : outside;
        }
        return dose;
    }

    @Test
    void openingsNarrowerThanTheLeastStayShutAndWiderOnesKeepTheirArea() {
        Grid grid = new Grid(100, 60, 2, Rim.WRAPPED);
        Resist resist = new Resist(30, 30, 0, 2, 24, 0, 0);
        for (int width = 2; width <= 30; width++) {
            int shut = count(resist.developed(new DoseEdge(lines(grid, width, 0.5f, 2), 1), grid));
            if (width * 2 < 23) {
                assertEquals(grid.area(), shut, width * 2 + " µm washes out");
            }
            if (width * 2 > 25) {
                assertEquals(grid.area() - 60 * width, shut, width * 2 + " µm stays shut");
            }
        }
    }

    @Test
    void landsNarrowerThanTheLeastWashAway() {
        Grid grid = new Grid(100, 60, 2, Rim.WRAPPED);
        Resist resist = new Resist(30, 30, 0, 2, 0, 24, 0);
        for (int width = 2; width <= 30; width++) {
            int held = count(resist.developed(new DoseEdge(lines(grid, width, 2, 0.5f), 1), grid));
            if (width * 2 < 23) {
                assertEquals(0, held);
            }
            if (width * 2 > 25) {
                assertEquals(60 * width, held);
            }
        }
    }

    @Test
    void aRoundDotIsJudgedByItsDiameter() {
        Grid grid = new Grid(80, 80, 1, Rim.WRAPPED);
        for (double radius = 6; radius < 16; radius += 0.5) {
            float[] dose = new float[grid.area()];
            for (int i = 0; i < dose.length; i++) {
                dose[i] = (float) (1 + Math.hypot(i % 80 - 40.2, i / 80 - 39.7) - radius);
            }
            int open = grid.area() - count(new Resist(30, 30, 0, 2, 20, 0, 0).developed(new DoseEdge(dose, 1), grid));
            if (radius < 9.5) {
                assertEquals(0, open, "radius " + radius);
            }
            if (radius > 10.5) {
                assertEquals(Math.PI * radius * radius, open, Math.PI * radius * radius * 0.03, "radius " + radius);
            }
        }
    }

    /** What is removed is only ever narrow, so nothing is added, and a second development removes nothing. */
    @Test
    void developingTwiceChangesLittle() {
        NoiseGrain grain = new NoiseGrain(1440, 180, 1.5, 3);
        FilmPatch patch = grain.at(0.3);
        Grid grid = new Grid(patch.width() * 4, patch.height() * 4, patch.pitchMicrometres() / 4, Rim.WRAPPED);
        float[] through = ExposureSum.transmission(patch, Studio.FILM, grid);
        float[] dose = Softening.gaussian(through, grid, 10);
        Resist resist = new Resist(30, 30, 0, 2, 40, 0, 0);
        for (int i = 0; i < dose.length; i++) {
            dose[i] *= 2;
        }
        boolean[] once = resist.developed(new DoseEdge(dose, 1), grid);
        boolean[] raw = new Resist(30, 30, 0, 2, 0, 0, 0).developed(new DoseEdge(dose, 1), grid);
        for (int i = 0; i < once.length; i++) {
            assertTrue(once[i] || !raw[i], "development of openings never opens hardened film");
        }
        float[] inside = EdgeDistance.micrometres(once, true, new DoseEdge(dose, 1), grid);
        boolean[] twice = once.clone();
        Openness.shutNarrow(twice, false, inside, 40, grid);
        assertEquals(count(once), count(twice), grid.area() * 0.005);
    }

    @Test
    void nonsenseIsRefusedWithTheRange() {
        Refusal refusal = assertThrows(Refusal.class, () -> new Resist(0, 30, 0, 1, 0, 0, 0));
        assertEquals(
                "resist thickness is 0 µm; it must lie between 1 and 200 µm: dry film is 15 to 50 µm",
                refusal.getMessage());
    }
}
