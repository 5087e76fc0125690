package greyground.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What every plate response promises, and what its inverse and its curve then keep. */
public abstract class PlateResponseContract {
    /** Responses to hold to the contract. */
    protected abstract List<PlateResponse> responses();

    @Test
    void lightnessFallsStrictlyOverTheUsableCoverages() {
        for (PlateResponse response : responses()) {
            UsableCoverage usable = response.usable();
            double before = response.lightness(0);
            for (int i = 1; i <= 200; i++) {
                double here = response.lightness(usable.least() + (usable.most() - usable.least()) * i / 200);
                assertTrue(here < before, response::name);
                before = here;
            }
        }
    }

    @Test
    void lightnessIsAlwaysALightness() {
        for (PlateResponse response : responses()) {
            for (int i = 0; i <= 100; i++) {
                double here = response.lightness(i / 100.0);
                assertTrue(here >= 0 && here <= 100, response::name);
            }
            assertFalse(response.name().isBlank());
        }
    }

    @Test
    void theInverseUndoesTheResponse() {
        for (PlateResponse response : responses()) {
            ResponseInverse inverse = new ResponseInverse(response);
            double span = inverse.lightestLightness() - inverse.darkestLightness();
            for (int i = 0; i <= 300; i++) {
                double wish = inverse.darkestLightness() + span * i / 300;
                double coverage = inverse.coverage(wish);
                // A fiftieth of an L* is far below what an eye or a densitometer tells apart.
                assertEquals(wish, response.lightness(coverage), 0.02, response::name);
                assertTrue(inverse.attainable(wish), response::name);
            }
        }
    }

    @Test
    void nothingOutsideTheUsableCoveragesIsEverAskedFor() {
        for (PlateResponse response : responses()) {
            Compensation made = Compensation.of("test", ArtRange.WHOLE, RangeMapping.DEFAULT, response);
            int least = (int) Math.ceil(response.usable().least() * ToneCurve.SOLID);
            int most = (int) Math.floor(response.usable().most() * ToneCurve.SOLID);
            for (int grey = 0; grey < ToneCurve.CODES; grey++) {
                int coverage = made.curve().coverage(grey);
                assertTrue(coverage == 0 || (coverage >= least && coverage <= most), response::name);
            }
            assertEquals(0, made.curve().coverage(ToneCurve.CODES - 1), response::name);
            assertEquals(most, made.curve().coverage(0), response::name);
        }
    }

    /** Art, curve, plate: attained greys print at the lightness wished for, the others at one of the two nearest tones. */
    @Test
    void whatIsAttainedPrintsAsWished() {
        for (PlateResponse response : responses()) {
            Compensation made = Compensation.of("test", ArtRange.WHOLE, RangeMapping.DEFAULT, response);
            DoubleUnaryOperator wishes = RangeMapping.DEFAULT.onto(ArtRange.WHOLE, PrintRange.of(response));
            for (int grey = 0; grey < ToneCurve.CODES; grey += 31) {
                double wish = wishes.applyAsDouble(grey / 65_535.0);
                double printed = response.lightness(made.curve().coverage(grey) / 65_535.0);
                if (grey >= made.light().firstGrey() && grey <= made.light().lastGrey()) {
                    double nearest = Math.min(made.paperLightness() - wish, wish - made.lightestLightness());
                    assertEquals(nearest, Math.abs(printed - wish), 0.15, response::name);
                } else {
                    // One film code in 65 535 moves a light tone by up to a tenth of an L*.
                    assertEquals(wish, printed, 0.1, response::name);
                }
            }
        }
    }
}
