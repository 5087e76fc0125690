package greyground.app.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.FitParameter;
import greyground.fit.FitReading;
import greyground.scan.StripReading;
import greyground.scan.TargetFindings.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ExposureLessonTest {
    private static Finding finding(FitParameter parameter, int held) {
        return held == 0
                ? new Finding(Optional.empty(), "nothing held")
                : new Finding(Optional.of(FitReading.target(parameter, held * 0.7, held)), "held");
    }

    /** Strips of given smallest openings and lands, 0 where a strip tells none. */
    private static List<StripReading> strips(int[] openings, int[] lands) {
        List<StripReading> strips = new ArrayList<>();
        for (int i = 0; i < openings.length; i++) {
            strips.add(new StripReading(
                    i + 1,
                    List.of(),
                    List.of(),
                    finding(FitParameter.SMALLEST_OPENING, openings[i]),
                    finding(FitParameter.SMALLEST_LAND, lands[i])));
        }
        return strips;
    }

    private static int best(int[] openings, int[] lands) {
        return ExposureLesson.best(strips(openings, lands)).orElseThrow().number();
    }

    @Test
    void stripWhoseDotsOpenWhileItsLandsStandIsTaken() {
        // More light from strip to strip: lands get finer and openings shut.
        assertEquals(3, best(new int[] {20, 20, 28, 40, 80}, new int[] {112, 80, 28, 28, 28}));
        assertEquals(4, best(new int[] {20, 20, 20, 20, 112}, new int[] {112, 80, 56, 28, 20}));
    }

    @Test
    void ofEqualStripsThatNearestTheMiddleIsTaken() {
        assertEquals(3, best(new int[] {28, 28, 28, 28, 28}, new int[] {28, 28, 28, 28, 28}));
        assertEquals(2, best(new int[] {28, 28, 0, 40, 28}, new int[] {28, 28, 0, 28, 28}));
    }

    @Test
    void whereNoStripTellsBothNoneIsTaken() {
        assertTrue(ExposureLesson.best(strips(new int[] {28, 0, 0}, new int[] {0, 28, 0}))
                .isEmpty());
    }
}
