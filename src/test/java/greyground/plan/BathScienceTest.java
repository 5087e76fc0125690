package greyground.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures computed in double precision from the cited formulas and tables, apart from this program. */
class BathScienceTest {
    @ParameterizedTest
    @CsvSource({
        // Degrees, SG at modulus 145, % by mass, g/L: a chemical producer's
        // 20 C
        // density table by straight lines; Baume after Roberts and Etherington.
        "30,1.26087,27.26,343.7",
        "33,1.29464,30.23,391.4",
        "36,1.33028,33.25,442.3",
        "38,1.35514,35.28,478.0",
        "40,1.38095,37.33,515.5",
        "41,1.39423,38.37,535.0",
        "42,1.40777,39.43,555.1",
        "43,1.42157,40.49,575.5",
        "45,1.45000,42.59,617.6",
    })
    void strengthIsTheSameInEveryMeasure(double degrees, double gravity, double perCent, double grams) {
        assertEquals(gravity, FerricStrength.specificGravity(degrees), 1e-5);
        FerricStrength strength = FerricStrength.ofBaume(degrees);
        assertEquals(perCent, strength.massPerCent(), 0.006);
        assertEquals(grams, strength.gramsPerLitre(), 0.06);
    }

    @Test
    void fortyTwoDegreesIsAboutFortyPerCent() {
        assertEquals(39.433, FerricStrength.ofBaume(42).massPerCent(), 0.05);
        // Markle, High Temperature Ferric Chloride Etching: 42 degrees is 1.41.
        assertEquals(1.41, FerricStrength.specificGravity(42), 0.005);
    }

    @Test
    void strongerBathIsStrongerInEveryMeasure() {
        FerricStrength before = FerricStrength.ofBaume(20);
        for (double degrees = 20.5; degrees <= 46; degrees += 0.5) {
            FerricStrength now = FerricStrength.ofBaume(degrees);
            assertTrue(now.massFraction() > before.massFraction(), "at " + degrees);
            before = now;
        }
    }

    @Test
    void aStrengthOutsideTheTableIsRefused() {
        String message =
                assertThrows(Refusal.class, () -> FerricStrength.ofBaume(10)).getMessage();
        assertTrue(message.contains("1.143 and 1.469"), message);
    }

    @Test
    void warmerBathBitesFaster() {
        assertEquals(1.14752, Bite.temperatureFactor(20, 25, 20), 1e-5);
        assertEquals(1.31085, Bite.temperatureFactor(20, 30, 20), 1e-5);
        assertEquals(0.867289, Bite.temperatureFactor(20, 15, 20), 1e-6);
        // A photo-etch house: 30 % slower for 5 C less at 44 C, which is 58.7 kJ/mol.
        assertEquals(0.70, Bite.temperatureFactor(44, 39, 58.7), 0.005);
    }
}
