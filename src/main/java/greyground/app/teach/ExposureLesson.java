package greyground.app.teach;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.chart.WedgePlan;
import greyground.app.files.Lesson;
import greyground.app.files.ShopFile;
import greyground.app.sight.LivePicture;
import greyground.fit.FigureChange;
import greyground.fit.FitReading;
import greyground.json.JsonText;
import greyground.picture.Picture;
import greyground.plan.StepWedge;
import greyground.plan.TestStrip;
import greyground.quantity.Durations;
import greyground.quantity.Refusal;
import greyground.scan.ScanReading;
import greyground.scan.StripReading;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The proof of an exposure test, read: which strip's dots opened and lands held, which strip to take, and the workshop's wanted wedge
 * step that gives its exposure.
 *
 * <p>More light makes smaller lands hold and shuts smaller openings. The strip is taken whose smallest opening and smallest land are
 * smallest together, by their product (assumed); of equals the one nearest the middle. Strips are a wedge's step apart, so taking the
 * next one means wanting one step more: the plan's seconds and the virtual plate's dose both follow from that number.
 */
final class ExposureLesson implements ReadOutcome {
    private static final String PATH = "exposure.targetStep";

    /** A strip's exposure is right to within half a step, evenly likely. */
    private static final double ERROR = 1 / Math.sqrt(12);

    private final Optional<ShopFile> shopFile;
    private final PlateFindings found;
    private final LocalDate date;
    private final String chart;
    private final Workshop shop;
    private final List<StripReading> strips;
    private final TestStrip times;
    private final Optional<StripReading> best;

    private ExposureLesson(
            TestFilm film,
            Optional<ShopFile> shopFile,
            Workshop shop,
            PlateFindings found,
            ScanReading scan,
            LocalDate date) {
        this.shopFile = shopFile;
        this.found = found;
        this.date = date;
        this.chart = film.plate().id();
        this.shop = shop;
        this.strips = StripReading.of(scan);
        this.times = WedgePlan.strips(film.plate(), film.workshop())
                .orElseThrow(() -> Refusal.failure("the exposure test has no strips: make its film again"));
        this.best = best(strips);
    }

    static ExposureLesson of(
            TestFilm film, Optional<ShopFile> shopFile, Workshop shop, PlateFindings found, LocalDate date) {
        ScanReading scan = found.scan()
                .orElseThrow(
                        () -> Refusal.use("an exposure test is read from a scan of its proof, not from values: its dots"
                                + " and holes tell the strip"));
        return new ExposureLesson(film, shopFile, shop, found, scan, date);
    }

    /** The strip whose dots and lands are finest together; empty where no strip tells both. */
    static Optional<StripReading> best(List<StripReading> strips) {
        StripReading best = null;
        double least = 0;
        double middle = (strips.size() + 1) / 2.0;
        for (StripReading strip : strips) {
            OptionalDouble product = product(strip);
            if (product.isPresent()) {
                boolean equal = best != null && Math.abs(product.getAsDouble() - least) < 1e-9;
                boolean nearer = best != null && Math.abs(strip.number() - middle) < Math.abs(best.number() - middle);
                if (best == null || (equal ? nearer : product.getAsDouble() < least)) {
                    best = strip;
                    least = product.getAsDouble();
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static OptionalDouble product(StripReading strip) {
        Optional<FitReading> opening = strip.opening().reading();
        Optional<FitReading> land = strip.land().reading();
        return opening.isPresent() && land.isPresent()
                ? OptionalDouble.of(opening.get().value() * land.get().value())
                : OptionalDouble.empty();
    }

    private double seconds(StripReading strip) {
        return times.totals().get(strip.number() - 1);
    }

    /** Steps from the planned exposure, that of the middle strip, to the best strip's. */
    private Optional<FigureChange> change() {
        return best.map(strip -> {
            double steps = strip.number() - (strips.size() + 1) / 2.0;
            double before = LearnedWorkshop.figure(shop, PATH).value();
            double after = Refusal.checkRange(
                    "wanted wedge step",
                    before + steps,
                    0,
                    StepWedge.nominal().steps(),
                    "",
                    "choose a strip by eye and write its time into the workshop");
            return new FigureChange(PATH, before, LearnedWorkshop.provenance(shop, PATH), after, ERROR);
        });
    }

    private String name(StripReading strip) {
        return "strip " + strip.number() + " " + Durations.format(Math.rint(seconds(strip)));
    }

    private static String words(StripReading strip) {
        return strip.opening().words() + "; " + strip.land().words();
    }

    private String advice() {
        return best.map(strip -> "strip " + strip.number() + ", " + Durations.format(Math.rint(seconds(strip)))
                        + " in all: its finest dots and lands are finest together")
                .orElse("no strip tells both its dots and its lands: look at the developed resist with a loupe");
    }

    @Override
    public ReadReport report() {
        List<ReadReport.Finding> findings = new ArrayList<>();
        findings.add(new ReadReport.Finding("Take", advice()));
        strips.forEach(strip -> findings.add(new ReadReport.Finding(name(strip), words(strip))));
        return new ReadReport(
                "exposure test " + chart,
                found.how(),
                findings,
                change().<List<ReadReport.Figure>>map(one -> List.of(ReadReport.Figure.Learned.of(one)))
                        .orElse(List.of()),
                Optional.empty(),
                Optional.empty(),
                overlay().map(LivePicture::of),
                found.notes());
    }

    @Override
    public Optional<Lesson> lesson() {
        return change().map(change -> new Lesson(
                shop,
                LearnedWorkshop.of(shop, List.of(change), date, "exposure test " + chart)
                        .after(),
                date + "-" + chart));
    }

    @Override
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("read    exposure test " + chart + ", " + found.how());
        for (StripReading strip : strips) {
            String taken = best.filter(one -> one.number() == strip.number()).isPresent() ? " <- take this" : "";
            lines.add(name(strip) + ": " + words(strip) + taken);
        }
        lines.add("take    " + advice());
        change().ifPresent(change -> lines.add("learn   " + change.words()
                + (change.after() == change.before() ? " (the planned exposure is right)" : "")));
        found.notes().forEach(note -> lines.add("note    " + note));
        return lines;
    }

    @Override
    public void describe(ObjectNode tree) {
        tree.put("how", found.how());
        tree.put("kind", "exposure");
        tree.put("chart", chart);
        ArrayNode list = tree.putArray("strips");
        for (StripReading strip : strips) {
            ObjectNode each = list.addObject();
            each.put("number", strip.number());
            each.set("seconds", JsonText.number(Math.rint(seconds(strip) * 100) / 100));
            each.put("opening", strip.opening().words());
            each.put("land", strip.land().words());
        }
        best.ifPresent(strip -> tree.put("take", strip.number()));
        change().ifPresent(change -> tree.put("change", change.words()));
        found.notes().forEach(tree.putArray("notes")::add);
    }

    @Override
    public void draw(String what, Path file) {
        throw Refusal.use("an exposure test has no response to draw: leave out --" + what);
    }

    @Override
    public Optional<Picture> overlay() {
        return found.overlay();
    }

    @Override
    public Path accept() throws Exception {
        Lesson lesson = lesson().orElseThrow(() -> Refusal.failure("the exposure test names no strip, so nothing can be"
                + " accepted; the workshop is as it was: look at the developed resist with a loupe"));
        return shopFile.orElseThrow(ShopFile::none).teach(lesson);
    }
}
