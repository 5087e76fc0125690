package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.StripPacking.Packed;
import greyground.film.sheet.StripPacking.Piece;
import greyground.film.sheet.StripPacking.Place;
import greyground.quantity.Refusal;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class StripPackingTest {
    /**
     * One published case.
     *
     * @param least the height that its authors know to be possible
     */
    record Strip(String name, int width, int least, List<Piece> pieces) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** The 21 cases of Hopper &amp; Turton 2001, European Journal of Operational Research 128, 34-57. */
    static Stream<Strip> published() throws Exception {
        try (InputStream in = StripPackingTest.class.getResourceAsStream("strips.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines().filter(line -> !line.startsWith("#")).map(StripPackingTest::strip).toList().stream();
        }
    }

    private static Strip strip(String line) {
        String[] words = line.split(" ");
        List<Piece> pieces = new ArrayList<>();
        for (int i = 3; i < words.length; i++) {
            String[] sides = words[i].split("x");
            pieces.add(new Piece(Integer.parseInt(sides[0]), Integer.parseInt(sides[1]), true));
        }
        return new Strip(words[0], Integer.parseInt(words[1]), Integer.parseInt(words[2]), pieces);
    }

    @ParameterizedTest
    @MethodSource("published")
    void comesWithinFifteenPerCentOfTheLeastHeight(Strip strip) {
        Packed packed = StripPacking.pack(strip.pieces(), strip.width());
        assertLies(strip.pieces(), strip.width(), packed);
        assertTrue(packed.height() <= 1.15 * strip.least(), strip + " takes " + packed.height());
        assertTrue(packed.height() >= strip.least(), strip + " can't take " + packed.height());
    }

    @ParameterizedTest
    @MethodSource("published")
    void whatMayNotTurnDoesNot(Strip strip) {
        List<Piece> upright = strip.pieces().stream()
                .filter(piece -> piece.width() <= strip.width())
                .map(piece -> new Piece(piece.width(), piece.height(), false))
                .toList();
        Packed packed = StripPacking.pack(upright, strip.width());
        assertLies(upright, strip.width(), packed);
        assertTrue(packed.places().stream().noneMatch(Place::turned));
    }

    @Test
    void theSameRectanglesLieTheSameWay() throws Exception {
        Strip strip = published().findFirst().orElseThrow();
        assertEquals(
                StripPacking.pack(strip.pieces(), strip.width()), StripPacking.pack(strip.pieces(), strip.width()));
    }

    @Test
    void aSquareOfFourFillsItsStrip() {
        Piece quarter = new Piece(50, 50, false);
        assertEquals(
                100,
                StripPacking.pack(List.of(quarter, quarter, quarter, quarter), 100)
                        .height());
    }

    @Test
    void whatOnlyGoesTurnedIsTurned() {
        Packed packed = StripPacking.pack(List.of(new Piece(120, 40, true)), 100);
        assertEquals(List.of(new Place(0, 0, true)), packed.places());
        assertEquals(120, packed.height());
        assertFalse(new Piece(120, 40, false).goesInto(100));
        assertThrows(Refusal.class, () -> StripPacking.pack(List.of(new Piece(120, 40, false)), 100));
    }

    /** Inside the strip, and none over another. */
    private static void assertLies(List<Piece> pieces, int width, Packed packed) {
        boolean[] taken = new boolean[width * packed.height()];
        assertEquals(pieces.size(), packed.places().size());
        for (int i = 0; i < pieces.size(); i++) {
            Place place = packed.places().get(i);
            Piece piece = pieces.get(i);
            int across = place.turned() ? piece.height() : piece.width();
            int down = place.turned() ? piece.width() : piece.height();
            assertTrue(place.x() >= 0 && place.x() + across <= width, "inside");
            for (int y = place.y(); y < place.y() + down; y++) {
                for (int x = place.x(); x < place.x() + across; x++) {
                    assertFalse(taken[y * width + x], "alone");
                    taken[y * width + x] = true;
                }
            }
        }
    }
}
