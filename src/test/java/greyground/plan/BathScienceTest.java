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
        // Degrees, SG at modulus 145, SG at modulus 144.3, % by mass, g/L, mol/L, mol/kg water: a chemical producer's
        // 20 C
        // density table by straight lines; Baume after Roberts and Etherington.
        "30,1.26087,1.26247,27.26,343.7,2.119,2.311",
        "33,1.29464,1.29650,30.23,391.4,2.413,2.671",
        "36,1.33028,1.33241,33.25,442.3,2.727,3.071",
        "38,1.35514,1.35748,35.28,478.0,2.947,3.360",
        "40,1.38095,1.38351,37.33,515.5,3.178,3.672",
        "41,1.39423,1.39690,38.37,535.0,3.298,3.839",
        "42,1.40777,1.41056,39.43,555.1,3.422,4.014",
        "43,1.42157,1.42448,40.49,575.5,3.548,4.194",
        "45,1.45000,1.45317,42.59,617.6,3.808,4.574",
    })
    void strengthIsTheSameInEveryMeasure(
            double degrees, double gravity, double old, double perCent, double grams, double molar, double molal) {
        assertEquals(gravity, Hydrometer.usual().specificGravity(degrees), 1e-5);
        assertEquals(old, new Hydrometer(144.3).specificGravity(degrees), 1e-5);
        assertEquals(degrees, Hydrometer.usual().degreesBaume(Hydrometer.usual().specificGravity(degrees)), 1e-9);
        FerricStrength strength = FerricStrength.ofBaume(degrees);
        assertEquals(perCent, strength.massPerCent(), 0.006);
        assertEquals(grams, strength.gramsPerLitre(), 0.06);
        assertEquals(molar, strength.molesPerLitre(), 0.0006);
        assertEquals(molal, strength.molesPerKilogramOfWater(), 0.0006);
    }

    @Test
    void fortyTwoDegreesIsAboutFortyPerCent() {
        assertEquals(39.433, FerricStrength.ofBaume(42).massPerCent(), 0.05);
        assertEquals(4.0139, FerricStrength.ofBaume(42).molesPerKilogramOfWater(), 0.02);
        // Markle, High Temperature Ferric Chloride Etching: 42 degrees is 1.41.
        assertEquals(1.41, Hydrometer.usual().specificGravity(42), 0.005);
    }

    @Test
    void strongerBathIsStrongerInEveryMeasure() {
        FerricStrength before = FerricStrength.ofBaume(20);
        for (double degrees = 20.5; degrees <= 46; degrees += 0.5) {
            FerricStrength now = FerricStrength.ofBaume(degrees);
            assertTrue(now.massFraction() > before.massFraction(), "at " + degrees);
            assertTrue(now.molesPerKilogramOfWater() > before.molesPerKilogramOfWater(), "at " + degrees);
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
    void waterWeakensABath() {
        FerricStrength strong = FerricStrength.ofBaume(45);
        FerricStrength usual = FerricStrength.ofBaume(42);
        assertEquals(116.194, strong.waterGramsFor(1450, usual), 0.01);
        double litre = Hydrometer.usual().specificGravity(42) * 1000;
        assertEquals(79.312, usual.waterGramsFor(litre, FerricStrength.ofBaume(40)), 0.01);
        assertEquals(165.849, usual.waterGramsFor(litre, FerricStrength.ofBaume(38)), 0.01);
        assertEquals(1.11254, (1450 + 116.194) / litre, 1e-4);
        assertThrows(Refusal.class, () -> usual.waterGramsFor(1000, strong));
    }

    @Test
    void copperUsesUpFerricChloride() {
        // 2 FeCl3 + Cu, the sum of the two reactions in an etching-equipment maker's note.
        assertEquals(5.10496, FerricStrength.ferricGramsPerGramOfCopper(), 1e-4);
        assertEquals(108.74, FerricStrength.ofBaume(42).stoichiometricCopperGramsPerLitre(), 0.02);
    }

    @Test
    void diluteRateFollowsBryceAndBerk() {
        assertEquals(6.82701, BathArithmetic.diluteRate(0.2039, 0.5), 1e-4);
        assertEquals(13.6540, BathArithmetic.diluteRate(0.2039, 1), 1e-4);
        assertEquals(22.5134, BathArithmetic.diluteRate(0.3362, 1), 1e-4);
    }

    @Test
    void activationEnergyOfBryceAndBerk() {
        double[] celsius = {30, 40, 50};
        double[] rates = {0.2039, 0.3083, 0.3362};
        assertEquals(20.501, BathArithmetic.activationKilojoulesPerMole(celsius, rates), 0.02);
        assertEquals(
                32.63,
                BathArithmetic.activationKilojoulesPerMole(new double[] {30, 40}, new double[] {0.2039, 0.3083}),
                0.01);
        assertEquals(
                7.289,
                BathArithmetic.activationKilojoulesPerMole(new double[] {40, 50}, new double[] {0.3083, 0.3362}),
                0.01);
    }

    @Test
    void warmerBathBitesFaster() {
        assertEquals(1.14752, BathArithmetic.temperatureFactor(20, 25, 20), 1e-5);
        assertEquals(1.31085, BathArithmetic.temperatureFactor(20, 30, 20), 1e-5);
        assertEquals(0.867289, BathArithmetic.temperatureFactor(20, 15, 20), 1e-6);
        // A photo-etch house: 30 % slower for 5 C less at 44 C, which is 58.7 kJ/mol.
        assertEquals(0.70, BathArithmetic.temperatureFactor(44, 39, 58.7), 0.005);
    }

    @Test
    void usedBathBitesSlower() {
        // An etch-machine maker's advice: the time doubles at 50 g/L.
        assertEquals(0.5, BathArithmetic.copperFactor(50, 100), 1e-12);
        assertEquals(1, BathArithmetic.copperFactor(0, 100));
        assertEquals(0, BathArithmetic.copperFactor(120, 100));
    }

    @Test
    void copperDissolvedIsAreaTimesDepth() {
        double grams = BathArithmetic.copperGrams(600, 0.4, 25);
        assertEquals(5.376, grams, 1e-3);
        assertEquals(2.688, grams / 2, 1e-3);
        assertEquals(18.60, 50 / (grams / 2), 0.01);
    }

    @Test
    void openingsGrowAndLandsShrinkByTheEtchFactor() {
        // Allen, Horne and Stevens 1982: etch factor = depth / undercut.
        assertEquals(60, BathArithmetic.openingAfterBite(40, 20, 2), 1e-12);
        assertEquals(80, BathArithmetic.openingAfterBite(40, 20, 1), 1e-12);
        assertEquals(53.3333, BathArithmetic.openingAfterBite(40, 20, 3), 1e-4);
        assertEquals(10, BathArithmetic.landAfterBite(30, 20, 2), 1e-12);
        assertEquals(-10, BathArithmetic.landAfterBite(30, 20, 1), 1e-12);
        assertEquals(16.6667, BathArithmetic.landAfterBite(30, 20, 3), 1e-4);
        assertEquals(25, BathArithmetic.deepestBite(30, 5, 2), 1e-12);
    }
}
