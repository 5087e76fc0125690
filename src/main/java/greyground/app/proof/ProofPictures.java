package greyground.app.proof;

import greyground.app.bite.BiteTimes;
import greyground.app.sight.Stage;
import greyground.film.job.Job;
import greyground.picture.BiteSheet;
import greyground.picture.DepthLegend;
import greyground.picture.LoupeSheet;
import greyground.picture.Mount;
import greyground.picture.Picture;
import greyground.plan.Bite;
import greyground.plan.PlanRequest;
import greyground.plate.Bath;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.PlateWindow;
import greyground.plate.PrintableRange;
import greyground.plate.VirtualResponse;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The pictures of a proof as they are handed out: mounted, with scale bar and words. */
public final class ProofPictures {
    private static final int LOUPE_PIXELS = 420;

    /** Widest window of a contact sheet; a whole plate for each bite would take minutes. */
    private static final double SHEET_MILLIMETRES = 48;

    private static final int SHEET_PIXELS = 420;
    private static final double SHEET_LOUPE_MILLIMETRES = 2;

    private final ProofWork work;

    /** Pictures of one plate. */
    public ProofPictures(ProofWork work) {
        this.work = work;
    }

    /**
     * The whole plate at the stages asked for, all in one reading of the film: the print as it hangs, copper and resist as the
     * plate lies face up.
     */
    public List<Picture> whole(double dotsPerInch, List<Stage> stages, Progress progress) throws IOException {
        PlateWindow window = work.whole(dotsPerInch);
        List<PlateLooks.Shown> shown = stages.stream()
                .map(stage -> new PlateLooks.Shown(stage, isPlate(stage) && work.plateMirrorsPrint()))
                .toList();
        List<Picture> seen = work.asPlanned(window, shown, progress);
        List<Picture> mounted = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            mounted.add(mounted(stages.get(i), seen.get(i)));
        }
        return mounted;
    }

    private static boolean isPlate(Stage stage) {
        return stage == Stage.RESIST || stage == Stage.COPPER;
    }

    private Picture mounted(Stage stage, Picture picture) {
        String faceUp = work.plateMirrorsPrint()
                ? "The plate face up: the mirror of its print."
                : "The plate face up: it reads like the final print.";
        return switch (stage) {
            case FILM -> Mount.of(picture, "Film", List.of(plateWords(), "As the print reads."), null);
            case RESIST -> Mount.of(picture, "Resist", List.of(coverWords() + ". " + faceUp, plateWords()), null);
            case COPPER ->
                Mount.of(
                        picture,
                        wellsTitle(),
                        List.of("Lit from the top left. " + faceUp, plateWords()),
                        legend(work.plate().conditions()));
            case PRINT ->
                Mount.of(
                        picture,
                        "Print, predicted",
                        List.of(
                                "As it hangs; paper L* " + tone(range().bare()) + ", darkest tone L* "
                                        + tone(range().darkest()) + knownWords(),
                                plateWords()),
                        null);
        };
    }

    private String coverWords() {
        return work.job().process() instanceof PlateProcess.SprayedAquatint
                ? "Grey is resist or ground, copper is bare"
                : "Grey is hardened, copper is bare";
    }

    private String wellsTitle() {
        return work.job().process() instanceof PlateProcess.UnetchedFilm ? "Hardened film" : "Copper";
    }

    /** One place at all four stages. */
    public Picture loupe(Offset place, double widthMillimetres, Progress progress) throws IOException {
        PlateWindow window = work.about(place, widthMillimetres, LOUPE_PIXELS);
        List<Picture> seen = work.pictures(window, List.of(Stage.values()), ProofWork.Held.AS_PRINTED, progress);
        PlateConditions conditions = work.plate().conditions();
        List<LoupeSheet.Panel> panels = List.of(
                new LoupeSheet.Panel("film", "on a light table", seen.get(0)),
                new LoupeSheet.Panel("resist", coverWords().toLowerCase(Locale.ROOT), seen.get(1)),
                new LoupeSheet.Panel(wellsTitle().toLowerCase(Locale.ROOT), "lit from the top left", seen.get(2)),
                new LoupeSheet.Panel("print", "ink on the paper", seen.get(3)));
        return LoupeSheet.of(
                panels,
                List.of(
                        "Loupe at " + Refusal.plain(place.acrossMillimetres()) + " mm across, "
                                + Refusal.plain(place.downMillimetres()) + " mm down from the plate's top left, "
                                + Refusal.plain(widthMillimetres) + " mm wide; all four as the print reads.",
                        plateWords()),
                legend(conditions));
    }

    /** Refuses a series of bites where nothing is bitten, or about a place off the plate. */
    void checkBites(Optional<Offset> place) {
        if (!(work.plate().conditions().wells() instanceof Bath)) {
            throw Refusal.use(work.job().process().words()
                    + " is not bitten, so it has no bite series: leave out --bite, or choose another process");
        }
        place.ifPresent(middle -> work.about(middle, SHEET_LOUPE_MILLIMETRES, LOUPE_PIXELS));
    }

    /**
     * The plate bitten for several times.
     *
     * @param place at the middle of the sheet's pictures, or empty for the plate's own middle
     */
    public Picture bites(BiteTimes times, Optional<Offset> place, Progress progress) throws IOException {
        checkBites(place);
        Offset middle =
                place.orElseGet(() -> new Offset(work.widthMicrometres() / 2000, work.heightMicrometres() / 2000));
        List<PlateConditions> conditions = new ArrayList<>();
        List<Double> depths = new ArrayList<>();
        for (double minutes : times.minutes()) {
            double depth = bath().depthAfter(minutes);
            depths.add(depth);
            conditions.add(work.plate().conditions(depth));
        }
        PlateWindow wide = sheetWindow(middle);
        int side = Math.min(wide.rows(), LOUPE_PIXELS);
        PlateWindow close = work.about(middle, SHEET_LOUPE_MILLIMETRES, Math.max(160, side));
        List<List<Picture>> prints = work.predicted(wide, conditions, asPrinted(Stage.PRINT), progress.part(0, 0.85));
        List<List<Picture>> loupes =
                work.predicted(close, conditions, asPrinted(Stage.COPPER, Stage.PRINT), progress.part(0.85, 1));
        List<BiteSheet.Row> rows = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            rows.add(new BiteSheet.Row(
                    Refusal.plain(times.minutes().get(i)) + " min",
                    biteWords(depths.get(i), work.plate().response(conditions.get(i))),
                    List.of(
                            prints.get(i).get(0),
                            loupes.get(i).get(0),
                            loupes.get(i).get(1))));
        }
        return BiteSheet.of(
                List.of(
                        new BiteSheet.Column("print"),
                        new BiteSheet.Column("copper under the loupe"),
                        new BiteSheet.Column("print under the loupe")),
                rows,
                List.of(
                        "About " + millimetres(middle.acrossMillimetres()) + " mm across, "
                                + millimetres(middle.downMillimetres())
                                + " mm down from the plate's top left; all as the print reads.",
                        "One film, " + job().process().words() + ", "
                                + job().grain().name()
                                + ", its curve made for a bite of "
                                + micrometres(work.workshop().usualDepthMicrometres())
                                + "."));
    }

    private static List<PlateLooks.Shown> asPrinted(Stage... stages) {
        return Arrays.stream(stages)
                .map(stage -> new PlateLooks.Shown(stage, false))
                .toList();
    }

    private PlateWindow sheetWindow(Offset middle) {
        double plateWidth = work.widthMicrometres();
        double plateHeight = work.heightMicrometres();
        double width = Math.min(plateWidth, SHEET_MILLIMETRES * 1000);
        double height = Math.min(plateHeight, width * 0.75);
        double left = Math.max(0, Math.min(plateWidth - width, middle.acrossMillimetres() * 1000 - width / 2));
        double top = Math.max(0, Math.min(plateHeight - height, middle.downMillimetres() * 1000 - height / 2));
        double cell = width / SHEET_PIXELS;
        return new PlateWindow(left, top, cell, SHEET_PIXELS, Math.max(1, (int) (height / cell)));
    }

    private static List<String> biteWords(double depth, VirtualResponse response) {
        PrintableRange range = response.printableRange();
        List<String> words = new ArrayList<>();
        words.add(micrometres(depth) + " deep");
        words.add("prints L* " + tone(range.bare()) + " to " + tone(range.darkest()));
        words.add(
                response.turningPoint() < 1
                        ? "paler again above " + tone(100 * response.turningPoint()) + " % black"
                        : "darkens up to solid black");
        return words;
    }

    /** The bath as it stands; what this one plate adds of copper is left out, 1 % of the rate for 300 cm2 in 2 litres. */
    private Bite bath() {
        Job job = work.job();
        return Bite.of(work.workshop(), new PlanRequest(job, 0, "", ""));
    }

    private Job job() {
        return work.job();
    }

    private PrintableRange range() {
        return work.tones().printableRange();
    }

    private String knownWords() {
        return work.tones().isMeasured() ? ", tones " + work.tones().name() + "." : ".";
    }

    private static DepthLegend legend(PlateConditions conditions) {
        return new DepthLegend(conditions.deepestMicrometres());
    }

    private String plateWords() {
        return job().title() + ": plate " + job().plate() + ", "
                + job().process().words() + ", "
                + job().grain().name() + " at "
                + Refusal.plain(job().resolution().dotsPerInch()) + " dpi, "
                + work.plate().conditions().wellsName() + ".";
    }

    private static String micrometres(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10) + " \u00b5m";
    }

    private static String millimetres(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10);
    }

    private static String tone(double value) {
        return Refusal.plain(Math.rint(value));
    }
}
