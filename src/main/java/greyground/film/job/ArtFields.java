package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Line;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.tone.RangeMapping;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Which part of which picture, and how its tones are taken: settings of {@link JobFields}. */
public final class ArtFields {
    static final JobField<String> FILE_NAME = JobField.part(
                    "art-name", new Line(), job -> job.art().fileName(), "art.fileName")
            .at("art", "fileName");

    static final JobField<String> SHA256 = JobField.part(
                    "art-digest", new Line(), job -> job.art().sha256(), "art.sha256")
            .at("art", "sha256");

    public static final JobField<Long> PAGE = JobField.of(
                    "page",
                    new Whole(ArtChoice.PAGE),
                    job -> (long) job.art().page(),
                    (job, value) -> job.with("art.page", value.intValue()))
            .typed("N")
            .at("art", "page")
            .shown("Picture in file", "Which picture, where the file holds several.");

    /** Comes before the fragment, which is counted on the turned art. */
    public static final JobField<Double> ROTATE = JobField.number(
                    "rotate",
                    new Range(-360, 360, Unit.DEGREES, "one turn is enough"),
                    0.1,
                    job -> job.art().turnedDegrees(),
                    ArtFields::turned)
            .typed("DEGREES")
            .shown(
                    "Turn",
                    "Turns the art clockwise. Whole quarter turns move pixels as they are; what is left over straightens a crooked scan.");

    /** Instead of a fragment: as much as straightened art fills. */
    static final String COVERED = "covered";

    public static final JobField<Crop> CROP = JobField.part(
                    "crop", new Fragment(), job -> job.art().crop(), "art.crop")
            .typed("L,T,W,H")
            .at("art", "crop")
            .shown(
                    "Crop",
                    "Fragment of the art: left, top, width, height in percent (10%,5%,80%,80%) or pixels; or 'covered', the largest that a straightened picture fills (usual: all of it).");

    public static final JobField<Double> CROP_LEFT = JobField.number(
                    "crop-left",
                    Crop.SHARE,
                    0.005,
                    job -> job.art().crop().left(),
                    (job, value) -> cropped(job, crop -> crop.from(value, crop.top())))
            .shown(
                    "Crop from left",
                    "Where the fragment begins, in percent of the picture's width. C, then drag on the picture, draws it by hand.");

    public static final JobField<Double> CROP_TOP = JobField.number(
                    "crop-top",
                    Crop.SHARE,
                    0.005,
                    job -> job.art().crop().top(),
                    (job, value) -> cropped(job, crop -> crop.from(crop.left(), value)))
            .shown("Crop from top", "Where the fragment begins, in percent of the picture's height.");

    public static final JobField<Double> CROP_WIDTH = JobField.number(
                    "crop-width",
                    Crop.SHARE,
                    0.005,
                    job -> job.art().crop().width(),
                    (job, value) -> cropped(job, crop -> crop.sized(value, crop.height())))
            .shown("Crop width", "How wide the fragment is, in percent of the picture's width.");

    public static final JobField<Double> CROP_HEIGHT = JobField.number(
                    "crop-height",
                    Crop.SHARE,
                    0.005,
                    job -> job.art().crop().height(),
                    (job, value) -> cropped(job, crop -> crop.sized(crop.width(), value)))
            .shown("Crop height", "How tall the fragment is, in percent of the picture's height.");

    static final JobField<Long> QUARTER_TURNS = JobField.of(
                    "quarter-turns",
                    new Whole(ArtChoice.QUARTER_TURNS),
                    job -> (long) job.art().quarterTurns(),
                    (job, value) -> job.with("art.quarterTurns", value.intValue()))
            .at("art", "quarterTurns");

    static final JobField<Double> STRAIGHTEN = JobField.part(
                    "straighten",
                    ArtChoice.STRAIGHTENING,
                    0.1,
                    job -> job.art().straightenDegrees(),
                    "art.straightenDegrees")
            .at("art", "straightenDegrees");

    public static final JobField<Optional<Double>> WHITE = JobField.of(
                    "white",
                    new Or<>("automatic", new Measured(ArtChoice.TonePoint.Given.LUMINANCE, 0.005)),
                    job -> job.art().white().given(),
                    (job, value) -> job.with("art.white", TonePoint.of(value)))
            .typed("POINT")
            .at("art", "whiteLuminance")
            .shown(
                    "Paper white",
                    "The art's paper white as reflectance, such as 85%, or 'automatic': it, and all that is lighter, stays clear film. Found in the picture unless you set it; pick it from the picture with P.");

