package greyground.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.colour.ScannerFit.Field;
import greyground.colour.ScannerFit.Signal;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ScannerFitTest {
    private static final double[][] MATRIX = {{0.5, 0.3, 0.12}, {0.25, 0.65, 0.08}, {0.02, 0.1, 0.68}};

    private static Xyz linear(Signal signal) {
        double[] rgb = signal.values();
        double[] xyz = new double[3];
        for (int row = 0; row < 3; row++) {
            for (int i = 0; i < 3; i++) {
                xyz[row] += MATRIX[row][i] * rgb[i];
            }
        }
        return Xyz.of(xyz);
    }

    private static List<Signal> signals(int count, long seed) {
        Random random = new Random(seed);
        List<Signal> signals = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            signals.add(new Signal(
                    0.05 + 0.9 * random.nextDouble(),
                    0.05 + 0.9 * random.nextDouble(),
                    0.05 + 0.9 * random.nextDouble()));
        }
        return signals;
    }

    private static List<Field> fields(int count) {
        List<Field> fields = new ArrayList<>();
        for (Signal signal : signals(count, 3)) {
            fields.add(new Field(fields.size(), signal, linear(signal)));
        }
        return fields;
    }

    @Test
    void aLinearScannerIsFoundExactly() {
        ScannerFit fit = ScannerFit.of(fields(24));
        assertTrue(fit.error() < 1e-6, "off " + fit.error());
        for (Signal signal : signals(20, 8)) {
            assertTrue(Lab.of(fit.colour(signal)).difference(Lab.of(linear(signal))) < 1e-6);
        }
    }

    /** With products in it, three terms would not do. */
    @Test
    void aCrookedScannerTakesMoreTerms() {
        List<Field> fields = new ArrayList<>();
        for (Signal signal : signals(40, 5)) {
            Xyz straight = linear(signal);
            double more = 0.15 * signal.red() * signal.green();
            fields.add(new Field(
                    fields.size(), signal, new Xyz(straight.x() + more, straight.y() + more, straight.z() + more / 2)));
        }
        assertTrue(ScannerFit.of(fields).error() < 1e-6);
    }

    /** Fields printed alike are left out together: measuring each twice proves nothing more. */
    @Test
    void repeatsProveNothingOfOtherColours() {
        Random random = new Random(4);
        List<Field> once = new ArrayList<>();
        List<Field> twice = new ArrayList<>();
        for (Field field : fields(10)) {
            Xyz off = new Xyz(
                    field.measured().x() * (1 + 0.05 * random.nextGaussian()),
                    field.measured().y() * (1 + 0.05 * random.nextGaussian()),
                    field.measured().z() * (1 + 0.05 * random.nextGaussian()));
            Field noisy = new Field(field.colour(), field.signal(), off);
            once.add(noisy);
            twice.add(noisy);
            twice.add(noisy);
        }
        double error = ScannerFit.of(once).error();
        assertTrue(error > 0.5, "off " + error);
        assertEquals(error, ScannerFit.of(twice).error(), 1e-9);
    }

    @Test
    void fewOrAlikeColoursAreRefused() {
        assertThrows(Refusal.class, () -> ScannerFit.of(fields(7)));
        List<Field> alike = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            alike.add(new Field(i, new Signal(0.5, 0.4, 0.3), new Xyz(0.3, 0.3, 0.2)));
        }
        String words = String.valueOf(
                assertThrows(Refusal.class, () -> ScannerFit.of(alike)).getMessage());
        assertTrue(words.contains("too much alike"), words);
    }
}
