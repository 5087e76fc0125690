package greyground.app.teach;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.DiagramFile;
import greyground.app.files.Lesson;
import greyground.app.files.ShopFile;
import greyground.app.sight.LivePicture;
import greyground.fit.FigureChange;
import greyground.fit.FittedFigure;
import greyground.fit.MeasuredBands;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredPatch;
import greyground.fit.MeasuredResponse;
import greyground.fit.MeasuredTrend;
import greyground.fit.PlateLesson;
import greyground.json.JsonText;
import greyground.picture.Picture;
import greyground.picture.ResponseCurve;
import greyground.plate.PrintableRange;
import greyground.quantity.Refusal;
import greyground.scan.PlateOnScan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a test plate's proof said, in words and as JSON, and the way to take it into the workshop. */
public final class LessonOutcome implements ReadOutcome {
    /** A fit this far off does not explain the print (docs/calibration.md). */
    private static final double POOR_FIT = 2;

    /** A band above this share of the levels is in doubt (common practice). */
    private static final double MOST_POOLED = 0.2;

    private static final int MOST_NAMED = 6;
    private static final List<Integer> SHOWN = List.of(0, 10, 30, 100, 200, 300, 500, 700, 800, 850, 900, 950, 1000);

    private final TestFilm film;
    private final Optional<ShopFile> shopFile;
    private final PlateFindings found;
    private final PlateLearning learning;

    LessonOutcome(TestFilm film, Optional<ShopFile> shopFile, PlateFindings found, PlateLearning learning) {
        this.film = film;
        this.shopFile = shopFile;
        this.found = found;
        this.learning = learning;
    }

    @Override
    public Optional<Picture> overlay() {
        return found.overlay();
    }

    @Override
    public Optional<Lesson> lesson() {
        return Optional.of(new Lesson(
                learning.learned().before(),
                learning.learned().after(),
                learning.kept().date() + "-" + learning.kept().chart()));
    }

    @Override
    public Path accept() throws Exception {
        return shopFile.orElseThrow(ShopFile::none).teach(lesson().orElseThrow());
    }

    @Override
    public ReadReport report() {
        List<ReadReport.Finding> findings = new ArrayList<>();
        findings.add(new ReadReport.Finding("Prints", rangeWords()));
        findings.add(new ReadReport.Finding(
                "Turns", learning.measured().turn().against(learning.foretold().turningPoint())));
        learning.fit().ifPresent(fit -> findings.add(ReadReport.misfit(fit.misfit())));
        outlierWords().ifPresent(words -> findings.add(new ReadReport.Finding("Left", words)));
        trendWords().ifPresent(words -> findings.add(new ReadReport.Finding("Uneven", words)));
        bandWords().ifPresent(words -> findings.add(new ReadReport.Finding("Bands", words)));
        learning.findings().forEach(finding -> findings.add(new ReadReport.Finding("Targets", finding.words())));
        List<ReadReport.Figure> numbers = new ArrayList<>();
        List<FittedFigure> fitted = learning.fit().map(PlateLesson::figures).orElse(List.of());
        learning.learned().changes().forEach(change -> numbers.add(ReadReport.Figure.Learned.of(change, fitted)));
        for (FittedFigure figure : fitted) {
            if (figure instanceof FittedFigure.Undetermined one) {
                numbers.add(new ReadReport.Figure.Stays(one.parameter().path(), one.before(), one.reason()));
            }
        }
        return new ReadReport(
                film.plate().recipe().kind().word() + " " + film.plate().id(),
                foundWords(),
                findings,
                numbers,
                Optional.of(ResponseLines.of(learning.measured(), learning.foretold(), learning.taught())),
                Optional.empty(),
                overlay().map(LivePicture::of),
                notes());
    }

    /** The measured response beside what was foretold of it, before and after. */
    @Override
    public void draw(String what, Path file) throws Exception {
        DiagramFile.write(what, file, curve());
    }

    private ResponseCurve curve() {
        return ResponseCurve.of(
                film.plate().recipe().kind().word() + " " + learning.kept().chart() + ", "
                        + film.job().process().words() + ", "
                        + film.job().grain().name() + ", "
                        + learning.kept().words(),
                learning.measured(),
                learning.foretold(),
                learning.taught());
    }

