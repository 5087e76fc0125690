package greyground.ink;

import greyground.colour.InkInBands;
import greyground.colour.Lab;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Locale;
import java.util.Optional;

/**
 * An ink of a set.
 *
 * @param name as the shop calls it, 1 to {@value #LONGEST_NAME} letters
 * @param patch colour of an even film of it on the set's paper; empty for the workshop's own black
 * @param filmMicrometres thickness of that film
 * @param strength share of its strength that it is printed with, as when it is thinned with extender
 * @param opacity how far it hides what lies below
 * @param tones as its test plate printed them; empty where none was read
 */
public record PrintingInk(
        String name,
        Optional<Lab> patch,
        double filmMicrometres,
        double strength,
        Opacity opacity,
        Optional<InkTones> tones) {
    /** A full tone of a usual bite (assumed). */
    public static final double USUAL_FILM_MICROMETRES = 10;

    /** Strengths; an ink can be ground denser than the patch that was measured. */
    public static final Range STRENGTH =
            new Range(0.05, 4, Unit.RATIO, "1 is the ink as it was measured, 0.25 with three parts of extender");

    private static final int LONGEST_NAME = 30;

    /** How far an ink hides what lies below. */
    public enum Opacity {
        TRANSPARENT,
        /** It hides somewhat: what is foretold of its overprints is too dark. */
        HALF,
        /** It hides. */
        OPAQUE;

        /** As it stands in a file. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public PrintingInk {
        if (name.isBlank() || name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.use("an ink is named \"" + name.replaceAll("[\\x00-\\x1f\\x7f-\\x9f]", " ")
                    + "\"; its name must be one line of 1 to " + LONGEST_NAME + " letters: name it as the shop does");
        }
        InkInBands.FILM.check("ink " + name + "'s film", filmMicrometres);
        STRENGTH.check("ink " + name + "'s strength", strength);
        if (tones.isPresent() && (patch.isEmpty() || strength != 1)) {
            throw Refusal.use("ink " + name + " has tones that a test plate printed, and "
                    + (patch.isEmpty() ? "no lab" : "a strength of " + Refusal.plain(strength))
                    + "; they hold for the very ink that was printed: leave the tones out, or the strength at 1");
        }
        patch.filter(lab -> !(lab.lightness() >= 0 && lab.lightness() <= 100)).ifPresent(lab -> {
            throw Refusal.use("ink " + name + " has L* " + Refusal.plain(lab.lightness())
                    + "; it must lie between 0 and 100: measure the patch again");
        });
    }

    /** An ink of which no test plate was read. */
    public PrintingInk(String name, Optional<Lab> patch, double filmMicrometres, double strength, Opacity opacity) {
        this(name, patch, filmMicrometres, strength, opacity, Optional.empty());
    }

    /** Whether it is the workshop's black as it is. */
    public boolean isWorkshopsOwn() {
        return patch.isEmpty() && strength == 1;
    }
}
