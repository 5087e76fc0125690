package greyground.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Density by its definition, D = -log10 T (functional notation of ISO 5-1:2009), and wedges of 0.15. */
class DensityTest {
    @Test
    void halfTheLightIsDensityThreeTenths() {
        assertEquals(0.30103, Density.ofTransmittance(0.5).optical(), 1e-6);
        assertEquals(0.707946, new Density(0.15).transmittance(), 1e-6);
        assertEquals(0.5, Density.ofTransmittance(0.5).transmittance(), 1e-15);
        assertEquals("0 D", Density.ofTransmittance(1).toString());
    }

    @Test
    void oneWedgeStepIsAlmostTheRootOfTwo() {
        double ratio = 1 / new Density(Density.PER_WEDGE_STEP).transmittance();
        assertEquals(1.412538, ratio, 1e-6);
        assertEquals(0.998815, ratio / Math.sqrt(2), 1e-6);
        // Over twenty steps, a thousand against two to the tenth: 0.0103 of density.
        assertEquals(0.0103, 20 * (0.5 * Math.log10(2) - Density.PER_WEDGE_STEP), 1e-4);
    }

    @Test
    void nineStepsAreFourAndAHalfStops() {
        Density density = new Density(1.35);
        assertEquals(4.4846, density.stops(), 1e-5);
        assertEquals(9, density.wedgeSteps(), 1e-12);
        assertEquals(1.35, Density.parse("black", "9 steps").optical(), 1e-12);
        assertEquals(1.35, Density.parse("black", "4.4846 stops").optical(), 1e-5);
        assertEquals(1.35, Density.parse("black", "1,35 D").optical());
        assertEquals(1.35, Density.parse("black", "1.35").optical());
    }

    /** The 21-step transmission wedge, 0.05 to 3.05, as quoted by its users; nominal tolerance 0.02. */
    @Test
    void theUsualWedgeEndsAtThreePointOhFive() {
        StepWedge wedge = StepWedge.usual();
        assertEquals(21, wedge.steps());
        assertEquals(3.05, wedge.density(21).optical(), 0.02);
        assertEquals(1.10, wedge.density(8).optical(), 1e-12);
        assertEquals(0.0794328, wedge.density(8).transmittance(), 1e-7);
        assertEquals(8.91251e-4, wedge.density(21).transmittance(), 1e-9);
    }

    @Test
    void aWedgeMustRise() {
        Refusal refusal = assertThrows(Refusal.class, () -> new StepWedge(List.of(0.05, 0.2, 0.19)));
        assertTrue(refusal.getMessage().contains("wedge step 3 is 0.19 D"), refusal.getMessage());
        assertThrows(Refusal.class, () -> StepWedge.usual().density(0));
        assertThrows(Refusal.class, () -> StepWedge.usual().density(22));
    }

    /** Area average of transmittances, arithmetic from the definition. */
    @Test
    void tintsAndPinholesAverageTheirLight() {
        FilmDensity film = new FilmDensity(0.05, 3.0);
        assertEquals(0.350543, film.tint(0.5).optical(), 1e-5);
        assertEquals(0.446125, film.tint(0.5).transmittance(), 1e-6);
        assertEquals(2.00425, film.tint(0.99).optical(), 1e-4);
        assertEquals(9.90251e-3, film.tint(0.99).transmittance(), 1e-8);
        assertEquals(2.3214, new FilmDensity(0.05, 3.5).tint(0.995).optical(), 1e-4);
        assertEquals(0.05, film.tint(0).optical(), 1e-12);
        assertEquals(3.0, film.tint(1).optical(), 1e-12);
    }

    /** Instrument maker's guide to graphic-arts densitometry: imagesetter base typically 0.03, not above 0.05. */
    @Test
    void clearImagesetterFilmIsThreeHundredths() {
        assertEquals(0.03, FilmDensity.IMAGESETTER_CLEAR);
        assertTrue(FilmDensity.IMAGESETTER_CLEAR <= 0.05);
    }

    @Test
    void sheetsAddTheirDensities() {
        assertEquals(1.5, new Density(0.3).plus(new Density(1.2)).optical(), 1e-12);
    }

    @Test
    void refusesWhatIsNoDensity() {
        assertThrows(Refusal.class, () -> new Density(-0.1));
        assertThrows(Refusal.class, () -> new Density(Double.NaN));
        assertThrows(Refusal.class, () -> Density.ofTransmittance(0));
        assertThrows(Refusal.class, () -> Density.parse("black", "3 mm"));
        assertThrows(Refusal.class, () -> new FilmDensity(0.2, 0.1));
    }
}
