package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Line;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Switch;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.grain.Grain;
import greyground.grain.Grain.DotShape;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptRecord;
import greyground.plate.LightSplit;
import greyground.plate.PlateProcess;
import greyground.plate.PlateProcess.Photogravure;
import greyground.plate.PlateProcess.SprayedAquatint;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import greyground.workshop.CarrierFields;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a film is and how its plate is made: the settings of {@link JobFields} that are kept first, and the last. */
public final class FilmFields {
    private static final String OF_PHOTOGRAVURE = "the screen film of photogravure: add --process photogravure";
    private static final String OF_SPRAYED_AQUATINT = "a sprayed aquatint: add --process sprayed-aquatint";
    private static final Range SEEDS = new Range(Long.MIN_VALUE, Long.MAX_VALUE, Unit.COUNT, "1 is usual");

    public static final JobField<String> TITLE = JobField.part("title", new Line(), Job::title, "title")
            .typed("TEXT")
            .at("title")
            .shown(
                    "Title",
                    "Printed on the film and at the head of its plan. One line, at most 120 characters; usually the art's file name.");

    public static final JobField<String> DATE = JobField.part("date", new Line(), Job::date, "date")
            .typed("DATE")
            .at("date")
            .shown("Date", "Printed on the film, year-month-day (usual: today).");

    public static final JobField<Size> PLATE = JobField.part("plate", new Sides(Job.PLATE_SIDE), Job::plate, "plate")
            .typed("SIZE")
            .at("plate")
            .shown("Plate", "The copper's size, such as 200x250mm, 8x10in, A5 or A5 landscape.");

    public static final JobField<Double> PLATE_WIDTH = JobField.part(
                    "plate-width", Job.PLATE_SIDE, 1, job -> job.plate().widthMillimetres(), "plate.widthMillimetres")
            .shown(
                    "Plate width",
                    "The copper's own width, or the name of both sides' size, such as A5. Measure the plate you have.");

    public static final JobField<Double> PLATE_HEIGHT = JobField.part(
                    "plate-height",
                    Job.PLATE_SIDE,
                    1,
                    job -> job.plate().heightMillimetres(),
                    "plate.heightMillimetres")
            .shown("Plate height", "The copper's own height, as it will lie under the picture.");

    public static final JobField<PlateProcess> PROCESS = JobField.of(
                    "process",
                    new Making<>(
                            new Choice<>(
                                    PlateProcess::word,
                                    PlateProcess.all().stream()
                                            .map(each -> new Way<>(each, each.word(), each.words()))
                                            .toList()),
                            CarrierFields::writeProcess,
                            CarrierFields::readProcess),
                    Job::process,
                    FilmFields::madeBy)
            .typed("WORD")
            .at("process")
            .shown(
                    "Process",
                    "How the plate is made. Etched film: thinned film, dots on the positive, one bite. Sprayed aquatint: a ground is sprayed on the open copper. Photogravure: continuous film, and a screen film exposed by itself. Unetched film: the film itself holds the ink.");

    public static final JobField<Double> SCREEN_BLACK = JobField.part(
                    "screen-black", Photogravure.BLACK, 0.01, job -> screen(job).screenBlack(), "process.screenBlack")
            .typed("SHARE")
            .where(job -> job.process() instanceof Photogravure, OF_PHOTOGRAVURE)
            .shown("Screen black", "How much of photogravure's screen film is black; 40 to 55 % is usual.");

    public static final JobField<Double> SCREEN_SPACING = JobField.part(
                    "screen-spacing",
                    Photogravure.SPACING,
                    5,
                    job -> screen(job).screenSpacingMicrometres(),
                    "process.screenSpacingMicrometres")
            .typed("LENGTH")
            .where(job -> job.process() instanceof Photogravure, OF_PHOTOGRAVURE)
            .shown("Screen spacing", "Mean distance of the aquatint screen film's dots; 120 to 180 µm is usual.");

