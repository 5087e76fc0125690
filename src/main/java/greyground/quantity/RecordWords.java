package greyground.quantity;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.StringJoiner;

/**
 * A record's words, as the {@code toString} that the platform gives it would put them, records within it included.
 *
 * <p>Why not {@code toString}: for every record the platform builds that out of method handles when it is first asked, some
 * twenty classes each time; a film's recipe of ten records then costs about a tenth of a second at every start.
 */
public final class RecordWords {
    private RecordWords() {}

    /** The words of a record or of a list of records; anything else speaks for itself. */
    public static String of(Object value) {
        if (value instanceof List<?> list) {
            StringJoiner words = new StringJoiner(", ", "[", "]");
            list.forEach(each -> words.add(of(each)));
            return words.toString();
        }
        if (!(value instanceof Record)) {
            return value.toString();
        }
        StringJoiner words = new StringJoiner(", ", value.getClass().getSimpleName() + "[", "]");
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            words.add(component.getName() + "=" + component(component, value));
        }
        return words.toString();
    }

    private static String component(RecordComponent component, Object of) {
        try {
            Object value = component.getAccessor().invoke(of);
            return value == null ? "null" : of(value);
        } catch (ReflectiveOperationException hidden) {
            throw new IllegalArgumentException(
                    of.getClass() + " must be a public record, so that its parts can be told", hidden);
        }
    }
}
