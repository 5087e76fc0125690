package greyground.quantity;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads and prints how long a step takes: {@code "90 s"}, {@code "12min"}, {@code "1.5h"}, {@code "2:30"} (minutes and
 * seconds), {@code "1:02:30"}, {@code "1h 20min"}, {@code "2min 30s"}. A bare number is refused: seconds and minutes are
 * both in use at the lamp.
 */
public final class Durations {
    private static final double LONGEST_SECONDS = 7 * 24 * 3600.0;
    private static final Pattern CLOCK = Pattern.compile("(?:([0-9]{1,3}):)?([0-9]{1,4}):([0-9]{2}(?:[.,][0-9]+)?)");
    private static final Pattern PART = Pattern.compile("([0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)\\s*([^0-9\\s.,]+)\\s*");
    private static final Map<String, Double> SECONDS_PER_UNIT = Map.ofEntries(
            Map.entry("s", 1.0),
            Map.entry("sec", 1.0),
            Map.entry("second", 1.0),
            Map.entry("seconds", 1.0),
            Map.entry("min", 60.0),
            Map.entry("minute", 60.0),
            Map.entry("minutes", 60.0),
            Map.entry("h", 3600.0),
            Map.entry("hour", 3600.0),
            Map.entry("hours", 3600.0));
    private static final String KIND = "a duration";
    private static final String REMEDY =
            "write a number and a unit, such as 90s, 12min or 1h, or minutes:seconds, 2:30";

    private Durations() {}

    /**
     * Reads a duration.
     *
     * @param what the trade's name of the step, used when refusing
     * @return seconds, 0 to 604 800 (a week)
     */
    public static double parseSeconds(String what, String text) {
        String typed = text.strip();
        Matcher clock = CLOCK.matcher(typed);
        double seconds = clock.matches() ? clock(what, text, clock) : parts(what, text, typed);
        return Refusal.checkRange(what, seconds, 0, LONGEST_SECONDS, "s", "give the time of this step alone");
    }

    private static double clock(String what, String text, Matcher clock) {
        double seconds = Double.parseDouble(clock.group(3).replace(',', '.'));
        double minutes = Double.parseDouble(clock.group(2));
        boolean withHours = clock.group(1) != null;
        if (seconds >= 60 || (withHours && minutes >= 60)) {
            throw Refusal.use(what + " " + Measure.quoted(text) + " is not " + KIND
                    + ": what stands after a colon must be below 60, such as 2:30");
        }
        double hours = withHours ? Double.parseDouble(clock.group(1)) : 0;
        return hours * 3600 + minutes * 60 + seconds;
    }

    private static double parts(String what, String text, String typed) {
        Matcher part = PART.matcher(typed);
        double seconds = 0;
        double coarser = Double.POSITIVE_INFINITY;
        int end = 0;
        while (end < typed.length() && part.find(end) && part.start() == end) {
            Measure measure = Measure.parse(what, part.group().strip(), KIND, REMEDY);
            double scale = new Measure(1, measure.unit()).in(SECONDS_PER_UNIT, what, text, "s, min or h");
            // "30s 2min" or "5min 5min" is a slip, not a sum.
            if (scale >= coarser) {
                break;
            }
            coarser = scale;
            seconds += measure.number() * scale;
            end = part.end();
        }
        if (end == 0) {
            return Measure.parse(what, text, KIND, REMEDY).in(SECONDS_PER_UNIT, what, text, "s, min or h");
        }
        if (end < typed.length()) {
            throw Refusal.use(what + " " + Measure.quoted(text) + " is not " + KIND + ": " + REMEDY);
        }
        return seconds;
    }

    /**
     * Prints a duration as it is said at the lamp: {@code "90 s"}, {@code "2 min 30 s"}, {@code "27 min"}, {@code "1 h 5 min"}.
     * Up to two minutes it stays in seconds, with a tenth below ten; from an hour on, seconds are dropped.
     *
     * @param seconds 0 or more
     */
    public static String format(double seconds) {
        if (seconds < 10) {
            return Refusal.plain(Math.rint(seconds * 10) / 10) + " s";
        }
        long whole = Math.round(seconds);
        if (whole < 120) {
            return whole + " s";
        }
        if (whole < 3600) {
            return whole / 60 + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
        }
        long minutes = Math.round(seconds / 60);
        return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }
}