    public static final JobField<Optional<Double>> BLACK = JobField.of(
                    "black",
                    new Or<>("automatic", new Measured(ArtChoice.TonePoint.Given.LUMINANCE, 0.005)),
                    job -> job.art().black().given(),
                    (job, value) -> job.with("art.black", TonePoint.of(value)))
            .typed("POINT")
            .at("art", "blackLuminance")
            .shown(
                    "Ink black",
                    "The art's ink black as reflectance, such as 2%, or 'automatic': it, and all that is darker, gets the darkest tone the plate can hold. Pick it from the picture with K.");

    public static final JobField<RangeMapping> RANGE = JobField.part(
                    "range",
                    Choice.of(List.of(
                            mapping("lightness", "even to the eye"),
                            mapping("black-point", "keep middle tones"),
                            mapping("density", "even in density"))),
                    Job::rangeMapping,
                    "rangeMapping")
            .typed("WORD")
            .at("rangeMapping")
            .shown(
                    "Tones",
                    "How the picture's range is fitted to the shorter one of a print. Lightness, even to the eye, spreads all lightnesses alike; black-point holds middle tones where they are and gives way in the darks; density treats both like photographs.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED =
            List.of(FILE_NAME, SHA256, PAGE, ROTATE, CROP, QUARTER_TURNS, STRAIGHTEN, WHITE, BLACK);

    private ArtFields() {}

    private static Way<RangeMapping> mapping(String word, String label) {
        return new Way<>(RangeMapping.named(word), word, label);
    }

    /** Turned clockwise in all: by whole quarters, whose pixels move as they are, and the rest. */
    private static Job turned(Job job, double degrees) {
        long quarters = Math.round(degrees / 90);
        return job.with("art.quarterTurns", (int) Math.floorMod(quarters, 4L))
                .with("art.straightenDegrees", degrees - 90 * quarters);
    }

    private static Job cropped(Job job, UnaryOperator<Crop> other) {
        return job.with("art.crop", other.apply(job.art().crop()));
    }

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

    record Fragment() implements Kind<Crop> {
        @Override
        public Crop parse(String what, String text, Kind.Art art) {
            String[] parts = text.split(",", -1);
            if (parts.length != 4) {
                throw Refusal.use(
                        what + " \"" + text + "\" has " + parts.length
                                + " parts; it must have 4: left,top,width,height, each in % or pixels, such as 10%,5%,80%,80%; or be the word covered");
            }
            double[] shares = new double[4];
            for (int i = 0; i < 4; i++) {
                String part = parts[i].strip();
                if (part.endsWith("%")) {
                    shares[i] = Unit.SHARE.parse(what, part);
                } else if (part.matches("[0-9]{1,9}(px)?") && art.width() > 0) {
                    shares[i] = Integer.parseInt(part.replace("px", "")) / (i % 2 == 0 ? art.width() : art.height());
                } else {
                    throw Refusal.use(
                            what + " part \"" + part + "\" is neither a percentage nor whole pixels: write 10% or 240");
                }
            }
            return new Crop(shares[0], shares[1], shares[2], shares[3]);
        }

        @Override
        public String print(Crop crop) {
            return Stream.of(crop.left(), crop.top(), crop.width(), crop.height())
                    .map(Unit.SHARE::text)
                    .collect(Collectors.joining(","));
        }

        @Override
        public void write(ObjectNode node, String name, Crop value) {
            ObjectNode crop = node.putObject(name);
            crop.set("left", JsonText.number(value.left()));
            crop.set("top", JsonText.number(value.top()));
            crop.set("width", JsonText.number(value.width()));
            crop.set("height", JsonText.number(value.height()));
        }

        @Override
        public Crop read(JsonFields fields, String name, @Nullable Crop usual) {
            JsonFields crop = fields.section(name);
            return new Crop(
                    crop.number("left", 0, Crop.SHARE),
                    crop.number("top", 0, Crop.SHARE),
                    crop.number("width", 1, Crop.SHARE),
                    crop.number("height", 1, Crop.SHARE));
        }
    }
}
