package greyground.film.job;

import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Line;
import greyground.film.job.Kind.Making;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Switch;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.grain.Grain;
import greyground.grain.Grain.DotShape;
import greyground.plate.PlateProcess;
import greyground.plate.PlateProcess.Photogravure;
import greyground.plate.PlateProcess.SprayedAquatint;
import greyground.quantity.Range;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import greyground.workshop.CarrierFields;
import java.util.List;
import java.util.Optional;

/** What a film is and how its plate is made: the settings of {@link JobFields} that are kept first, and the last. */
public final class FilmFields {
    private static final Range SEEDS = new Range(Long.MIN_VALUE, Long.MAX_VALUE, Unit.COUNT, "1 is usual");

    public static final JobField<String> TITLE = JobField.of(
                    "title", new Line(), draft -> draft.title, (draft, value) -> draft.title = value)
            .typed("TEXT")
            .at("title")
            .shown(
                    "Title",
                    "Printed on the film and at the head of its plan. One line, at most 120 characters; usually the art's file name.");

    public static final JobField<String> DATE = JobField.of(
                    "date", new Line(), draft -> draft.date, (draft, value) -> draft.date = value)
            .typed("DATE")
            .at("date")
            .shown("Date", "Printed on the film, year-month-day (usual: today).");

    public static final JobField<Size> PLATE = JobField.of(
                    "plate", new Sides(Job.PLATE_SIDE), draft -> draft.plate, (draft, value) -> draft.plate = value)
            .typed("SIZE")
            .at("plate")
            .shown("Plate", "The copper's size, such as 200x250mm, 8x10in or A5.");

    public static final JobField<Double> PLATE_WIDTH = JobField.number(
                    "plate-width",
                    Job.PLATE_SIDE,
                    1,
                    draft -> draft.plate.widthMillimetres(),
                    (draft, value) -> draft.plate = new Size(value, draft.plate.heightMillimetres()))
            .shown("Plate width", "The copper's own width. Measure the plate you have.");

