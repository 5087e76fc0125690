package greyground.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PrintedTint;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FilmPrinterFitTest {
    private static final int PERIOD = 80;
    private static final double PITCH = 4;

    /** Upright lines, one period wide. */
    private static final class LinePatches implements FilmPatches {
        @Override
        public FilmPatch at(double coverage) {
            int black = (int) Math.round(coverage * PERIOD);
            byte[] packed = new byte[(PERIOD + 7) / 8 * 8];
            for (int y = 0; y < 8; y++) {
                for (int x = 0; x < black; x++) {
                    packed[y * ((PERIOD + 7) / 8) + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
            return FilmPatch.tile(PERIOD, 8, PITCH, packed);
        }

        @Override
        public String name() {
            return "lines";
        }
    }

    private static final LinePatches LINES = new LinePatches();

    /** Readings of 0 to 100 % by 10 as exact lines give them: science sheet, section 3, a' = a + 2 delta / p. */
    private static List<FilmReading> read(double clear, double black, double growth, double noise, Random random) {
        List<FilmReading> readings = new ArrayList<>();
        for (int step = 0; step <= 10; step++) {
            double grown = step % 10 == 0 ? step / 10 : step / 10.0 + 2 * growth / (PERIOD * PITCH);
            double share = Math.max(0, Math.min(1, grown));
            double density = -Math.log10(share * Math.pow(10, -black) + (1 - share) * Math.pow(10, -clear));
            readings.add(FilmReading.measured(step / 10.0, density + noise * random.nextGaussian()));
        }
        return readings;
    }

    /** 0.36 between paper of 0.06 and a solid of 1.60 is 51.3626 % (worked by hand from Murray and Davies's equation). */
    @Test
    void shareOfInkByMurrayAndDavies() {
        assertEquals(0.513626, FilmPrinterFit.covered(0.36, 0.06, 1.60), 1e-5);
    }

    /** Science sheet, row 29's companion: lines of 60 to the centimetre, 50 % and +10 um an edge, cover 62 %. */
    @Test
    void tintsOfLinesGrowAsGeometrySays() {
        FilmPatch half = FilmPatch.tile(24, 1, 1e4 / 60 / 24, new byte[] {(byte) 0xFF, (byte) 0xF0, 0});
        assertEquals(0.62, PrintedTint.covered(half, 10, 3), 1e-3);
        assertEquals(0.5, PrintedTint.covered(half, 0, 3), 1e-6);
        assertEquals(0.5 - 2 * 5 / (1e4 / 60), PrintedTint.covered(half, -5, 3), 1e-3);
    }

    /** Science sheet, section 1, example 4: 1 % of pinholes in a solid of 3.0 reads 2.0043, half a per cent in 3.5 2.3214. */
    @Test
    void pinholesAreToldFromTheReadingTheySpoil() {
        assertEquals(0.01, FilmPrinterFit.pinholes(2.0043, 3.0, 0.05), 2e-6);
        assertEquals(0.005, FilmPrinterFit.pinholes(2.3214, 3.5, 0.05), 2e-6);
        List<FilmReading> readings = new ArrayList<>(read(0.05, 3.0, 4, 0, new Random(1)));
        readings.add(FilmReading.measured(1, 3.0));
        readings.add(FilmReading.measured(1, 2.0043));
        FilmPrinterFit fit = FilmPrinterFit.of(readings, LINES, 3);
        assertEquals(0.01, fit.pinholeShare(), 1e-4);
        assertEquals(3.0, fit.black().value(), 0.02);
    }

    /** Science sheet, section 3, example 1: densities 0.06, 0.36 and 1.60 are 51.3626 % by Murray and Davies. */
    @Test
    void inkCoverIsMurrayAndDavies() {
        List<FilmReading> readings =
                List.of(FilmReading.measured(0, 0.06), FilmReading.measured(0.5, 0.36), FilmReading.measured(1, 1.6));
        FilmPrinterFit fit = FilmPrinterFit.of(readings, LINES, 3);
        assertEquals(0.513626, fit.fields().get(1).covered(), 1e-5);
        assertEquals(0.013626 * PERIOD * PITCH / 2, fit.growth().orElseThrow().value(), 0.05);
    }

    @Test
    void readingsWithoutErrorGiveTheNumbersBack() {
        for (double growth : new double[] {-5, 0, 4, 11}) {
            FilmPrinterFit fit = FilmPrinterFit.of(read(0.11, 2.7, growth, 0, new Random(1)), LINES, 3);
            assertEquals(0.11, fit.clear().value(), 0.002);
            assertEquals(2.7, fit.black().value(), 0.002);
            assertEquals(growth, fit.growth().orElseThrow().value(), 0.15);
        }
    }

    /** Of 95 % intervals from independent readings, 40 hold the truth 33 times or more but for one time in a thousand. */
    @Test
    void statedIntervalsHoldTheTruth() {
        int held = 0;
        for (int seed = 0; seed < 40; seed++) {
            Random random = new Random(seed);
            double hidden = 14.0 * seed / 40 - 3;
            FilmPrinterFit fit =
                    FilmPrinterFit.of(read(0.12, 2.5, hidden, FilmReading.DENSITOMETER_ERROR, random), LINES, 3);
            FilmPrinterFit.Estimate growth = fit.growth().orElseThrow();
            held += Math.abs(growth.value() - hidden) <= growth.half95() ? 1 : 0;
        }
        assertTrue(held >= 33, "held " + held + " of 40");
    }

    /** Matched by eye to half a step of 0.15 D, all of it as likely. */
    @Test
    void fieldsMatchedToAWedgeTellTheSameLessSurely() {
        List<FilmReading> matched = new ArrayList<>();
        for (FilmReading exact : read(0.12, 2.5, 6, 0, new Random(1))) {
            double step = Math.rint((exact.density() - 0.05) / 0.15);
            matched.add(FilmReading.matched(exact.coverage(), 0.05 + 0.15 * step, 0.15));
        }
        FilmPrinterFit fit = FilmPrinterFit.of(matched, LINES, 3);
        FilmPrinterFit.Estimate growth = fit.growth().orElseThrow();
        assertEquals(6, growth.value(), growth.half95());
        assertTrue(growth.standardError() > 0.2, growth.toString());
        assertEquals(2.5, fit.black().value(), 0.075 + 1e-9);
    }

    @Test
    void withoutTintsOnlyTheEndsAreFound() {
        List<FilmReading> ends = List.of(FilmReading.measured(0, 0.1), FilmReading.measured(1, 2.2));
        assertFalse(FilmPrinterFit.of(ends, LINES, 3).growth().isPresent());
        assertThrows(Refusal.class, () -> FilmPrinterFit.of(ends.subList(0, 1), LINES, 3));
        assertThrows(
                Refusal.class,
                () -> FilmPrinterFit.of(List.of(FilmReading.measured(0, 0.1), FilmReading.measured(1, 0.3)), LINES, 3));
    }
}
