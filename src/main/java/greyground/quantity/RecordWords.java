package greyground.quantity;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.StringJoiner;

/**
 * All parts of a record by name and value, whole and unrounded, those of records within it included: text that differs wherever a
 * number differs. Spelt as the platform spells a record that has no words of its own.
 *
 * <p>Why not {@code toString}: it may be rounded for people; and the platform builds its own for each record out of method handles,
 * some twenty classes each, which for a plate's ten records costs about a tenth of a second at every start.
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
                    of.getClass() + " must be a record that others may see, so that its parts can be told", hidden);
        }
    }
}
