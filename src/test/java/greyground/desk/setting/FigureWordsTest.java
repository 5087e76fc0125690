package greyground.desk.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import greyground.workshop.Workshop;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FigureWordsTest {
    @ParameterizedTest
    @CsvSource({
        "filmPrinter.edgeSoftnessMicrometres, 3, Edge softness, 3 \u00b5m",
        "light.distanceAtTestMillimetres, 600, Distance at test, 600 mm",
        "resist.thinningGramsPerLitre, 10, Thinning, 10 g/L",
        "resist.absorbancePerMicrometre, 0.013, Absorbance, 0.013 per \u00b5m",
        "bath.rateDegreesBaume, 42, Rate, 42 \u00b0B\u00e9",
        "light.hoursAtTest, 0, Hours at test, 0"
    })
    void aNumberThatNoStationShowsHasItsUnit(String path, double value, String label, String words) {
        FigureWords figure = FigureWords.of(path);
        assertEquals(label, figure.label());
        assertEquals(words, figure.withUnit(value));
    }

    /** Within a part of the workshop no two lines may read alike. */
    @Test
    void everyNumberOfAWorkshopHasWordsOfItsOwn() {
        Set<String> seen = new HashSet<>();
        Workshop.assumed().figures().forEach((path, figure) -> {
            FigureWords words = FigureWords.of(path);
            String line = path.substring(0, path.indexOf('.')) + words.label() + words.unit();
            assertFalse(words.label().isBlank() || !seen.add(line), line);
        });
    }
}
