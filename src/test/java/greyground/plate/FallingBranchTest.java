package greyground.plate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FallingBranchTest {
    private static List<ToneTerms> levels(double error, double... coverageAndLightness) {
        List<ToneTerms> levels = new ArrayList<>();
        for (int i = 0; i < coverageAndLightness.length; i += 2) {
            double lightness = coverageAndLightness[i + 1];
            levels.add(new ToneTerms(coverageAndLightness[i], 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, lightness, error));
        }
        return levels;
    }

    @Test
    void stopsAtTheTurningPoint() {
        FallingBranch branch = FallingBranch.widest(levels(0.1, 0, 90, 0.5, 40, 0.8, 20, 0.9, 30, 1, 80));
        assertEquals(0, branch.least());
        assertEquals(0.8, branch.most());
        assertEquals(65, branch.lightness(0.25), 1e-12);
        assertEquals(0, branch.smoothedBy());
    }

    /** Pool-adjacent-violators: 41 and 42 become 41.5, one knot between them. */
    @Test
    void poolsARiseThatSamplingExplains() {
        FallingBranch branch = FallingBranch.widest(levels(1, 0, 90, 0.4, 41, 0.5, 42, 0.8, 20));
        assertEquals(0.8, branch.most());
        assertEquals(41.5, branch.lightness(0.45), 1e-12);
        assertEquals(0.5, branch.smoothedBy(), 1e-12);
        assertTrue(branch.lightness(0.44) > branch.lightness(0.46));
    }

    @Test
    void endsAtARiseThatSamplingCannotExplain() {
        FallingBranch branch = FallingBranch.widest(levels(0.1, 0, 90, 0.4, 41, 0.5, 42, 0.8, 30));
        assertEquals(0.4, branch.most());
    }

    @Test
    void leavesOutCoveragesThatPrintBareAndAJumpThatNothingDivides() {
        FallingBranch flat = FallingBranch.widest(levels(0.1, 0, 94.8, 0.02, 94.8, 0.04, 94.7, 0.1, 85, 1, 20));
        assertEquals(0.04, flat.least());
        FallingBranch jump = FallingBranch.widest(levels(0.1, 0, 94.8, 0.02, 94.8, 0.022, 87, 0.1, 60, 1, 20));
        assertEquals(0.022, jump.least());
        assertEquals(87, jump.lightness(jump.least()), 1e-12);
    }
}
