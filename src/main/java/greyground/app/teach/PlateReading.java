package greyground.app.teach;

import greyground.app.files.Lesson;
import greyground.finding.Findings;
import greyground.fit.CodePower;
import greyground.fit.FittedFigure;
import greyground.fit.MeasuredBands;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredPatch;
import greyground.fit.MeasuredResponse;
import greyground.fit.MeasuredTrend;
import greyground.fit.PlateLesson;
import greyground.picture.ResponseCurve;
import greyground.plate.PrintableRange;
import greyground.quantity.Refusal;
import greyground.scan.Projective;
import greyground.scan.ScanReading;
import greyground.scan.TargetFindings;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a test plate's proof says of the shop's tones, and the numbers that it teaches. */
record PlateReading(TestFilm film, PlateFindings found, ReadingTrust trust, PlateLearning learning) {
    /** A fit this far off does not explain the print (docs/calibration.md). */
    private static final double POOR_FIT = 2;

    /** A band above this share of the levels is in doubt (common practice). */
    private static final double MOST_POOLED = 0.2;

    private static final int MOST_NAMED = 6;

    static ReadOutcome of(TestFilm film, PlateFindings found, ReadingTrust trust, PlateLearning learning) {
        return new PlateReading(film, found, trust, learning).outcome();
    }

    private MeasuredResponse measured() {
        return learning.measured();
    }

    private ReadOutcome outcome() {
        String chart = learning.kept().chart();
        String kind = film.plate().recipe().kind().word();
        String carrier =
                film.job().process().words() + ", " + film.job().grain().name();
        return new ReadOutcome(
                kind + " " + film.plate().id(),
                findings(kind, carrier),
                Optional.of(ResponseCurve.of(
                        kind + " " + chart + ", " + carrier + ", "
                                + learning.kept().words(),
                        measured(),
                        learning.predicted(),
                        learning.taught())),
                found.overlay(),
                Optional.of(new Lesson(
                        learning.learned().before(),
                        learning.learned().after(),
                        learning.kept().date() + "-" + chart)));
    }

    private Findings findings(String kind, String carrier) {
        PrintableRange range = measured().printableRange();
        List<FittedFigure> fitted = learning.fit().map(PlateLesson::figures).orElse(List.of());
        Findings findings = new Findings()
                .say("how", foundWords(), found.how())
                .put("kind", kind)
                .say(
                        "chart",
                        kind + " " + film.plate().id() + ", " + carrier + " at "
                                + Refusal.plain(film.job().resolution().dotsPerInch()) + " dpi; "
                                + learning.kept().making().words(),
                        film.plate().id())
                .put("date", learning.kept().date().toString())
                .put("readings", found.patches().size())
                .put("fields", film.plate().patches().size());
        found.scan().ifPresent(reading -> findings.put("place", place(reading)));
        findings.rows("levels", measured().levels().stream().map(this::level).toList())
                .say(
                        "printableRange",
                        rangeWords(),
                        new Findings()
                                .put("bare", range.bare())
                                .put("lightest", range.lightest())
                                .put("darkest", range.darkest()))
                .say(
                        "turningPoint",
                        measured().turn().against(learning.predicted().turningPoint()),
                        new Findings()
                                .put("measured", measured().turn().coverage())
                                .put("least", measured().turn().least())
                                .put("most", measured().turn().most())
                                .put("seen", measured().turn().seen())
                                .put("predicted", learning.predicted().turningPoint()));
        Optional<CodePower> power = learning.fit().flatMap(PlateLesson::power);
        findings.say("scanner", trust.words(range.bare(), power), trust.findings(range.bare(), power));
        learning.fit()
                .map(PlateLesson::misfit)
                .ifPresent(misfit -> findings.say(
                        "misfit", tenth(misfit) + "; near 1 where the virtual plate explains the print", misfit));
        return findings.rows(
                        "outliers",
                        outlierWords().stream().toList(),
                        measured().outliers().stream().map(this::outlier).toList())
                .say("uneven", trendWords())
                .say("bands", bandWords())
                .list(
                        "targets",
                        learning.findings().stream()
                                .map(TargetFindings.Finding::words)
                                .toList())
                .rows("changes", ReadOutcome.changes(learning.learned().changes(), fitted))
                .rows(
                        "undetermined",
                        fitted.stream().flatMap(figure -> left(figure).stream()).toList())
                .list("notes", notes());
    }

    /** A number that stays as it was, and what the model alone would make of it. */
    private static Optional<Findings> left(FittedFigure figure) {
        if (figure instanceof FittedFigure.AsSeen seen) {
            return Optional.of(new Findings()
                    .put("path", seen.parameter().path())
                    .put("before", seen.before())
                    .put("reason", seen.reason())
                    .put("asSeen", seen.value())
                    .put("low", seen.low())
                    .put("high", seen.high())
                    .say("words", seen.words()));
        }
        return figure instanceof FittedFigure.Undetermined left
                ? Optional.of(new Findings()
                        .put("path", left.parameter().path())
                        .put("before", left.before())
                        .put("reason", left.reason())
                        .say("words", left.words()))
                : Optional.empty();
    }

