package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Unit;
import greyground.tone.ColourSight;
import greyground.tone.ToneWish;
import java.util.Optional;

/**
 * What the printmaker's hand does to the art before the plate's curve. The order in which it is told doesn't matter: colours become greys as
 * the art is read, a print loses its dots, paper is made even, local contrast comes first on the art as it is turned, then places are burnished and deepened, then
 * comes crispness, and tones move last.
 *
 * @param sight how colours become greys
 * @param origin what it was made of
 * @param evenPaper how wide, as a share of the art's longer side, what is darker than paper must be to count as a stain of it; 0 for nothing
 * @param localContrast how much the contrast of what is small is raised, edges kept; 0 for nothing
 * @param crispness how much the contrast of fine detail is raised, 0 for nothing; empty for as much as the plate takes from it
 * @param crispRadius how fine that detail is, in micrometres of plate; empty for what suits the grain
 * @param line how art of lines becomes strokes
 * @param wish where tones go
 * @param retouching what is done to single places
 */
public record Hand(
        ColourSight sight,
        Origin origin,
        double evenPaper,
        double localContrast,
        Optional<Double> crispness,
        Optional<Double> crispRadius,
        LineWish line,
        ToneWish wish,
        Retouching retouching) {
    /** Wider squares would take half a picture for paper (assumed). */
    public static final Range EVEN_PAPER = new Range(
            0,
            0.2,
            Unit.SHARE,
            "0 leaves the paper as it is, 3 % of the art's longer side is usual, wider than any stroke or wash");

    /** Half of the contrast to nearly twice (assumed), so that no halo passes 2 L*. */
    public static final Range LOCAL_CONTRAST =
            new Range(-0.5, 0.8, Unit.SHARE, "20 % is clearly seen, 0 leaves the art as it is");

    public static final Range CRISPNESS = new Range(0, 2, Unit.SHARE, "a plate takes 10 to 40 %, above 60 % is taste");

    public static final Range CRISP_RADIUS =
            new Range(5, 1000, Unit.MICROMETRES, "a quarter of the grain's spacing is usual");

    /** Nothing is touched. */
    public static final Hand AT_REST = new Hand(
            ColourSight.EYE,
            Origin.AUTOMATIC,
            0,
            0,
            Optional.of(0.0),
            Optional.empty(),
            LineWish.AT_REST,
            ToneWish.AS_THEY_ARE,
            Retouching.NONE);

    public Hand {
        EVEN_PAPER.check("even paper", evenPaper);
        LOCAL_CONTRAST.check("local contrast", localContrast);
        crispness.ifPresent(amount -> CRISPNESS.check("crisp", amount));
        crispRadius.ifPresent(radius -> CRISP_RADIUS.check("crisp radius", radius));
    }
}
