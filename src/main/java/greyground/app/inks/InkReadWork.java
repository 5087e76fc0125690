package greyground.app.inks;

import greyground.app.files.KeptFiles;
import greyground.app.files.SafeFile;
import greyground.app.inks.InkLesson.SeenOverprint;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.JobPlate;
import greyground.app.teach.ReadWords;
import greyground.chart.InkChart;
import greyground.colour.Lab;
import greyground.colour.Xyz;
import greyground.film.job.ArtChoice;
import greyground.film.job.Hand;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.sheet.InkChartFile;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.ink.InksFile;
import greyground.ink.PrintingInk;
import greyground.output.Attachment;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.FieldLights;
import greyground.scan.Projective;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import greyground.tone.ColourSight;
import greyground.tone.ColourWeights;
import greyground.workshop.PlateMaking;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Reads the scanned print of a set's test plates and works out its inks; writes nothing but the file of the inks that were learnt. */
public final class InkReadWork {
    private static final double MICROMETRES_PER_INCH = 25_400;

    private final InkChart chart;
    private final InkSet inks;
    private final Workshop shop;
    private final List<Job> jobs;
    private final ReadWords words;
    private final LocalDate date;

    private InkReadWork(InkChart chart, InkSet inks, Workshop shop, List<Job> jobs, ReadWords words, LocalDate date) {
        this.chart = chart;
        this.inks = inks;
        this.shop = shop;
        this.jobs = jobs;
        this.words = words;
        this.date = date;
    }

