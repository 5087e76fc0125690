package greyground.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * One object of a kept file, read field by field; refuses with path, value, range and remedy, and remembers which fields were
 * asked for. Used by one thread, for one reading.
 */
public final class JsonFields {
    private final String kind;
    private final String remedy;
    private final List<String> place;
    private final ObjectNode node;
    private final Optional<String> misspelt;
    private final Set<String> asked = new HashSet<>();
    private final Map<String, JsonFields> sections = new LinkedHashMap<>();

    private JsonFields(String kind, String remedy, List<String> place, ObjectNode node, Optional<String> misspelt) {
        this.kind = kind;
        this.remedy = remedy;
        this.place = place;
        this.node = node;
        this.misspelt = misspelt;
    }

    /**
     * Reads a whole file, whose head says its kind and version.
     *
     * @param kind such as "job"
     * @param newest the newest version that can be read; older ones count from 1
     * @param remedy what to do where a field is wrong, as a refusal ends
     */
    public static JsonFields read(String kind, int newest, String text, String remedy) {
        JsonFields file = new JsonFields(kind, remedy, List.of(), JsonText.read(kind, newest, text), Optional.empty());
        file.asked.addAll(List.of("greyground", "version"));
        return file;
    }

    /** An inner object; a missing one reads as empty, and one that is asked for again is the same. */
    public JsonFields section(String name) {
        JsonNode inner = field(name);
        if (!inner.isMissingNode() && !(inner instanceof ObjectNode)) {
            throw refused(name, inner, "an object in braces");
        }
        return inner instanceof ObjectNode object
                ? inside(object, Optional.empty(), name)
                : inside(JsonText.object(), misspelt(name), name);
    }

    /** @param misspelt what stands in the file where this object was looked for */
    private JsonFields inside(ObjectNode object, Optional<String> misspelt, String... way) {
        List<String> inner = Stream.concat(place.stream(), Stream.of(way)).toList();
        return sections.computeIfAbsent(
                String.join(".", way), any -> new JsonFields(kind, remedy, inner, object, misspelt));
    }

    /** The objects of a list; a missing one reads as empty. */
    public List<JsonFields> list(String name) {
        JsonNode array = field(name);
        if (!array.isMissingNode() && !array.isArray()) {
            throw refused(name, array, "a list in square brackets");
        }
        List<JsonFields> items = new ArrayList<>();
        for (JsonNode item : array) {
            if (!(item instanceof ObjectNode object)) {
                throw refused(name, item, "a list of objects in braces");
            }
            items.add(inside(object, Optional.empty(), name, Integer.toString(items.size())));
        }
        return items;
    }

    public boolean has(String name) {
        return !field(name).isMissingNode();
    }

    public boolean isNumber(String name) {
        return field(name).isNumber();
    }

    public boolean isText(String name) {
        return field(name).isTextual();
    }

    /** A number in [least, most]; {@code usual} where the field is missing, unless that is NaN. */
    public double number(String name, double usual, double least, double most) {
        JsonNode value = field(name);
        if (value.isMissingNode() && !Double.isNaN(usual)) {
            return usual;
        }
        if (!value.isNumber() || !(value.doubleValue() >= least && value.doubleValue() <= most)) {
            throw refused(
                    name,
                    value,
                    most == Double.MAX_VALUE
                            ? "a finite number"
                            : "a number from " + Refusal.plain(least) + " to " + Refusal.plain(most));
        }
        return value.doubleValue();
    }

    /** A number in a range. */
    public double number(String name, double usual, Range range) {
        return number(name, usual, range.least(), range.most());
    }

