package greyground.film.job;

import greyground.grain.Grain;
import greyground.json.KeptField;
import greyground.json.KeptRecord;
import greyground.plate.PlateProcess;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import greyground.tone.RangeMapping;
import java.util.List;
import java.util.Optional;

/**
 * Everything about one film that is not the workshop: with the workshop, the art's bytes and the program's version it decides
 * every bit.
 *
 * @param title printed on the film, at most 120 characters
 * @param date printed on the film, year-month-day, or empty; given by the job, never by the clock
 * @param plate the copper's size
 * @param process how the plate is made
 * @param resolution of the film printer
 * @param grain how the film carries tone
 * @param art which picture, which part
 * @param placing how it lies on plate and sheet
 * @param rangeMapping which print lightness each grey of the art asks for
 * @param mended whether blacks are made solid where the plate holds them: {@code compose.Mend}
 * @param reserve share of film black that the curve stops short of the turning point; empty for as much as the workshop's own
 *     uncertainty asks for
 * @param kept fields that this version of the program does not know, written back as they were
 */
public record Job(
        String title,
        String date,
        Size plate,
        PlateProcess process,
        Resolution resolution,
        Grain grain,
        ArtChoice art,
        Placing placing,
        RangeMapping rangeMapping,
        boolean mended,
        Optional<Double> reserve,
        List<KeptField> kept) {
    /** Reserves before the turning point. */
    public static final Range RESERVE = new Range(0, 0.3, Unit.SHARE, "2 to 5 % is usual, 0 goes to the turning point");

    /** A film of less has no room for its marks; the most is assumed. */
    public static final Range PLATE_SIDE = new Range(30, 3000, Unit.MILLIMETRES, "give the copper's size");

    private static final int LONGEST_TITLE = 120;

    /** Words as a title: one line, shortened where it must be. */
    public static String titleOf(String words) {
        String line = words.replaceAll("[\\x00-\\x1f\\x7f-\\x9f]+", " ").strip();
        int end = LONGEST_TITLE - 3;
        return line.length() <= LONGEST_TITLE
                ? line
                : line.substring(0, Character.isHighSurrogate(line.charAt(end - 1)) ? end - 1 : end) + "...";
    }

    public Job {
        kept = List.copyOf(kept);
        if (title.length() > LONGEST_TITLE || title.chars().anyMatch(Character::isISOControl)) {
            throw Refusal.use("title has " + title.length() + " characters; it must be one line of at most "
                    + LONGEST_TITLE + ": shorten it");
        }
        if (!date.isEmpty() && !date.matches("[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])")) {
            throw Refusal.use("date \"" + date + "\" is not year-month-day: write it like 2026-03-31");
        }
        reserve.ifPresent(share -> RESERVE.check("reserve", share));
        PLATE_SIDE.check("plate width", plate.widthMillimetres());
        PLATE_SIDE.check("plate height", plate.heightMillimetres());
        boolean continuous = grain instanceof Grain.Continuous;
        if (mended && continuous) {
            throw Refusal.use(
                    "a continuous-tone film has no grain to mend: leave out --mend, or use --grain or --ruling");
        }
        if (process instanceof PlateProcess.Photogravure && !continuous) {
            throw Refusal.use("photogravure needs a continuous-tone film, but the job asks for " + grain.name()
                    + ": leave out --grain and --ruling, the aquatint screen is a film of its own");
        }
        if (continuous && !(process instanceof PlateProcess.Photogravure)) {
            // On an unetched plate, too: an even film has no lands, so the pad would wipe it clean.
            throw Refusal.use(
                    process.word() + " needs a grain or a halftone, but the job asks for continuous tone: use --grain"
                            + " or --ruling, or the process photogravure, whose screen film makes the lands");
        }
    }

    /** The same job with one part replaced, such as "placing.fit". */
    Job with(String path, Object value) {
        return (Job) KeptRecord.with(this, path, value);
    }

    /** The same job with its art settled: digest, white and black as numbers. */
    public Job settled(ArtChoice settledArt) {
        return with("art", settledArt);
    }

    /** The same job lying otherwise on plate and sheet. */
    public Job placed(Placing other) {
        return with("placing", other);
    }

    /** The same job with its blacks left as the grain makes them. */
    public Job unmended() {
        return with("mended", false);
    }

    /** The same job with other fields that this class does not know, such as a bench's notes. */
    public Job keeping(List<KeptField> other) {
        return with("kept", other);
    }
}
