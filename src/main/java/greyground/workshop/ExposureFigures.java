package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * The exposures the shop gives and the step wedge that judges them: 21 steps of 0.15 density.
 *
 * @param screenSeconds through the aquatint screen film, 0 to 36 000
 * @param imageSeconds through the positive, 0.1 to 36 000
 * @param stepHeld highest wedge step with no film lost after the two exposures together, 0 to 21
 * @param targetStep the step the shop wants held, 0 to 21
 * @param filmBaseAtTestDensity ultraviolet density of the clear film through which the exposures were found, 0 to 1.5
 * @param blackMarginDensity density that a black has over what the resist just needs, 0 to 2
 * @param screenEdgeSoftnessMicrometres standard deviation of the blur of the screen film's edges, given by the film or a spacer, 0
 *     to 200
 * @param holdMinutes between exposing and developing, 0 to 1440
 */
public record ExposureFigures(
        Figure screenSeconds,
        Figure imageSeconds,
        Figure stepHeld,
        Figure targetStep,
        Figure filmBaseAtTestDensity,
        Figure blackMarginDensity,
        Figure screenEdgeSoftnessMicrometres,
        Figure holdMinutes) {
    public static final Range IMAGE = new Range(0.1, 36_000, Unit.SECONDS, "find it with a test plate");
    public static final Range SCREEN = new Range(0, 36_000, Unit.SECONDS, "find it with a test plate");
    public static final Range STEP_HELD = new Range(0, 21, Unit.STEPS, "count the wedge steps that kept their film");
    public static final Range TARGET_STEP = new Range(0, 21, Unit.STEPS, "choose the step your best plate held");

    public ExposureFigures {
        screenSeconds.within("exposure.screenSeconds", SCREEN);
        imageSeconds.within("exposure.imageSeconds", IMAGE);
        stepHeld.within("exposure.stepHeld", STEP_HELD);
        targetStep.within("exposure.targetStep", TARGET_STEP);
        filmBaseAtTestDensity.within("exposure.filmBaseAtTestDensity", 0, 1.5, "", "measure bare film, 0 for none");
        blackMarginDensity.within("exposure.blackMarginDensity", 0, 2, "", "0.3 is one stop");
        screenEdgeSoftnessMicrometres.within(
                "exposure.screenEdgeSoftnessMicrometres", 0, 200, "µm", "15 to 30 µm gives photogravure its greys");
        holdMinutes.within("exposure.holdMinutes", 0, 1440, "min", "15 is usual");
    }

    /** 60 s through the screen and 90 s through the image, holding the wanted step. */
    public static ExposureFigures assumed() {
        String usual = "common practice, no source: find your own with a test plate";
        return new ExposureFigures(
                Figure.assumed(60, usual),
                Figure.assumed(90, usual),
                Figure.assumed(7, "assumed to hold the wanted step until a wedge is read"),
                Figure.assumed(
                        7,
                        "two guides disagree: a resist calibration note asks for 7 to 10 of 21, another for 10 to 12, best 11; 7 is assumed"),
                Figure.assumed(0.10, "assumed: found through film like today's"),
                Figure.assumed(0.3, "common practice: one stop"),
                Figure.assumed(20, "assumed: a screen with soft edges; tone in photogravure comes from them"),
                Figure.assumed(15, "a dry-film maker's processing guide: 15 min after exposure"));
    }
}
