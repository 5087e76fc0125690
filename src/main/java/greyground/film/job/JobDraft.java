package greyground.film.job;

import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.Placing.Fit;
import greyground.film.job.ReadingSide.InkSide;
import greyground.grain.Grain;
import greyground.json.KeptField;
import greyground.plate.PlateProcess;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import java.util.List;
import java.util.Optional;

/** A job while its settings are told, one after the other; it begins as usual, and is judged as a whole when it is done. Used by one thread. */
final class JobDraft {
    String title = "";
    String date = "";
    /** A5 (ISO 216): a plate that fits most bevelled presses. */
    Size plate = Size.parse("plate", "A5");

    PlateProcess process = new PlateProcess.EtchedFilm();
    Resolution resolution = new Resolution(1440);
    Grain grain = Grain.Stochastic.USUAL;
    String fileName = "";
    String sha256 = "";
    int page = 1;
    Crop crop = Crop.ALL;
    int quarterTurns;
    double straightenDegrees;
    Optional<Double> white = Optional.empty();
    Optional<Double> black = Optional.empty();
    Fit fit = Placing.USUAL.fit();
    double bleed = Placing.USUAL.bleedMillimetres();
    double bevel = Placing.USUAL.bevelMillimetres();
    PaperShrink shrink = Placing.USUAL.shrink();
    InkSide inkSide = Placing.USUAL.readingSide().inkSide();
    int transfers = Placing.USUAL.readingSide().transfers();
    Optional<Size> sheet = Placing.USUAL.sheet();
    boolean tiled = Placing.USUAL.tiled();
    String range = "lightness";
    boolean mended;
    List<KeptField> kept = List.of();

    /** A job as usual. */
    JobDraft() {}

    /** What a job says. */
    JobDraft(Job job) {
        title = job.title();
        date = job.date();
        plate = job.plate();
        process = job.process();
        resolution = job.resolution();
        grain = job.grain();
        ArtChoice art = job.art();
        fileName = art.fileName();
        sha256 = art.sha256();
        page = art.page();
        crop = art.crop();
        quarterTurns = art.quarterTurns();
        straightenDegrees = art.straightenDegrees();
        white = luminance(art.white());
        black = luminance(art.black());
        Placing placing = job.placing();
        fit = placing.fit();
        bleed = placing.bleedMillimetres();
        bevel = placing.bevelMillimetres();
        shrink = placing.shrink();
        inkSide = placing.readingSide().inkSide();
        transfers = placing.readingSide().transfers();
        sheet = placing.sheet();
        tiled = placing.tiled();
        range = job.rangeMapping();
        mended = job.mended();
        kept = job.kept();
    }

    private static Optional<Double> luminance(TonePoint point) {
        return point instanceof TonePoint.Given given ? Optional.of(given.luminance()) : Optional.empty();
    }

    private static TonePoint point(Optional<Double> luminance) {
        return luminance.<TonePoint>map(TonePoint.Given::new).orElseGet(TonePoint.Automatic::new);
    }

    /** The job as it was told, or a refusal of what does not go together. */
    Job job() {
        return new Job(
                title,
                date,
                plate,
                process,
                resolution,
                grain,
                new ArtChoice(
                        fileName, sha256, page, crop, quarterTurns, straightenDegrees, point(white), point(black)),
                new Placing(fit, bleed, bevel, shrink, new ReadingSide(inkSide, transfers), sheet, tiled),
                range,
                mended,
                kept);
    }

    /** Another process; only photogravure has a film without grain, which can't be mended. */
    void make(PlateProcess other) {
        process = other;
        boolean continuous = other instanceof PlateProcess.Photogravure;
        if (continuous != grain instanceof Grain.Continuous) {
            grain = continuous ? Grain.Continuous.USUAL : Grain.Stochastic.USUAL;
        }
        mended &= !continuous;
    }

    /** A halftone's settings, as usual where there is none. */
    Grain.Halftone halftone() {
        return grain instanceof Grain.Halftone present ? present : Grain.Halftone.USUAL;
    }

    Grain.Stochastic stochastic() {
        return grain instanceof Grain.Stochastic present ? present : Grain.Stochastic.USUAL;
    }

    PlateProcess.Photogravure screen() {
        return process instanceof PlateProcess.Photogravure present ? present : PlateProcess.Photogravure.usual();
    }

    PlateProcess.SprayedAquatint ground() {
        return process instanceof PlateProcess.SprayedAquatint present ? present : PlateProcess.SprayedAquatint.usual();
    }

    /** Turned clockwise in all: by whole quarters, whose pixels move as they are, and the rest. */
    void turn(double degrees) {
        long quarters = Math.round(degrees / 90);
        quarterTurns = (int) Math.floorMod(quarters, 4L);
        straightenDegrees = degrees - 90 * quarters;
    }
}
