package greyground.app.recipe;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.compose.MendReport;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.sheet.Sheet;
import greyground.json.JsonText;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import greyground.tone.Compensation;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What came of preparing a positive, in words and as JSON. */
public final class PositiveOutcome {
    private final Job job;
    private final Workshop workshop;
    private final Compensation compensation;
    private final JobTones tones;
    private final ExposurePlan plan;
    private final Sheet sheet;
    private final int films;
    private final Optional<MendReport> mended;
    private final List<String> warnings;
    private final double lightShare;
    private final double darkShare;

    PositiveOutcome(PreparedFilms films, Optional<MendReport> mended) {
        this.mended = mended;
        this.job = films.job();
        this.workshop = films.workshop();
        this.compensation = films.compensation();
        this.tones = films.tones();
        this.plan = films.plan();
        this.sheet = films.films().get(0).sheet();
        this.films = films.films().size();
        double pixels = Arrays.stream(films.greys()).sum();
        this.lightShare = compensation.light().pixels(films.greys()) / pixels;
        this.darkShare = compensation.dark().pixels(films.greys()) / pixels;
        List<String> all = new ArrayList<>(films.warnings());
        all.addAll(plan.warnings());
        this.warnings = List.copyOf(all);
    }

    /** The job with everything settled: digest, white and black as numbers. */
    public Job job() {
        return job;
    }

    /** The sheet's size and how many films there are. */
    public String sheetWords() {
        return String.format(
                        Locale.ROOT,
                        "sheet %.1f x %.1f mm, %d x %d pixels",
                        sheet.pixels().acrossMillimetres(sheet.widthPixels()),
                        sheet.pixels().downMillimetres(sheet.heightPixels()),
                        sheet.widthPixels(),
                        sheet.heightPixels())
                + (films == 1 ? "" : ", " + films + " films");
    }

    /** How and why the film's file differs from true size; empty where it does not. */
    public Optional<String> sizeWords() {
        return sheet.pixels().words();
    }

    /** The process and how the film carries tone. */
    public String carrierWords() {
        return job.process().words() + ", " + job.grain().name();
    }

    /** Whether the film is mirrored, and why. */
    public String readingWords() {
        return job.placing().readingSide().words();
    }

    /** What the plate holds of the art's tones. */
    public String toneWords() {
        return String.format(
                        Locale.ROOT,
                        "art white %.1f %%, black %.1f %%; print L* %.1f to %.1f; film coverage %.1f to %.1f %% (%s)",
                        white() * 100,
                        black() * 100,
                        compensation.paperLightness(),
                        compensation.darkestLightness(),
                        tones.response().usable().least() * 100,
                        tones.turningPoint() * 100,
                        tones.name())
                + lost("lighter than the lightest tone that holds", lightShare)
                + lost("darker than the darkest", darkShare);
    }

    private static String lost(String what, double share) {
        if (share == 0) {
            return "";
        }
        String percent = share < 0.000_05 ? "less than 0.01" : String.format(Locale.ROOT, "%.2f", share * 100);
        return "; " + percent + " % of the art is " + what;
    }

    /** What mending changed; empty if nothing was to be mended. */
    public Optional<String> mendedWords() {
        return mended.map(report ->
                String.format(Locale.ROOT, "strokes made solid, %.1f mm2 more black", report.solidSquareMillimetres())
                        + (report.wideBlacks() == 0
                                ? ", no black too wide for it"
                                : String.format(
                                        Locale.ROOT,
                                        "; %.1f mm2 in %d wide blacks kept in grain within a solid edge",
                                        report.grainSquareMillimetres(),
                                        report.wideBlacks())));
    }

    /** The plan in one line. */
    public String planSummary() {
        return plan.summary();
    }

    /** What deserves a second look, most pressing first. */
    public List<String> warnings() {
        return warnings;
    }

    /** How many of the workshop's numbers nobody has measured. */
    public long assumedFigures() {
        return workshop.figures().values().stream().filter(Figure::isAssumed).count();
    }

    /** Adds the outcome to a JSON object. */
    public void describe(ObjectNode tree) {
        ObjectNode size = tree.putObject("sheet");
        size.put("widthPixels", sheet.widthPixels());
        size.put("heightPixels", sheet.heightPixels());
        size.set("resolutionDotsPerInch", JsonText.number(job.resolution().dotsPerInch()));
        sizeWords().ifPresent(words -> tree.put("size", words));
        tree.put("films", films);
        tree.put("mirrored", job.placing().readingSide().mirrored());
        tree.put("reads", readingWords());
        tree.set("unattainableLightShare", JsonText.number(lightShare));
        tree.set("unattainableDarkShare", JsonText.number(darkShare));
        tree.put("assumedFigures", assumedFigures());
        mended.ifPresent(report -> {
            ObjectNode node = tree.putObject("mended");
            node.set("solidSquareMillimetres", JsonText.number(report.solidSquareMillimetres()));
            node.set("grainSquareMillimetres", JsonText.number(report.grainSquareMillimetres()));
            node.put("wideBlacks", report.wideBlacks());
        });
        tree.put("plan", plan.summary());
        ArrayNode notes = tree.putArray("notes");
        warnings.forEach(notes::add);
        tree.set("curve", CurveFile.tree(compensation, tones));
        tree.set("job", JobFile.tree(job));
    }

    private double white() {
        return point(job.art().white());
    }

    private double black() {
        return point(job.art().black());
    }

    private static double point(greyground.film.job.ArtChoice.TonePoint point) {
        if (point instanceof greyground.film.job.ArtChoice.TonePoint.Given given) {
            return given.luminance();
        }
        throw Refusal.failure("a tone point was not settled: please report it");
    }
}
