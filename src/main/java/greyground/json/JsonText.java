package greyground.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;

/**
 * The house style of every JSON file: two blanks of indent, line feeds, the shortest digits that give the number back. The
 * same tree gives the same bytes on every machine and Java version.
 */
public final class JsonText {
    private static final JsonFactory PRINTING = new JsonFactory();

    /** Made by whoever reads: it takes a tenth of a second, and a film only writes. */
    private static final class Reading {
        private static final JsonMapper MAPPER = JsonMapper.builder()
                .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                // Numbers that nobody here reads must come back with all their digits.
                .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .build();
    }

    private JsonText() {}

    /** A file of a kind, to be filled after its head. */
    public static ObjectNode file(String kind, int version) {
        return object().put("greyground", kind).put("version", version);
    }

    /** An empty object to fill. */
    public static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }

    /**
     * Reads an object of the stated kind. The kind stands in a field "greyground", its format in "version".
     *
     * @param kind what it must be, for example "workshop"
     * @param newest the newest version that can be read; older ones count from 1
     */
    public static ObjectNode read(String kind, int newest, String text) {
        JsonNode tree = parse(kind + " file", text);
        if (!(tree instanceof ObjectNode object)) {
            throw Refusal.use(kind + " file is not a JSON object; it must start with {: choose another file");
        }
        JsonNode said = object.path("greyground");
        if (!said.isTextual() || !said.textValue().equals(kind)) {
            throw Refusal.use(kind + " file says \"greyground\": " + shown(said) + "; it must say \"" + kind
                    + "\": choose a " + kind + " file");
        }
        JsonNode version = object.path("version");
        if (!version.isIntegralNumber() || !version.canConvertToInt() || version.intValue() < 1) {
            throw Refusal.use(kind + " file says \"version\": " + shown(version)
                    + "; it must be a whole number from 1 to " + newest + ": restore the file");
        }
        if (version.intValue() > newest) {
            throw Refusal.use(kind + " file is of version " + version.intValue() + "; this program reads 1 to " + newest
                    + ": use a newer Greyground; the file was left as it is");
        }
        return object;
    }

    /** Reads any JSON, refusing with line and column. {@code what} names it, for example "workshop file". */
    public static JsonNode parse(String what, String text) {
        try {
            JsonNode tree = Reading.MAPPER.readTree(text);
            if (tree == null || tree.isMissingNode()) {
                throw Refusal.use(what + " is empty; it must hold a JSON object: restore it from a copy");
            }
            return tree;
        } catch (JsonProcessingException fault) {
            var place = fault.getLocation();
            String where = place == null ? "" : " at line " + place.getLineNr() + ", column " + place.getColumnNr();
            throw Refusal.use(what + " is not JSON" + where + ": correct it there or restore it from a copy");
        } catch (NumberFormatException fault) {
            // Exponents of more digits than any number has pass the parser's own checks.
            throw Refusal.use(what + " holds a number that is none: correct it or restore it from a copy");
        }
    }

    /** The tree as text that ends in a line feed. */
    public static String print(JsonNode tree) {
        DefaultIndenter indent = new DefaultIndenter("  ", "\n");
        Separators separators = Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                .withArrayEmptySeparator("")
                .withObjectEmptySeparator("");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter(separators).withObjectIndenter(indent).withArrayIndenter(indent);
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = PRINTING.createGenerator(text)) {
            generator.setPrettyPrinter(printer);
            print(tree, generator);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return text + "\n";
    }

    /** Node by node: the mapper that could do it at once takes longer to be made than a film's files to be written. */
    private static void print(JsonNode node, JsonGenerator generator) throws IOException {
        switch (node.getNodeType()) {
            case OBJECT -> {
                generator.writeStartObject();
                for (Map.Entry<String, JsonNode> field : node.properties()) {
                    generator.writeFieldName(field.getKey());
                    print(field.getValue(), generator);
                }
                generator.writeEndObject();
            }
            case ARRAY -> {
                generator.writeStartArray();
                for (JsonNode element : node) {
                    if (element.isArray()) {
                        // Such as a place: its numbers stand in one line.
                        generator.writeRawValue(element.toString().replace(",", ", "));
                    } else {
                        print(element, generator);
                    }
                }
                generator.writeEndArray();
            }
            case STRING -> generator.writeString(node.textValue());
            case BOOLEAN -> generator.writeBoolean(node.booleanValue());
            case NULL -> generator.writeNull();
            case NUMBER -> printNumber(node, generator);
            default -> throw new IllegalArgumentException("no file of ours holds a " + node.getNodeType());
        }
    }

    private static void printNumber(JsonNode node, JsonGenerator generator) throws IOException {
        if (node.isIntegralNumber()) {
            generator.writeNumber(node.bigIntegerValue());
        } else {
            generator.writeNumber(node.decimalValue());
        }
    }

    /** The shortest decimal that reads back as {@code value}, which must be finite. */
    public static JsonNode number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return LongNode.valueOf((long) value);
        }
        // Double.toString gave longer digits than needed before Java 19; searching gives the same bytes on all.
        BigDecimal exact = new BigDecimal(value);
        for (int digits = 1; digits < 17; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits));
            if (rounded.doubleValue() == value) {
                return DecimalNode.valueOf(rounded.stripTrailingZeros());
            }
        }
        return DecimalNode.valueOf(exact.round(new MathContext(17)).stripTrailingZeros());
    }

    /** A value as it stands in the file, cut to fit one line. */
    public static String shown(JsonNode node) {
        return node.isMissingNode() ? "nothing" : brief(node.toString());
    }

    private static String brief(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() > 100 ? line.substring(0, 100) + "..." : line;
    }
}
