package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Colours parted between plates of the inks of {@link ToyInks}; numbers were computed apart from the program. */
class ColourPartingTest {
    private static final InksInRegister PRINT = new InksInRegister(ToyInks.PAPER, new double[3]);

    private static Lab printed(double... shares) {
        List<double[]> alone = IntStream.range(0, shares.length)
                .mapToObj(ink -> ToyInks.alone(ink, shares[ink]))
                .toList();
        return Lab.of(Xyz.ofLight(PRINT.print(alone)));
    }

    /** Made on many threads, which a class that is being initialised would keep waiting. */
    private static final class Made {
        static final ColourParting FOUR = new ColourParting(4, ColourPartingTest::printed, 3, 0.5);
        static final ColourParting THREE = new ColourParting(3, ColourPartingTest::printed, -1, 0);
    }

    @Test
    void aColourOfThreePlates() {
        assertArrayEquals(new double[] {.553615, .618100, .182324}, Made.THREE.shares(new Lab(60, 20, 20)), 1e-4);
    }

    @Test
    void theKeyMayPrintSoMuch() {
        assertArrayEquals(new double[] {0, .17700}, Made.FOUR.keyRange(new Lab(60, 20, 20)), 3e-4);
        assertArrayEquals(new double[] {0, .72316}, Made.FOUR.keyRange(new Lab(40, 5, 5)), 3e-4);
        assertArrayEquals(new double[] {.00623, .31660}, Made.FOUR.keyRange(new Lab(50, -15, -15)), 3e-4);
    }

    @Test
    void halfOfTheGreyOnTheKey() {
        assertArrayEquals(new double[] {.45279, .54952, .54141, .361}, Made.FOUR.shares(new Lab(40, 5, 5)), 2e-3);
    }

    @Test
    void theKnee() {
        assertEquals(40, ColourParting.knee(40, 60, 0.7), 1e-4);
        assertEquals(51, ColourParting.knee(60, 60, 0.7), 1e-4);
        assertEquals(55.0909, ColourParting.knee(90, 60, 0.7), 1e-4);
        assertEquals(56.9434, ColourParting.knee(130, 60, 0.7), 1e-4);
        assertEquals(0, ColourParting.knee(30, 0, 0.7), 1e-12);
    }

    @Test
    void howFarTheInksReach() {
        assertEquals(36.93, Made.FOUR.reach(60, 30), .1);
        assertEquals(28.80, Made.FOUR.reach(60, 150), .1);
        assertEquals(19.74, Made.FOUR.reach(50, 270), .1);
    }

    /** Whatever shares printed a colour, others are found that print it. */
    @Test
    void partedAndPrintedItIsTheColour() {
        Random random = new Random(7);
        for (int i = 0; i < 400; i++) {
            double[] three = random.doubles(3).toArray();
            Lab colour = printed(three);
            assertTrue(far(colour, printed(Made.THREE.shares(colour))) < ColourParting.MET, colour::toString);
            Lab darker = printed(random.doubles(4).toArray());
            assertTrue(far(darker, printed(Made.FOUR.shares(darker))) < ColourParting.MET, darker::toString);
        }
    }

    /** More on the key prints the same colour. */
    @Test
    void theKeysShareChangesNoColour() {
        Lab grey = new Lab(40, 0, 0);
        double before = -1;
        for (double share : new double[] {0, .3, .6, 1}) {
            double[] shares = Made.FOUR.shares(grey, share);
            assertTrue(shares[3] > before);
            before = shares[3];
            assertTrue(far(grey, printed(shares)) < ColourParting.MET);
        }
    }

    @Test
    void aColourOutOfReachKeepsLightnessAndHue() {
        Lab wished = new Lab(60, 70, 40);
        Lab printed = printed(Made.THREE.parted(wished));
        assertEquals(60, printed.lightness(), 1);
        assertEquals(wished.hueDegrees(), printed.hueDegrees(), 2);
        assertTrue(printed.chroma() < Made.THREE.reach(60, wished.hueDegrees()) + 1);
        Lab paper = printed(0, 0, 0);
        assertArrayEquals(new double[3], Made.THREE.shares(paper), 1e-6);
    }

    @Test
    void theLatticeIsNearWhatItTabulates() {
        PrintLattice lattice = new PrintLattice(3, 17, ColourPartingTest::printed);
        Random random = new Random(3);
        double worst = 0;
        for (int i = 0; i < 2000; i++) {
            double[] shares = random.doubles(3).toArray();
            worst = Math.max(worst, lattice.of(shares).difference(printed(shares)));
        }
        assertEquals(0, worst, .06);
    }

    private static double far(Lab one, Lab other) {
        return Math.sqrt(Math.pow(one.lightness() - other.lightness(), 2)
                + Math.pow(one.a() - other.a(), 2)
                + Math.pow(one.b() - other.b(), 2));
    }
}
