package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LabelPlacesTest {
    private final LabelPlaces places = new LabelPlaces();

    @Test
    void theLikeliestPlaceIsTakenWhereNothingRuns() {
        places.line(0, 0, 10, 10);
        Viewport.Area first = new Viewport.Area(50, 50, 30, 10);
        assertEquals(first, places.place(List.of(first, new Viewport.Area(90, 50, 30, 10))));
    }

    @Test
    void aLineDrivesALabelOn() {
        places.line(0, 55, 100, 55);
        Viewport.Area clear = new Viewport.Area(20, 70, 30, 10);
        assertEquals(clear, places.place(List.of(new Viewport.Area(20, 50, 30, 10), clear)));
    }

    /** Crowded with lines, labels may have to lie on one, but never on each other where they need not. */
    @Test
    void labelsNeverLieOnEachOther() {
        Random random = new Random(3);
        for (int i = 0; i < 40; i++) {
            places.line(random.nextInt(200), random.nextInt(200), random.nextInt(200), random.nextInt(200));
        }
        List<Viewport.Area> placed = new ArrayList<>();
        for (int label = 0; label < 4; label++) {
            List<Viewport.Area> candidates = new ArrayList<>();
            for (int left = 0; left < 140; left += 10) {
                candidates.add(new Viewport.Area(left, 80, 60, 16));
                candidates.add(new Viewport.Area(left, 100, 60, 16));
            }
            placed.add(places.place(candidates));
        }
        for (int i = 0; i < placed.size(); i++) {
            for (int k = 0; k < i; k++) {
                assertFalse(LabelPlaces.overlap(placed.get(i), placed.get(k)), placed.toString());
            }
        }
        assertTrue(LabelPlaces.overlap(new Viewport.Area(0, 0, 10, 10), new Viewport.Area(9, 9, 10, 10)));
        assertFalse(LabelPlaces.overlap(new Viewport.Area(0, 0, 10, 10), new Viewport.Area(10, 0, 10, 10)));
    }
}
