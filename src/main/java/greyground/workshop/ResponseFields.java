package greyground.workshop;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.fit.MeasuredLevel;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptField;
import greyground.quantity.Resolution;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Measured responses as a list of the workshop file; fields nobody here knows are kept and written back. */
public final class ResponseFields {
    static final String NAME = "responses";

    private static final String SEED = "seed";

    private ResponseFields() {}

    static void write(List<KeptResponse> responses, ObjectNode file) {
        if (responses.isEmpty()) {
            return;
        }
        ArrayNode list = file.putArray(NAME);
        responses.forEach(response -> write(response, list.addObject()));
    }

    /** Writes one into its own object. */
    public static void write(KeptResponse response, ObjectNode node) {
        PlateMaking making = response.making();
        node.put("date", response.date().toString());
        node.put("chart", response.chart());
        node.put("how", response.how());
        ObjectNode process = node.putObject("process");
        CarrierFields.writeProcess(process, making.process());
        ObjectNode grain = node.putObject("grain");
        CarrierFields.writeGrain(grain, making.grain());
        // One grain of a kind prints like another.
        process.remove(SEED);
        grain.remove(SEED);
        node.set("resolutionDotsPerInch", JsonText.number(making.resolution().dotsPerInch()));
        node.put("inkSide", making.inkDown() ? "down" : "up");
        node.set("biteMinutes", JsonText.number(making.biteMinutes()));
        node.set("exposureSeconds", JsonText.number(making.exposureSeconds()));
        ArrayNode levels = node.putArray("levels");
        for (MeasuredLevel level : response.levels()) {
            ObjectNode each = levels.addObject();
            each.set("coverage", JsonText.number(level.coverage()));
            each.set("lightness", JsonText.number(level.lightness()));
            each.set("repeats", JsonText.number(level.repeats()));
            each.set("standardDeviation", JsonText.number(level.standardDeviation()));
            each.put("degrees", level.degrees());
        }
        response.kept().forEach(field -> field.into(node));
    }

    static List<KeptResponse> read(JsonFields file) {
        return file.list(NAME).stream()
                .map(fields -> {
                    KeptResponse read = response(fields);
                    return read.keeping(within(fields.unknown()));
                })
                .toList();
    }

    /** Reads one from its own object; what is unknown in it is the reader's of the whole file to judge. */
    public static KeptResponse response(JsonFields fields) {
        double none = Double.NaN;
        PlateMaking making = new PlateMaking(
                CarrierFields.readProcess(fields.section("process")),
                CarrierFields.readGrain(fields.section("grain")),
                new Resolution(fields.number("resolutionDotsPerInch", none, Resolution.DOTS)),
                fields.choice("inkSide", "down", Set.of("down", "up")).equals("down"),
                fields.number("biteMinutes", none, 0, 1440),
                fields.number("exposureSeconds", none, 0.1, 720_000));
        List<MeasuredLevel> levels = new ArrayList<>();
        for (JsonFields level : fields.list("levels")) {
            levels.add(new MeasuredLevel(
                    level.number("coverage", none, 0, 1),
                    level.number("lightness", none, 0, 100),
                    level.number("repeats", none, 0.01, 100_000),
                    level.number("standardDeviation", none, 0, 100),
                    (int) level.integer("degrees", 1, 1, 1_000_000)));
        }
        return new KeptResponse(
                fields.day("date"),
                fields.word("chart", "unknown"),
                fields.word("how", "not noted"),
                making,
                levels,
                List.of());
    }

    /** Their places counted from the response's own object. */
    private static List<KeptField> within(List<KeptField> unknown) {
        return unknown.stream()
                .map(field ->
                        new KeptField(field.place().subList(2, field.place().size()), field.name(), field.json()))
                .toList();
    }
}
