package greyground.workshop;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;

/** How a number is known, as fields of its object: "known" with "basis", or with "date" and "how". */
final class ProvenanceFields {
    private ProvenanceFields() {}

    static void write(Provenance provenance, ObjectNode node) {
        if (provenance instanceof Provenance.Assumed assumed) {
            node.put("known", "assumed");
            node.put("basis", assumed.basis());
        } else if (provenance instanceof Provenance.Measured measured) {
            node.put("known", "measured");
            node.put("date", measured.date().toString());
            node.put("how", measured.how());
        }
    }

    static Provenance read(String path, ObjectNode node) {
        JsonNode known = node.path("known");
        if (known.isMissingNode() && !node.has("date")) {
            return new Provenance.Assumed(words(path, node, "basis", "stated in the workshop file without a test"));
        }
        if (known.isMissingNode() || (known.isTextual() && known.textValue().equals("measured"))) {
            return new Provenance.Measured(date(path, node.path("date")), words(path, node, "how", "not noted"));
        }
        if (known.isTextual() && known.textValue().equals("assumed")) {
            return new Provenance.Assumed(words(path, node, "basis", "not noted"));
        }
        throw WorkshopFile.refused(path + ".known", known, "\"assumed\" or \"measured\"", "choose one of them");
    }

    private static LocalDate date(String path, JsonNode node) {
        try {
            return LocalDate.parse(node.isTextual() ? node.textValue() : "");
        } catch (DateTimeParseException fault) {
            throw WorkshopFile.refused(
                    path + ".date", node, "a day from \"0001-01-01\" to \"9999-12-31\"", "write year-month-day");
        }
    }

    private static String words(String path, ObjectNode node, String name, String otherwise) {
        JsonNode words = node.path(name);
        if (words.isMissingNode() || (words.isTextual() && words.textValue().isBlank())) {
            return otherwise;
        }
        if (!words.isTextual()) {
            throw WorkshopFile.refused(path + "." + name, words, "text in quotes", "put it in quotes");
        }
        return words.textValue();
    }
}