    /** A whole number in [least, most]. */
    public long integer(String name, long usual, long least, long most) {
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

    /** A day of the calendar, year-month-day; it must be there. */
    public LocalDate day(String name) {
        JsonNode value = field(name);
        try {
            return LocalDate.parse(value.isTextual() ? value.textValue() : "");
        } catch (DateTimeParseException fault) {
            throw refused(name, value, "a day such as \"2026-03-04\"");
        }
    }

    /** Text that must be there. */
    public String word(String name) {
        if (!has(name)) {
            throw refused(name, field(name), "text in quotes");
        }
        return word(name, "");
    }

    /** Texts of a list; a missing one reads as empty. */
    public List<String> words(String name) {
        List<String> words = new ArrayList<>();
        for (JsonNode each : field(name)) {
            if (!each.isTextual()) {
                throw refused(name, each, "text in quotes");
            }
            words.add(each.textValue());
        }
        return words;
    }

    /** Two numbers in a range, such as [10, 12.5]; they must be there. */
    public double[] pair(String name, Range range) {
        return pair(name, field(name), range);
    }

    /** Three numbers in a range, such as [62.5, 10, -4]; they must be there. */
    public double[] triple(String name, Range range) {
        return numbers(name, field(name), range, 3, "three");
    }

    /** So many numbers in a range; they must be there. */
    public double[] numbers(String name, int count, Range range) {
        return numbers(name, field(name), range, count, Integer.toString(count));
    }

    /** Pairs of numbers in a range, such as [[10, 12.5], [11, 14]]; they must be there. */
    public List<double[]> pairs(String name, Range range) {
        JsonNode array = field(name);
        if (!array.isArray()) {
            throw refused(name, array, "a list of pairs of numbers, such as [[10, 12.5], [11, 14]]");
        }
        List<double[]> pairs = new ArrayList<>();
        for (JsonNode each : array) {
            pairs.add(pair(name + "." + pairs.size(), each, range));
        }
        return pairs;
    }

    private double[] pair(String name, JsonNode value, Range range) {
        return numbers(name, value, range, 2, "two");
    }

    private double[] numbers(String name, JsonNode value, Range range, int count, String counted) {
        boolean fits = value.isArray() && value.size() == count;
        double[] numbers = new double[count];
        for (int i = 0; i < count && fits; i++) {
            numbers[i] = value.get(i).asDouble(Double.NaN);
            fits = value.get(i).isNumber() && within(numbers[i], range);
        }
        if (!fits) {
            throw refused(
                    name,
                    value,
                    counted + " numbers in square brackets, each from " + Refusal.plain(range.least()) + " to "
                            + Refusal.plain(range.most()));
        }
        return numbers;
    }

    private static boolean within(double number, Range range) {
        return number >= range.least() && number <= range.most();
    }

    /** Any finite number, which must be there. */
    public double number(String name) {
        return number(name, Double.NaN, -Double.MAX_VALUE, Double.MAX_VALUE);
    }

    public String word(String name, String usual) {
        JsonNode value = field(name);
        if (value.isMissingNode()) {
            return usual;
        }
        if (!value.isTextual()) {
            throw refused(name, value, "text in quotes");
        }
        return value.textValue();
    }

    public String choice(String name, String usual, Set<String> words) {
        String word = word(name, usual);
        if (!words.contains(word)) {
            throw refused(name, field(name), "one of " + String.join(", ", new TreeSet<>(words)));
        }
        return word;
    }

    public boolean yes(String name, boolean usual) {
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
    public boolean isWord(String name, String word) {
        JsonNode value = field(name);
        return value.isMissingNode() || (value.isTextual() && value.textValue().equals(word));
    }

    /** The fields nobody asked for, here and in the sections read, in the file's order. */
    public List<KeptField> unknown() {
        List<KeptField> kept = new ArrayList<>();
        for (var each : node.properties()) {
            if (!asked.contains(each.getKey())) {
                kept.add(KeptField.among(
                        asked, place, each.getKey(), each.getValue().toString()));
            }
        }
        sections.values().forEach(section -> kept.addAll(section.unknown()));
        return kept;
    }

    private JsonNode field(String name) {
        asked.add(name);
        return node.path(name);
    }

    private Refusal refused(String name, JsonNode value, String allowed) {
        String path = String.join(".", place) + (place.isEmpty() ? "" : ".") + name;
        String shown = value.isMissingNode() ? "missing" : JsonText.shown(value);
        Optional<String> meant = value.isMissingNode() ? misspelt(name) : Optional.empty();
        String remedyOrQuestion = meant.or(() -> misspelt).orElse(remedy);
        return Refusal.use(kind + " " + path + " is " + shown + "; it must be " + allowed + ": " + remedyOrQuestion);
    }

    /** Asks about a field that stands where another is missing and is spelt nearly like it; empty where none does. */
    private Optional<String> misspelt(String name) {
        String where = String.join(".", place) + (place.isEmpty() ? "" : ".");
        return node.properties().stream()
                .map(Map.Entry::getKey)
                .filter(other -> !asked.contains(other))
                .filter(other ->
                        KeptField.among(Set.of(name), place, other, "").meant().isPresent())
                .findFirst()
                .map(other -> "the file has " + where + other + ", did you mean " + where + name + "?");
    }
}
