package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Optional;

/**
 * Which part of which picture goes on the film, and what counts as its white and its black.
 *
 * @param fileName the art's file name, for legends; may be empty
 * @param sha256 hexadecimal digest of the art's bytes, empty until it has been read
 * @param page picture within the file, from 1
 * @param crop the fragment used, in fractions of the art as it stands after {@code quarterTurns}
 * @param quarterTurns clockwise, 0 to 3
 * @param straightenDegrees clockwise, -45 to 45, after the quarter turns
 * @param white what counts as paper white
 * @param black what counts as ink black
 * @param hand what the printmaker does to its tones
 */
public record ArtChoice(
        String fileName,
        String sha256,
        int page,
        Crop crop,
        int quarterTurns,
        double straightenDegrees,
        TonePoint white,
        TonePoint black,
        Hand hand) {
    public static final Range PAGE = new Range(1, 100_000, Unit.COUNT, "the art's pages count from 1");

    /** Turns that move pixels as they are. */
    public static final Range QUARTER_TURNS = new Range(0, 3, Unit.COUNT, "four of them are none");

    /** What is left of a turn. */
    public static final Range STRAIGHTENING = new Range(-45, 45, Unit.DEGREES, "turn by quarters first");

    /** Art used whole, as it is, with both points found automatically. */
    public static final ArtChoice WHOLE = new ArtChoice(
            "", "", 1, Crop.ALL, 0, 0, new TonePoint.Automatic(), new TonePoint.Automatic(), Hand.AT_REST);

    /**
     * A fragment, in fractions of the art's width and height.
     *
     * @param left 0 to below 1
     * @param top 0 to below 1
     * @param width above 0, not past the right edge
     * @param height above 0, not past the bottom edge
     */
    public record Crop(double left, double top, double width, double height) {
        public static final Crop ALL = new Crop(0, 0, 1, 1);

        /** What each of its four numbers may be by itself. */
        public static final Range SHARE = new Range(0, 1, Unit.SHARE, "choose a fragment of the art");

        public Crop {
            boolean inside = left >= 0
                    && top >= 0
                    && width > 0
                    && height > 0
                    && left + width <= 1 + 1e-9
                    && top + height <= 1 + 1e-9;
            if (!inside) {
                throw Refusal.use("crop starts at " + percent(left) + "," + percent(top) + " and measures "
                        + percent(width) + " x " + percent(height)
                        + " of the art; it must lie within 0 to 100 %: choose a fragment of the art");
            }
        }

        /** A fragment in which the left and upper edge stay and its size gives way to them. */
        public Crop from(double newLeft, double newTop) {
            return new Crop(newLeft, newTop, Math.min(width, 1 - newLeft), Math.min(height, 1 - newTop));
        }

        /** A fragment of another size, whose left and upper edge give way to it. */
        public Crop sized(double newWidth, double newHeight) {
            return new Crop(Math.min(left, 1 - newWidth), Math.min(top, 1 - newHeight), newWidth, newHeight);
        }

        private static String percent(double fraction) {
            return Refusal.plain(fraction * 100) + "%";
        }
    }

    /** A tone of the art that becomes one end of the scale. */
    public sealed interface TonePoint {
        /** At a luminance, or found where none is given. */
        static TonePoint of(Optional<Double> luminance) {
            return luminance.<TonePoint>map(Given::new).orElseGet(Automatic::new);
        }

        /** Its luminance; empty where it is found. */
        default Optional<Double> given() {
            return this instanceof Given given ? Optional.of(given.luminance()) : Optional.empty();
        }

        /** Found from the art's own tones. */
        record Automatic() implements TonePoint {}

        /**
         * Given by the printmaker.
         *
         * @param luminance linear, relative to the file's white, 0 to 1
         */
        record Given(double luminance) implements TonePoint {
            /** Reflectances of paper and ink. */
            public static final Range LUMINANCE =
                    new Range(0, 1, Unit.SHARE, "give the reflectance of the art's paper or ink");

            public Given {
                LUMINANCE.check("tone point", luminance);
            }
        }
    }

    public ArtChoice {
        PAGE.check("page", page);
        QUARTER_TURNS.check("quarter turns", quarterTurns);
        STRAIGHTENING.check("straightening", straightenDegrees);
    }

    public ArtChoice read(String digest) {
        return of(fileName, digest);
    }

    public ArtChoice of(String name, String digest) {
        return new ArtChoice(name, digest, page, crop, quarterTurns, straightenDegrees, white, black, hand);
    }

    /** How far the art is turned clockwise in all, -45 to 315 degrees. */
    public double turnedDegrees() {
        return 90 * quarterTurns + straightenDegrees;
    }

    public ArtChoice cropped(Crop fragment) {
        return new ArtChoice(fileName, sha256, page, fragment, quarterTurns, straightenDegrees, white, black, hand);
    }

    public ArtChoice settled(double whiteLuminance, double blackLuminance) {
        TonePoint paper = new TonePoint.Given(whiteLuminance);
        TonePoint ink = new TonePoint.Given(blackLuminance);
        return new ArtChoice(fileName, sha256, page, crop, quarterTurns, straightenDegrees, paper, ink, hand);
    }
}
