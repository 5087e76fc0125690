package greyground.film.job;

import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Way;
import greyground.film.job.Outline.Box;
import greyground.film.job.Outline.Corner;
import greyground.film.job.Outlines.Tear;
import greyground.json.JsonFields;
import greyground.quantity.Lengths;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The shapes of plate and picture: settings of {@link JobFields}. */
public final class OutlineFields {
    private static final String TO_OUTLINED = "a picture with an outline: add --outline";

    public static final JobField<Optional<Outline>> PLATE_SHAPE = JobField.part(
                    "plate-shape",
                    new Shape("rectangle"),
                    job -> job.placing().outlines().plate(),
                    "placing.outlines.plate")
            .typed("SHAPE")
            .at("placing", "plateShape")
            .shown(
                    "Plate's shape",
                    "The copper's own shape: rectangle, ellipse, rounded:8mm or cut:8mm for its corners, or polygon:X,Y:X,Y:X,Y from its top left. The picture runs past it by the bleed; beyond that the film is clear. Its width and height are those of the plate.");

    public static final JobField<Optional<Outline>> OUTLINE = JobField.part(
                    "outline",
                    new Shape("none"),
                    job -> job.placing().outlines().picture(),
                    "placing.outlines.picture")
            .typed("SHAPE")
            .at("placing", "outline")
            .shown(
                    "Outline",
                    "The shape outside which the picture ends: none, rectangle, rounded:8mm, cut:8mm, ellipse or polygon:X,Y:X,Y:X,Y, in lengths from the plate's top left. All but polygons take a place, left, top, width and height, as ellipse:10mm,10mm,80mm,60mm; without one they are as large as the plate.");

    public static final JobField<Double> FADE = JobField.part(
                    "outline-fade",
                    Outlines.FADE,
                    1,
                    job -> job.placing().outlines().fadeMillimetres(),
                    "placing.outlines.fadeMillimetres")
            .typed("LENGTH")
            .at("placing", "outlineFadeMillimetres")
            .where(OutlineFields::isOutlined, TO_OUTLINED)
            .shown(
                    "Outline fades over",
                    "Width over which the picture ends at its outline, half inside and half outside; 0mm is a hard edge.");

    public static final JobField<Tear> TEAR = JobField.part(
                    "outline-tear",
                    new Tearing(),
                    job -> job.placing().outlines().tear(),
                    "placing.outlines.tear")
            .typed("LENGTH[,N]")
            .at("placing", "outlineTear")
            .where(OutlineFields::isOutlined, TO_OUTLINED)
            .shown(
                    "Outline torn by",
                    "How far the outline strays to either side, like torn paper, 0 to 2 mm; another whole number after it, as 0.8mm,2, gives another tear.");

    public static final JobField<Boolean> OUTSIDE = JobField.part(
                    "outside",
                    Choice.of(List.of(
                            new Way<>(false, "clear", "clear film, prints as paper"),
                            new Way<>(true, "black", "black, as far as the plate holds it"))),
                    job -> job.placing().outlines().black(),
                    "placing.outlines.black")
            .typed("WORD")
            .at("placing", "outside")
            .where(OutlineFields::isOutlined, TO_OUTLINED)
            .shown(
                    "Outside the outline",
                    "What the film is outside the outline, as far as the picture would reach. Black is the darkest tone that the curve uses, in grain, so that it does not bite open.");

    /** In the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(PLATE_SHAPE, OUTLINE, FADE, TEAR, OUTSIDE);

    private OutlineFields() {}

    private static boolean isOutlined(Job job) {
        return job.placing().outlines().picture().isPresent();
    }

    /** A length as it was typed, to its last digit. */
    private static String length(double millimetres) {
        return BigDecimal.valueOf(millimetres).stripTrailingZeros().toPlainString() + "mm";
    }

