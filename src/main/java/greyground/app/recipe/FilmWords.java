package greyground.app.recipe;

import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.LevelledArt;
import greyground.film.job.Placing;
import greyground.film.sheet.Sheet;
import greyground.finding.Findings;
import greyground.grain.Grain;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Line;
import greyground.plate.PlateProcess;
import greyground.quantity.PaperShrink;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.tone.SteepTones;
import greyground.workshop.Figure;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a film says of itself: at the head of its plan, and as the outcome of making it. */
public final class FilmWords {
    /** Cutting off more of the art than this deserves a word (assumed). */
    private static final double MOST_LOST_UNSAID = 0.1;

    /** Intaglio blacks print L* 11 to 30 (common practice); a paler one is worth another split of light. */
    private static final double PALE_BLACK_LIGHTNESS = 30;

    private static final double MILLIMETRES_PER_INCH = 25.4;

    /** Facts that title, date and {@link #plate} say at the head of every plan. */
    private static final Set<String> SAID_ABOVE =
            Set.of("film", "date", "process", "plate", "resolution", "tone carried by");

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
                .say("plate", plate(job), job.plate().toString())
                .put("mirrored", job.placing().readingSide().mirrored())
                .say("reads", job.placing().readingSide().words());
    }

    /** Plate, process, what carries the tone and how fine, in a line. */
    static String plate(Job job) {
        return job.plate() + ", " + job.process().words() + ", " + job.grain().name() + " at "
                + Refusal.plain(job.resolution().dotsPerInch()) + " dpi";
    }

    /** Says that there is a gap among the tones that hold, where there is one. {@code more} ends the sentence. */
    public static void sayGap(Findings findings, Job job, Optional<SteepTones> gap, String more) {
        String held = job.grain() instanceof Grain.Continuous
                ? "of its density: a gap, whichever tone is asked for. Softer edges of the screen narrow it"
                : "(some 2 \u00b5m of a dot's edge): a gap, whichever tone is asked for. A coarser ruling, a grain, or a resist"
                        + " that opens finer dots narrows it";
        gap.ifPresent(steep -> findings.say(
                "gap",
                String.format(
                        Locale.ROOT,
                        "L* %.0f to %.0f lie within %.1f %% of film black, up to %.0f of them on a hundredth %s%s",
                        steep.lightest(),
                        steep.darkest(),
                        (steep.mostCoverage() - steep.leastCoverage()) * 100,
                        steep.most(),
                        held,
                        more),
                new Findings()
                        .put("lightness", steep.lightest(), steep.darkest())
                        .put("coverage", steep.leastCoverage(), steep.mostCoverage())
                        .put("mostLightnessToAHundredth", steep.most())));
    }

    /** What a plan's head leaves to say of its film, and how that lies. */
    public static List<Line> particulars(Job job, ExposurePlan plan) {
        List<Line> lines = new ArrayList<>();
        plan.steps().stream()
                .filter(step -> step.title().equals(BenchOrder.FILM))
                .flatMap(step -> step.lines().stream())
                .filter(line -> !SAID_ABOVE.contains(line.label()))
                .forEach(lines::add);
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

    /** Says that marks lie where a printer does not print; empty where they don't. */
    static Optional<String> unprinted(Size sheet, double clearMillimetres, Figure margin) {
        if (clearMillimetres >= margin.value()) {
            return Optional.empty();
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "marks or words lie %.1f mm from the edge of the sheet of %s, where this printer leaves %s mm unprinted (%s):"
                        + " give a sheet %.0f mm larger each way, or correct filmPrinter.marginMillimetres in the workshop file",
                clearMillimetres,
                sheet,
                Refusal.plain(margin.value()),
                margin.provenance().words(),
                Math.ceil(2 * (margin.value() - clearMillimetres))));
    }

    /** The job's date; a day that the calendar lacks is refused. */
    public static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException noSuchDay) {
            throw Refusal.use("date " + text + " is not a day of the calendar: write year-month-day");
        }
    }

    /** What deserves a word about the art: its file, of which {@code remarks} tell, its tones, its fit and its fineness. */
    static List<String> warnings(FilmRecipe recipe, List<String> remarks) {
        Job job = recipe.job();
        List<String> warnings = new ArrayList<>(remarks);
        recipe.tones().note().ifPresent(warnings::add);
        double darkest = recipe.tones().printableRange().darkest();
        if (job.process() instanceof PlateProcess.Photogravure && darkest > PALE_BLACK_LIGHTNESS) {
            warnings.add("these two exposures leave the darkest tone at L* " + Refusal.plain(Math.rint(darkest))
                    + ": 'greyground plan --search-exposure' looks for better ones, and --split takes them over");
        }
        ArtChoice.Crop crop = job.art().crop();
        if (LevelledArt.of(recipe.art().width(), recipe.art().height(), job.art())
                .leavesBlank(crop, job.placing(), job.plate())) {
            warnings.add("corners of the plate stay blank, since art turned by "
                    + Refusal.plain(job.art().straightenDegrees())
                    + " degrees does not reach them: crop to what it covers, with --crop covered");
        }
        double across = recipe.art().width() * crop.width() / job.plate().widthMillimetres();
        double down = recipe.art().height() * crop.height() / job.plate().heightMillimetres();
        boolean fill = job.placing().fit() == Placing.Fit.FILL;
        double perInch = (fill ? Math.min(across, down) : Math.max(across, down)) * 25.4;
        double lost = 1 - Math.min(across, down) / Math.max(across, down);
        if (fill && lost > MOST_LOST_UNSAID) {
            warnings.add(Refusal.plain(Math.rint(lost * 100))
                    + " % of the art does not fit the plate's proportions and is cut off "
                    + (across > down ? "left and right" : "above and below")
                    + ": turn the plate or the art, crop, or show it whole");
        }
        double grainPerInch = FilmWords.dotsPerInch(job);
        if (perInch < grainPerInch) {
            warnings.add("the art has " + Refusal.plain(Math.rint(perInch))
                    + " pixels per inch of plate, fewer than the film's " + Refusal.plain(Math.rint(grainPerInch))
                    + " dots per inch: fine detail will be soft");
        }
        return warnings;
    }
}
