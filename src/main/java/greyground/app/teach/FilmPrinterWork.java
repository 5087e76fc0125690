package greyground.app.teach;

import greyground.app.files.KeptFiles;
import greyground.app.files.Lesson;
import greyground.app.files.TypedTable;
import greyground.app.kept.GrainStore;
import greyground.film.compose.GrainPatches;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.fit.FigureChange;
import greyground.fit.FilmPrinterFit;
import greyground.fit.FilmPrinterFit.Estimate;
import greyground.fit.FilmReading;
import greyground.grain.Grain;
import greyground.plan.BenchConditions;
import greyground.plan.StepWedge;
import greyground.plate.FilmPatches;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.workshop.FilmPrinter;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Teaches a workshop its film printer from a film that it printed: densities of the film's own wedge strip, or the strip beside a
 * transmission wedge in the developed resist, and the rulers.
 *
 * <p>Nothing is changed here: the outcome offers changes, for {@link LearnedWorkshop}.
 */
public record FilmPrinterWork(Job job, Workshop printedIn, Workshop workshop, LocalDate date) {
    /** Fewer pinholes than this let no light through that matters: 0.05 % of clear film is a density of 3.3 (science of a tint). */
    private static final double FEWEST_PINHOLES = 0.0005;

    /** A field this many of its errors from the fit is worth another look. */
    private static final double ODD = 3;

    /** A steel rule with half millimetres, read between its lines under a loupe (assumed). */
    private static final double RULE_ERROR_MILLIMETRES = 0.1;

    /** Farther out than this is a print dialog's doing rather than a printer's (assumed). */
    private static final double MOST_OUT = 0.03;

    private static final String COVERAGE = "coverage";
    private static final Map<String, String> COLUMNS = Map.of(
            COVERAGE,
            COVERAGE,
            "coverage %",
            COVERAGE,
            Kind.ULTRAVIOLET.column,
            Kind.ULTRAVIOLET.column,
            Kind.VISUAL.column,
            Kind.VISUAL.column,
            Kind.STEP.column,
            Kind.STEP.column);

    /** No film is blacker (assumed); a greater number is a slip of the pen. */
    private static final double MOST_DENSITY = 6;

    private enum Kind {
        ULTRAVIOLET("density"),
        VISUAL("visual"),
        STEP("step");

        private final String column;

        Kind(String column) {
            this.column = column;
        }
    }

    /** Opens the film that was printed; {@code app.Greyground} says of the rest. */
    public static FilmPrinterWork of(Path film, Optional<Workshop> shop, LocalDate date) {
        Workshop printedIn = KeptFiles.workshop(film);
        return new FilmPrinterWork(KeptFiles.job(film), printedIn, shop.orElse(printedIn), date);
    }

    /**
     * Takes readings.
     *
     * @param readings comma-separated values: coverage in %, and density (ultraviolet), visual (density) or step (of a transmission
     *     wedge that looks the same in the developed resist)
     * @param acrossMillimetres what the ruler of 100 mm above the plate measures
     * @param downMillimetres the same of the ruler left of the plate
     */
    public ReadOutcome read(
            Optional<Path> readings, Optional<Double> acrossMillimetres, Optional<Double> downMillimetres) {
        if (readings.isEmpty() && acrossMillimetres.isEmpty() && downMillimetres.isEmpty()) {
            throw Refusal.use(
                    "no reading of the film is given: add --film READINGS.csv, --ruler-across or --ruler-down");
        }
        List<FigureChange> changes = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        FilmPixels drawn = printedIn.filmPrinter().pixels(job.resolution());
        acrossMillimetres.ifPresent(
                read -> scale("filmPrinter.scaleX", "across", read, drawn.scaleX(), changes, notes));
        downMillimetres.ifPresent(read -> scale("filmPrinter.scaleY", "down", read, drawn.scaleY(), changes, notes));
        Optional<FilmPrinterFit> fit = readings.map(file -> fit(file, changes, notes));
        return outcome(fit, changes, notes);
    }

    /** A film drawn smaller already, and still out, adds to what it was drawn for. */
    private void scale(
            String path, String where, double read, double drawn, List<FigureChange> changes, List<String> notes) {
        Refusal.checkRange("ruler " + where, read, 90, 110, "mm", "measure the film's ruler of 100 mm from end to end");
        double scale = drawn * read / 100;
        if (Math.abs(read / 100 - 1) > MOST_OUT) {
            notes.add(
                    "the ruler " + where + " is out by " + Refusal.plain(Math.rint(Math.abs(read - 100) * 10) / 10)
                            + " %, more than printers are: look whether the print dialog fits films to the page before you accept it");
        }
        changes.add(change(path, new Estimate(scale, drawn * RULE_ERROR_MILLIMETRES / 100)));
    }

