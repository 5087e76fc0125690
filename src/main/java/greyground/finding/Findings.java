package greyground.finding;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import greyground.json.JsonText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Findings in order, each key once; a group or row of figures is the same without words. Whoever makes them fills them before handing
 * them on.
 *
 * <p>Numbers keep six decimals, which is all that the model knows.
 */
public final class Findings {
    private static final double DECIMALS = 1e6;
    private static final String WORDS = "words";

    private final Map<String, Finding> all = new LinkedHashMap<>();

    /** A sentence, which is its own figure. */
    public Findings say(String key, String words) {
        return add(key, List.of(words), TextNode.valueOf(words));
    }

    /** A sentence where there is one. */
    public Findings say(String key, Optional<String> words) {
        words.ifPresent(one -> say(key, one));
        return this;
    }

    /** A sentence and the number behind it. */
    public Findings say(String key, String words, double figure) {
        return add(key, List.of(words), number(figure));
    }

    /** A sentence and a shorter word for programs. */
    public Findings say(String key, String words, String figure) {
        return add(key, List.of(words), TextNode.valueOf(figure));
    }

    /** A sentence and the figures behind it. */
    public Findings say(String key, String words, Findings figures) {
        return add(key, List.of(words), figures.tree());
    }

    /** Sentences of one kind, such as notes. */
    public Findings list(String key, List<String> sentences) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        sentences.forEach(array::add);
        return add(key, sentences, array);
    }

    /** Figures in rows; a row's "words" are its line. */
    public Findings rows(String key, List<Findings> rows) {
        return rows(key, rows.stream().flatMap(row -> row.words(WORDS).stream()).toList(), rows);
    }

    /** Figures in rows that fewer sentences sum up. */
    public Findings rows(String key, List<String> words, List<Findings> rows) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        rows.forEach(row -> array.add(row.tree()));
        return add(key, words, array);
    }

    /** A number without words, finite. */
    public Findings put(String key, double figure) {
        return add(key, List.of(), number(figure));
    }

    /** A number where there is one, finite. */
    public Findings put(String key, OptionalDouble figure) {
        figure.ifPresent(one -> put(key, one));
        return this;
    }

    /** A word for programs. */
    public Findings put(String key, String figure) {
        return add(key, List.of(), TextNode.valueOf(figure));
    }

    public Findings put(String key, boolean figure) {
        return add(key, List.of(), BooleanNode.valueOf(figure));
    }

    public Findings put(String key, Findings figures) {
        return add(key, List.of(), figures.tree());
    }

    /** A range, from the lesser to the greater end or as its key says. */
    public Findings put(String key, double from, double to) {
        return add(
                key,
                List.of(),
                JsonNodeFactory.instance.arrayNode().add(number(from)).add(number(to)));
    }

    /** A file's own tree. */
    public Findings put(String key, ObjectNode file) {
        return add(key, List.of(), file);
    }

    private Findings add(String key, List<String> words, JsonNode figures) {
        if (all.put(key, new Finding(key, words, figures)) != null) {
            throw new IllegalArgumentException(key + " is said twice");
        }
        return this;
    }

    private static JsonNode number(double value) {
        return JsonText.number(Math.rint(value * DECIMALS) / DECIMALS);
    }

    public List<Finding> all() {
        return List.copyOf(all.values());
    }

    /** The sentences under a key; none where it says nothing. */
    public List<String> words(String key) {
        Finding finding = all.get(key);
        return finding == null ? List.of() : finding.words();
    }

    /** What is said under a key, in one line; empty where nothing is. */
    public String line(String key) {
        return String.join("; ", words(key));
    }

    /** The number under a key; empty where there is none. */
    public OptionalDouble number(String key) {
        JsonNode figure = figures(key);
        return figure.isNumber() ? OptionalDouble.of(figure.doubleValue()) : OptionalDouble.empty();
    }

    /** The word for programs under a key; empty where there is none. */
    public String text(String key) {
        return figures(key).asText();
    }

    /** Rows of figures under a key; none where there are none. */
    public List<Findings> rows(String key) {
        List<Findings> rows = new ArrayList<>();
        for (JsonNode each : figures(key)) {
            Findings row = new Findings();
            each.properties().forEach(field -> row.add(field.getKey(), List.of(), field.getValue()));
            rows.add(row);
        }
        return rows;
    }

    private JsonNode figures(String key) {
        Finding finding = all.get(key);
        return finding == null ? MissingNode.getInstance() : finding.figures();
    }

    public ObjectNode tree() {
        ObjectNode tree = JsonText.object();
        all.values().forEach(finding -> tree.set(finding.key(), finding.figures()));
        return tree;
    }
}
