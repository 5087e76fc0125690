package greyground.cli;

import greyground.finding.Finding;
import greyground.finding.Findings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Findings on a terminal: each sentence behind one word, and rows of figures in columns. */
final class FindingLines {
    private static final int LEAD = 8;

    /** Words in front where they are not the finding's own key. */
    private static final Map<String, String> LEADS = Map.ofEntries(
            Map.entry("jobFile", "job"),
            Map.entry("planFile", "pages"),
            Map.entry("spotsFile", "list"),
            Map.entry("spotsPicture", "rings"),
            Map.entry("workshop", "shop"),
            Map.entry("replacedKept", "kept"),
            Map.entry("code", "codes"),
            Map.entry("printsAtLightness", "prints"),
            Map.entry("leftOut", "omits"),
            Map.entry("conditions", "known"),
            Map.entry("warnings", "look"),
            Map.entry("how", "read"),
            Map.entry("levels", "tones"),
            Map.entry("printableRange", "prints"),
            Map.entry("turningPoint", "turns"),
            Map.entry("outliers", "left"),
            Map.entry("targets", "target"),
            Map.entry("untaken", "take"),
            Map.entry("changes", "learn"),
            Map.entry("undetermined", "stays"),
            Map.entry("entries", "done"),
            Map.entry("notes", "note"));

    /** Levels in thousandths that say enough of a wedge. */
    private static final List<Integer> SHOWN = List.of(0, 10, 30, 100, 200, 300, 500, 700, 800, 850, 900, 950, 1000);

    private static final Map<String, Table> TABLES = Map.of(
            "levels",
            new Table(
                    row -> SHOWN.contains((int) Math.rint(row.number("coverage").orElse(0) * 1000)),
                    new Column("film", "coverage", 100, "%.1f %%"),
                    new Column("measured", "lightness", 1, "L* %.1f"),
                    new Column("scatter", "halfWidth", 1, "\u00b1%.1f"),
                    new Column("in all", "halfWidthInAll", 1, "\u00b1%.1f"),
                    new Column("predicted", "predicted", 1, "%.1f"),
                    new Column("taught", "taught", 1, "%.1f")),
            "tones",
            new Table(
                    row -> true,
                    new Column("film", "coveragePercent", 1, "%.1f %%"),
                    new Column("should print", "statedLightness", 1, "L* %.1f"),
                    new Column("printed", "lightness", 1, "%.1f"),
                    new Column("off", "off", 1, "%+.1f"),
                    new Column("95 %", "half95", 1, "\u00b1%.1f"),
                    new Column("spread", "spread", 1, "%.1f"),
                    new Column("fields", "fields", 1, "%.0f"),
                    new Column("off uncalibrated", "offUncalibrated", 1, "%+.1f")),
            "fields",
            new Table(
                    row -> true,
                    new Column("film", "coveragePercent", 1, "%.1f %%"),
                    new Column("readings", "readings", 1, "%.0f"),
                    new Column("density", "density", 1, "%.3f"),
                    new Column("predicted", "predictedDensity", 1, "%.3f"),
                    new Column("ink covers", "inkCoversPercent", 1, "%.1f %%")));

    private FindingLines() {}

    /**
     * A column.
     *
     * @param key of the figure; a row without it leaves the place empty
     * @param times the figure is shown so many times as large, such as 100 for a share in %
     */
    private record Column(String head, String key, double times, String format) {
        String cell(Findings row) {
            OptionalDouble figure = row.number(key);
            return figure.isPresent() ? String.format(Locale.ROOT, format, times * figure.getAsDouble()) : "";
        }
    }

    private record Table(Predicate<Findings> shown, List<Column> columns) {
        Table(Predicate<Findings> shown, Column... columns) {
            this(shown, List.of(columns));
        }

        List<String> lines(String lead, List<Findings> rows) {
            List<Findings> told = rows.stream().filter(shown).toList();
            List<Column> filled = columns.stream()
                    .filter(column -> told.stream()
                            .anyMatch(row -> row.number(column.key()).isPresent()))
                    .toList();
            List<List<String>> cells = new ArrayList<>();
            cells.add(filled.stream().map(Column::head).toList());
            told.forEach(row ->
                    cells.add(filled.stream().map(column -> column.cell(row)).toList()));
            List<String> lines = new ArrayList<>();
            for (List<String> row : cells) {
                StringBuilder line = new StringBuilder(lines.isEmpty() ? lead : " ".repeat(LEAD));
                for (int i = 0; i < row.size(); i++) {
                    int column = i;
                    int width = cells.stream()
                            .mapToInt(each -> each.get(column).length())
                            .max()
                            .orElse(0);
                    line.append(i == 0 ? "" : "  ")
                            .append(" ".repeat(width - row.get(i).length()))
                            .append(row.get(i));
                }
                lines.add(line.toString().stripTrailing());
            }
            return lines;
        }
    }

    /** All that has words or columns, in the findings' order. */
    static List<String> of(Findings findings) {
        return findings.all().stream().flatMap(each -> lines(each, findings)).toList();
    }

    static String lead(String key) {
        return String.format(Locale.ROOT, "%-" + LEAD + "s", LEADS.getOrDefault(key, key));
    }

    private static Stream<String> lines(Finding finding, Findings all) {
        String lead = lead(finding.key());
        Table table = TABLES.get(finding.key());
        return table != null && finding.figures().isArray()
                ? table.lines(lead, all.rows(finding.key())).stream()
                : finding.words().stream().map(words -> lead + words);
    }
}
