package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * The ink and how it reaches the paper.
 *
 * @param saturationDensity density over paper of a very thick film (Dinf), 0.5 to 3
 * @param strengthPerMicrometre how fast density grows with ink film (m), 0.01 to 2
 * @param transferFraction share of the cell's ink that leaves it, 0.05 to 1
 * @param spreadMicrometres sideways growth in the press, 0 to 100
 * @param yuleNielsenFactor light spread in the paper (n), 1 to 4
 */
public record InkFigures(
        Figure saturationDensity,
        Figure strengthPerMicrometre,
        Figure transferFraction,
        Figure spreadMicrometres,
        Figure yuleNielsenFactor) {
    public static final Range SATURATION = new Range(0.5, 3, Unit.DENSITY, "measure the darkest tone less the paper");
    public static final Range STRENGTH = new Range(0.01, 2, Unit.PER_MICROMETRE, "fit it to four depths or more");
    public static final Range TRANSFER = new Range(0.05, 1, Unit.RATIO, "0.6 to 0.95 is usual");

    public InkFigures {
        saturationDensity.within("ink.saturationDensity", SATURATION);
        strengthPerMicrometre.within("ink.strengthPerMicrometre", STRENGTH);
        transferFraction.within("ink.transferFraction", TRANSFER);
        spreadMicrometres.within("ink.spreadMicrometres", 0, 100, "µm", "measure a line on plate and print");
        yuleNielsenFactor.within("ink.yuleNielsenFactor", 1, 4, "", "1.7 when nothing is known");
    }

    /** An intaglio black on damp cotton paper. */
    public static InkFigures assumed() {
        return new InkFigures(
                Figure.assumed(1.7, "from memory: intaglio black on uncoated cotton paper 1.4-1.9, unverified"),
                Figure.assumed(0.15, "from memory: 0.1-0.3 per µm (form after Tollenaar & Ernst 1961), unverified"),
                Figure.assumed(0.8, "from memory: 0.6-0.95, unverified"),
                Figure.assumed(
                        8,
                        "Kyrychok, Intaglio Ink Relief Forming: 8.0-18.3 µm sideways on banknote presses, lower end"),
                Figure.assumed(1.7, "Pearson, TAGA 1981: 1.7 when nothing is known"));
    }
}
