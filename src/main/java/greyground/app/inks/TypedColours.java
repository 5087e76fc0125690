package greyground.app.inks;

import greyground.app.files.TypedTable;
import greyground.chart.InkChart;
import greyground.chart.InkPatch;
import greyground.chart.LevelPatch;
import greyground.colour.Lab;
import greyground.film.compose.TestPlateSheet;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Colours of a print's fields that a person typed in from a spectrophotometer.
 *
 * @param sheet of the bare sheet beside the platemark
 * @param fields by their number in the chart
 */
record TypedColours(Optional<Lab> sheet, Map<Integer, Lab> fields) {
    static final TypedColours NONE = new TypedColours(Optional.empty(), Map.of());

    private static final String ROW = "row";
    private static final String COLUMN = "column";
    private static final String A = "a*";
    private static final String B = "b*";
    private static final Map<String, String> COLUMNS = Map.of(
            ROW,
            ROW,
            COLUMN,
            COLUMN,
            "col",
            COLUMN,
            "l*",
            TypedTable.LIGHTNESS,
            "l",
            TypedTable.LIGHTNESS,
            A,
            A,
            "a",
            A,
            B,
            B,
            "b",
            B);

    TypedColours {
        fields = Map.copyOf(fields);
    }

    /** Row and column as numbered beside the plates, and L*, a* and b*; row 0, column 0 is the bare sheet. */
    static TypedColours read(Path file, InkChart chart) {
        TypedTable table = TypedTable.read("colours", file, COLUMNS);
        table.need(ROW, COLUMN, TypedTable.LIGHTNESS, A, B);
        List<List<LevelPatch>> rows = TestPlateSheet.fields(chart.print());
        Map<Integer, Lab> fields = new HashMap<>();
        Optional<Lab> sheet = Optional.empty();
        for (TypedTable.Row row : table.rows()) {
            Lab colour = new Lab(
                    table.needed(row, TypedTable.LIGHTNESS, 0, 100),
                    table.needed(row, A, -128, 128),
                    table.needed(row, B, -128, 128));
            int down = whole(table, row, ROW, rows.size());
            int across =
                    whole(table, row, COLUMN, down == 0 ? 0 : rows.get(down - 1).size());
            boolean twice;
            if (down == 0) {
                twice = sheet.isPresent();
                sheet = Optional.of(colour);
            } else {
                twice = fields.put(number(chart, rows, table, row, down, across), colour) != null;
            }
            if (twice) {
                throw table.fault(
                        row.line(), "tells row " + down + ", column " + across + " a second time: leave one out");
            }
        }
        return new TypedColours(sheet, fields);
    }

    private static int number(
            InkChart chart, List<List<LevelPatch>> rows, TypedTable table, TypedTable.Row row, int down, int across) {
        if (across == 0) {
            throw table.fault(row.line(), "names column 0 of row " + down + "; fields count from 1: correct it");
        }
        List<InkPatch> patches = chart.patches();
        for (int i = 0; i < patches.size(); i++) {
            if (patches.get(i).area().equals(rows.get(down - 1).get(across - 1).area())) {
                return i;
            }
        }
        throw new IllegalStateException("every field is a patch");
    }

    private static int whole(TypedTable table, TypedTable.Row row, String column, int most) {
        double number = table.needed(row, column, 0, most);
        if (number != Math.rint(number)) {
            throw table.fault(row.line(), column + " is " + Refusal.plain(number) + "; it must be whole: correct it");
        }
        return (int) number;
    }
}
