package greyground.simulation;

import greyground.fit.FitParameter;
import greyground.fit.FittedFigure;
import greyground.fit.PlateLesson;
import java.util.EnumMap;
import java.util.Map;

/** How often each number was determined, and how often its interval held the hidden one. */
final class CalibrationTally {
    private final Map<FitParameter, int[]> counts = new EnumMap<>(FitParameter.class);

    void add(PlateLesson lesson, HiddenWorkshop shop) {
        for (FittedFigure figure : lesson.figures()) {
            int[] count = counts.computeIfAbsent(figure.parameter(), key -> new int[3]);
            count[0]++;
            if (figure instanceof FittedFigure.Determined found) {
                double truth = figure.parameter().of(shop.truth());
                count[1]++;
                count[2] += truth >= found.low() && truth <= found.high() ? 1 : 0;
            }
        }
    }

    int asked() {
        return counts.values().stream().mapToInt(count -> count[0]).sum();
    }

    int determined() {
        return counts.values().stream().mapToInt(count -> count[1]).sum();
    }

    int held() {
        return counts.values().stream().mapToInt(count -> count[2]).sum();
    }

    /** Of each number: asked, determined, held. */
    Map<FitParameter, int[]> counts() {
        return counts;
    }
}
