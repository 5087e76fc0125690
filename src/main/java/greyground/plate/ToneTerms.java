package greyground.plate;

/**
 * Why one tone prints as it does, term by term, from film to print. Shares are of the patch's area.
 *
 * @param coverage asked of the film, 0 to 1
 * @param openedByLight share that light left soft
 * @param openShare share bare after developing and any sprayed ground
 * @param landLeft share still at the plate's face after the bite
 * @param meanDepthMicrometres mean over the whole patch
 * @param inkVolumeMicrometres ink in the plate, as a film over the whole patch (cubic centimetres to the square metre)
 * @param inkHeldShare ink in the plate over what its wells could hold, 0 to 1; 0 where there are none
 * @param printedShare share of the paper that ink reaches
 * @param inkFilmMicrometres mean ink film over the printed share
 * @param solidDensity what that film would measure as a solid, paper included
 * @param density of the print, absolute
 * @param lightness of the print, absolute CIE L*
 * @param lightnessError standard error of that lightness from the patch being only a sample of the grain
 */
public record ToneTerms(
        double coverage,
        double openedByLight,
        double openShare,
        double landLeft,
        double meanDepthMicrometres,
        double inkVolumeMicrometres,
        double inkHeldShare,
        double printedShare,
        double inkFilmMicrometres,
        double solidDensity,
        double density,
        double lightness,
        double lightnessError) {}
