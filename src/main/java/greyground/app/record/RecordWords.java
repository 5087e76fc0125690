package greyground.app.record;

import greyground.app.files.RecordFile;
import greyground.quantity.Durations;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.states.Entry;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a person writes down of a plate, in the words they give, such as bitten "12min" and printed "1-10/25".
 *
 * @param given words by name: date, exposed, bitten, bath-temperature, bath-copper, reworked, depth, weighed, proof, proof-density, printed,
 *     note, strike, title; other names are ignored
 */
public record RecordWords(Map<String, String> given) {
    private static final Pattern PRINTED =
            Pattern.compile("\\s*(\\d{1,6})\\s*(?:-\\s*(\\d{1,6})\\s*)?/\\s*(\\d{1,6})\\s*");

    private static final List<String> BATH = List.of("bath-temperature", "bath-copper");

    /** In minutes. */
    private static final double HALF_SECOND = 0.5 / 60;

    public RecordWords {
        given = Map.copyOf(given);
        for (String bath : BATH) {
            if (given.containsKey(bath) && !given.containsKey("bitten")) {
                throw Refusal.use(
                        "--" + bath + " is given without a bite; it belongs to one: add --bitten, such as 12min");
            }
        }
    }

    /**
     * What a question about the bite told.
     *
     * @param given words as {@link greyground.app.bite.BiteWords} takes them; bitten counts from the first minute on
     * @param bittenMinutes on record already
     */
    static RecordWords told(Map<String, String> given, double bittenMinutes) {
        Map<String, String> told = new HashMap<>();
        Map.of(
                        "proof-density", "proof-density",
                        "proof-depth", "depth",
                        "weighed", "weighed")
                .forEach((asked, name) -> {
                    if (given.containsKey(asked)) {
                        told.put(name, given.get(asked));
                    }
                });
        String[] bitten = given.getOrDefault("bitten", "").split("\n", -1);
        String last = bitten[bitten.length - 1];
        if (!last.isEmpty()) {
            double minutes = Unit.MINUTES.parse("minutes bitten so far", last) - bittenMinutes;
            if (minutes < -HALF_SECOND) {
                throw Refusal.use("bitten so far is " + last + "; the record has " + Refusal.plain(bittenMinutes)
                        + " min already, and it must not be less: correct it, or strike an entry of the record out");
            }
            if (minutes > HALF_SECOND) {
                told.put("bitten", minutes + "min");
                for (String bath : BATH) {
                    if (given.containsKey(bath)) {
                        told.put(bath, given.get(bath));
                    }
                }
            }
        }
        return new RecordWords(told);
    }

    Optional<String> title() {
        return Optional.ofNullable(given.get("title"));
    }

    /** The day of what is written down. */
    LocalDate date(LocalDate today) {
        String date = given.get("date");
        try {
            return date == null ? today : LocalDate.parse(date.strip());
        } catch (DateTimeParseException fault) {
            throw Refusal.use("date is \"" + date + "\"; it must be a day such as 2026-03-04: write year-month-day");
        }
    }

    /** The number of the entry to strike out. */
    Optional<Integer> strike() {
        String number = given.get("strike");
        if (number == null) {
            return Optional.empty();
        }
        if (!number.strip().matches("\\d{1,6}")) {
            throw Refusal.use(
                    "the entry to strike out is \"" + number + "\"; it must be its number: look at the record first");
        }
        return Optional.of(Integer.parseInt(number.strip()));
    }

    /** Everything that was done, in the order in which a plate meets it; files that are named are read. */
    List<Entry> entries() {
        List<Entry> entries = new ArrayList<>();
        word("exposed").map(RecordWords::exposed).ifPresent(entries::add);
        word("reworked").map(Entry.Reworked::new).ifPresent(entries::add);
        word("bitten").map(this::bitten).ifPresent(entries::add);
        OptionalDouble depth = number("depth", "depth", Entry.Measured.DEPTH);
        OptionalDouble lost = number("weighed", "copper lost", Entry.Measured.LOST);
        if (depth.isPresent() || lost.isPresent()) {
            entries.add(new Entry.Measured(depth, lost));
        }
        if (given.containsKey("proof") || given.containsKey("proof-density")) {
            entries.add(new Entry.Proofed(
                    word("proof").filter(name -> !name.isEmpty()).map(name -> RecordFile.named("scan", Path.of(name))),
                    number("proof-density", "density of the proof's solid", Entry.Proofed.DENSITY)));
        }
        word("printed").map(RecordWords::printed).ifPresent(entries::add);
        word("note").map(Entry.Noted::new).ifPresent(entries::add);
        return entries;
    }

    private Optional<String> word(String name) {
        return Optional.ofNullable(given.get(name));
    }

    private OptionalDouble number(String name, String what, Range range) {
        @Nullable String text = given.get(name);
        return text == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(range.check(what, range.unit().parse(what, text)));
    }

    /** Screen and image time with a plus between them, or the image's alone. */
    private static Entry exposed(String text) {
        String[] parts = text.split("\\+", -1);
        if (parts.length > 2) {
            throw Refusal.use("exposure is \"" + text
                    + "\"; it must be one time, or screen and image time with a plus between: write 60s+90s");
        }
        double screen = parts.length == 2 ? Durations.parseSeconds("screen exposure", parts[0]) : 0;
        return new Entry.Exposed(screen, Durations.parseSeconds("image exposure", parts[parts.length - 1]));
    }

    private Entry bitten(String text) {
        Range minutes = Entry.Bitten.MINUTES;
        return new Entry.Bitten(
                minutes.check("time in the bath", minutes.unit().parse("time in the bath", text)),
                number("bath-temperature", "the bath's temperature", Entry.Bitten.CELSIUS),
                number("bath-copper", "copper in the bath", Entry.Bitten.COPPER));
    }

    private static Entry printed(String text) {
        Matcher matcher = PRINTED.matcher(text);
        if (!matcher.matches()) {
            throw Refusal.use("printed is \"" + text
                    + "\"; it must be numbers of the edition and its size: write 1-10/25, or 7/25");
        }
        int first = Integer.parseInt(matcher.group(1));
        int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
        return new Entry.Printed(first, last, Integer.parseInt(matcher.group(3)));
    }
}
