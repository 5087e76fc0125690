package greyground.app;

import greyground.film.Job;
import greyground.grain.Grain;
import greyground.plan.ExposurePlan.Line;
import greyground.plate.PlateProcess;
import greyground.quantity.PaperShrink;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What is written on the film sheet and at the head of its plan. */
final class FilmWords {
    private static final double MILLIMETRES_PER_INCH = 25.4;

    private FilmWords() {}

    /** Legends of the positive. */
    static List<String> positive(Job job, Workshop workshop, String curveName, String planSummary) {
        List<String> words = common(job);
        words.add(job.grain().name() + " at " + Refusal.plain(job.resolution().dotsPerInch()) + " dpi; curve: "
                + curveName + (workshop.name().isEmpty() ? "" : "; workshop: " + workshop.name()));
        words.add(planSummary);
        words.add(job.placing().readingSide().legend() + " ("
                + job.placing().readingSide().words() + ")");
        return words;
    }

    /** Legends of the aquatint screen film. */
    static List<String> screen(Job job, PlateProcess.Photogravure screen) {
        List<String> words = common(job);
        words.add("AQUATINT SCREEN, exposed by itself: " + Refusal.plain(screen.screenBlack() * 100)
                + " % black, spacing "
                + Refusal.plain(screen.screenSpacingMicrometres()) + " um at "
                + Refusal.plain(job.resolution().dotsPerInch())
                + " dpi");
        words.add(job.placing().readingSide().legend() + " ("
                + job.placing().readingSide().words() + ")");
        return words;
    }

    private static List<String> common(Job job) {
        List<String> words = new ArrayList<>();
        String dated = job.date().isEmpty() ? "" : "  " + job.date();
        words.add(job.title() + dated + "  plate " + job.plate() + ", "
                + job.process().word());
        return words;
    }

    /** The head of the plan. */
    static List<Line> particulars(Job job, String curveName) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line("plate", job.plate().toString(), "given", ""));
        lines.add(new Line("process", job.process().word(), "given", ""));
        lines.add(new Line(
                "film",
                Refusal.plain(job.resolution().dotsPerInch()) + " dpi, "
                        + job.grain().name(),
                "given",
                ""));
        lines.add(new Line("curve", curveName, "computed", ""));
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
    static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException noSuchDay) {
            throw Refusal.use("date " + text + " is not a day of the calendar: write year-month-day");
        }
    }
}
