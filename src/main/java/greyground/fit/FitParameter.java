package greyground.fit;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.Resist;
import greyground.plate.Wipe;
import greyground.quantity.Refusal;

/**
 * A number of the virtual plate that a test plate may teach.
 *
 * <p>The allowed ranges are plausible ones, assumed, and lie within what the workshop's file takes. Numbers that can't be
 * negative and span a decade are fitted by their logarithm, so their error is a share.
 */
public enum FitParameter {
    /**
     * Edge shift on the way to the resist. Exposure shifts edges too; a print can't tell the two apart, so all of it is booked as
     * the film printer's spot growth at the exposure that was given.
     */
    EDGE_SHIFT("filmPrinter.spotGrowthMicrometres", "edge shift", "µm", -30, 50, false) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.exposures().stream()
                    .filter(one -> one.sheet() == Exposure.Sheet.POSITIVE)
                    .mapToDouble(one -> one.film().spotGrowthMicrometres())
                    .findFirst()
                    .orElse(0);
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return was.withExposures(was.exposures().stream()
                    .map(one -> one.sheet() == Exposure.Sheet.POSITIVE ? grown(one, value) : one)
                    .toList());
        }

        private static Exposure grown(Exposure one, double growth) {
            Film film = one.film();
            return new Exposure(
                    one.doseRatio(),
                    one.sheet(),
                    new Film(film.clearDensity(), film.blackDensity(), growth, film.softnessMicrometres()),
                    one.light());
        }
    },
    /** Depth over undercut. */
    ETCH_FACTOR("bath.etchFactor", "etch factor", "", 0.7, 7, true) {
        @Override
        public double of(PlateConditions conditions) {
            return bath(conditions).etchFactor();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return was.withWells(Bath.ofDepth(bath(was).depthMicrometres(), value));
        }
    },
    /** Radius of the wiping pad. */
    PAD_RADIUS("wipe.padRadiusMillimetres", "wiping pad radius", "mm", 0.15, 15, true) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.wipe().padRadiusMillimetres();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return was.withWipe(new Wipe(value, was.wipe().plateToneMicrometres()));
        }
    },
    /** Ink that wiping leaves everywhere. */
    PLATE_TONE("wipe.plateToneMicrometres", "plate tone", "µm", 0.02, 1.5, false) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.wipe().plateToneMicrometres();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return was.withWipe(new Wipe(was.wipe().padRadiusMillimetres(), Math.max(0, value)));
        }
    },
    /** How soon an ink film is dense, m. */
    INK_STRENGTH("ink.strengthPerMicrometre", "ink strength m", "per µm", 0.02, 1, true) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.ink().densityPerMicrometre();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            Ink ink = was.ink();
            return inked(
                    was,
                    new Ink(ink.greatestDensity(), value, ink.transferFraction(), ink.spreadMicrometres()),
                    was.paper());
        }
    },
    /** Density of a very thick ink film over the paper, D-infinity. */
    INK_SATURATION("ink.saturationDensity", "greatest ink density", "", 0.7, 2.5, false) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.ink().greatestDensity();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            Ink ink = was.ink();
            return inked(
                    was,
                    new Ink(value, ink.densityPerMicrometre(), ink.transferFraction(), ink.spreadMicrometres()),
                    was.paper());
        }
    },
    /** Spread of light in the paper, n of Yule and Nielsen. */
    OPTICAL_GAIN("ink.yuleNielsenFactor", "optical gain n", "", 1.1, 3, false) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.paper().opticalGain();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return inked(was, was.ink(), new Paper(was.paper().density(), value));
        }
    },
    /** Width below which an opening doesn't wash out. */
    SMALLEST_OPENING("resist.smallestOpeningMicrometres", "smallest opening", "µm", 5, 150, true) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.resist().smallestOpeningMicrometres();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return resisted(was, value, was.resist().smallestLandMicrometres());
        }
    },
    /** Width below which hardened film washes away. */
    SMALLEST_LAND("resist.smallestLandMicrometres", "smallest land", "µm", 5, 150, true) {
        @Override
        public double of(PlateConditions conditions) {
            return conditions.resist().smallestLandMicrometres();
        }

        @Override
        PlateConditions with(PlateConditions was, double value) {
            return resisted(was, was.resist().smallestOpeningMicrometres(), value);
        }
    };

    private final String path;
    private final String words;
    private final String unit;
    private final double least;
    private final double most;
    private final boolean logarithmic;

    FitParameter(String path, String words, String unit, double least, double most, boolean logarithmic) {
        this.path = path;
        this.words = words;
        this.unit = unit;
        this.least = least;
        this.most = most;
        this.logarithmic = logarithmic;
    }

    private static Bath bath(PlateConditions conditions) {
        if (conditions.wells() instanceof Bath bath) {
            return bath;
        }
        throw Refusal.use(
                "etch factor is asked of a plate that is not bitten; it must be a bitten plate: leave it out");
    }

    private static PlateConditions inked(PlateConditions was, Ink ink, Paper paper) {
        return new PlateConditions(was.exposures(), was.resist(), was.ground(), was.wells(), was.wipe(), ink, paper);
    }

    private static PlateConditions resisted(PlateConditions was, double opening, double land) {
        Resist one = was.resist();
        Resist other = new Resist(
                one.thicknessMicrometres(),
                one.testedThicknessMicrometres(),
                one.absorbancePerMicrometre(),
                one.contrastGamma(),
                opening,
                land,
                one.leastHoldMicrometres());
        return new PlateConditions(
                was.exposures(), other, was.ground(), was.wells(), was.wipe(), was.ink(), was.paper());
    }

    /** Its value in a plate's conditions. */
    public abstract double of(PlateConditions conditions);

    /** The conditions with another value. */
    abstract PlateConditions with(PlateConditions was, double value);

    /** Where the workshop keeps it. */
    public String path() {
        return path;
    }

    /** What a printmaker calls it. */
    public String words() {
        return words;
    }

    /** Unit as printed; empty for a pure number. */
    public String unit() {
        return unit;
    }

    /** Least value a fit may give. */
    public double least() {
        return least;
    }

    /** Greatest value a fit may give. */
    public double most() {
        return most;
    }

    /** Value to the coordinate in which it is fitted. */
    double coordinate(double value) {
        return logarithmic ? StrictMath.log(value) : value;
    }

    /** The coordinate's value. */
    double value(double coordinate) {
        return logarithmic ? StrictMath.exp(coordinate) : coordinate;
    }

    /** Width of the allowed range in that coordinate. */
    double range() {
        return coordinate(most) - coordinate(least);
    }

    /** Derivative of the value by its coordinate. */
    double slope(double value) {
        return logarithmic ? value : 1;
    }
}
