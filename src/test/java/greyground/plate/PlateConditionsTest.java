package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.quantity.RecordWords;
import org.junit.jupiter.api.Test;

class PlateConditionsTest {
    /** The platform's own words are the measure: every number of a plate is in them, so every number decides the digest. */
    @Test
    void theWordsOfAWholePlateAreThePlatformsOwn() {
        PlateConditions etched = Studio.etched(40, 2);
        assertEquals(etched.toString(), RecordWords.of(etched));
        PlateConditions photogravure = Studio.photogravure(30);
        assertEquals(photogravure.toString(), RecordWords.of(photogravure));
        PlateConditions unetched = Studio.unetched(200);
        assertEquals(unetched.toString(), RecordWords.of(unetched));
    }
}
