package greyground.plate;

import greyground.quantity.Refusal;
import java.util.List;

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
        public SprayedAquatint {
            Refusal.checkRange("aquatint land fraction", landFraction, 0.05, 0.9, "", "0.4 to 0.6 is usual");
            Refusal.checkRange("aquatint grain", grainMicrometres, 5, 300, "µm", "30 to 80 µm is a medium grain");
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
     */
    record Photogravure(double screenBlack, double screenSpacingMicrometres) implements PlateProcess {
        public Photogravure {
            Refusal.checkRange("screen black", screenBlack, 0.2, 0.8, "", "0.45 to 0.55 is usual");
            Refusal.checkRange("screen spacing", screenSpacingMicrometres, 60, 400, "µm", "120 to 180 µm is usual");
        }

        /** Half black (common practice, 45-55 %), 150 um spacing (assumed). */
        public static Photogravure usual() {
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
