package greyground.workshop;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptField;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

    private WorkshopFile() {}

    public static Workshop read(String text) {
        JsonFields whole = JsonFields.read(KIND, VERSION, text, "correct the workshop file");
        Workshop known = Workshop.assumed().through((path, present) -> answer(whole, path, present));
        List<KeptResponse> responses = ResponseFields.read(whole);
        // A response keeps its own unknown fields.
        List<KeptField> unknown = whole.unknown().stream()
                .filter(field -> !field.place().contains(ResponseFields.NAME))
                .toList();
        return known.measuring(responses).keeping(unknown);
    }

    private static Object answer(JsonFields whole, String path, Object present) {
        int dot = path.indexOf('.');
        JsonFields section = dot < 0 ? whole : whole.section(path.substring(0, dot));
        String name = path.substring(dot + 1);
        if (present instanceof String words) {
            return section.word(name, words);
        }
        if (present instanceof Enum<?> choice) {
            Map<String, Enum<?>> byWord = new HashMap<>();
            for (Enum<?> each : choice.getDeclaringClass().getEnumConstants()) {
                byWord.put(word(each), each);
            }
            return byWord.getOrDefault(section.choice(name, word(choice), byWord.keySet()), choice);
        }
        if (!(present instanceof Figure) || !section.has(name)) {
            return present;
        }
        if (section.isNumber(name)) {
            return Figure.assumed(section.number(name), "stated in the workshop file without a test");
        }
        JsonFields stated = section.section(name);
        return new Figure(stated.number("value"), provenance(stated));
    }

    private static String word(Enum<?> each) {
        return each.name().toLowerCase(Locale.ROOT);
    }

    /** "known" with "basis", or with "date" and "how". */
    private static Provenance provenance(JsonFields fields) {
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

    public static ObjectNode tree(Workshop workshop) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        workshop.through((path, present) -> {
            write(file, path, present);
            return present;
        });
        ResponseFields.write(workshop.responses(), file);
        workshop.kept().forEach(field -> field.into(file));
        return file;
    }

    private static void write(ObjectNode file, String path, Object present) {
        int dot = path.indexOf('.');
        ObjectNode section = dot < 0 ? file : file.withObjectProperty(path.substring(0, dot));
        String name = path.substring(dot + 1);
        if (present instanceof String words) {
            section.put(name, words);
        } else if (present instanceof Enum<?> choice) {
            section.put(name, word(choice));
        } else if (present instanceof Figure figure) {
            ObjectNode node = section.putObject(name);
            node.set("value", JsonText.number(figure.value()));
            if (figure.provenance() instanceof Provenance.Measured measured) {
                node.put("known", "measured").put("date", measured.date().toString());
                node.put("how", measured.how());
            } else {
                node.put("known", "assumed").put("basis", figure.provenance().basis());
            }
        }
    }

    public static String text(Workshop workshop) {
        return JsonText.print(tree(workshop));
    }
}