    public static final JobField<Optional<Shared>> SPLIT = JobField.of(
                    "split",
                    new Or<>("workshop", new Sharing()),
                    job -> screen(job)
                            .split()
                            .map(split -> new Shared(split, screen(job).screenBlack())),
                    (job, shared) -> job.with(
                            "process",
                            new Photogravure(
                                    shared.map(Shared::screenBlack)
                                            .orElse(screen(job).screenBlack()),
                                    screen(job).screenSpacingMicrometres(),
                                    shared.map(Shared::split))))
            .typed("DOSES")
            .where(job -> job.process() instanceof Photogravure, OF_PHOTOGRAVURE)
            .shown(
                    "Split of light",
                    "How photogravure's light is shared: dose through the screen, dose through the positive, both in doses that just harden the resist, softness of the screen's edges and its black, such as 1.8,1.05,35um,40%, which 'plan --search-exposure' finds; or 'workshop' for the seconds of the workshop file. A job file that doesn't name it has the workshop's.");

    public static final JobField<Double> AQUATINT_LAND = JobField.part(
                    "aquatint-land",
                    SprayedAquatint.LAND,
                    0.01,
                    job -> ground(job).landFraction(),
                    "process.landFraction")
            .typed("SHARE")
            .where(job -> job.process() instanceof SprayedAquatint, OF_SPRAYED_AQUATINT)
            .shown(
                    "Aquatint covers",
                    "Share of the open copper that the sprayed ground keeps from the bath. 40 to 60 % is usual, judged under a loupe on a strip sprayed alongside: about as much dot as gap. Less prints darker and bites open sooner.");

    public static final JobField<Double> AQUATINT_GRAIN = JobField.part(
                    "aquatint-grain",
                    SprayedAquatint.GRAIN,
                    5,
                    job -> ground(job).grainMicrometres(),
                    "process.grainMicrometres")
            .typed("LENGTH")
            .where(job -> job.process() instanceof SprayedAquatint, OF_SPRAYED_AQUATINT)
            .shown(
                    "Aquatint grain",
                    "Mean width of the sprayed dots. 30 to 80 µm is a medium grain; finer dots go sooner in a long bite.");

    public static final JobField<Double> RESOLUTION = JobField.number(
                    "resolution",
                    Resolution.DOTS,
                    60,
                    job -> job.resolution().dotsPerInch(),
                    (job, value) -> job.with("resolution", new Resolution(value)))
            .typed("DPI")
            .at("resolutionDotsPerInch")
            .shown(
                    "Film printer",
                    "The film printer's own dots per inch, usually the workshop's. A driver that must rescale the film destroys the grain.");

    public static final JobField<Grain> CARRIER = JobField.part(
                    "carrier",
                    new Making<>(
                            new Choice<>(
                                    FilmFields::word,
                                    List.of(
                                            new Way<>(Grain.Stochastic.USUAL, "grain", "grain"),
                                            new Way<>(Grain.Halftone.USUAL, "halftone", "halftone"))),
                            CarrierFields::writeGrain,
                            CarrierFields::readGrain),
                    Job::grain,
                    "grain")
            .at("grain")
            .where(job -> !(job.grain() instanceof Grain.Continuous), "")
            .shown(
                    "Dots",
                    "Grain is irregular like an aquatint and hides banding; a halftone is regular and reads as a pattern. In photogravure a screen film of its own makes the dots.");

    public static final JobField<Optional<Double>> GRAIN = JobField.of(
                    "grain",
                    new Or<>("none", new Measured(Grain.Stochastic.SPACING, 5)),
                    job -> job.grain() instanceof Grain.Stochastic grain
                            ? Optional.of(grain.spacingMicrometres())
                            : Optional.<Double>empty(),
                    (job, value) -> job.with(
                            "grain",
                            value.<Grain>map(spacing -> new Grain.Stochastic(
                                            spacing, stochastic(job).seed()))
                                    .orElse(
                                            job.grain() instanceof Grain.Continuous
                                                    ? job.grain()
                                                    : Grain.Continuous.USUAL)))
            .typed("SIZE")
            .where(job -> job.grain() instanceof Grain.Stochastic, "")
            .shown(
                    "Grain",
                    "Mean distance of the grain's dots, in µm, or 'none' for photogravure's continuous tone. Coarser dots are safer in resist and bite, finer ones hold more detail; 120 to 260 suits most plates.");

