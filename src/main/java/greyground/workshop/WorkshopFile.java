package greyground.workshop;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.json.KeptField;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

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
    private static final Set<String> HEAD = Set.of("greyground", "version", ResponseFields.NAME);

    private WorkshopFile() {}

    /** Reads a workshop from the text of its file. */
    public static Workshop read(String text) {
        return read(JsonText.read(KIND, VERSION, text));
    }

    /** Reads a workshop from an object already known to be of this kind and version. */
    private static Workshop read(ObjectNode file) {
        Reading reading = new Reading(file);
        Workshop known = Workshop.assumed().through(reading).measuring(ResponseFields.read(file));
        reading.keepUnknownSections();
        return known.keeping(reading.kept);
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
        private final ObjectNode file;
        private final List<KeptField> kept = new ArrayList<>();
        private final List<String> askedAtTop = new ArrayList<>(HEAD);
        private final List<String> askedInSection = new ArrayList<>();
        private String sectionName = "";
        private ObjectNode section;

        Reading(ObjectNode file) {
            this.file = file;
            this.section = file;
        }

        @Override
        public Fields section(String name) {
            keepUnknown();
            sectionName = name;
            askedAtTop.add(name);
            askedInSection.clear();
            JsonNode node = file.path(name);
            if (node.isMissingNode()) {
                section = JsonText.object();
            } else if (node instanceof ObjectNode object) {
                section = object;
            } else {
                throw refused(name, node, "an object of numbers", "write it in braces or leave it out");
            }
            return this;
        }

        @Override
        public Figure figure(String name, Figure present) {
            askedInSection.add(name);
            JsonNode node = section.path(name);
            if (node.isMissingNode()) {
                return present;
            }
            String path = sectionName + "." + name;
            if (node.isNumber()) {
                return Figure.assumed(finite(path, node), "stated in the workshop file without a test");
            }
            if (!(node instanceof ObjectNode object)) {
                throw refused(path, node, "a number, or an object with \"value\" and \"known\"", "correct it");
            }
            for (var each : object.properties()) {
                if (!Set.of("value", "known", "basis", "date", "how").contains(each.getKey())) {
                    kept.add(new KeptField(
                            List.of(sectionName, name),
                            each.getKey(),
                            each.getValue().toString()));
                }
            }
            double value = finite(path + ".value", object.path("value"));
            return new Figure(value, ProvenanceFields.read(path, object));
        }

        @Override
        public String text(String name, String present) {
            askedAtTop.add(name);
            JsonNode node = file.path(name);
            if (node.isMissingNode()) {
                return present;
            }
            if (!node.isTextual()) {
                throw refused(name, node, "text in quotes", "put it in quotes");
            }
            return node.textValue();
        }

        @Override
        public <E extends Enum<E>> E choice(String name, E present) {
            askedInSection.add(name);
            JsonNode node = section.path(name);
            if (node.isMissingNode()) {
                return present;
            }
            List<String> words = new ArrayList<>();
            for (E each : present.getDeclaringClass().getEnumConstants()) {
                String word = each.name().toLowerCase(Locale.ROOT);
                if (node.isTextual() && node.textValue().equals(word)) {
                    return each;
                }
                words.add("\"" + word + "\"");
            }
            throw refused(sectionName + "." + name, node, String.join(" or ", words), "choose one of them");
        }

        /** Notes what the section just left holds beyond the fields that were asked for. */
        private void keepUnknown() {
            if (sectionName.isEmpty()) {
                return;
            }
            for (var each : section.properties()) {
                if (!askedInSection.contains(each.getKey())) {
                    kept.add(new KeptField(
                            List.of(sectionName), each.getKey(), each.getValue().toString()));
                }
            }
        }

        void keepUnknownSections() {
            keepUnknown();
            for (var each : file.properties()) {
                if (!askedAtTop.contains(each.getKey())) {
                    kept.add(new KeptField(
                            List.of(), each.getKey(), each.getValue().toString()));
                }
            }
        }

        private static double finite(String path, JsonNode node) {
            double value = node.isNumber() ? node.doubleValue() : Double.NaN;
            if (!Double.isFinite(value)) {
                throw refused(path, node, "a finite number", "write digits without quotes, or leave the field out");
            }
            return value;
        }
    }

    static Refusal refused(String path, JsonNode node, String allowed, String remedy) {
        return Refusal.use(
                "workshop " + path + " is " + JsonText.shown(node) + "; it must be " + allowed + ": " + remedy);
    }
}
