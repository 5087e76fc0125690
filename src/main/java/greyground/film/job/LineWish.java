package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Unit;
import java.util.Optional;

/**
 * How art of lines becomes strokes; nothing of it matters to other art.
 *
 * @param threshold share of the way from ink to paper, in light, up to which all is ink; empty for half
 * @param specksMicrometres side of a square on the plate: what is smaller is no stroke; empty for the usual
 * @param growthMicrometres how far an edge grows from film to print; empty for what the virtual plate says
 */
public record LineWish(
        Optional<Double> threshold, Optional<Double> specksMicrometres, Optional<Double> growthMicrometres) {
    public static final Range THRESHOLD =
            new Range(0.02, 0.98, Unit.SHARE, "50 % is where a sharp edge runs, more makes strokes bolder");

    public static final Range SPECKS = new Range(
            0, 500, Unit.MICROMETRES, "0 keeps all, 40 \u00b5m is usual, dots of a drawing are 100 \u00b5m and more");

    public static final Range GROWTH =
            new Range(0, 150, Unit.MICROMETRES, "half of what a bar prints wider than it lies on the film");

    /** Side of the usual speck (assumed): dust, and smaller than any dot that is drawn. */
    public static final double USUAL_SPECKS_MICROMETRES = 40;

    /** All found. */
    public static final LineWish AT_REST = new LineWish(Optional.empty(), Optional.empty(), Optional.empty());

    public LineWish {
        threshold.ifPresent(share -> THRESHOLD.check("threshold", share));
        specksMicrometres.ifPresent(side -> SPECKS.check("specks", side));
        growthMicrometres.ifPresent(growth -> GROWTH.check("edge growth", growth));
    }
}
