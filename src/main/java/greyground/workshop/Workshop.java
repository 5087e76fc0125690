package greyground.workshop;

import greyground.json.KeptField;
import greyground.json.KeptRecord;
import greyground.quantity.Refusal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * Everything that stays the same between jobs. Immutable; safe to share between threads.
 *
 * @param name of the shop or of this set-up, for legends; one line, may be empty
 * @param responses tones that its test plates were measured to print, in the order they were learned
 * @param kept fields of its file that this version does not know
 */
public record Workshop(
        String name,
        FilmPrinter filmPrinter,
        LampFigures light,
        ResistFigures resist,
        ExposureFigures exposure,
        Developer developer,
        Aquatint aquatint,
        Hardening hardening,
        BathFigures bath,
        WipeFigures wipe,
        InkFigures ink,
        PaperFigures paper,
        List<KeptResponse> responses,
        List<KeptField> kept) {
    public Workshop {
        if (name.length() > 200 || name.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.use("workshop name has " + name.length()
                    + " characters; it must be one line of at most 200: shorten it");
        }
        responses = List.copyOf(responses);
        kept = List.copyOf(kept);
    }

    /** The workshop nobody has measured: every number is a documented assumption. */
    public static Workshop assumed() {
        return new Workshop(
                "",
                FilmPrinter.assumed(),
                LampFigures.assumed(),
                ResistFigures.assumed(),
                ExposureFigures.assumed(),
                Developer.assumed(),
                Aquatint.assumed(),
                Hardening.assumed(),
                BathFigures.assumed(),
                WipeFigures.assumed(),
                InkFigures.assumed(),
                PaperFigures.assumed(),
                List.of(),
                List.of());
    }

    /**
     * This workshop with all that it says replaced by the answer for it, in the file's order. The records' own components are the one list of
     * what there is, for reading, writing, listing and changing alike.
     *
     * @param answers for a path such as "bath.etchFactor" and what is there now, with something of the same kind
     */
    Workshop through(BiFunction<String, Object, Object> answers) {
        return (Workshop) through("", this, answers);
    }

    private static Object through(String path, Object present, BiFunction<String, Object, Object> answers) {
        return present instanceof Record section && !(present instanceof Figure)
                ? KeptRecord.rebuilt(
                        section, (name, part) -> through(path.isEmpty() ? name : path + "." + name, part, answers))
                : answers.apply(path, present);
    }

    /** Every number by its path in the file, such as "bath.etchFactor", in the file's order. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        through((path, present) -> {
            if (present instanceof Figure figure) {
                figures.put(path, figure);
            }
            return present;
        });
        return figures;
    }

    /** A number by its path in the file, such as "exposure.stepHeld". */
    public Figure figure(String path) {
        Map<String, Figure> figures = figures();
        Figure figure = figures.get(path);
        if (figure == null) {
            throw Refusal.use("workshop number \"" + path + "\" is unknown; it must be one of "
                    + String.join(", ", figures.keySet()) + ": correct the name");
        }
        return figure;
    }

    /**
     * This workshop with one number replaced, as when a test has measured it.
     *
     * @param path such as "exposure.stepHeld"
     */
    public Workshop with(String path, Figure figure) {
        figure(path);
        return replacing(path, figure);
    }

    private Workshop replacing(String path, Object other) {
        return (Workshop) KeptRecord.with(this, path, other);
    }

    public Workshop named(String newName) {
        return replacing("name", newName);
    }

    Workshop keeping(List<KeptField> newKept) {
        return replacing("kept", newKept);
    }

    public Workshop measuring(List<KeptResponse> newResponses) {
        return replacing("responses", newResponses);
    }

    /** Copper's depth that the shop's usual bite reaches in a fresh bath, in micrometres. */
    public double usualDepthMicrometres() {
        return bath.biteMinutes().value() * bath.rateMicrometresPerMinute().value();
    }

    /**
     * Visual density of a deep cell that keeps its ink, paper included: paper + Dinf(1 - exp(-m y)) with y the depth times the
     * share of ink that transfers (form after Tollenaar &amp; Ernst 1961, from memory).
     *
     * @param depthMicrometres 0 or more
     */
    public double solidDensity(double depthMicrometres) {
        double inkMicrometres = depthMicrometres * ink.transferFraction().value();
        return paper.whiteDensity().value()
                - ink.saturationDensity().value()
                        * StrictMath.expm1(-ink.strengthPerMicrometre().value() * inkMicrometres);
    }
}
