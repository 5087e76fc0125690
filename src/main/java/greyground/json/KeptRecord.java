package greyground.json;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.function.BiFunction;

/** Records by the names of their components, as files keep them: no other list says what a record holds. */
public final class KeptRecord {
    private KeptRecord() {}

    /** The same record with each component replaced by the answer for its name and value; refuses what the record refuses. */
    public static Record rebuilt(Record record, BiFunction<String, Object, Object> answers) {
        RecordComponent[] parts = record.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[parts.length];
        Object[] values = new Object[parts.length];
        try {
            for (int i = 0; i < parts.length; i++) {
                types[i] = parts[i].getType();
                values[i] =
                        answers.apply(parts[i].getName(), parts[i].getAccessor().invoke(record));
            }
            return record.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (InvocationTargetException refused) {
            throw refused.getCause() instanceof RuntimeException refusal ? refusal : new IllegalStateException(refused);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException("a record can't be built anew", impossible);
        }
    }

    /** The same record with one part replaced, at a path through the records within it such as "placing.bleedMillimetres". */
    public static Record with(Record record, String path, Object value) {
        int dot = path.indexOf('.');
        String first = dot < 0 ? path : path.substring(0, dot);
        return rebuilt(
                record,
                (name, present) -> !name.equals(first)
                        ? present
                        : dot < 0 ? value : with((Record) present, path.substring(dot + 1), value));
    }
}
