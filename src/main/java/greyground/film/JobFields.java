package greyground.film;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.quantity.Refusal;
import greyground.workshop.JsonText;
import greyground.workshop.KeptField;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * One object of a job file, read field by field; refuses with path, value, range and remedy, and remembers which fields were
 * asked for. Used by one thread, for one reading.
 */
final class JobFields {
    private final List<String> place;
    private final ObjectNode node;
    private final Set<String> asked = new HashSet<>();
    private final List<JobFields> sections = new ArrayList<>();

    JobFields(List<String> place, ObjectNode node) {
        this.place = place;
        this.node = node;
    }

    /** An inner object; a missing one reads as empty. */
    JobFields section(String name) {
        JsonNode inner = field(name);
        if (!inner.isMissingNode() && !(inner instanceof ObjectNode)) {
            throw refused(name, inner, "an object in braces");
        }
        List<String> inside = new ArrayList<>(place);
        inside.add(name);
        JobFields section =
                new JobFields(List.copyOf(inside), inner instanceof ObjectNode object ? object : JsonText.object());
        sections.add(section);
        return section;
    }

    /** A number in [least, most]; {@code usual} where the field is missing, unless that is NaN. */
    double number(String name, double usual, double least, double most) {
        JsonNode value = field(name);
        if (value.isMissingNode() && !Double.isNaN(usual)) {
            return usual;
        }
        if (!value.isNumber() || !(value.doubleValue() >= least && value.doubleValue() <= most)) {
            throw refused(name, value, "a number from " + Refusal.plain(least) + " to " + Refusal.plain(most));
        }
        return value.doubleValue();
    }

    /** A whole number in [least, most]. */
    long integer(String name, long usual, long least, long most) {
        JsonNode value = field(name);
        if (value.isMissingNode()) {
            return usual;
        }
        boolean whole = value.isIntegralNumber() && value.canConvertToLong();
        if (!whole || value.longValue() < least || value.longValue() > most) {
            throw refused(name, value, "a whole number from " + least + " to " + most);
        }
        return value.longValue();
    }

    /** Text. */
    String word(String name, String usual) {
        JsonNode value = field(name);
        if (value.isMissingNode()) {
            return usual;
        }
        if (!value.isTextual()) {
            throw refused(name, value, "text in quotes");
        }
        return value.textValue();
    }

    /** One of a few words. */
    String choice(String name, String usual, Map<String, Integer> words) {
        String word = word(name, usual);
        if (!words.containsKey(word)) {
            throw refused(name, field(name), "one of " + String.join(", ", new TreeSet<>(words.keySet())));
        }
        return word;
    }

    /** True or false. */
    boolean yes(String name, boolean usual) {
        JsonNode value = field(name);
        if (value.isMissingNode()) {
            return usual;
        }
        if (!value.isBoolean()) {
            throw refused(name, value, "true or false");
        }
        return value.booleanValue();
    }

    /** Whether the field is missing or says {@code word}. */
    boolean isWord(String name, String word) {
        JsonNode value = field(name);
        return value.isMissingNode() || (value.isTextual() && value.textValue().equals(word));
    }

    /** The fields nobody asked for, here and in the sections read, in the file's order. */
    List<KeptField> unknown() {
        List<KeptField> kept = new ArrayList<>();
        for (var each : node.properties()) {
            if (!asked.contains(each.getKey())) {
                kept.add(new KeptField(place, each.getKey(), each.getValue().toString()));
            }
        }
        sections.forEach(section -> kept.addAll(section.unknown()));
        return kept;
    }

    private JsonNode field(String name) {
        asked.add(name);
        return node.path(name);
    }

    private Refusal refused(String name, JsonNode value, String allowed) {
        String shown = value.isMissingNode() ? "missing" : value.toString();
        String brief = shown.length() > 80 ? shown.substring(0, 80) + "..." : shown;
        return Refusal.use("job " + String.join(".", place) + (place.isEmpty() ? "" : ".") + name + " is " + brief
                + "; it must be " + allowed + ": mend the job file");
    }
}