    @Override
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("read    " + foundWords());
        lines.add("chart   " + film.plate().recipe().kind().word() + " "
                + film.plate().id() + ", "
                + film.job().process().words() + ", " + film.job().grain().name() + " at "
                + Refusal.plain(film.job().resolution().dotsPerInch()) + " dpi; "
                + learning.kept().making().words());
        lines.addAll(table());
        lines.add("prints  " + rangeWords());
        lines.add("turns   "
                + learning.measured().turn().against(learning.foretold().turningPoint()));
        outlierWords().ifPresent(words -> lines.add("left    " + words));
        trendWords().ifPresent(words -> lines.add("uneven  " + words));
        bandWords().ifPresent(words -> lines.add("bands   " + words));
        learning.findings()
                .forEach(finding -> lines.add("target  " + finding.words().replace(": bar gauge,", ":")));
        learning.learned().changes().forEach(change -> lines.add("learn   " + change.words()));
        undetermined().forEach(figure -> lines.add("stays   " + figure.words()));
        notes().forEach(note -> lines.add("note    " + note));
        return lines;
    }

    private String foundWords() {
        String fields = found.patches().size() + " readings of "
                + film.plate().patches().size() + " fields";
        return found.scan()
                .map(reading -> found.how() + ", " + placeWords(reading.place()) + "; " + fields)
                .orElse(found.how() + ", " + fields);
    }

    private static String placeWords(PlateOnScan place) {
        double step = 10_000;
        double across = (place.x(step, 0) - place.x(0, 0)) * (place.mirrored() ? -1 : 1);
        double down = (place.y(step, 0) - place.y(0, 0)) * (place.mirrored() ? -1 : 1);
        double degrees = Math.toDegrees(Math.atan2(down, across));
        String turned = Math.abs(degrees) < 0.05
                ? "lying straight"
                : String.format(
                        Locale.ROOT,
                        "turned %.1f degrees %s",
                        Math.abs(degrees),
                        degrees > 0 ? "clockwise" : "anticlockwise");
        return turned + (place.mirrored() ? ", mirrored" : ", not mirrored");
    }

    private List<String> table() {
        List<String> lines = new ArrayList<>();
        lines.add("tones   film %   measured L*   foretold     taught");
        for (MeasuredLevel level : learning.measured().levels()) {
            int perMille = (int) Math.rint(level.coverage() * 1000);
            if (SHOWN.contains(perMille)) {
                lines.add(String.format(
                        Locale.ROOT,
                        "        %6s   %5.1f +- %3.1f   %8.1f   %8.1f",
                        Refusal.plain(perMille / 10.0),
                        level.lightness(),
                        learning.measured().halfWidth(level.coverage()),
                        learning.foretold().lightness(level.coverage()),
                        learning.taught().lightness(level.coverage())));
            }
        }
        return lines;
    }

    private String rangeWords() {
        PrintableRange range = learning.measured().printableRange();
        PrintableRange was = learning.foretold().printableRange();
        String gap = range.lightGap() < 1
                ? ""
                : "; nothing between " + tenth(range.bare()) + " and " + tenth(range.lightest());
        return "L* " + tenth(range.bare()) + " to " + tenth(range.darkest()) + gap + "; foretold " + tenth(was.bare())
                + " to " + tenth(was.darkest());
    }

    private Optional<String> outlierWords() {
        List<MeasuredPatch> outliers = learning.measured().outliers();
        if (outliers.isEmpty()) {
            return Optional.empty();
        }
        ChartFields fields = new ChartFields(film.plate());
        String named = String.join(
                "; ", outliers.stream().limit(MOST_NAMED).map(fields::name).toList());
        return Optional.of("out, since their repeats contradict them: " + named
                + (outliers.size() > MOST_NAMED ? "; and " + (outliers.size() - MOST_NAMED) + " more" : ""));
    }

    private Optional<String> trendWords() {
        MeasuredTrend trend = learning.measured().trend();
        return switch (trend.kind()) {
            case NONE -> Optional.empty();
            case SLANTED, CURVED ->
                Optional.of((trend.kind() == MeasuredTrend.Kind.CURVED ? "a curve" : "a slant") + " of "
                        + tenth(trend.rangeLightness()) + " L* over the plate, "
                        + String.join(
                                " and ",
                                Stream.of(
                                                side(trend.acrossPerHundredMillimetres(), "right", "left"),
                                                side(trend.downPerHundredMillimetres(), "foot", "head"))
                                        .flatMap(Optional::stream)
                                        .toList())
                        + "; taken out of the tones: look at wiping and pressure");
        };
    }

    private static Optional<String> side(double perHundred, String far, String near) {
        return Math.abs(perHundred) < 0.1
                ? Optional.empty()
                : Optional.of(
                        tenth(Math.abs(perHundred)) + " L* in 100 mm lighter to the " + (perHundred > 0 ? far : near));
    }

    private Optional<String> bandWords() {
        return learning.measured()
                .bands()
                .map(bands -> "stripes "
                        + (bands.axis() == MeasuredBands.Axis.ACROSS ? "standing upright" : "lying across")
                        + ", one every " + tenth(bands.periodMillimetres()) + " mm, "
                        + tenth(bands.amplitudeLightness())
                        + " L* either way: look at the film printer's feed, the lamp's tubes and the press");
    }

    private List<FittedFigure> undetermined() {
        return learning.fit().stream()
                .flatMap(fit -> fit.figures().stream())
                .filter(FittedFigure.Undetermined.class::isInstance)
                .toList();
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>(found.notes());
        notes.addAll(learning.notes());
        MeasuredResponse measured = learning.measured();
        if (!measured.repeated()) {
            notes.add("no level was read twice, so the band rests on an assumed scatter of 0.7 L*");
        }
        if (measured.pooledShare() > MOST_POOLED) {
            notes.add(Refusal.plain(Math.rint(100 * measured.pooledShare()))
                    + " % of the levels don't darken in order: the measurement is in doubt");
        }
        if (learning.fit().map(PlateLesson::misfit).orElse(0.0) >= POOR_FIT) {
            notes.add("the virtual plate does not explain this print (misfit "
                    + tenth(learning.fit().map(PlateLesson::misfit).orElse(0.0))
                    + "; near 1 it would): trust the measured tones more than the numbers");
        }
        return notes;
    }

    @Override
    public void describe(ObjectNode tree) {
        MeasuredResponse measured = learning.measured();
        tree.put("how", found.how());
        tree.put("kind", film.plate().recipe().kind().word());
        tree.put("chart", film.plate().id());
        tree.put("date", learning.kept().date().toString());
        tree.put("readings", found.patches().size());
        tree.put("fields", film.plate().patches().size());
        found.scan().ifPresent(reading -> {
            ObjectNode place = tree.putObject("place");
            put(place, "pixelsPerInch", ReadWork.pixelsPerInch(reading));
            place.put("mirrored", reading.place().mirrored());
            ArrayNode corners = place.putArray("corners");
            double width = film.plate().recipe().widthMicrometres();
            double height = film.plate().recipe().heightMicrometres();
            for (double[] corner : new double[][] {{0, 0}, {width, 0}, {width, height}, {0, height}}) {
                ArrayNode each = corners.addArray();
                each.add(JsonText.number(rounded(reading.place().x(corner[0], corner[1]))));
                each.add(JsonText.number(rounded(reading.place().y(corner[0], corner[1]))));
            }
        });
        ArrayNode levels = tree.putArray("levels");
        for (MeasuredLevel level : measured.levels()) {
            ObjectNode each = levels.addObject();
            put(each, "coverage", level.coverage());
            put(each, "lightness", level.lightness());
            put(each, "halfWidth", measured.halfWidth(level.coverage()));
            put(each, "repeats", level.repeats());
            put(each, "foretold", learning.foretold().lightness(level.coverage()));
            put(each, "taught", learning.taught().lightness(level.coverage()));
        }
        ObjectNode turn = tree.putObject("turningPoint");
        put(turn, "measured", measured.turn().coverage());
        put(turn, "least", measured.turn().least());
        put(turn, "most", measured.turn().most());
        turn.put("seen", measured.turn().seen());
        put(turn, "foretold", learning.foretold().turningPoint());
        ObjectNode range = tree.putObject("printableRange");
        put(range, "bare", measured.printableRange().bare());
        put(range, "lightest", measured.printableRange().lightest());
        put(range, "darkest", measured.printableRange().darkest());
        ChartFields fields = new ChartFields(film.plate());
        ArrayNode outliers = tree.putArray("outliers");
        measured.outliers().forEach(patch -> outliers.add(fields.name(patch)));
        trendWords().ifPresent(words -> tree.put("uneven", words));
        bandWords().ifPresent(words -> tree.put("bands", words));
        ArrayNode changes = tree.putArray("changes");
        for (FigureChange change : learning.learned().changes()) {
            ObjectNode each = changes.addObject();
            each.put("path", change.path());
            put(each, "before", change.before());
            each.put("known", change.beforeProvenance());
            put(each, "after", change.after());
            put(each, "standardError", change.standardError());
        }
        ArrayNode stays = tree.putArray("undetermined");
        undetermined().forEach(figure -> stays.add(figure.words()));
        ArrayNode targets = tree.putArray("targets");
        learning.findings().forEach(finding -> targets.add(finding.words()));
        learning.fit().ifPresent(fit -> put(tree, "misfit", fit.misfit()));
        notes().forEach(tree.putArray("notes")::add);
    }

    private static void put(ObjectNode node, String name, double value) {
        node.set(name, JsonText.number(rounded(value)));
    }

    private static double rounded(double value) {
        return Math.rint(value * 1e6) / 1e6;
    }

    private static String tenth(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10);
    }
}
