package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SheetOnPaperTest {
    /** A4 (ISO 216) with an invented printer's uneven margins. */
    private static final PrintPaper A4 = new PrintPaper("a4", 210, 297, 4, 5, 200, 280);

    /** 254 dpi is ten pixels a millimetre. */
    private static SheetSize sheet(double width, double height) {
        return new SheetSize(width, height, new Resolution(254));
    }

    @Test
    void aSheetLiesInTheMiddleOnAWholePixelWhereItCan() {
        SheetOnPaper place = SheetOnPaper.laid(sheet(150.3, 250.7), A4);
        assertEquals((210 - 150.3) / 2, place.leftMillimetres(), 0.051);
        assertEquals((297 - 250.7) / 2, place.topMillimetres(), 0.051);
        assertEquals(Math.rint(place.leftMillimetres() * 10), place.leftMillimetres() * 10, 1e-6);
        assertEquals(Math.rint(place.topMillimetres() * 10), place.topMillimetres() * 10, 1e-6);
        assertFalse(place.lengthwise());
    }

    /** From 5 mm to 285 can be printed; 279 of the sheet's 283 mm carry marks. */
    @Test
    void aTallSheetMovesUntilAllItsMarksCanBePrinted() {
        SheetOnPaper place = SheetOnPaper.laid(sheet(150, 283), A4);
        double marksFrom = place.topMillimetres() + 2;
        assertTrue(marksFrom >= 5 - 0.05 && marksFrom + 279 <= 285 + 0.05, place.toString());
    }

    /** Turned, the upright paper's foot is on the left: 12 mm of it can't be printed, 5 mm on the right. */
    @Test
    void aWideSheetLiesLengthwiseBetweenTheTurnedMargins() {
        SheetOnPaper place = SheetOnPaper.laid(sheet(283, 150), A4);
        assertTrue(place.lengthwise());
        double marksFrom = place.leftMillimetres() + 2;
        assertTrue(marksFrom >= 12 - 0.05 && marksFrom + 279 <= 292 + 0.05, place.toString());
    }

    @Test
    void theRefusalSaysBothSizes() {
        SheetSize large = sheet(258, 227);
        assertEquals(Optional.empty(), SheetOnPaper.lay(large, A4));
        Refusal refusal = assertThrows(Refusal.class, () -> SheetOnPaper.laid(large, A4));
        assertTrue(refusal.getMessage().contains("258.0 x 227.0 mm"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("200.0 x 280.0 mm of a4"), refusal.getMessage());
    }
}
