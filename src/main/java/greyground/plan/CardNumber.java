package greyground.plan;

import java.util.List;

/**
 * One of the few numbers that the bench card sets large, with room to write what really happened.
 *
 * @param act what is done, in a word such as "Thin"
 * @param value number and unit, such as "27 min"
 * @param conditions what it holds for, such as "soda 10.0 g/L, 20 °C"; may be empty
 * @param provenance how it is known, as in {@link ExposurePlan.Line}
 * @param blanks what is to be written down, such as "min" and "°C"
 */
public record CardNumber(String act, String value, String conditions, String provenance, List<String> blanks) {
    public CardNumber {
        blanks = List.copyOf(blanks);
    }

    /** Whether nobody has measured in this workshop what the number rests on. */
    public boolean restsOnAssumption() {
        return ExposurePlan.restsOnAssumption(provenance);
    }

    /** How it is known, beside a circle that says what it rests on. */
    public String known() {
        return ExposurePlan.known(provenance);
    }
}