    public static final JobField<Long> SEED = JobField.part(
                    "seed", new Whole(SEEDS), job -> stochastic(job).seed(), "grain.seed")
            .typed("N")
            .where(job -> job.grain() instanceof Grain.Stochastic, "")
            .shown("Seed", "Chooses one of many equivalent grains.");

    public static final JobField<Double> RULING = JobField.number(
                    "ruling",
                    Ruling.LINES,
                    1,
                    job -> halftone(job).ruling().linesPerCentimetre(),
                    (job, value) -> dotted(job, "ruling", new Ruling(value)))
            .typed("N")
            .where(job -> job.grain() instanceof Grain.Halftone, "")
            .shown(
                    "Ruling",
                    "Halftone of N lines per cm, or of lines per inch as 100lpi, instead of a grain. Copper carries 20 to 110 lines to the centimetre; begin near 40.");

    public static final JobField<Double> ANGLE = JobField.number(
                    "angle",
                    Grain.Halftone.ANGLE,
                    1,
                    job -> halftone(job).angleDegrees(),
                    (job, value) -> dotted(job, "angleDegrees", value))
            .typed("DEGREES")
            .where(job -> job.grain() instanceof Grain.Halftone, "a halftone: add --ruling N")
            .shown("Angle", "Of the halftone's rows of dots. 45 is least seen.");

    public static final JobField<DotShape> DOTS = JobField.of(
                    "dots",
                    Choice.of(List.of(
                            new Way<>(DotShape.ROUND, "round", "round"), new Way<>(DotShape.LINE, "line", "lines"))),
                    job -> halftone(job).shape(),
                    (job, value) -> dotted(job, "shape", value))
            .typed("WORD")
            .where(job -> job.grain() instanceof Grain.Halftone, "a halftone: add --ruling N")
            .shown("Dot shape", "Halftone dots: round ones that join into round holes, or lines that widen.");

    public static final JobField<Boolean> MEND = JobField.part(
                    "mend", new Switch("all in grain", "mended"), Job::mended, "mended")
            .typed("YES")
            .at("mended")
            .where(job -> !(job.grain() instanceof Grain.Continuous), "")
            .shown(
                    "Solid blacks",
                    "Makes strokes solid and gives wide blacks a crisp edge where the plate holds them. Grain stays inside wide blacks so that they do not bite open.");

    /** A file without it is of version 0.2.0 or before, whose blacks went up to the turning point. */
    public static final JobField<Optional<Double>> RESERVE = JobField.part(
                    "reserve",
                    new Or<>("automatic", new Measured(Job.RESERVE, 0.005), Optional.of(0.0)),
                    Job::reserve,
                    "reserve")
            .typed("SHARE")
            .at("reserve")
            .shown(
                    "Reserve",
                    "How much film black the curve stops short of the turning point, past which more black prints paler, such as 3%; 'automatic' is as much as keeps 95 plates in 100 on the safe side when bite, dots and etch factor stray, 0 none. A job file that doesn't name it has none.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(
            TITLE,
            DATE,
            PLATE,
            PROCESS,
            SPLIT,
            SCREEN_BLACK,
            SCREEN_SPACING,
            AQUATINT_LAND,
            AQUATINT_GRAIN,
            RESOLUTION,
            CARRIER,
            GRAIN,
            SEED,
            RULING,
            ANGLE,
            DOTS);

    private FilmFields() {}

    /** Another process; only photogravure has a film without grain, which can't be mended. */
    private static Job madeBy(Job job, PlateProcess other) {
        boolean continuous = other instanceof Photogravure;
        Grain grain = continuous == job.grain() instanceof Grain.Continuous
                ? job.grain()
                : continuous ? Grain.Continuous.USUAL : Grain.Stochastic.USUAL;
        return (Job) KeptRecord.rebuilt(job, (part, present) -> switch (part) {
            case "process" -> other;
            case "grain" -> grain;
            case "mended" -> job.mended() && !continuous;
            default -> present;
        });
    }

