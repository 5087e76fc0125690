package greyground.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Density by its definition, D = -log10 T (functional notation of ISO 5-1:2009). */
class DensityTest {
    @Test
    void readsDensities() {
        assertEquals(1.35, Density.parse("black", "9 steps").optical(), 1e-12);
        assertEquals(1.35, Density.parse("black", "4.4846 stops").optical(), 1e-5);
        assertEquals(1.35, Density.parse("black", "1,35 D").optical());
        assertEquals(1.35, Density.parse("black", "1.35").optical());
    }

    @Test
    void refusesWhatIsNoDensity() {
        assertThrows(Refusal.class, () -> new Density(-0.1));
        assertThrows(Refusal.class, () -> new Density(Double.NaN));
        assertThrows(Refusal.class, () -> Density.parse("black", "3 mm"));
    }
}
