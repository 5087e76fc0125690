package greyground.app.teach;

import greyground.app.recipe.FilmWords;
import greyground.fit.MeasuredDepth;
import greyground.quantity.Lengths;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.tone.Lightness;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a person tells of a test plate beside its scan.
 *
 * @param given words by name: corners, flare, paper, bite, depth, date; other names are ignored
 */
public record ReadWords(Map<String, String> given) {
    /** A step gauge or a microscope's focus on a bitten floor (assumed). */
    private static final double DEPTH_ERROR_MICROMETRES = 2;

    /** Below this a paper's white is told as a density, above as L*. */
    private static final double MOST_PAPER_DENSITY = 0.6;

    private static final double LEAST_PAPER_LIGHTNESS = 50;

    public ReadWords {
        given = Map.copyOf(given);
    }

    private Optional<String> word(String name) {
        return Optional.ofNullable(given.get(name)).map(String::strip);
    }

    public Optional<Double> biteMinutes() {
        Range whole = new Range(0.1, 1440, Unit.MINUTES, "give the whole bite");
        return word("bite").map(text -> whole.check("bite", whole.unit().parse("bite", text)));
    }

    /** How deep the test plate was measured to be. */
    public Optional<MeasuredDepth> depth() {
        return word("depth")
                .map(text -> new MeasuredDepth(Lengths.parseMicrometres("depth", text), DEPTH_ERROR_MICROMETRES));
    }

    /** L* of the bare paper, told as such or as a density. */
    public Optional<Double> paperLightness() {
        return word("paper").map(ReadWords::paper);
    }

    private static double paper(String text) {
        String number = text.replaceFirst("(?i)^(L\\*?|D)\\s*=?\\s*", "")
                .replaceFirst("(?i)\\s*(L\\*?|D)$", "")
                .replace(',', '.');
        try {
            double value = Double.parseDouble(number);
            if (value >= LEAST_PAPER_LIGHTNESS && value <= 100) {
                return value;
            }
            if (value >= 0 && value <= MOST_PAPER_DENSITY) {
                return Lightness.ofDensity(value);
            }
        } catch (NumberFormatException notNumber) {
            // Refused below, like a number out of range.
        }
        throw Refusal.use("paper is \"" + text
                + "\"; it must be an L* from 50 to 100 or a density from 0 to 0.6: measure" + " the bare sheet");
    }

    /** Whether anybody said how much stray light there is, were it none. */
    public boolean flareTold() {
        return word("flare").isPresent();
    }

    /** Share of the light about a dark patch that the scanner adds to it. */
    public double flareShare() {
        return word("flare")
                .map(text -> Refusal.checkRange(
                                "flare", Unit.PERCENT.parse("flare", text), 0, 10, "%", "0.5 to 2 % is usual")
                        / 100)
                .orElse(0.0);
    }

    /** The plate's corners on the scan, x then y, as the print reads from the top left clockwise; none to find it by its codes. */
    public List<Double> corners() {
        String text = word("corners").orElse("");
        List<Double> numbers = new ArrayList<>();
        for (String part : text.split("[\\s,;]+", -1)) {
            if (!part.isEmpty()) {
                try {
                    numbers.add(Double.parseDouble(part));
                } catch (NumberFormatException notNumber) {
                    throw corners(text);
                }
            }
        }
        if (!text.isEmpty() && numbers.size() != 8) {
            throw corners(text);
        }
        return numbers;
    }

    private static Refusal corners(String text) {
        return Refusal.use(
                "corners are \"" + text + "\"; they must be four places in scan pixels, x,y each, from the print's"
                        + " top left clockwise: write \"120,95 1890,101 1884,2460 115,2452\"");
    }

    public LocalDate date(LocalDate otherwise) {
        return word("date").map(FilmWords::date).orElse(otherwise);
    }
}
