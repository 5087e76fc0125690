package greyground.film.job;

import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Line;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.quantity.Range;
import greyground.quantity.Unit;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Which part of which picture, and how its tones are taken: settings of {@link JobFields}. */
public final class ArtFields {
    static final JobField<String> FILE_NAME = JobField.of(
                    "art-name", new Line(), draft -> draft.fileName, (draft, value) -> draft.fileName = value)
            .at("art", "fileName");

    static final JobField<String> SHA256 = JobField.of(
                    "art-digest", new Line(), draft -> draft.sha256, (draft, value) -> draft.sha256 = value)
            .at("art", "sha256");

    public static final JobField<Long> PAGE = JobField.of(
                    "page",
                    new Whole(ArtChoice.PAGE),
                    draft -> (long) draft.page,
                    (draft, value) -> draft.page = value.intValue())
            .typed("N")
            .at("art", "page")
            .shown("Picture in file", "Which picture, where the file holds several.");

    /** Comes before the fragment, which is counted on the turned art. */
    public static final JobField<Double> ROTATE = JobField.number(
                    "rotate",
                    new Range(-360, 360, Unit.DEGREES, "one turn is enough"),
                    0.1,
                    draft -> 90 * draft.quarterTurns + draft.straightenDegrees,
                    JobDraft::turn)
            .typed("DEGREES")
            .shown(
                    "Turn",
                    "Turns the art clockwise. Whole quarter turns move pixels as they are; what is left over straightens a crooked scan.");

    /** Instead of a fragment: as much as straightened art fills. */
    static final String COVERED = "covered";

    public static final JobField<Crop> CROP = JobField.of(
                    "crop", new Fragment(), draft -> draft.crop, (draft, value) -> draft.crop = value)
            .typed("L,T,W,H")
            .at("art", "crop")
            .shown(
                    "Crop",
                    "Fragment of the art: left, top, width, height in percent (10%,5%,80%,80%) or pixels; or 'covered', the largest that a straightened picture fills (usual: all of it).");

    public static final JobField<Double> CROP_LEFT = JobField.number(
                    "crop-left",
                    Crop.SHARE,
                    0.005,
                    draft -> draft.crop.left(),
                    (draft, value) -> draft.crop = draft.crop.from(value, draft.crop.top()))
            .shown(
                    "Crop from left",
                    "Where the fragment begins, in percent of the picture's width. C, then drag on the picture, draws it by hand.");

    public static final JobField<Double> CROP_TOP = JobField.number(
                    "crop-top",
                    Crop.SHARE,
                    0.005,
                    draft -> draft.crop.top(),
                    (draft, value) -> draft.crop = draft.crop.from(draft.crop.left(), value))
            .shown("Crop from top", "Where the fragment begins, in percent of the picture's height.");

    public static final JobField<Double> CROP_WIDTH = JobField.number(
                    "crop-width",
                    Crop.SHARE,
                    0.005,
                    draft -> draft.crop.width(),
                    (draft, value) -> draft.crop = draft.crop.sized(value, draft.crop.height()))
            .shown("Crop width", "How wide the fragment is, in percent of the picture's width.");

    public static final JobField<Double> CROP_HEIGHT = JobField.number(
                    "crop-height",
                    Crop.SHARE,
                    0.005,
                    draft -> draft.crop.height(),
                    (draft, value) -> draft.crop = draft.crop.sized(draft.crop.width(), value))
            .shown("Crop height", "How tall the fragment is, in percent of the picture's height.");

    static final JobField<Long> QUARTER_TURNS = JobField.of(
                    "quarter-turns",
                    new Whole(ArtChoice.QUARTER_TURNS),
                    draft -> (long) draft.quarterTurns,
                    (draft, value) -> draft.quarterTurns = value.intValue())
            .at("art", "quarterTurns");

    static final JobField<Double> STRAIGHTEN = JobField.number(
                    "straighten",
                    ArtChoice.STRAIGHTENING,
                    0.1,
                    draft -> draft.straightenDegrees,
                    (draft, value) -> draft.straightenDegrees = value)
            .at("art", "straightenDegrees");

    public static final JobField<Optional<Double>> WHITE = JobField.of(
                    "white",
                    new Or<>("automatic", new Measured(ArtChoice.TonePoint.Given.LUMINANCE, 0.005)),
                    draft -> draft.white,
                    (draft, value) -> draft.white = value)
            .typed("POINT")
            .at("art", "whiteLuminance")
            .shown(
                    "Paper white",
                    "The art's paper white as reflectance, such as 85%, or 'automatic': it, and all that is lighter, stays clear film. Found in the picture unless you set it; pick it from the picture with W.");

    public static final JobField<Optional<Double>> BLACK = JobField.of(
                    "black",
                    new Or<>("automatic", new Measured(ArtChoice.TonePoint.Given.LUMINANCE, 0.005)),
                    draft -> draft.black,
                    (draft, value) -> draft.black = value)
            .typed("POINT")
            .at("art", "blackLuminance")
            .shown(
                    "Ink black",
                    "The art's ink black as reflectance, such as 2%, or 'automatic': it, and all that is darker, gets the darkest tone the plate can hold. Pick it from the picture with B.");

    public static final JobField<String> RANGE = JobField.of(
                    "range",
                    new Choice<>(
                            Function.identity(),
                            List.of(
                                    new Way<>("lightness", "lightness", "even to the eye"),
                                    new Way<>("black-point", "black-point", "keep middle tones"),
                                    new Way<>("density", "density", "even in density"))),
                    draft -> draft.range,
                    (draft, value) -> draft.range = value)
            .typed("WORD")
            .at("rangeMapping")
            .shown(
                    "Tones",
                    "How the picture's range is fitted to the shorter one of a print. Lightness, even to the eye, spreads all lightnesses alike; black-point holds middle tones where they are and gives way in the darks; density treats both like photographs.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED =
            List.of(FILE_NAME, SHA256, PAGE, ROTATE, CROP, QUARTER_TURNS, STRAIGHTEN, WHITE, BLACK);

    private ArtFields() {}

    /**
     * The job with the largest fragment of its plate's shape that its straightened art fills.
     *
     * @param upright the art before it is turned
     */
    static Job covered(Job job, Kind.Art upright) {
        Kind.Art art = upright.turned(job.art().quarterTurns());
        return CROP.with(
                job, LevelledArt.of(art.width(), art.height(), job.art()).covered(job.plate(), job.placing()));
    }
}