    private Findings outlier(MeasuredPatch patch) {
        return new Findings()
                .put("field", ChartFields.of(film.plate()).name(patch))
                .put("coverage", patch.coverage())
                .put("lightness", patch.lightness());
    }

    private Findings level(MeasuredLevel level) {
        return new Findings()
                .put("coverage", level.coverage())
                .put("lightness", level.lightness())
                .put("halfWidth", measured().halfWidth(level.coverage()))
                .put("halfWidthInAll", trust.errors().halfWidth(measured(), level.coverage()))
                .put("repeats", level.repeats())
                .put("predicted", learning.predicted().lightness(level.coverage()))
                .put("taught", learning.taught().lightness(level.coverage()));
    }

    /** Corners in scan pixels, from the print's top left clockwise. */
    private Findings place(ScanReading reading) {
        double width = film.plate().recipe().widthMicrometres();
        double height = film.plate().recipe().heightMicrometres();
        Projective place = reading.place();
        return new Findings()
                .put("pixelsPerInch", ReadWork.pixelsPerInch(reading))
                .put("mirrored", place.mirrored())
                .rows(
                        "corners",
                        Stream.of(new double[][] {{0, 0}, {width, 0}, {width, height}, {0, height}})
                                .map(at -> new Findings()
                                        .put("x", place.x(at[0], at[1]))
                                        .put("y", place.y(at[0], at[1])))
                                .toList());
    }

    private String foundWords() {
        String fields = found.patches().size() + " readings of "
                + film.plate().patches().size() + " fields";
        return found.scan()
                .map(reading -> found.how() + ", " + placeWords(reading.place()) + "; " + fields)
                .orElse(found.how() + ", " + fields);
    }

    private static String placeWords(Projective place) {
        double step = 10_000;
        double across = (place.x(step, 0) - place.x(0, 0)) * (place.mirrored() ? -1 : 1);
        double down = (place.y(step, 0) - place.y(0, 0)) * (place.mirrored() ? -1 : 1);
        double degrees = Math.toDegrees(StrictMath.atan2(down, across));
        String turned = Math.abs(degrees) < 0.05
                ? "lying straight"
                : String.format(
                        Locale.ROOT,
                        "turned %.1f degrees %s",
                        Math.abs(degrees),
                        degrees > 0 ? "clockwise" : "anticlockwise");
        return turned + (place.mirrored() ? ", mirrored" : ", not mirrored");
    }

    private String rangeWords() {
        PrintableRange range = measured().printableRange();
        PrintableRange was = learning.predicted().printableRange();
        String gap = range.lightGap() < 1
                ? ""
                : "; nothing between " + tenth(range.bare()) + " and " + tenth(range.lightest());
        return "L* " + tenth(range.bare()) + " to " + tenth(range.darkest()) + gap + "; predicted " + tenth(was.bare())
                + " to " + tenth(was.darkest());
    }

    private Optional<String> outlierWords() {
        List<MeasuredPatch> outliers = measured().outliers();
        if (outliers.isEmpty()) {
            return Optional.empty();
        }
        ChartFields fields = ChartFields.of(film.plate());
        String named = String.join(
                "; ", outliers.stream().limit(MOST_NAMED).map(fields::name).toList());
        return Optional.of("out, since their repeats contradict them: " + named
                + (outliers.size() > MOST_NAMED ? "; and " + (outliers.size() - MOST_NAMED) + " more" : ""));
    }

    private Optional<String> trendWords() {
        MeasuredTrend trend = measured().trend();
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
        return measured()
                .bands()
                .map(bands -> "stripes "
                        + (bands.axis() == MeasuredBands.Axis.ACROSS ? "standing upright" : "lying across")
                        + ", one every " + tenth(bands.periodMillimetres()) + " mm, "
                        + tenth(bands.amplitudeLightness())
                        + " L* either way: look at the film printer's feed, the lamp's tubes and the press");
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>(found.notes());
        notes.addAll(learning.notes());
        if (!measured().repeated()) {
            notes.add("no level was read twice, so the band rests on an assumed scatter of 0.7 L*");
        }
        if (measured().pooledShare() > MOST_POOLED) {
            notes.add(Refusal.plain(Math.rint(100 * measured().pooledShare()))
                    + " % of the levels don't darken in order: the measurement is in doubt");
        }
        if (learning.fit().map(PlateLesson::misfit).orElse(0.0) >= POOR_FIT) {
            notes.add("the virtual plate does not explain this print (misfit "
                    + tenth(learning.fit().map(PlateLesson::misfit).orElse(0.0))
                    + "; near 1 it would): trust the measured tones more than the numbers");
        }
        return notes;
    }

    private static String tenth(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10);
    }
}