    public static final JobField<Double> PLATE_HEIGHT = JobField.number(
                    "plate-height",
                    Job.PLATE_SIDE,
                    1,
                    draft -> draft.plate.heightMillimetres(),
                    (draft, value) -> draft.plate = new Size(draft.plate.widthMillimetres(), value))
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
                    draft -> draft.process,
                    JobDraft::make)
            .typed("WORD")
            .at("process")
            .shown(
                    "Process",
                    "How the plate is made. Etched film: thinned film, dots on the positive, one bite. Sprayed aquatint: a ground is sprayed on the open copper. Photogravure: continuous film, and a screen film exposed by itself. Unetched film: the film itself holds the ink.");

    public static final JobField<Double> SCREEN_BLACK = JobField.number(
                    "screen-black",
                    Photogravure.BLACK,
                    0.01,
                    draft -> draft.screen().screenBlack(),
                    (draft, value) -> draft.process =
                            new Photogravure(value, draft.screen().screenSpacingMicrometres()))
            .typed("SHARE")
            .where(
                    draft -> draft.process instanceof Photogravure,
                    "the screen film of photogravure: add --process photogravure")
            .shown("Screen black", "How much of photogravure's screen film is black; 45 to 55 % is usual.");

    public static final JobField<Double> SCREEN_SPACING = JobField.number(
                    "screen-spacing",
                    Photogravure.SPACING,
                    5,
                    draft -> draft.screen().screenSpacingMicrometres(),
                    (draft, value) ->
                            draft.process = new Photogravure(draft.screen().screenBlack(), value))
            .typed("LENGTH")
            .where(
                    draft -> draft.process instanceof Photogravure,
                    "the screen film of photogravure: add --process photogravure")
            .shown("Screen spacing", "Mean distance of the aquatint screen film's dots; 120 to 180 µm is usual.");

    public static final JobField<Double> AQUATINT_LAND = JobField.number(
                    "aquatint-land",
                    SprayedAquatint.LAND,
                    0.01,
                    draft -> draft.ground().landFraction(),
                    (draft, value) -> draft.process = new SprayedAquatint(
                            value,
                            draft.ground().grainMicrometres(),
                            draft.ground().seed()))
            .typed("SHARE")
            .where(
                    draft -> draft.process instanceof SprayedAquatint,
                    "a sprayed aquatint: add --process sprayed-aquatint")
            .shown(
                    "Aquatint covers",
                    "Share of the open copper that the sprayed ground keeps from the bath. 40 to 60 % is usual, judged under a loupe on a strip sprayed alongside: about as much dot as gap. Less prints darker and bites open sooner.");

    public static final JobField<Double> AQUATINT_GRAIN = JobField.number(
                    "aquatint-grain",
                    SprayedAquatint.GRAIN,
                    5,
                    draft -> draft.ground().grainMicrometres(),
                    (draft, value) -> draft.process = new SprayedAquatint(
                            draft.ground().landFraction(), value, draft.ground().seed()))
            .typed("LENGTH")
            .where(
                    draft -> draft.process instanceof SprayedAquatint,
                    "a sprayed aquatint: add --process sprayed-aquatint")
            .shown(
                    "Aquatint grain",
                    "Mean width of the sprayed dots. 30 to 80 µm is a medium grain; finer dots go sooner in a long bite.");

    public static final JobField<Double> RESOLUTION = JobField.number(
                    "resolution",
                    Resolution.DOTS,
                    60,
                    draft -> draft.resolution.dotsPerInch(),
                    (draft, value) -> draft.resolution = new Resolution(value))
            .typed("DPI")
            .at("resolutionDotsPerInch")
            .shown(
                    "Film printer",
                    "The film printer's own dots per inch, usually the workshop's. A driver that must rescale the film destroys the grain.");

    public static final JobField<Grain> CARRIER = JobField.of(
                    "carrier",
                    new Making<>(
                            new Choice<>(
                                    FilmFields::word,
                                    List.of(
                                            new Way<>(Grain.Stochastic.USUAL, "grain", "grain"),
                                            new Way<>(Grain.Halftone.USUAL, "halftone", "halftone"))),
                            CarrierFields::writeGrain,
                            CarrierFields::readGrain),
                    draft -> draft.grain,
                    (draft, value) -> draft.grain = value)
            .at("grain")
            .where(draft -> !(draft.grain instanceof Grain.Continuous), "")
            .shown(
                    "Dots",
                    "Grain is irregular like an aquatint and hides banding; a halftone is regular and reads as a pattern. In photogravure a screen film of its own makes the dots.");

    public static final JobField<Optional<Double>> GRAIN = JobField.of(
                    "grain",
                    new Or<>("none", new Measured(Grain.Stochastic.SPACING, 5)),
                    draft -> draft.grain instanceof Grain.Stochastic grain
                            ? Optional.of(grain.spacingMicrometres())
                            : Optional.<Double>empty(),
                    (draft, value) -> draft.grain = value.<Grain>map(spacing -> new Grain.Stochastic(
                                    spacing, draft.stochastic().seed()))
                            .orElse(draft.grain instanceof Grain.Continuous ? draft.grain : Grain.Continuous.USUAL))
            .typed("SIZE")
            .where(draft -> draft.grain instanceof Grain.Stochastic, "")
            .shown(
                    "Grain",
                    "Mean distance of the grain's dots, in µm, or 'none' for photogravure's continuous tone. Coarser dots are safer in resist and bite, finer ones hold more detail; 120 to 260 suits most plates.");

    public static final JobField<Long> SEED = JobField.of(
                    "seed",
                    new Whole(SEEDS),
                    draft -> draft.stochastic().seed(),
                    (draft, value) -> draft.grain = draft.grain instanceof Grain.Stochastic grain
                            ? new Grain.Stochastic(grain.spacingMicrometres(), value)
                            : draft.grain)
            .typed("N")
            .where(draft -> draft.grain instanceof Grain.Stochastic, "")
            .shown("Seed", "Chooses one of many equivalent grains.");

    public static final JobField<Double> RULING = JobField.number(
                    "ruling",
                    Ruling.LINES,
                    1,
                    draft -> draft.halftone().ruling().linesPerCentimetre(),
                    (draft, value) -> draft.grain = new Grain.Halftone(
                            new Ruling(value),
                            draft.halftone().angleDegrees(),
                            draft.halftone().shape()))
            .typed("N")
            .where(draft -> draft.grain instanceof Grain.Halftone, "")
            .shown(
                    "Ruling",
                    "Halftone of N lines per cm, or of lines per inch as 100lpi, instead of a grain. Copper carries 20 to 110 lines to the centimetre; begin near 40.");

    public static final JobField<Double> ANGLE = JobField.number(
                    "angle",
                    Grain.Halftone.ANGLE,
                    1,
                    draft -> draft.halftone().angleDegrees(),
                    (draft, value) -> draft.grain = new Grain.Halftone(
                            draft.halftone().ruling(), value, draft.halftone().shape()))
            .typed("DEGREES")
            .where(draft -> draft.grain instanceof Grain.Halftone, "a halftone: add --ruling N")
            .shown("Angle", "Of the halftone's rows of dots. 45 is least seen.");

    public static final JobField<DotShape> DOTS = JobField.of(
                    "dots",
                    new Choice<>(
                            DotShape::word,
                            List.of(
                                    new Way<>(DotShape.ROUND, DotShape.ROUND.word(), "round"),
                                    new Way<>(DotShape.LINE, DotShape.LINE.word(), "lines"))),
                    draft -> draft.halftone().shape(),
                    (draft, value) -> draft.grain = new Grain.Halftone(
                            draft.halftone().ruling(), draft.halftone().angleDegrees(), value))
            .typed("WORD")
            .where(draft -> draft.grain instanceof Grain.Halftone, "a halftone: add --ruling N")
            .shown("Dot shape", "Halftone dots: round ones that join into round holes, or lines that widen.");

    public static final JobField<Boolean> MEND = JobField.of(
                    "mend",
                    new Switch("all in grain", "mended"),
                    draft -> draft.mended,
                    (draft, value) -> draft.mended = value)
            .typed("YES")
            .at("mended")
            .where(draft -> !(draft.grain instanceof Grain.Continuous), "")
            .shown(
                    "Solid blacks",
                    "Makes strokes solid and gives wide blacks a crisp edge where the plate holds them. Grain stays inside wide blacks so that they do not bite open.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(
            TITLE,
            DATE,
            PLATE,
            PROCESS,
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

    private static String word(Grain grain) {
        return grain instanceof Grain.Stochastic ? "grain" : grain instanceof Grain.Halftone ? "halftone" : "none";
    }
}
