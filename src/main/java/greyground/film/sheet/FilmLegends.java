package greyground.film.sheet;

import greyground.film.job.Job;
import greyground.film.job.ReadingSide;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/** What stands in words at the foot of every film. */
public final class FilmLegends {
    private FilmLegends() {}

    /**
     * The picture's positive.
     *
     * @param pixels of the film printer
     * @param curveName of the tone curve it went through
     * @param exposureSummary one line from the plan, may be empty
     */
    public static List<String> positive(Job job, FilmPixels pixels, String curveName, String exposureSummary) {
        return legends(job, pixels, job.grain().name() + ", curve: " + curveName, exposureSummary);
    }

    /**
     * The aquatint screen film of the photogravure process.
     *
     * @param screenBlack share of the film that is black, 0 to 1
     * @param spacingMicrometres mean spacing of its dots
     */
    public static List<String> screen(
            Job job, FilmPixels pixels, double screenBlack, double spacingMicrometres, String exposureSummary) {
        return legends(
                job,
                pixels,
                "aquatint screen, " + Refusal.plain(screenBlack * 100) + " % black, "
                        + Refusal.plain(spacingMicrometres) + " µm",
                exposureSummary);
    }

    /**
     * A test plate's film.
     *
     * @param chart which chart it is, in a few words
     * @param contents lines that tell what stands on the plate
     */
    public static List<String> testPlate(
            Job job, FilmPixels pixels, String chart, List<String> contents, String exposureSummary) {
        List<String> lines = legends(job, pixels, job.grain().name() + ", " + chart, exposureSummary);
        lines.addAll(contents);
        return lines;
    }

    private static List<String> legends(Job job, FilmPixels pixels, String carries, String exposureSummary) {
        List<String> lines = new ArrayList<>();
        String title = job.title().isEmpty() ? "untitled" : job.title();
        lines.add(job.date().isEmpty() ? title : title + " - " + job.date());
        lines.add(job.process().words() + ", plate " + job.plate() + ", "
                + Refusal.plain(job.resolution().dotsPerInch()) + " dpi, " + carries);
        pixels.words().ifPresent(lines::add);
        ReadingSide side = job.placing().readingSide();
        lines.add(side.legend());
        lines.add(side.words());
        if (!exposureSummary.isEmpty()) {
            lines.add(exposureSummary);
        }
        return lines;
    }
}
