package greyground.plate.inspect;

import greyground.raster.BitPlane;
import greyground.raster.DiscOpening;
import greyground.raster.DiscReach;

/**
 * Which clear parts of a film live as lands through developing and bite, and where the pad then reaches the floor, on a raster
 * of film pixels. Widths of lands and openings are judged as {@link DiscOpening} does; the pad's reach within a quarter
 * pixel, since the middle of an even gap lies half a pixel beside the nearest pixel's. Immutable; shared by all threads.
 */
public final class BareCopper {
    private static final double QUARTER = 0.25;

    /** Discs are measured up to so many times the pad's radius. */
    private static final int MEASURED = 3;

    private final double openingPixels;
    private final double landPixels;
    private final DiscOpening washedOut;
    private final DiscOpening living;
    private final double padRadius;
    private final boolean groundHolds;

    /**
     * For one film printer.
     *
     * @param pitchMicrometres centre-to-centre distance of film pixels
     */
    public BareCopper(FilmLimits limits, double pitchMicrometres) {
        openingPixels = limits.leastOpeningMicrometres() / pitchMicrometres;
        landPixels = limits.leastLandMicrometres() / pitchMicrometres;
        washedOut = new DiscOpening(openingPixels);
        living = new DiscOpening(landPixels);
        padRadius = limits.widestBlackMicrometres() / 2 / pitchMicrometres + QUARTER;
        groundHolds = limits.groundHolds();
    }

    /** How far a pixel of film can decide which lands live, in pixels each way. */
    public int reach() {
        return washedOut.reach() + living.reach();
    }

    /** Distance from a living land, centre to centre in pixels, at which the pad reaches the floor. */
    public double padRadiusPixels() {
        return padRadius;
    }

    /** Width below which black stays shut. */
    double openingPixels() {
        return openingPixels;
    }

    /** Width below which clear film leaves no land. */
    double landPixels() {
        return landPixels;
    }

    /** Longest distance from a land that is measured; wider clearings are left to {@link WideClearings}. */
    int farthestPixels() {
        return (int) Math.ceil(MEASURED * padRadius);
    }

    /** Half the width of the bare place whose middle lies so far, in pixels, from the nearest living land's pixel. */
    static double halfWidthPixels(double distancePixels) {
        return distancePixels - QUARTER;
    }

    /** Black that washes out. */
    BitPlane openings(BitPlane black) {
        return washedOut.of(black);
    }

    /** Lands that live where all of {@code openings} wash out. */
    BitPlane landsBetween(BitPlane openings) {
        return living.of(openings.turned());
    }

    /** Lands that live on a film; what lies within {@link #reach} of the plane's edges is not to be trusted. */
    public BitPlane lands(BitPlane black) {
        return landsBetween(openings(black));
    }

    /**
     * Where the pad reaches the floor; nowhere on a sprayed ground that holds.
     *
     * @param lands that live
     * @param firstRow of {@code lands} that becomes row 0 of the result
     */
    public BitPlane wipedOut(BitPlane lands, int firstRow, int rows) {
        if (groundHolds) {
            return new BitPlane(lands.wordsPerRow(), rows);
        }
        BitPlane wiped = DiscReach.within(lands, padRadius, firstRow, rows);
        long[] words = wiped.words();
        for (int i = 0; i < words.length; i++) {
            words[i] = ~words[i];
        }
        return wiped;
    }
}
