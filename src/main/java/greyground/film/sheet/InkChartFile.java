package greyground.film.sheet;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.chart.CodeText;
import greyground.chart.InkChart;
import greyground.chart.InkChart.PlateTones;
import greyground.chart.InkPatch;
import greyground.chart.Recipe;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Test plates of inks as a plain JSON file, in micrometres from the plate's top left as the print reads. Reading needs the code's text, which
 * plate carries it, and each plate's tones; the fields are for other programs and for people.
 */
public final class InkChartFile {
    private static final String KIND = "chart";
    private static final int VERSION = 1;
    private static final String PLATES = "plates";
    private static final Range PER_MILLE = new Range(0, 1000, Unit.RATIO, "make the test plates again");

    private InkChartFile() {}

    public static String text(InkChart chart) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        file.put("kind", chart.recipe().kind().word());
        file.put("id", chart.id());
        file.put("code", chart.print().codeText());
        file.put("codesOnPlate", chart.codePlate() + 1);
        ArrayNode plates = file.putArray(PLATES);
        for (PlateTones tones : chart.tones()) {
            ObjectNode each = plates.addObject();
            numbers(each.putArray("ramp"), tones.ramp());
            each.put("half", tones.half());
            numbers(each.putArray("greys"), tones.greys());
            each.put("full", tones.full());
        }
        ArrayNode patches = file.putArray("patches");
        for (InkPatch patch : chart.patches()) {
            ObjectNode each = ChartFile.place(patches.addObject(), patch.area());
            numbers(each.putArray("coveragesPerMille"), patch.coveragePerMille());
            each.put("check", patch.role().isCheck());
        }
        return JsonText.print(file);
    }

    private static void numbers(ArrayNode list, List<Integer> numbers) {
        numbers.forEach(list::add);
    }

    /** The test plates that a chart file tells of; one of any other test plate is refused. */
    public static InkChart read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "make the test plates again");
        CodeText code = CodeText.read(file.word("code"));
        if (code.recipe().kind() != Recipe.Kind.INKS) {
            throw Refusal.use("the film is of a test plate in one ink, " + code.id()
                    + ": name the films of a set's inks, as 'wedge --inks' made them");
        }
        List<PlateTones> tones = new ArrayList<>();
        for (JsonFields plate : file.list(PLATES)) {
            tones.add(new PlateTones(
                    levels(plate, "ramp", InkChart.RAMP),
                    (int) plate.integer("half", 0, 0, 1000),
                    levels(plate, "greys", InkChart.GREYS),
                    (int) plate.integer("full", 0, 0, 1000)));
        }
        InkChart chart = InkChart.of(code.recipe(), tones, (int) file.integer("codesOnPlate", 1, 1, 6) - 1);
        if (!chart.id().equals(code.id())) {
            throw Refusal.failure("the chart names itself " + code.id() + ", but its tones make it " + chart.id()
                    + ": make the test plates again");
        }
        return chart;
    }

    private static List<Integer> levels(JsonFields plate, String name, int count) {
        return DoubleStream.of(plate.numbers(name, count, PER_MILLE))
                .mapToObj(level -> (int) Math.round(level))
                .toList();
    }
}
