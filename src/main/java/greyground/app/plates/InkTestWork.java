package greyground.app.plates;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.chart.WedgePlan;
import greyground.app.files.SafeFile;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobTones;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.chart.InkChart;
import greyground.chart.InkChart.PlateTones;
import greyground.chart.Recipe;
import greyground.film.compose.FilmComposer;
import greyground.film.compose.TestPlateSheet;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.sheet.FilmLegends;
import greyground.film.sheet.InkChartFile;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.json.JsonText;
import greyground.output.Attachment;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.plan.ExposurePlan;
import greyground.plate.PlateProcess;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.tone.ResponseInverse;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Makes the films of test plates of a set's inks: one plate for each ink, printed over one another on one sheet, from which {@code read --inks}
 * learns the inks' colours.
 */
public final class InkTestWork {
    // Of the codes, as on a test plate in one ink: no darker than this, and this far below the turning point (assumed).
    private static final int CODE_PERCENT = 75;
    private static final int BELOW_TURNING_POINT = 10;

    private static final String TITLE = "test plates of inks";

    private final Job base;
    private final Workshop shop;
    private final InkSet inks;

    private InkTestWork(Job base, Workshop shop, InkSet inks) {
        this.base = base;
        this.shop = shop;
        this.inks = inks;
    }

    /** A plate that is settled, and its response. */
    private record Plate(Job job, Workshop shop, JobPlate plate, JobTones tones) {}

    /**
     * Test plates from words as a person types them.
     *
     * @param given by option name without dashes: those of {@link JobFields} that concern a film
     * @param today for a job without a date
     */
    public static InkTestWork of(Map<String, String> given, InkSet inks, Workshop shop, String today) {
        if (given.containsKey("kind")) {
            throw Refusal.use(
                    "--kind chooses a test plate in one ink, and --inks asks for those of several: leave one of"
                            + " them out");
        }
        int plates = inks.inks().size();
        Refusal.checkRange("number of inks", plates, 2, 6, "", "the test plate of one ink is made without --inks");
        Job usual = FilmFields.PLATE.with(
                JobWords.fresh(new SourceArt("", TITLE, "", 1, 1), shop, today), usualPlate(plates));
        Job told = JobFields.told(usual, given, Kind.Art.UNKNOWN);
        if (told.process() instanceof PlateProcess.Photogravure) {
            throw Refusal.use(
                    "test plates of inks can't be photogravures, whose prints in colour aren't foretold: leave out"
                            + " --process");
        }
        Job job = told.placed(
                        told.placing().trueSize().onOneSheet(told.placing().sheet()))
                .unmended();
        Refusal.checkRange(
                "test plate's seed", (double) FilmFields.SEED.of(job), 0, Recipe.MOST_SEED, "", "1 is usual");
        PlateJobs.check(job, plates);
        inks.checkApart(shop);
        return new InkTestWork(job, shop, inks);
    }

    /** Holds all fields of 8 mm and more. */
    private static Size usualPlate(int plates) {
        return switch (plates) {
            case 2 -> new Size(80, 100);
            case 3 -> new Size(100, 120);
            case 4 -> new Size(120, 150);
            case 5 -> new Size(150, 180);
            default -> new Size(180, 220);
        };
    }

