package greyground.workshop;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import java.util.Set;

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

    static Provenance read(JsonFields fields) {
        boolean stated = fields.has("known");
        String known =
                fields.choice("known", fields.has("date") ? "measured" : "assumed", Set.of("assumed", "measured"));
        if (known.equals("measured")) {
            return new Provenance.Measured(fields.day("date"), words(fields, "how", "not noted"));
        }
        return new Provenance.Assumed(
                words(fields, "basis", stated ? "not noted" : "stated in the workshop file without a test"));
    }

    private static String words(JsonFields fields, String name, String otherwise) {
        String words = fields.word(name, otherwise);
        return words.isBlank() ? otherwise : words;
    }
}
