package greyground.plate;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.List;
import java.util.Optional;

/** The ways of making a plate that Greyground serves, each with only its own settings. */
public sealed interface PlateProcess {
    /** The word used on the command line and in files. */
    String word();

    /** The same as the trade says it, for people to read. */
    default String words() {
        return word().replace('-', ' ');
    }

    /** Every process with its default settings, in the order they are told to people. */
    static List<PlateProcess> all() {
        return List.of(new EtchedFilm(), SprayedAquatint.usual(), Photogravure.usual(), new UnetchedFilm());
    }

    /** Finds a process by its word, with default settings. */
    static PlateProcess named(String word) {
        return all().stream()
                .filter(process -> process.word().equals(word))
                .findFirst()
                .orElseThrow(() -> Refusal.use("process \"" + word
                        + "\" is unknown: choose etched-film, sprayed-aquatint, photogravure or unetched-film"));
    }

    /** Thinned film on copper, grain or halftone on the positive, one bite. */
    record EtchedFilm() implements PlateProcess {
        @Override
        public String word() {
            return "etched-film";
        }
    }

    /**
     * Line or coarse-dot positive; an aquatint is sprayed on the open copper before the bite.
     *
     * @param landFraction share of the open copper that the sprayed ground covers, 0.05 to 0.9
     * @param grainMicrometres mean diameter of a sprayed grain, 5 to 300
     * @param seed chooses one of many equivalent grounds
     */
    record SprayedAquatint(double landFraction, double grainMicrometres, long seed) implements PlateProcess {
        /** Shares of the open copper that a ground covers. */
        public static final Range LAND = new Range(0.05, 0.9, Unit.SHARE, "40 to 60 % is usual");

        /** Sizes of its grains. */
        public static final Range GRAIN = new Range(5, 300, Unit.MICROMETRES, "30 to 80 µm is a medium grain");

        public SprayedAquatint {
            LAND.check("aquatint land", landFraction);
            GRAIN.check("aquatint grain", grainMicrometres);
        }

        /** Half land (Notes on Aquatint Technique, common account), 50 um grain (medium, from memory). */
        public static SprayedAquatint usual() {
            return new SprayedAquatint(0.5, 50, 1);
        }

        @Override
        public String word() {
            return "sprayed-aquatint";
        }
    }

    /**
     * Continuous-tone positive plus an aquatint screen film exposed separately, then bitten.
     *
     * @param screenBlack share of the screen film that is black, 0.2 to 0.8
     * @param screenSpacingMicrometres mean spacing of the screen's dots, 60 to 400
     * @param split of the light; empty for the workshop's own two exposures, as films of version 0.2.0 and before have it
     */
    record Photogravure(double screenBlack, double screenSpacingMicrometres, Optional<LightSplit> split)
            implements PlateProcess {
        /** Shares of the screen film that are black. */
        public static final Range BLACK = new Range(0.2, 0.8, Unit.SHARE, "40 to 55 % is usual");

        /** Spacings of its dots. */
        public static final Range SPACING = new Range(60, 400, Unit.MICROMETRES, "120 to 180 µm is usual");

        public Photogravure {
            BLACK.check("screen black", screenBlack);
            SPACING.check("screen spacing", screenSpacingMicrometres);
        }

        /** Exposed as the workshop does. */
        public Photogravure(double screenBlack, double screenSpacingMicrometres) {
            this(screenBlack, screenSpacingMicrometres, Optional.empty());
        }

        /** 150 um spacing (assumed), and what a search found best for it in a workshop that nobody has measured (docs/virtual-plate.md). */
        public static Photogravure usual() {
            return new Photogravure(0.4, 150, Optional.of(new LightSplit(1.8, 1.05, 35)));
        }

        /** Half black (common practice, 45-55 %), 150 um spacing (assumed): what a file means that says neither. */
        public static Photogravure unsaid() {
            return new Photogravure(0.5, 150);
        }

        @Override
        public String word() {
            return "photogravure";
        }
    }

    /** The exposed film itself holds the ink; no bite. */
    record UnetchedFilm() implements PlateProcess {
        @Override
        public String word() {
            return "unetched-film";
        }
    }
}
