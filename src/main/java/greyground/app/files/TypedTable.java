package greyground.app.files;

import greyground.quantity.Refusal;
import greyground.tone.Lightness;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A table that somebody typed or exported: one header line with the columns' names, then a line for each row. Cells stand between commas,
 * semicolons or tabs, whichever the header has; between semicolons or tabs a decimal comma is taken as a point. Blank lines and those
 * that begin with # are passed over. A fault is named by its line.
 */
public final class TypedTable {
    /** A column of lightness; that of density holds densities with the paper included. */
    public static final String LIGHTNESS = "L*";

    public static final String DENSITY = "density";

    private final String name;
    private final List<String> columns;
    private final List<Row> rows = new ArrayList<>();

    private TypedTable(String name, List<String> columns) {
        this.name = name;
        this.columns = columns;
    }

    /**
     * One row.
     *
     * @param line of the file, from 1
     */
    public record Row(int line, List<String> cells) {}

    /**
     * Reads a table.
     *
     * @param what the trade's name of the file
     * @param names of each column that may be there, by what a person may call it, in lower case
     */
    public static TypedTable read(String what, Path file, Map<String, String> names) {
        String[] lines = text(what, file).split("\\R", -1);
        TypedTable table = null;
        String separator = ",";
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            if (table == null) {
                separator = line.contains("\t") ? "\t" : line.contains(";") ? ";" : ",";
                table = new TypedTable(
                        String.valueOf(file.getFileName()), columns(file, i + 1, cells(line, separator), names));
                continue;
            }
            List<String> cells = cells(lines[i], separator);
            if (cells.size() != table.columns.size()) {
                throw table.fault(
                        i + 1,
                        "has " + cells.size() + " cells where the header has " + table.columns.size()
                                + (separator.equals(",") && cells.size() > table.columns.size()
                                        ? ": with decimal commas put semicolons between cells"
                                        : ": correct it"));
            }
            table.rows.add(new Row(i + 1, cells));
        }
        if (table == null || table.rows.isEmpty()) {
            throw Refusal.use(
                    file.getFileName() + " holds no rows; it must have a header line such as row,column,density and"
                            + " a line for each field: fill it in");
        }
        return table;
    }

    private static List<String> columns(Path file, int line, List<String> header, Map<String, String> names) {
        Map<String, String> known = new HashMap<>(names);
        List<String> columns = new ArrayList<>();
        for (String cell : header) {
            String column = known.get(cell.toLowerCase(Locale.ROOT));
            if (column == null || columns.contains(column)) {
                throw Refusal.use(file.getFileName() + " line " + line + ": the column \"" + cell + "\" is "
                        + (column == null ? "unknown" : "there twice") + "; the header line names "
                        + String.join(
                                ", ",
                                names.values().stream().distinct().sorted().toList()) + ": correct it");
            }
            columns.add(column);
        }
        return columns;
    }

    private static List<String> cells(String line, String separator) {
        return Arrays.stream(line.split(separator, -1))
                .map(cell -> cell.strip().replaceAll("^\"(.*)\"$", "$1").strip())
                .toList();
    }

    private static String text(String what, Path file) {
        if (!Files.isRegularFile(file)) {
            throw Refusal.failure("there is no file of " + what + " " + file + ": check the name");
        }
        String text = KeptFiles.decoded(what, file, KeptFiles.bytes(what, file));
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    public List<Row> rows() {
        return rows;
    }

    public boolean has(String column) {
        return columns.contains(column);
    }

    public void need(String... wanted) {
        for (String column : wanted) {
            if (!has(column)) {
                throw Refusal.use(
                        name + " has no column \"" + column + "\": add it to the header line and to each row");
            }
        }
    }

    /** Refuses a table whose tones aren't all told alike, as L* or as density. */
    public void needTones() {
        if (has(DENSITY) == has(LIGHTNESS)) {
            throw Refusal.use(name + " must have one column of density or one of L*: correct its header line");
        }
    }

    /** L* of a row's tone, however it is told. */
    public double lightness(Row row) {
        return has(LIGHTNESS) ? needed(row, LIGHTNESS, 0, 100) : Lightness.ofDensity(needed(row, DENSITY, 0, 4));
    }

    /** A number in [least, most]; empty where the cell is. */
    public Optional<Double> number(Row row, String column, double least, double most) {
        int at = columns.indexOf(column);
        if (at < 0 || row.cells().get(at).isEmpty()) {
            return Optional.empty();
        }
        String typed = row.cells().get(at);
        try {
            double value = Double.parseDouble(typed.replace(',', '.').replaceFirst("\\s*%$", ""));
            if (value >= least && value <= most) {
                return Optional.of(value);
            }
        } catch (NumberFormatException notNumber) {
            // Refused below, like a number out of range.
        }
        String shown = typed.length() > 40 ? typed.substring(0, 40) + "..." : typed;
        throw fault(
                row.line(),
                column + " is \"" + shown + "\"; it must be a number from " + Refusal.plain(least) + " to "
                        + Refusal.plain(most) + ": correct it");
    }

    public double needed(Row row, String column, double least, double most) {
        return number(row, column, least, most)
                .orElseThrow(() -> fault(row.line(), "has no " + column + ": fill it in, or leave the whole line out"));
    }

    public Refusal fault(int line, String words) {
        return Refusal.use(name + " line " + line + ": " + words);
    }
}
