package greyground.app.live;

import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.app.sight.StageTones;
import greyground.picture.Colouring;
import greyground.tone.ToneCurve;
import java.util.function.IntUnaryOperator;

/** How a plate's film sheet looks from afar: each place of the art as its even tone, in the colours of the film's own stage. */
final class LiveSheetTones {
    /** Colours on the copper are made for every 16th coverage (assumed: no eye tells those between). */
    private static final int STEP_BITS = 4;

    private final LivePlacing placing;
    private final StageTones tones;
    private final ToneCurve curve;
    private final IntUnaryOperator coverage;
    private final int[] onCopper = new int[(ToneCurve.SOLID >> STEP_BITS) + 2];

    /** Tones whose greys of the art {@code coverage} turns to coverages: by the curve, or all to one on a screen film. */
    LiveSheetTones(LivePlacing placing, StageTones tones, ToneCurve curve, IntUnaryOperator coverage) {
        this.placing = placing;
        this.tones = tones;
        this.curve = curve;
        this.coverage = coverage;
        for (int step = 0; step < onCopper.length; step++) {
            int share = Math.min(ToneCurve.SOLID, step << STEP_BITS);
            onCopper[step] = Colouring.onCopper(tones.colour(Stage.FILM, share));
        }
    }

    /** Coverages in 1/65 535 of a window in millimetres of plate, as the print reads; only the picture's own place is looked at. */
    char[] coverages(LiveView ofPlate) {
        short[] seen = placing.greys(ofPlate);
        char[] coverages = new char[seen.length];
        for (int i = 0; i < seen.length; i++) {
            coverages[i] = (char) coverage.applyAsInt(seen[i] & 0xFFFF);
        }
        return coverages;
    }

    /** The curve that the strip's greys go through. */
    ToneCurve curve() {
        return curve;
    }

    /** The colour of a coverage, on a light table or on the copper. */
    int colour(int share, boolean copper) {
        return copper ? onCopper[(share + (1 << (STEP_BITS - 1))) >> STEP_BITS] : tones.colour(Stage.FILM, share);
    }
}
