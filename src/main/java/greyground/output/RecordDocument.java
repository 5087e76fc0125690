package greyground.output;

import java.time.LocalDate;
import java.util.List;

/**
 * What the paper pages of a plate's record say.
 *
 * @param title of the work
 * @param lines about the plate, its film and what was planned
 * @param date of the latest entry; every date in the file is its midnight, UTC
 * @param program name and version
 * @param parts such as "State 1", in order
 */
public record RecordDocument(String title, List<String> lines, LocalDate date, String program, List<Part> parts) {
    public RecordDocument {
        lines = List.copyOf(lines);
        parts = List.copyOf(parts);
    }

    /** One state of the plate, or what came before the first, or its edition. */
    public record Part(String title, List<Row> rows) {
        public Part {
            rows = List.copyOf(rows);
        }
    }

    /** What was done on a day. */
    public record Row(String date, String words) {}
}
