package greyground.fit;

import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.Lightness;
import java.util.stream.Stream;

/**
 * What repeats on one scan of one plate can't show, since all of them share it: paper, glare, the scanner's tone scale, and how far the
 * next plate differs. Each is a belief, one standard error, assumed unless it says otherwise (docs/sources.md); all are combined in
 * quadrature with the readings' scatter.
 *
 * @param toneScale what joins the scan's codes to light
 * @param glareError share of the light about a place that may stray there untold, 0 to 0.1
 * @param paperError of the bare sheet's density, 0 to 0.1
 * @param spacingMicrometres of the film's grain or halftone, above 0; how much of the surface lies near an edge
 */
public record SharedErrors(ToneScale toneScale, double glareError, double paperError, double spacingMicrometres) {
    /** Glare of 0 to 2 %, evenly likely, that nobody told: root mean square about none. */
    public static final double GLARE_UNTOLD = 0.0115;

    /** Glare that a person told. */
    public static final double GLARE_TOLD = 0.003;

    /** Times a share read off darks that an error of the codes' power moves it: {@code 1 + ln Y} of a dark that sends back a twentieth. */
    private static final double BY_POWER = 2;

    /** Density of a sheet measured on a densitometer that is in order. */
    public static final double PAPER_MEASURED = 0.01;

    /** Of white cotton papers, 0.04 to 0.10. */
    public static final double PAPER_ASSUMED = 0.02;

    /** Light about a field, over paper's: about half of a test plate and its surroundings is light. */
    private static final double ABOUT = 0.5;

    /** What a wedge on the same glass leaves of glare: it lies in light much like the fields'. */
    private static final double PAST_WEDGE = 0.3;

    /** From plate to plate: every edge, by exposure, developing and undercut together, in micrometres. */
    private static final double EDGE = 1.2;

    /** Edges of dots over the surface, times their spacing, at half coverage: those of a chequerboard (geometry). */
    private static final double EDGES = 2 * Math.sqrt(2);

    /** From plate to plate and pull to pull: density over the paper, by depth, inking and pressure. */
    private static final double DENSITY = 0.04;

    /** From plate to plate: plate tone, in L*. */
    private static final double PLATE_TONE = 0.4;

    private static final double SLOPE_STEP = 0.01;
    private static final double LN_10 = StrictMath.log(10);

    /** What joins a scan's codes to light, and how far it may be off. */
    public enum ToneScale {
        /** Nothing was said: codes are taken for sRGB, while scanners' powers lie evenly between 1.6 and 2.6. */
        UNSTATED("taken for sRGB, which nothing confirms", 0.14, 0),
        /** The file says what its codes mean. */
        STATED("as the file states it", 0.02, 0),
        /** A reflection wedge on the same glass (practice: 0.01 to 0.02 D). */
        WEDGE("by the reflection wedge", 0, 0.015),
        /** No scanner: a densitometer's readings. */
        DENSITOMETER("a densitometer's", 0, 0.015);

        private final String words;
        private final double powerError;
        private final double densityError;

        ToneScale(String words, double powerError, double densityError) {
            this.words = words;
            this.powerError = powerError;
            this.densityError = densityError;
        }

        double powerError() {
            return powerError;
        }

        /** How the scale is known. */
        public String words() {
            return words;
        }
    }

    /** What scanner and paper may be wrong by, one apart from the other. */
    public enum Part {
        /** Codes' power. */
        POWER,
        /** Density, as a wedge or a densitometer has it. */
        DENSITY,
        /** Light that strays. */
        GLARE,
        /** The bare sheet. */
        PAPER
    }

    public SharedErrors {
        Refusal.checkRange("glare's error", glareError * 100, 0, 10, "%", "0.3 % where it was measured");
        Refusal.checkRange("error of the paper's density", paperError, 0, 0.1, "", "0.01 where it was measured");
        Refusal.checkRange("spacing of dots", spacingMicrometres, 1, 10_000, "µm", "give the grain's own");
    }

    /**
     * Error of glare that was read off the plate itself: the reading's own, and that of the codes' power, by which the light of darks, and so
     * the share, comes out wrong ({@code d ln f = (1 + ln Y) d ln p}).
     *
     * @param share read, 0 to 0.1
     * @param error of the reading
     */
    public static double glareSeen(ToneScale scale, double share, double error) {
        return Math.sqrt(error * error + StrictMath.pow(BY_POWER * scale.powerError * share, 2));
    }

    /**
     * What scanner and paper leave unsure of a tone, one standard error in L*.
     *
     * @param lightness measured
     * @param bare lightness of bare paper, no less than 1
     */
    public double scannerError(double lightness, double bare) {
        return root(Stream.of(Part.values())
                .mapToDouble(part -> part(part, lightness, bare))
                .toArray());
    }

    /** What one standard error of one part does to a tone, in L*. */
    double part(Part part, double lightness, double bare) {
        double paper = Lightness.toLuminance(bare);
        double light = Math.max(1e-4, Lightness.toLuminance(lightness));
        double perShare = Lightness.slope(light) * light;
        boolean absolute = toneScale.densityError > 0;
        return switch (part) {
            case POWER -> perShare * StrictMath.log(light / paper) * toneScale.powerError;
            case DENSITY -> perShare * LN_10 * toneScale.densityError;
            case GLARE -> Lightness.slope(light) * glareLeft() * ABOUT * Math.max(0, paper - light);
            case PAPER -> absolute ? 0 : perShare * LN_10 * paperError;
        };
    }

    private double glareLeft() {
        return switch (toneScale) {
            case UNSTATED, STATED -> glareError;
            case WEDGE -> glareError * PAST_WEDGE;
            case DENSITOMETER -> 0;
        };
    }

    /** What the next plate may differ by, one standard error in L*. */
    public double plateError(MeasuredResponse measured, double coverage) {
        double paper = Lightness.toLuminance(measured.printableRange().bare());
        double light = Math.max(1e-4, Lightness.toLuminance(measured.lightness(coverage)));
        double ink = Lightness.slope(light) * light * StrictMath.log(light / paper) * DENSITY;
        double edges = EDGES * 2 * Math.sqrt(coverage * (1 - coverage)) / spacingMicrometres;
        return root(ink, steepness(measured, coverage) * EDGE * edges, PLATE_TONE);
    }

    /** Half of the band that holds the next plate's tone 19 times in 20: scatter, scanner, paper and plate to plate. */
    public double halfWidth(MeasuredResponse measured, double coverage) {
        double shared = root(
                scannerError(
                        measured.lightness(coverage), measured.printableRange().bare()),
                plateError(measured, coverage));
        return root(measured.halfWidth(coverage), Confidence.quantile(0.95, LARGE) * shared);
    }

    /** Beliefs are normal: Student's t of many degrees. */
    private static final int LARGE = 10_000;

    /** L* for a share of coverage, the steeper side. */
    private static double steepness(MeasuredResponse measured, double coverage) {
        double here = measured.lightness(coverage);
        double below = measured.lightness(Math.max(0, coverage - SLOPE_STEP)) - here;
        double above = measured.lightness(Math.min(1, coverage + SLOPE_STEP)) - here;
        return Math.max(Math.abs(below), Math.abs(above)) / SLOPE_STEP;
    }

    private static double root(double... parts) {
        double squares = 0;
        for (double part : parts) {
            squares += part * part;
        }
        return Math.sqrt(squares);
    }
}
