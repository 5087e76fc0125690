package greyground.plate.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NormalTest {
    /** Tables of the normal distribution, as in any book of statistics (Abramowitz and Stegun 1964, Table 26.1). */
    @ParameterizedTest
    @CsvSource({
        "0, 0.5",
        "0.5, 0.6914624613",
        "1, 0.8413447461",
        "1.6448536270, 0.95",
        "1.9599639845, 0.975",
        "2.3263478740, 0.99",
        "3, 0.9986501020",
        "3.7190164855, 0.9999"
    })
    void agreesWithTheTablesOnBothSides(double z, double share) {
        assertEquals(share, Normal.below(z), 7.5e-8);
        assertEquals(1 - share, Normal.below(-z), 7.5e-8);
        assertEquals(z, Normal.deviations(share), 4.5e-4);
        assertEquals(-z, Normal.deviations(1 - share), 4.5e-4);
    }
}