    /** Makes the films and writes them as one PDF, whole or not at all. */
    public Findings make(Path pdf, Progress progress) throws IOException {
        int count = inks.inks().size();
        // Refuses a plate that is too small before the long work.
        chart(IntStream.range(0, count).mapToObj(i -> evenly()).toList(), 0, CODE_PERCENT);
        List<Plate> plates = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Job job = PlateJobs.of(base, new SourceArt("", base.title(), "", 1, 1), 1, i + 1, inks);
            Workshop own = inks.shop(i, shop);
            JobPlate plate = JobPlate.of(own, job);
            plates.add(new Plate(job, own, plate, plate.tones()));
            progress.done(0.5 * (i + 1) / count);
        }
        int darkest = IntStream.range(0, count)
                .reduce((one, other) -> inks.fullTone(other, shop).lightness()
                                < inks.fullTone(one, shop).lightness()
                        ? other
                        : one)
                .orElseThrow();
        int dark = Math.max(
                Recipe.LEAST_CODE,
                Math.min(
                        CODE_PERCENT,
                        (int) Math.floor(plates.get(darkest).tones().turningPoint() * 100) - BELOW_TURNING_POINT));
        InkChart chart =
                chart(plates.stream().map(plate -> tones(plate.tones())).toList(), darkest, dark);
        FilmDocument document = document(chart, plates);
        SafeFile.write(
                "films",
                pdf,
                channel -> FilmPdf.write(
                        document, Channels.newOutputStream(channel), Crew.allCores(), progress.part(0.5, 1)));
        return findings(chart, document.films().size());
    }

    /** Tones that only tell how many fields there are. */
    private static PlateTones evenly() {
        return new PlateTones(
                IntStream.rangeClosed(1, InkChart.RAMP)
                        .map(i -> 100 * i)
                        .boxed()
                        .toList(),
                500,
                List.of(200, 400, 600, 800),
                900);
    }

    /** Tones at even steps of lightness, in the light that the ink takes most of. */
    private static PlateTones tones(JobTones tones) {
        ResponseInverse inverse = new ResponseInverse(tones.response());
        int full = Math.max(100, (int) Math.floor(tones.turningPoint() * 1000 + 1e-9));
        List<Integer> ramp = new ArrayList<>();
        for (int step = 1; step <= InkChart.RAMP; step++) {
            int least = ramp.isEmpty() ? 10 : ramp.get(step - 2) + 1;
            int most = full - 1 - (InkChart.RAMP - step);
            ramp.add(Math.max(least, Math.min(most, level(inverse, step / (InkChart.RAMP + 1.0)))));
        }
        return new PlateTones(
                ramp,
                Math.max(1, Math.min(full - 1, level(inverse, 0.5))),
                IntStream.rangeClosed(1, InkChart.GREYS)
                        .map(step -> Math.max(1, Math.min(full - 1, level(inverse, step / (InkChart.GREYS + 1.0)))))
                        .boxed()
                        .toList(),
                full);
    }

    private static int level(ResponseInverse inverse, double share) {
        double lightness = inverse.paperLightness() + share * (inverse.darkestLightness() - inverse.paperLightness());
        return (int) Math.round(1000 * inverse.coverage(Math.min(inverse.lightestLightness(), lightness)));
    }

    private InkChart chart(List<PlateTones> tones, int codePlate, int codePercent) {
        Recipe recipe = Recipe.of(
                Recipe.Kind.INKS,
                base.plate(),
                base.placing().bevelMillimetres(),
                (int) FilmFields.SEED.of(base).longValue(),
                codePercent,
                JobPlate.spacingMicrometres(base));
        return InkChart.of(recipe, tones, codePlate);
    }

    private FilmDocument document(InkChart chart, List<Plate> plates) {
        List<FilmDocument> own = new ArrayList<>();
        List<ExposurePlan.Line> particulars = new ArrayList<>();
        ObjectNode set = JsonText.file("set", 1).put("by", "test");
        ArrayNode list = set.putArray("plates");
        String text = InkChartFile.text(chart);
        for (int i = 0; i < plates.size(); i++) {
            Plate plate = plates.get(i);
            ExposurePlan plan = WedgePlan.ofInks(
                    plate.job(),
                    plate.shop(),
                    chart,
                    i,
                    plate.plate().loss(plate.tones().predicted(), chart.plate(i).plateByCoverage()));
            FilmComposer rows = composed(chart, i, plate, plan);
            own.add(FilmFile.ofTestPlate(
                    plate.job(), plate.shop(), plan, List.of(new FilmDocument.Film(rows.sheet(), rows)), text));
            String ink = inks.inks().get(i).name();
            list.addObject()
                    .put("number", i + 1)
                    .put("ink", ink)
                    .put("title", plate.job().title())
                    .put("grain", plate.job().grain().name());
            particulars.add(new ExposurePlan.Line("plate " + (i + 1), ink, "", ""));
        }
        ExposurePlan press = PressOrder.plan(
                inks, plates.get(0).job(), own.get(0).bench().plan().caution());
        return new SetDocument(base, shop, inks, set, particulars, press)
                .of(own, List.of(SetDocument.json(Attachment.CHART, text, "what lies where on the test plates")));
    }

    private FilmComposer composed(InkChart chart, int index, Plate plate, ExposurePlan plan) {
        FilmPixels pixels = shop.filmPrinter().pixels(plate.job().resolution());
        return TestPlateSheet.film(
                chart.plate(index),
                pixels,
                plate.plate().grain(),
                1,
                plate.job().placing().sheet(),
                plate.job().placing().readingSide().mirrored(),
                FilmLegends.testPlate(
                        plate.job(),
                        pixels,
                        "test plate " + (index + 1) + " of " + chart.tones().size() + ", inks " + chart.id(),
                        List.of(),
                        plan.summary()),
                List.of(),
                FilmPdf.legendWidth());
    }

    private Findings findings(InkChart chart, int films) {
        long checks =
                chart.patches().stream().filter(patch -> patch.role().isCheck()).count();
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < inks.inks().size(); i++) {
            rows.add(String.format(
                    Locale.ROOT,
                    "%d  %s, printed %s, up to %s %% on the film",
                    i + 1,
                    inks.inks().get(i).name(),
                    i + 1 == inks.inks().size() ? "last" : InkSet.ordinal(i + 1),
                    Refusal.plain(chart.tones().get(i).full() / 10.0)));
        }
        return new Findings()
                .say(
                        "set",
                        inks.inks().size() + " test plates over one another of " + base.plate(),
                        inks.inks().size())
                .list("plates", rows)
                .say(
                        "chart",
                        "inks " + chart.id() + ", " + chart.patches().size() + " fields, " + checks
                                + " of them only check the rest",
                        chart.id())
                .say(
                        "codes",
                        "on plate " + (chart.codePlate() + 1) + ", "
                                + inks.inks().get(chart.codePlate()).name() + ", which is the darkest")
                .say("print", FilmDocument.paper(films));
    }
}