    /** A shape, or a word for none. */
    record Shape(String none) implements Kind<Optional<Outline>> {
        @Override
        public Optional<Outline> parse(String what, String text, Kind.Art art) {
            String typed = text.strip();
            if (typed.equals(none)) {
                return Optional.empty();
            }
            List<String> parts = List.of(typed.split(":", -1));
            String word = parts.get(0);
            return Optional.of(
                    switch (word) {
                        case "rectangle" -> new Outline.Rectangle(Corner.SQUARE, 0, box(what, parts, 1));
                        case "rounded", "cut" ->
                            new Outline.Rectangle(
                                    word.equals("cut") ? Corner.CUT : Corner.ROUND,
                                    Lengths.parseMillimetres(what + "'s corner", parts.size() > 1 ? parts.get(1) : ""),
                                    box(what, parts, 2));
                        case "ellipse" -> new Outline.Ellipse(box(what, parts, 1));
                        case "polygon" ->
                            new Outline.Polygon(parts.stream()
                                    .skip(1)
                                    .map(place -> Offset.parse(what + "'s corner", place))
                                    .toList());
                        default -> throw unknown(what, typed);
                    });
        }

        private Refusal unknown(String what, String typed) {
            String first = Stream.of(none, "rectangle").distinct().collect(Collectors.joining(", "));
            return Refusal.use(what + " \"" + typed + "\" is unknown: choose " + first
                    + ", rounded:8mm, cut:8mm, ellipse or polygon:X,Y:X,Y:X,Y, such as ellipse:10mm,10mm,80mm,60mm");
        }

        private Optional<Box> box(String what, List<String> parts, int at) {
            if (parts.size() <= at) {
                return Optional.empty();
            }
            String[] sides = parts.get(at).split(",", -1);
            if (sides.length != 4 || parts.size() > at + 1) {
                throw Refusal.use(
                        what + " \"" + String.join(":", parts) + "\" has no place of left, top, width and height:"
                                + " write it as ellipse:10mm,10mm,80mm,60mm or rounded:8mm:10mm,10mm,80mm,60mm");
            }
            List<Double> lengths = new ArrayList<>();
            for (String side : sides) {
                lengths.add(Lengths.parseSignedMillimetres(what + "'s place", side));
            }
            return Optional.of(new Box(lengths.get(0), lengths.get(1), lengths.get(2), lengths.get(3)));
        }

        @Override
        public String print(Optional<Outline> value) {
            return value.map(Shape::print).orElse(none);
        }

        private static String print(Outline outline) {
            if (outline instanceof Outline.Rectangle rectangle) {
                String corner = rectangle.corner() == Corner.SQUARE
                        ? "rectangle"
                        : (rectangle.corner() == Corner.CUT ? "cut:" : "rounded:") + length(rectangle.millimetres());
                return corner + place(rectangle.box());
            }
            return outline instanceof Outline.Ellipse ellipse
                    ? "ellipse" + place(ellipse.box())
                    : "polygon:"
                            + ((Outline.Polygon) outline)
                                    .corners().stream()
                                            .map(place -> length(place.acrossMillimetres()) + ","
                                                    + length(place.downMillimetres()))
                                            .collect(Collectors.joining(":"));
        }

        private static String place(Optional<Box> box) {
            return box.map(at -> ":" + length(at.left()) + "," + length(at.top()) + "," + length(at.width()) + ","
                            + length(at.height()))
                    .orElse("");
        }

        @Override
        @SuppressWarnings("NullableOptional") // a kind's usual value may be missing, whatever its kind
        public Optional<Outline> read(JsonFields fields, String name, @Nullable Optional<Outline> usual) {
            return parse("job placing." + name, fields.word(name, none), Kind.Art.UNKNOWN);
        }
    }

    /** A depth, and which of many edges. */
    record Tearing() implements Kind<Tear> {
        @Override
        public Tear parse(String what, String text, Kind.Art art) {
            String[] parts = text.split(",", -1);
            if (parts.length > 2 || (parts.length == 2 && !parts[1].strip().matches("[0-9]{1,6}"))) {
                throw Refusal.use(
                        what + " \"" + text.strip()
                                + "\" is not a length with a whole number from 0 to 999999 after it: write it as 0.8mm or 0.8mm,2");
            }
            return new Tear(
                    Tear.DEPTH.unit().parse(what, parts[0]),
                    parts.length == 2 ? Integer.parseInt(parts[1].strip()) : Tear.NONE.seed());
        }

        @Override
        public String print(Tear value) {
            return length(value.millimetres()) + (value.seed() == Tear.NONE.seed() ? "" : "," + value.seed());
        }

        @Override
        public Tear read(JsonFields fields, String name, @Nullable Tear usual) {
            return parse(
                    "job placing." + name,
                    fields.word(name, print(usual == null ? Tear.NONE : usual)),
                    Kind.Art.UNKNOWN);
        }
    }
}