    private static Job dotted(Job job, String part, Object value) {
        return job.with("grain", KeptRecord.with(halftone(job), part, value));
    }

    /** A halftone's settings, as usual where there is none. */
    private static Grain.Halftone halftone(Job job) {
        return job.grain() instanceof Grain.Halftone present ? present : Grain.Halftone.USUAL;
    }

    private static Grain.Stochastic stochastic(Job job) {
        return job.grain() instanceof Grain.Stochastic present ? present : Grain.Stochastic.USUAL;
    }

    private static Photogravure screen(Job job) {
        return job.process() instanceof Photogravure present ? present : Photogravure.usual();
    }

    private static SprayedAquatint ground(Job job) {
        return job.process() instanceof SprayedAquatint present ? present : SprayedAquatint.usual();
    }

    private static String word(Grain grain) {
        return grain instanceof Grain.Stochastic ? "grain" : grain instanceof Grain.Halftone ? "halftone" : "none";
    }

    /** A split of light, and the screen's black that it was found for. */
    public record Shared(LightSplit split, double screenBlack) {
        /** As it is typed. */
        public String words() {
            return Refusal.plain(Math.rint(split.screenDose() * 1e4) / 1e4) + ","
                    + Refusal.plain(Math.rint(split.imageDose() * 1e4) / 1e4) + ","
                    + Unit.MICROMETRES.text(split.edgeBlurMicrometres()) + "," + Unit.SHARE.text(screenBlack);
        }
    }

    record Sharing() implements Kind<Shared> {
        @Override
        public Shared parse(String what, String text, Kind.Art art) {
            String[] parts = text.split(",", -1);
            if (parts.length != 4) {
                throw Refusal.use(what + " is \"" + text.strip()
                        + "\"; it must be two doses, softness and black, such as 1.8,1.05,35um,40%, or 'workshop'");
            }
            return new Shared(
                    new LightSplit(
                            dose(what + "'s screen dose", parts[0]),
                            dose(what + "'s image dose", parts[1]),
                            LightSplit.EDGE_BLUR.check(
                                    what + "'s softness", Unit.MICROMETRES.parse(what + "'s softness", parts[2]))),
                    Photogravure.BLACK.check(what + "'s black", Unit.SHARE.parse(what + "'s black", parts[3])));
        }

        private static double dose(String what, String text) {
            return LightSplit.DOSE.check(what, LightSplit.DOSE.unit().parse(what, text));
        }

        @Override
        public String print(Shared value) {
            return value.words();
        }

        @Override
        public Shared read(JsonFields fields, String name, @Nullable Shared usual) {
            return parse(name, fields.word(name), Kind.Art.UNKNOWN);
        }
    }

    record Sides(Range side) implements Kind<Size> {
        @Override
        public Size parse(String what, String text, Kind.Art art) {
            Size size = Size.parse(what, text);
            side.check(what + " width", size.widthMillimetres());
            side.check(what + " height", size.heightMillimetres());
            return size;
        }

        @Override
        public String print(Size value) {
            return Refusal.plain(value.widthMillimetres()) + "x" + Refusal.plain(value.heightMillimetres()) + "mm";
        }

        @Override
        public void write(ObjectNode node, String name, Size value) {
            ObjectNode size = node.putObject(name);
            size.set("widthMillimetres", JsonText.number(value.widthMillimetres()));
            size.set("heightMillimetres", JsonText.number(value.heightMillimetres()));
        }

        @Override
        public Size read(JsonFields fields, String name, @Nullable Size usual) {
            if (fields.isText(name)) {
                return parse(name, fields.word(name), Kind.Art.UNKNOWN);
            }
            JsonFields size = fields.section(name);
            return new Size(
                    size.number("widthMillimetres", Double.NaN, side),
                    size.number("heightMillimetres", Double.NaN, side));
        }
    }
}
