package greyground.app.teach;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.Lesson;
import greyground.app.files.ShopFile;
import greyground.film.job.Job;
import greyground.fit.FigureChange;
import greyground.fit.FilmPrinterFit;
import greyground.fit.FilmReading;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a printed film tells of its printer, in words and as JSON. */
public final class FilmPrinterOutcome implements ReadOutcome {
    /** Fewer pinholes than this let no light through that matters: 0.05 % of clear film is a density of 3.3 (science of a tint). */
    private static final double FEWEST_PINHOLES = 0.0005;

    /** A field this many of its errors from the fit is worth another look. */
    private static final double ODD = 3;

    private final Job job;
    private final ShopFile shopFile;
    private final Workshop workshop;
    private final LocalDate date;
    private final Optional<FilmPrinterFit> fit;
    private final List<FigureChange> changes;
    private final List<String> notes;

    FilmPrinterOutcome(
            Job job,
            ShopFile shopFile,
            Workshop workshop,
            LocalDate date,
            Optional<FilmPrinterFit> fit,
            List<FigureChange> changes,
            List<String> notes) {
        this.job = job;
        this.shopFile = shopFile;
        this.workshop = workshop;
        this.date = date;
        this.fit = fit;
        this.changes = List.copyOf(changes);
        List<String> all = new ArrayList<>(notes);
        fit.ifPresent(found -> all.addAll(odd(found)));
        this.notes = List.copyOf(all);
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
                        field.foretold()));
            }
        }
        return odd;
    }

    /** Numbers of the workshop that the film would change. */
    public List<FigureChange> changes() {
        return changes;
    }

    /** The numbers found in densities, where any were given. */
    public Optional<FilmPrinterFit> fit() {
        return fit;
    }

    /** What deserves a word. */
    public List<String> notes() {
        return notes;
    }

    /** A name for the test, kept with the numbers. */
    public String test() {
        return "film " + (job.title().isEmpty() ? "without a title" : job.title());
    }

    @Override
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        fit.ifPresent(found -> {
            lines.add("field     readings  density  foretold  ink covers");
            for (FilmPrinterFit.Field field : found.fields()) {
                lines.add(String.format(
                        Locale.ROOT,
                        "%5.1f %%   %5d     %6.3f    %6.3f     %5.1f %%",
                        field.coverage() * 100,
                        field.readings(),
                        field.measured(),
                        field.foretold(),
                        field.covered() * 100));
            }
        });
        changes.forEach(change -> lines.add(String.format(
                Locale.ROOT,
                "change  %s, 95 %%: %s to %s",
                change.words(),
                shown(change.after() - change.half95()),
                shown(change.after() + change.half95()))));
        notes.forEach(note -> lines.add("note    " + note));
        return lines;
    }

    private static String shown(double value) {
        return Refusal.plain(Math.rint(value * 1e4) / 1e4);
    }

    @Override
    public void describe(ObjectNode tree) {
        fit.ifPresent(found -> {
            ArrayNode fields = tree.putArray("fields");
            for (FilmPrinterFit.Field field : found.fields()) {
                ObjectNode node = fields.addObject();
                node.set("coveragePercent", number(field.coverage() * 100));
                node.put("readings", field.readings());
                node.set("density", number(field.measured()));
                node.set("foretoldDensity", number(field.foretold()));
                node.set("inkCoversPercent", number(field.covered() * 100));
            }
            tree.set("pinholeShare", number(found.pinholeShare()));
        });
        ArrayNode list = tree.putArray("changes");
        for (FigureChange change : changes) {
            ObjectNode node = list.addObject();
            node.put("path", change.path());
            node.set("before", number(change.before()));
            node.put("beforeKnown", change.beforeProvenance());
            node.set("after", number(change.after()));
            node.set("standardError", number(change.standardError()));
        }
        tree.put("kind", "film");
        notes.forEach(tree.putArray("notes")::add);
    }

    @Override
    public void draw(String what, Path file) {
        throw Refusal.use("a film's readings have no " + what + " to draw: leave out --" + what);
    }

    @Override
    public ReadReport report() {
        return new ReadReport(
                test(),
                "the film itself",
                List.of(),
                changes.stream()
                        .<ReadReport.Figure>map(ReadReport.Figure.Learned::of)
                        .toList(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                notes);
    }

    @Override
    public Optional<Lesson> lesson() {
        LearnedWorkshop learned = LearnedWorkshop.of(workshop, changes, date, test());
        return Optional.of(new Lesson(learned.before(), learned.after(), date + "-film"));
    }

    @Override
    public Path accept() throws Exception {
        return shopFile.teach(lesson().orElseThrow());
    }

    private static JsonNode number(double value) {
        return JsonText.number(Math.rint(value * 1e6) / 1e6);
    }
}
