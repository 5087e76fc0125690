package greyground.app;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Readings as a table of numbers, the first line naming the columns: values between commas, semicolons or tabs. Lines that are
 * empty or begin with # are passed over.
 *
 * @param names of the columns, in small letters
 * @param rows one number for each column
 */
record ReadingTable(List<String> names, List<List<Double>> rows) {
    private static final int MOST_ROWS = 10_000;

    ReadingTable {
        names = List.copyOf(names);
        rows = List.copyOf(rows);
    }

    /**
     * Reads a table.
     *
     * @param what the readings' name, used when refusing
     */
    static ReadingTable of(String what, String text) {
        List<String> lines = text.lines()
                .map(line -> line.strip().replace("\uFEFF", ""))
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .limit(MOST_ROWS + 2L)
                .toList();
        if (lines.size() < 2 || lines.size() > MOST_ROWS + 1) {
            throw Refusal.use(
                    what + " have " + Math.max(0, lines.size() - 1) + " rows below their heading; they must have 1 to "
                            + MOST_ROWS + ": write one reading a line, such as 50,0.41 below coverage,density");
        }
        String separator = lines.get(0).contains(";") ? ";" : lines.get(0).contains("\t") ? "\t" : ",";
        List<String> names = cells(lines.get(0), separator).stream()
                .map(name -> name.toLowerCase(Locale.ROOT))
                .toList();
        List<List<Double>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            List<String> cells = cells(line, separator);
            if (cells.size() != names.size()) {
                throw Refusal.use(what + " line \"" + shown(line) + "\" has " + cells.size() + " values; it must have "
                        + names.size() + " like the heading: correct the line");
            }
            rows.add(cells.stream()
                    .map(cell -> number(what, separator.equals(",") ? cell : cell.replace(',', '.')))
                    .toList());
        }
        return new ReadingTable(names, rows);
    }

    private static List<String> cells(String line, String separator) {
        return Arrays.stream(line.split(separator, -1)).map(String::strip).toList();
    }

    private static double number(String what, String cell) {
        String digits =
                cell.endsWith("%") ? cell.substring(0, cell.length() - 1).strip() : cell;
        if (!digits.matches("[-+]?[0-9]{1,9}(\\.[0-9]{0,12})?")) {
            throw Refusal.use(what + " hold \"" + shown(cell) + "\"; every value must be a number: correct it");
        }
        return Double.parseDouble(digits);
    }

    private static String shown(String text) {
        return text.length() > 40 ? text.substring(0, 40) + "..." : text;
    }

    /** Place of a column, or -1 where there is none of that name. */
    int column(String name) {
        return names.indexOf(name);
    }
}
