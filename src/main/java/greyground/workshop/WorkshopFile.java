package greyground.workshop;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptField;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The workshop as a plain JSON file: sections in a fixed order, each number an object with its value and how it is known;
 * last the tones that test plates were measured to print.
 *
 * <p>Reading: a missing field is the documented assumption; a bare number is taken as stated without a test; an unknown field
 * is kept and written back; anything malformed is refused with its path, value, range and remedy.
 */
public final class WorkshopFile {
    /** The newest format that this program writes and reads. */
    public static final int VERSION = 1;

    private static final String KIND = "workshop";

    private WorkshopFile() {}

    /** Reads a workshop from the text of its file. */
    public static Workshop read(String text) {
        return read(JsonText.read(KIND, VERSION, text));
    }

    /** Reads a workshop from an object already known to be of this kind and version. */
    private static Workshop read(ObjectNode file) {
        JsonFields whole = new JsonFields(KIND, List.of(), file);
        // The head was read by whoever knew the kind; a response keeps its own unknown fields.
        Stream.of("greyground", "version", ResponseFields.NAME).forEach(whole::has);
        Workshop known = Workshop.assumed().through(new Reading(whole)).measuring(ResponseFields.read(file));
        return known.keeping(whole.unknown());
    }

    /** The workshop as a tree, in the file's order. */
    public static ObjectNode tree(Workshop workshop) {
        ObjectNode file = JsonText.object();
        file.put("greyground", KIND);
        file.put("version", VERSION);
        // The answers are what was asked, so the workshop that comes back is this one.
        Workshop same = workshop.through(new WorkshopWriting(file));
        ResponseFields.write(same.responses(), file);
        for (KeptField field : same.kept()) {
            ObjectNode holder = file;
            for (String name : field.place()) {
                holder = holder.get(name) instanceof ObjectNode inner ? inner : holder.putObject(name);
            }
            holder.set(field.name(), JsonText.parse("kept field " + field.name(), field.json()));
        }
        return file;
    }

    /** The workshop as the text of its file. */
    public static String text(Workshop workshop) {
        return JsonText.print(tree(workshop));
    }

    /** Answers from a file. Used by one thread, for one reading. */
    private static final class Reading implements Fields {
        private final JsonFields whole;
        private JsonFields section;

        Reading(JsonFields whole) {
            this.whole = whole;
            this.section = whole;
        }

        @Override
        public Fields section(String name) {
            section = whole.section(name);
            return this;
        }

        @Override
        public Figure figure(String name, Figure present) {
            if (!section.has(name)) {
                return present;
            }
            if (section.isNumber(name)) {
                return Figure.assumed(finite(section, name), "stated in the workshop file without a test");
            }
            JsonFields stated = section.section(name);
            return new Figure(finite(stated, "value"), ProvenanceFields.read(stated));
        }

        @Override
        public String text(String name, String present) {
            return whole.word(name, present);
        }

        @Override
        public <E extends Enum<E>> E choice(String name, E present) {
            Set<String> words = Stream.of(present.getDeclaringClass().getEnumConstants())
                    .map(Reading::word)
                    .collect(Collectors.toSet());
            String word = section.choice(name, word(present), words);
            return Enum.valueOf(present.getDeclaringClass(), word.toUpperCase(Locale.ROOT));
        }

        private static String word(Enum<?> each) {
            return each.name().toLowerCase(Locale.ROOT);
        }

        private static double finite(JsonFields fields, String name) {
            return fields.number(name, Double.NaN, -Double.MAX_VALUE, Double.MAX_VALUE);
        }
    }
}
