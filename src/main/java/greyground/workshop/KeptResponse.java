package greyground.workshop;

import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredResponse;
import greyground.json.KeptField;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.List;

/**
 * The tones that a test plate of this shop was measured to print, kept with the workshop: films for plates made alike take their curve from
 * it.
 *
 * @param date of the test plate's print
 * @param chart by which its film is known, such as "PEGEO"
 * @param how it was read, one line, such as "scan at 300 pixels per inch"
 * @param making how the test plate was made
 * @param levels in order of coverage, from bare paper; {@value #FEWEST_LEVELS} to {@value #MOST_LEVELS}
 * @param kept fields of its object in the file that this version does not know, placed within that object
 */
public record KeptResponse(
        LocalDate date,
        String chart,
        String how,
        PlateMaking making,
        List<MeasuredLevel> levels,
        List<KeptField> kept) {
    /** Fewest levels that make a response. */
    public static final int FEWEST_LEVELS = MeasuredResponse.FEWEST_LEVELS;

    /** More than any test plate has. */
    public static final int MOST_LEVELS = 1000;

    public KeptResponse {
        levels = List.copyOf(levels);
        kept = List.copyOf(kept);
        checkLine("chart", chart, 40);
        checkLine("how it was read", how, 300);
        Refusal.checkRange(
                "levels of a measured response",
                levels.size(),
                FEWEST_LEVELS,
                MOST_LEVELS,
                "",
                "restore the workshop file or read the test plate again");
        double before = -1;
        for (MeasuredLevel level : levels) {
            check(level);
            if (level.coverage() <= before || (before < 0 && level.coverage() != 0)) {
                throw Refusal.use("a measured response has coverage " + Refusal.plain(level.coverage())
                        + (before < 0 ? " first" : " after " + Refusal.plain(before))
                        + "; coverages must rise from 0: put its levels in order");
            }
            before = level.coverage();
        }
    }

    private static void checkLine(String what, String text, int longest) {
        if (text.isBlank() || text.length() > longest || text.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.use("measured response's " + what + " is \"" + text + "\"; it must be one line of 1 to "
                    + longest + " characters: say it in a few words");
        }
    }

    private static void check(MeasuredLevel level) {
        String mend = "read the test plate again";
        Refusal.checkRange("measured coverage", level.coverage(), 0, 1, "", mend);
        Refusal.checkRange("measured lightness", level.lightness(), 0, 100, "L*", mend);
        Refusal.checkRange("repeats of a measured level", level.repeats(), 0.01, 100_000, "", mend);
        Refusal.checkRange("standard deviation of a measured level", level.standardDeviation(), 0, 100, "L*", mend);
        Refusal.checkRange("degrees of freedom of a measured level", level.degrees(), 1, 1_000_000, "", mend);
    }

    /** The same with fields that this version does not know. */
    KeptResponse keeping(List<KeptField> unknown) {
        return new KeptResponse(date, chart, how, making, levels, unknown);
    }

    /** For legends and records: "measured on 2026-03-04, chart PEGEO". */
    public String words() {
        return "measured on " + date + ", chart " + chart;
    }

    public MeasuredResponse response() {
        return MeasuredResponse.kept(words(), levels);
    }
}