    private FilmPrinterFit fit(Path file, List<FigureChange> changes, List<String> notes) {
        TypedTable table = TypedTable.read("film readings", file, COLUMNS);
        Kind kind = kind(file, table);
        FilmPrinter printer = workshop.filmPrinter();
        FilmPrinterFit fit = FilmPrinterFit.of(
                readings(table, kind),
                patches(),
                printer.edgeSoftnessMicrometres().value());
        if (kind == Kind.VISUAL) {
            notes.add(
                    "these are visual densities: they tell how far dots grow, but not what the resist sees; clear and black stay"
                            + " as they are. Lay the strip beside a transmission wedge to find them without an ultraviolet densitometer");
        } else {
            changes.add(change("filmPrinter.clearUvDensity", fit.clear()));
            if (workshop.exposure().filmBaseAtTestDensity().isAssumed()) {
                // Assumed to be today's film: else knowing its density better would lengthen exposures that were found
                // through it.
                changes.add(change("exposure.filmBaseAtTestDensity", fit.clear()));
            }
            changes.add(change("filmPrinter.blackUvDensity", fit.black()));
        }
        if (job.grain() instanceof Grain.Continuous) {
            notes.add("a continuous-tone film has no dots, so it does not tell how far they grow");
        } else if (fit.growth().isPresent()) {
            changes.add(change("filmPrinter.spotGrowthMicrometres", fit.growth().get()));
        } else {
            notes.add("no field between clear and solid was measured, so nothing is known of how far dots grow");
        }
        return fit;
    }

    private static Kind kind(Path file, TypedTable table) {
        table.need(COVERAGE);
        List<Kind> kinds = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            if (table.has(kind.column)) {
                kinds.add(kind);
            }
        }
        if (kinds.size() != 1) {
            throw Refusal.use(file.getFileName() + " has " + kinds.size()
                    + " columns of readings; it must have one of density, visual or step: correct its header line");
        }
        return kinds.get(0);
    }

    private List<FilmReading> readings(TypedTable table, Kind kind) {
        List<FilmReading> readings = new ArrayList<>();
        double least = kind == Kind.STEP ? 1 : 0;
        double most = kind == Kind.STEP ? StepWedge.STEPS : MOST_DENSITY;
        for (TypedTable.Row row : table.rows()) {
            double coverage = table.needed(row, COVERAGE, 0, 100) / 100;
            double value = table.needed(row, kind.column, least, most);
            boolean between = coverage > 0 && coverage < 1;
            if (between && job.grain() instanceof Grain.Continuous) {
                continue;
            }
            if (kind == Kind.STEP) {
                readings.add(FilmReading.matched(coverage, StepWedge.density(value), StepWedge.DENSITY_PER_STEP));
            } else {
                readings.add(FilmReading.measured(coverage, value));
            }
        }
        return readings;
    }

    private FilmPatches patches() {
        return GrainStore.positive(job)
                .<FilmPatches>map(tile -> GrainPatches.of(
                        job.grain(), tile, printedIn.filmPrinter().pixels(job.resolution())))
                .orElseGet(() -> FilmPatches.continuous(BenchConditions.film(workshop)));
    }

    private FigureChange change(String path, Estimate found) {
        return LearnedWorkshop.change(
                workshop, path, Math.rint(found.value() * 1e4) / 1e4, Math.rint(found.standardError() * 1e6) / 1e6);
    }

    private ReadOutcome outcome(Optional<FilmPrinterFit> fit, List<FigureChange> changes, List<String> notes) {
        String title = "film " + (job.title().isEmpty() ? "without a title" : job.title());
        List<String> all = new ArrayList<>(notes);
        Findings findings = new Findings().put("kind", "film").put("how", "the film itself");
        fit.ifPresent(found -> {
            findings.rows(
                            "fields",
                            found.fields().stream().map(FilmPrinterWork::field).toList())
                    .put("pinholeShare", found.pinholeShare());
            all.addAll(odd(found));
        });
        findings.rows("changes", ReadOutcome.changes(changes, List.of())).list("notes", all);
        LearnedWorkshop learned = LearnedWorkshop.of(workshop, changes, date, title);
        return new ReadOutcome(
                title,
                findings,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Lesson(learned.before(), learned.after(), date + "-film")));
    }

    private static Findings field(FilmPrinterFit.Field field) {
        return new Findings()
                .put("coveragePercent", field.coverage() * 100)
                .put("readings", field.readings())
                .put("density", field.measured())
                .put("predictedDensity", field.predicted())
                .put("inkCoversPercent", field.covered() * 100);
    }

    private static List<String> odd(FilmPrinterFit fit) {
        List<String> odd = new ArrayList<>();
        if (fit.pinholeShare() > FEWEST_PINHOLES) {
            odd.add(String.format(
                    Locale.ROOT,
                    "the thinnest reading of the solid is what %.2f %% of pinholes would make of it: look at the black on a light"
                            + " table; the median was taken",
                    fit.pinholeShare() * 100));
        }
        for (FilmPrinterFit.Field field : fit.fields()) {
            double error = FilmReading.DENSITOMETER_ERROR;
            if (field.coverage() > 0 && field.coverage() < 1 && Math.abs(field.residual()) > ODD * error) {
                odd.add(String.format(
                        Locale.ROOT,
                        "the field of %.0f %% reads %.2f D where these numbers give %.2f D: measure it again",
                        field.coverage() * 100,
                        field.measured(),
                        field.predicted()));
            }
        }
        return odd;
    }
}
