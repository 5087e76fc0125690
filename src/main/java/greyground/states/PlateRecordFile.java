package greyground.states;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** A plate's record as a JSON file: docs/record.md. */
public final class PlateRecordFile {
    /** The newest format that this program writes and reads. */
    public static final int VERSION = 1;

    private static final String KIND = "plate record";

    private PlateRecordFile() {}

    public static String text(PlateRecord record) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        file.put("title", record.title()).put("plate", record.plate());
        record.film().ifPresent(film -> put(file.putObject("film"), film));
        ArrayNode planned = file.putArray("planned");
        record.planned().forEach(planned::add);
        ArrayNode entries = file.putArray("entries");
        record.lines().forEach(line -> put(entries.addObject(), line));
        record.unknown().forEach(field -> field.into(file));
        return JsonText.print(file);
    }

    private static void put(ObjectNode node, NamedFile file) {
        node.put("file", file.name()).put("bytes", file.bytes()).put("sha256", file.sha256());
    }

    private static void put(ObjectNode node, PlateRecord.Line line) {
        node.put("date", line.date().toString());
        Entry entry = line.entry();
        if (entry instanceof Entry.Exposed exposed) {
            node.put("entry", "exposed");
            node.set("screenSeconds", JsonText.number(exposed.screenSeconds()));
            node.set("imageSeconds", JsonText.number(exposed.imageSeconds()));
        } else if (entry instanceof Entry.Bitten bitten) {
            node.put("entry", "bitten");
            node.set("minutes", JsonText.number(bitten.minutes()));
            put(node, "celsius", bitten.celsius());
            put(node, "copperGramsPerLitre", bitten.copperGramsPerLitre());
        } else if (entry instanceof Entry.Reworked reworked) {
            node.put("entry", "reworked").put("words", reworked.what());
        } else if (entry instanceof Entry.Measured measured) {
            node.put("entry", "measured");
            put(node, "depthMicrometres", measured.depthMicrometres());
            put(node, "lostGrams", measured.lostGrams());
        } else if (entry instanceof Entry.Proofed proofed) {
            node.put("entry", "proofed");
            put(node, "solidDensity", proofed.solidDensity());
            proofed.scan().ifPresent(scan -> put(node.putObject("scan"), scan));
        } else if (entry instanceof Entry.Printed printed) {
            node.put("entry", "printed").put("first", printed.first()).put("last", printed.last());
            node.put("edition", printed.edition());
        } else if (entry instanceof Entry.Noted noted) {
            node.put("entry", "noted").put("words", noted.text());
        }
        if (line.struck()) {
            node.put("struckOut", true);
        }
    }

    private static void put(ObjectNode node, String name, OptionalDouble number) {
        number.ifPresent(value -> node.set(name, JsonText.number(value)));
    }

    /** Reads a record; fields that this version doesn't know are kept. */
    public static PlateRecord read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "correct the record");
        List<PlateRecord.Line> lines = new ArrayList<>();
        for (JsonFields each : file.list("entries")) {
            lines.add(new PlateRecord.Line(each.day("date"), entry(each), each.yes("struckOut", false)));
        }
        return new PlateRecord(
                file.word("title"),
                file.word("plate", ""),
                named(file, "film"),
                file.words("planned"),
                lines,
                file.unknown());
    }

    private static Entry entry(JsonFields fields) {
        String kind = fields.choice(
                "entry", "", Set.of("exposed", "bitten", "reworked", "measured", "proofed", "printed", "noted"));
        return switch (kind) {
            case "exposed" ->
                new Entry.Exposed(
                        fields.number("screenSeconds", 0, Entry.Exposed.SECONDS),
                        fields.number("imageSeconds", Double.NaN, Entry.Exposed.SECONDS));
            case "bitten" ->
                new Entry.Bitten(
                        fields.number("minutes", Double.NaN, Entry.Bitten.MINUTES),
                        number(fields, "celsius", Entry.Bitten.CELSIUS),
                        number(fields, "copperGramsPerLitre", Entry.Bitten.COPPER));
            case "reworked" -> new Entry.Reworked(fields.word("words"));
            case "measured" ->
                new Entry.Measured(
                        number(fields, "depthMicrometres", Entry.Measured.DEPTH),
                        number(fields, "lostGrams", Entry.Measured.LOST));
            case "proofed" ->
                new Entry.Proofed(named(fields, "scan"), number(fields, "solidDensity", Entry.Proofed.DENSITY));
            case "printed" ->
                new Entry.Printed(whole(fields, "first"), whole(fields, "last"), whole(fields, "edition"));
            default -> new Entry.Noted(fields.word("words"));
        };
    }

    private static OptionalDouble number(JsonFields fields, String name, Range range) {
        return fields.has(name) ? OptionalDouble.of(fields.number(name, Double.NaN, range)) : OptionalDouble.empty();
    }

    private static int whole(JsonFields fields, String name) {
        return (int) fields.integer(name, 0, 1, Integer.MAX_VALUE);
    }

    private static Optional<NamedFile> named(JsonFields fields, String name) {
        if (!fields.has(name)) {
            return Optional.empty();
        }
        JsonFields file = fields.section(name);
        return Optional.of(
                new NamedFile(file.word("file"), file.integer("bytes", 0, 0, Long.MAX_VALUE), file.word("sha256")));
    }
}
