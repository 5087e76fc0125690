package greyground.app.recipe;

import greyground.film.job.Job;
import greyground.film.sheet.Sheet;
import greyground.finding.Findings;
import greyground.grain.Grain;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Line;
import greyground.quantity.PaperShrink;
import greyground.quantity.Refusal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a film says of itself: at the head of its plan, and as the outcome of making it. */
public final class FilmWords {
    private static final double MILLIMETRES_PER_INCH = 25.4;

    private FilmWords() {}

    /** What any film's outcome says of its sheet, its plate and the side that it reads from. */
    public static Findings findings(Job job, Sheet sheet, int films) {
        return new Findings()
                .say(
                        "sheet",
                        String.format(
                                        Locale.ROOT,
                                        "%.1f x %.1f mm, %d x %d pixels",
                                        sheet.pixels().acrossMillimetres(sheet.widthPixels()),
                                        sheet.pixels().downMillimetres(sheet.heightPixels()),
                                        sheet.widthPixels(),
                                        sheet.heightPixels())
                                + (films == 1 ? "" : ", " + films + " films"),
                        new Findings()
                                .put("widthPixels", sheet.widthPixels())
                                .put("heightPixels", sheet.heightPixels())
                                .put("resolutionDotsPerInch", job.resolution().dotsPerInch()))
                .put("films", films)
                .say("size", sheet.pixels().words())
                .say(
                        "plate",
                        job.plate() + ", " + job.process().words() + ", "
                                + job.grain().name() + " at "
                                + Refusal.plain(job.resolution().dotsPerInch()) + " dpi",
                        job.plate().toString())
                .put("mirrored", job.placing().readingSide().mirrored())
                .say("reads", job.placing().readingSide().words());
    }

    /** The head of the plan: the film's facts, and how it lies. */
    public static List<Line> particulars(Job job, ExposurePlan plan) {
        List<Line> lines = new ArrayList<>();
        plan.steps().stream()
                .filter(step -> step.title().equals(BenchOrder.FILM))
                .forEach(step -> lines.addAll(step.lines()));
        lines.add(new Line("reads", job.placing().readingSide().words(), "computed", ""));
        if (!job.placing().shrink().equals(PaperShrink.NONE)) {
            lines.add(new Line(
                    "paper shrinks",
                    Refusal.plain(job.placing().shrink().acrossPercent()) + " % across, "
                            + Refusal.plain(job.placing().shrink().downPercent()) + " % down",
                    "given",
                    ""));
        }
        return lines;
    }

    /** Dots of the film's grain per inch; 0 for continuous tone. */
    static double dotsPerInch(Job job) {
        if (job.grain() instanceof Grain.Stochastic stochastic) {
            return MILLIMETRES_PER_INCH * 1000 / stochastic.spacingMicrometres();
        }
        return job.grain() instanceof Grain.Halftone halftone
                ? halftone.ruling().linesPerCentimetre() * MILLIMETRES_PER_INCH / 10
                : 0;
    }

    /** The job's date; a day that the calendar lacks is refused. */
    public static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException noSuchDay) {
            throw Refusal.use("date " + text + " is not a day of the calendar: write year-month-day");
        }
    }
}