    /**
     * Opens what the reading rests on.
     *
     * @param set the films, as 'wedge --inks' made them
     * @param shop in which the plates were made; empty for the films' own
     */
    public static InkReadWork of(Path set, Optional<Workshop> shop, ReadWords words, LocalDate today) {
        InkChart chart = InkChartFile.read(KeptFiles.text("test plate", set, Attachment.CHART));
        InkSet inks = KeptFiles.inks(set);
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < inks.inks().size(); i++) {
            String name = i + 1 + "-" + Attachment.JOB;
            jobs.add(JobFile.read(KeptFiles.carried(set, name)
                    .orElseThrow(() -> Refusal.failure(
                            set.getFileName() + " carries no " + name + ": make the test plates anew"))));
        }
        if (jobs.size() != chart.tones().size()) {
            throw Refusal.failure(set.getFileName() + " names " + jobs.size() + " inks for "
                    + chart.tones().size() + " test plates: make the test plates anew");
        }
        words.flareShare();
        words.corners();
        return new InkReadWork(
                chart, inks, shop.orElseGet(() -> KeptFiles.workshop(set)), jobs, words, words.date(today));
    }

    /**
     * Reads a scan of the print and writes the inks it teaches.
     *
     * @param measured colours of some of its fields
     * @param learnt the inks file to write
     */
    public Findings read(Path scan, Optional<Path> measured, Path learnt, Progress progress) throws IOException {
        TypedColours typed =
                measured.map(file -> TypedColours.read(file, chart)).orElse(TypedColours.NONE);
        List<String> notes = new ArrayList<>();
        Seen seen = seen(scan, notes, progress.part(0, 0.5));
        PrintColours.checkColoured(seen.shares());
        PrintColours print = PrintColours.of(chart, seen.shares(), seen.sheet(), seen.stated(), typed)
                .agreeing(notes::add);
        InkLesson lesson = InkLesson.of(
                new InkLesson.Told(chart, inks, shop, makings(), strengths(), date, seen.how() + "; " + print.words()),
                print);
        progress.done(0.95);
        String text = InksFile.text(lesson.learnt());
        SafeFile.write("inks", learnt, channel -> channel.write(StandardCharsets.UTF_8.encode(text)));
        return findings(seen, print, lesson, notes);
    }

    /**
     * What a scan shows.
     *
     * @param shares X/Xn, Y and Z/Zn of each field over the bare sheet's, by its number
     * @param sheet the bare sheet, as the scan states its colour
     */
    private record Seen(Map<Integer, Xyz> shares, Xyz sheet, boolean stated, String how) {}

    private Seen seen(Path scan, List<String> notes, Progress progress) throws IOException {
        try (ArtSource source = ArtSource.open(scan)) {
            if (!source.coloured()) {
                throw Refusal.failure("the scan " + scan.getFileName() + " is grey: scan the print in colour");
            }
            GreyPlane luminance = source.turned(ArtChoice.WHOLE, progress.part(0, 0.2));
            notes.addAll(source.remarks(ArtChoice.WHOLE));
            ScanChoices choices = new ScanChoices(words.corners(), List.of(), Optional.of(words.flareShare()), 100);
            ScanReading found = ChartReader.read(luminance, chart.print(), choices, progress.part(0.2, 0.6));
            notes.addAll(found.notes());
            List<FieldLights> lights = new ArrayList<>();
            lights.add(lights(luminance, found.place(), progress));
            for (ColourWeights weights : List.of(ColourWeights.ofX(), ColourWeights.ofZ())) {
                lights.add(lights(source.turned(by(weights), progress.part(0.6, 0.8)), found.place(), progress));
            }
            progress.done(1);
            int clipped = lights.stream().mapToInt(FieldLights::clipped).max().orElse(0);
            if (clipped > 0) {
                notes.add(clipped + " of " + chart.patches().size() + " fields are clipped in one light of the scan and"
                        + " can't be trusted: scan again without automatic corrections");
            }
            return new Seen(
                    shares(lights),
                    new Xyz(
                            lights.get(1).paper() * Xyz.WHITE.x(),
                            lights.get(0).paper(),
                            lights.get(2).paper() * Xyz.WHITE.z()),
                    source.tonesStated(),
                    "scan of " + pixelsPerInch(found.place()) + " pixels per inch");
        }
    }

    private FieldLights lights(GreyPlane plane, Projective place, Progress progress) {
        return FieldLights.of(plane, chart.print(), place, words.flareShare(), progress.part(0.6, 0.6));
    }

    private static ArtChoice by(ColourWeights weights) {
        ArtChoice whole = ArtChoice.WHOLE;
        Hand rest = whole.hand();
        ColourSight sight =
                new ColourSight(ColourSight.Filter.NONE, ColourSight.Emulsion.LUMINANCE, Optional.of(weights));
        return new ArtChoice(
                whole.fileName(),
                whole.sha256(),
                whole.page(),
                whole.crop(),
                whole.quarterTurns(),
                whole.straightenDegrees(),
                whole.white(),
                whole.black(),
                new Hand(
                        sight,
                        rest.origin(),
                        rest.evenPaper(),
                        rest.localContrast(),
                        rest.crispness(),
                        rest.crispRadius(),
                        rest.line(),
                        rest.wish(),
                        rest.retouching()));
    }

    private static Map<Integer, Xyz> shares(List<FieldLights> lights) {
        Map<Integer, Xyz> shares = new HashMap<>();
        for (int field = 0; field < lights.get(0).shares().size(); field++) {
            List<Double> all = new ArrayList<>();
            for (FieldLights light : lights) {
                light.shares().get(field).ifPresent(all::add);
            }
            if (all.size() == 3) {
                shares.put(field, new Xyz(all.get(1) * Xyz.WHITE.x(), all.get(0), all.get(2) * Xyz.WHITE.z()));
            }
        }
        return shares;
    }

    private long pixelsPerInch(Projective place) {
        return Math.round(MICROMETRES_PER_INCH * place.scale(chart.recipe().plate()));
    }

    private List<PlateMaking> makings() {
        List<PlateMaking> makings = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            makings.add(JobPlate.making(inks.shop(i, shop), jobs.get(i)));
        }
        return makings;
    }

    private List<Double> strengths() {
        List<Double> strengths = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            strengths.add(inks.shop(i, shop).ink().strengthPerMicrometre().value());
        }
        return strengths;
    }

    private Findings findings(Seen seen, PrintColours print, InkLesson lesson, List<String> notes) {
        InkSet learnt = lesson.learnt();
        List<String> inkWords = new ArrayList<>();
        List<Findings> inkRows = new ArrayList<>();
        for (int i = 0; i < learnt.inks().size(); i++) {
            PrintingInk ink = learnt.inks().get(i);
            List<Lab> colours = ink.tones().orElseThrow().colours();
            Lab full = colours.get(colours.size() - 1);
            inkWords.add((i + 1) + "  " + ink.name() + ", full tone " + words(full));
            inkRows.add(new Findings()
                    .put("name", ink.name())
                    .put("full", lab(full))
                    .put("filmMicrometres", ink.filmMicrometres()));
        }
        List<String> overWords = new ArrayList<>();
        List<Findings> overRows = new ArrayList<>();
        for (SeenOverprint over : lesson.overprints()) {
            overWords.add(String.format(
                    Locale.ROOT,
                    "%s, %s, %.1f from what was foretold (u %.1f): %s; %.0f %% of the last ink stays",
                    learnt.names(over.plates()),
                    words(over.colour()),
                    over.off(),
                    over.doubt(),
                    over.taken() ? "the measured one is taken" : "left to the inks",
                    100 * over.stays()));
            overRows.add(new Findings()
                    .put("inks", learnt.names(over.plates()))
                    .put("colour", lab(over.colour()))
                    .put("off", over.off())
                    .put("u", over.doubt())
                    .put("taken", over.taken())
                    .put("stays", over.stays()));
        }
        return new Findings()
                .say(
                        "how",
                        seen.how() + "; " + print.fields().size() + " of "
                                + chart.patches().size() + " fields",
                        seen.how())
                .say("chart", "inks " + chart.id() + ", read on " + date, chart.id())
                .rows("inks", inkWords, inkRows)
                .say("paper", words(learnt.paper().orElseThrow()) + ", as it lies within the platemark")
                .rows("over", overWords, overRows)
                .say("checks", checkWords(lesson), checkFigures(lesson))
                .say("colours", worth(print, lesson))
                .list("notes", notes);
    }

    private static String checkWords(InkLesson lesson) {
        List<Double> off = lesson.checks().stream().sorted().toList();
        if (off.isEmpty()) {
            return "no field that checks could be read";
        }
        return String.format(
                Locale.ROOT,
                "%d fields that taught nothing are foretold to %.1f in the middle, %.1f at worst (CIEDE2000); fields printed"
                        + " alike differ by %.1f",
                off.size(),
                off.get(off.size() / 2),
                off.get(off.size() - 1),
                lesson.wiping());
    }

    private static Findings checkFigures(InkLesson lesson) {
        List<Double> off = lesson.checks().stream().sorted().toList();
        Findings figures = new Findings().put("fields", off.size()).put("repeats", lesson.wiping());
        return off.isEmpty()
                ? figures
                : figures.put("middle", off.get(off.size() / 2)).put("worst", off.get(off.size() - 1));
    }

    private static String worth(PrintColours print, InkLesson lesson) {
        return lesson.doubt()
                .map(doubt -> String.format(
                        Locale.ROOT,
                        "good to \u00b1 %.1f (CIEDE2000, 95 %%), from %d fields; %s",
                        doubt,
                        print.fields().size(),
                        print.words()))
                .orElse("not determined: " + print.words() + "; measure some 24 fields and give them with --measured");
    }

    private static String words(Lab lab) {
        return String.format(Locale.ROOT, "L* %.1f, a* %.1f, b* %.1f", lab.lightness(), lab.a(), lab.b());
    }

    private static Findings lab(Lab lab) {
        return new Findings()
                .put("lightness", lab.lightness())
                .put("a", lab.a())
                .put("b", lab.b());
    }
}
