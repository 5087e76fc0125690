package greyground.states;

import greyground.json.KeptField;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A plate's record: what it is, and all that was done to it. Entries are only ever added or struck out, so that an entry's number stays its
 * own.
 *
 * @param title of the work, 1 to 500 letters
 * @param plate its size and what it carries, in a line; may be empty
 * @param film that the record began with
 * @param planned at the beginning, such as "Bite 20 min"
 * @param lines entries as they were written down, at most {@value #MOST_LINES}
 * @param unknown fields of its file that this version doesn't know
 */
public record PlateRecord(
        String title,
        String plate,
        Optional<NamedFile> film,
        List<String> planned,
        List<Line> lines,
        List<KeptField> unknown) {
    static final int LONGEST_TEXT = 500;
    static final int MOST_LINES = 10_000;

    /**
     * A line of the record.
     *
     * @param date of what was done, not of when it was written down
     * @param struck whether it was struck out: it stays readable and counts for nothing
     */
    public record Line(LocalDate date, Entry entry, boolean struck) {
        public Line {
            if (date.getYear() < 1900 || date.getYear() > 9999) {
                throw Refusal.use(
                        "the entry's date is " + date + "; its year must lie between 1900 and 9999: correct it");
            }
        }
    }

    /**
     * A line with its place in the story.
     *
     * @param number from 1, as it was written down
     * @param state that the plate was in, or came into by it; 0 before its first bite
     */
    public record Placed(int number, int state, Line line) {}

    public PlateRecord {
        planned = List.copyOf(planned);
        lines = List.copyOf(lines);
        unknown = List.copyOf(unknown);
        if (title.isBlank() || title.length() > LONGEST_TEXT) {
            throw Refusal.use("the plate's title has " + title.strip().length() + " letters; it must have 1 to "
                    + LONGEST_TEXT + ": give a short title");
        }
        if (lines.size() > MOST_LINES) {
            throw Refusal.use("the record has " + lines.size() + " entries; it must have at most " + MOST_LINES
                    + ": begin a new record");
        }
        checkEdition(lines);
    }

    /** A record without any entry yet. */
    public static PlateRecord begun(String title, String plate, Optional<NamedFile> film, List<String> planned) {
        return new PlateRecord(title, plate, film, planned, List.of(), List.of());
    }

    /** With one more entry. */
    public PlateRecord with(LocalDate date, Entry entry) {
        List<Line> more = new ArrayList<>(lines);
        more.add(new Line(date, entry, false));
        return new PlateRecord(title, plate, film, planned, more, unknown);
    }

    /**
     * With an entry struck out.
     *
     * @param number of it, from 1
     */
    public PlateRecord struck(int number) {
        if (number < 1 || number > lines.size() || lines.get(number - 1).struck()) {
            String numbers = lines.isEmpty() ? "there is none yet" : "it must be one of 1 to " + lines.size();
            throw Refusal.use("there is no entry " + number + " that could be struck out; " + numbers
                    + " that isn't struck out yet: look at the record first");
        }
        List<Line> changed = new ArrayList<>(lines);
        Line line = lines.get(number - 1);
        changed.set(number - 1, new Line(line.date(), line.entry(), true));
        return new PlateRecord(title, plate, film, planned, changed, unknown);
    }

    /**
     * Every line in order of its date, those of one day as they were written down. The first bite brings the plate into state 1; a bite or
     * work on the copper after a proof brings it into the next, since states of a print are told apart by their proofs (common practice, no
     * source).
     */
    public List<Placed> story() {
        List<Placed> story = new ArrayList<>();
        int state = 0;
        boolean proofed = false;
        List<Integer> order = IntStream.range(0, lines.size())
                .boxed()
                .sorted(Comparator.comparing(i -> lines.get(i).date()))
                .toList();
        for (int i : order) {
            Line line = lines.get(i);
            Entry entry = line.entry();
            if (!line.struck()) {
                boolean changes = entry instanceof Entry.Bitten || entry instanceof Entry.Reworked;
                if (changes && (state == 0 || proofed)) {
                    state++;
                    proofed = false;
                }
                proofed |= entry instanceof Entry.Proofed;
            }
            story.add(new Placed(i + 1, state, line));
        }
        return story;
    }

    /** Minutes in the bath until now. */
    public double bittenMinutes() {
        return lines.stream()
                .filter(line -> !line.struck())
                .mapToDouble(line -> line.entry() instanceof Entry.Bitten bite ? bite.minutes() : 0)
                .sum();
    }

    /** How far the edition is, such as "12 of 25 printed"; empty before its first print. */
    public Optional<String> edition() {
        List<Entry.Printed> printed = printed(lines);
        if (printed.isEmpty()) {
            return Optional.empty();
        }
        int count =
                printed.stream().mapToInt(one -> one.last() - one.first() + 1).sum();
        return Optional.of(count + " of " + printed.get(0).edition() + " printed");
    }

    private static List<Entry.Printed> printed(List<Line> lines) {
        return lines.stream()
                .filter(line -> !line.struck() && line.entry() instanceof Entry.Printed)
                .map(line -> (Entry.Printed) line.entry())
                .toList();
    }

    /** No number is printed twice, and an edition has one size. */
    private static void checkEdition(List<Line> lines) {
        List<Entry.Printed> printed = printed(lines);
        for (int i = 0; i < printed.size(); i++) {
            Entry.Printed one = printed.get(i);
            if (one.edition() != printed.get(0).edition()) {
                throw Refusal.use("the edition is " + one.edition() + "; it must be "
                        + printed.get(0).edition() + " as before: correct it, or strike the earlier entry out");
            }
            for (Entry.Printed before : printed.subList(0, i)) {
                int first = Math.max(one.first(), before.first());
                if (first <= Math.min(one.last(), before.last())) {
                    throw Refusal.use(
                            "number " + first + " of the edition is printed already; a number must stand once:"
                                    + " correct it, or strike the earlier entry out");
                }
            }
        }
    }
}
