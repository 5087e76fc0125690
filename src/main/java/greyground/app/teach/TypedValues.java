package greyground.app.teach;

import greyground.app.files.TypedTable;
import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.scan.ScanChoices;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Readings that a person typed in from a densitometer, and the densities of a reflection wedge. */
final class TypedValues {
    private static final String ROW = "row";
    private static final String COLUMN = "column";
    private static final String COVERAGE = "coverage";
    private static final Map<String, String> COLUMNS = Map.ofEntries(
            Map.entry(ROW, ROW),
            Map.entry(COLUMN, COLUMN),
            Map.entry("col", COLUMN),
            Map.entry(COVERAGE, COVERAGE),
            Map.entry("coverage %", COVERAGE),
            Map.entry(TypedTable.DENSITY, TypedTable.DENSITY),
            Map.entry("d", TypedTable.DENSITY),
            Map.entry("l*", TypedTable.LIGHTNESS),
            Map.entry("l", TypedTable.LIGHTNESS),
            Map.entry("lightness", TypedTable.LIGHTNESS));

    private TypedValues() {}

    /**
     * A test plate's fields: row and column as numbered beside the plate, or the film coverage in percent; and density (absolute, paper
     * included) or L*.
     */
    static List<MeasuredPatch> fields(Path file, TestPlate plate) {
        TypedTable table = TypedTable.read("values", file, COLUMNS);
        table.needTones();
        if (table.has(ROW) || table.has(COLUMN)) {
            table.need(ROW, COLUMN);
        } else {
            table.need(COVERAGE);
        }
        ChartFields fields = ChartFields.of(plate);
        List<MeasuredPatch> patches = new ArrayList<>();
        for (TypedTable.Row row : table.rows()) {
            double lightness = table.lightness(row);
            Optional<Double> coverage = table.number(row, COVERAGE, 0, 100);
            if (table.has(ROW)) {
                LevelPatch field = field(table, row, fields);
                if (coverage.isPresent() && Math.abs(field.coveragePerMille() / 10.0 - coverage.get()) > 0.05) {
                    throw table.fault(
                            row.line(),
                            "coverage is " + Refusal.plain(coverage.get()) + " %, but the field there has "
                                    + Refusal.plain(field.coveragePerMille() / 10.0) + " %: check row and column");
                }
                patches.add(ChartFields.read(field, lightness));
            } else {
                double percent = table.needed(row, COVERAGE, 0, 100);
                int level = fields.level(percent)
                        .orElseThrow(() -> table.fault(
                                row.line(),
                                "coverage is " + Refusal.plain(percent)
                                        + " %, which no field of this test plate has: check the plan's list"));
                patches.add(new MeasuredPatch(level / 1000.0, lightness, 0, 0, 1));
            }
        }
        return patches;
    }

    private static LevelPatch field(TypedTable table, TypedTable.Row row, ChartFields fields) {
        int down = whole(table, row, ROW, fields.rowCount());
        int across = whole(table, row, COLUMN, fields.columns(down));
        return fields.at(down, across);
    }

    private static int whole(TypedTable table, TypedTable.Row row, String column, int most) {
        double number = table.needed(row, column, 1, most);
        if (number != Math.rint(number)) {
            throw table.fault(
                    row.line(), column + " is " + Refusal.plain(number) + "; it must be a whole number: correct it");
        }
        return (int) number;
    }

    /** A reflection wedge on the same scan: middle and side of each patch in scan pixels, and its density. */
    static List<ScanChoices.Reference> reference(Path file) {
        TypedTable table = TypedTable.read(
                "reference",
                file,
                Map.of("x", "x", "y", "y", "side", "side", "density", TypedTable.DENSITY, "d", TypedTable.DENSITY));
        table.need("x", "y", "side", TypedTable.DENSITY);
        List<ScanChoices.Reference> references = new ArrayList<>();
        for (TypedTable.Row row : table.rows()) {
            references.add(new ScanChoices.Reference(
                    table.needed(row, "x", 0, 1_000_000),
                    table.needed(row, "y", 0, 1_000_000),
                    table.needed(row, "side", 1, 100_000),
                    table.needed(row, TypedTable.DENSITY, 0, 4)));
        }
        return references;
    }
}
