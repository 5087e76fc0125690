package greyground.workshop;

import greyground.json.KeptField;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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

    /** This workshop with every field replaced by the answer that {@code fields} gives for it, in the file's order. */
    public Workshop through(Fields fields) {
        return new Workshop(
                fields.text("name", name),
                filmPrinter.through(fields.section("filmPrinter")),
                light.through(fields.section("light")),
                resist.through(fields.section("resist")),
                exposure.through(fields.section("exposure")),
                developer.through(fields.section("developer")),
                aquatint.through(fields.section("aquatint")),
                hardening.through(fields.section("hardening")),
                bath.through(fields.section("bath")),
                wipe.through(fields.section("wipe")),
                ink.through(fields.section("ink")),
                paper.through(fields.section("paper")),
                responses,
                kept);
    }

    /** Every number by its path in the file, such as "bath.etchFactor", in the file's order. */
    public Map<String, Figure> figures() {
        Map<String, Figure> figures = new LinkedHashMap<>();
        through(new Visit() {
            @Override
            Figure visit(String path, Figure present) {
                figures.put(path, present);
                return present;
            }
        });
        return figures;
    }

    /**
     * This workshop with one number replaced, as when a test has measured it.
     *
     * @param path such as "exposure.stepHeld"
     */
    public Workshop with(String path, Figure figure) {
        List<String> known = new ArrayList<>();
        Workshop changed = through(new Visit() {
            @Override
            Figure visit(String each, Figure present) {
                known.add(each);
                return each.equals(path) ? figure : present;
            }
        });
        if (!known.contains(path)) {
            throw Refusal.use("workshop number \"" + path + "\" is unknown; it must be one of "
                    + String.join(", ", known) + ": correct the name");
        }
        return changed;
    }

    /** This workshop under another name. */
    public Workshop named(String newName) {
        return with(newName, responses, kept);
    }

    /** This workshop with other unknown fields. */
    Workshop keeping(List<KeptField> newKept) {
        return with(name, responses, newKept);
    }

    /** This workshop with other measured responses. */
    public Workshop measuring(List<KeptResponse> newResponses) {
        return with(name, newResponses, kept);
    }

    private Workshop with(String newName, List<KeptResponse> newResponses, List<KeptField> newKept) {
        return new Workshop(
                newName,
                filmPrinter,
                light,
                resist,
                exposure,
                developer,
                aquatint,
                hardening,
                bath,
                wipe,
                ink,
                paper,
                newResponses,
                newKept);
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

    /** Goes through the fields with their paths and changes nothing but numbers. */
    private abstract static class Visit implements Fields {
        private String section = "";

        abstract Figure visit(String path, Figure present);

        @Override
        public Fields section(String name) {
            section = name;
            return this;
        }

        @Override
        public Figure figure(String name, Figure present) {
            return visit(section + "." + name, present);
        }

        @Override
        public String text(String name, String present) {
            return present;
        }

        @Override
        public <E extends Enum<E>> E choice(String name, E present) {
            return present;
        }
    }
}
