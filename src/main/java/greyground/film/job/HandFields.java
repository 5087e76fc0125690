package greyground.film.job;

import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Way;
import greyground.json.JsonFields;
import greyground.quantity.Refusal;
import greyground.tone.ColourSight;
import greyground.tone.ColourSight.Emulsion;
import greyground.tone.ColourSight.Filter;
import greyground.tone.ColourWeights;
import greyground.tone.ToneWish;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the printmaker's hand does to the art before the plate's curve: settings of {@link JobFields}. */
public final class HandFields {
    public static final JobField<Filter> THROUGH = JobField.part(
                    "through",
                    Choice.of(Stream.of(Filter.values())
                            .map(filter -> way(
                                    filter,
                                    filter == Filter.NONE ? "no filter" : ColourSight.article(filter) + " filter"))
                            .toList()),
                    job -> job.art().hand().sight().filter(),
                    "art.hand.sight.filter")
            .typed("WORD")
            .at("art", "through")
            .shown(
                    "Seen through",
                    "As if colours had been photographed through coloured glass. Its own colour comes out lighter and its opposite darker: red darkens skies and lightens skin, yellow does so a little, blue the other way round. Greys stay what they are.");

    public static final JobField<ColourSight> EMULSION = JobField.of(
                    "emulsion",
                    new Receiving(),
                    job -> new ColourSight(
                            Filter.NONE,
                            job.art().hand().sight().emulsion(),
                            job.art().hand().sight().own()),
                    (job, value) -> job.with(
                            "art.hand.sight",
                            new ColourSight(job.art().hand().sight().filter(), value.emulsion(), value.own())))
            .typed("WORD")
            .at("art", "emulsion")
            .shown(
                    "Colours as seen by",
                    "What colours are turned to greys by, as if photographed, or red, green and blue by weights of your own, such as 0.3,0.6,0.1. Luminance is the eye's own lightness; orthochromatic prints reds nearly black, blue-sensitive all but blue, as old negatives do. Greys stay what they are.");

    public static final JobField<Origin> SOURCE = JobField.part(
                    "source",
                    Choice.of(List.of(
                            new Way<>(Origin.AUTOMATIC, "automatic", "checked for dots"),
                            new Way<>(Origin.CONTINUOUS, "continuous", "photograph or drawing"),
                            new Way<>(Origin.PRINTED, "printed", "print: take its dots out"),
                            new Way<>(Origin.LINE, "line", "line art: hard edges"))),
                    job -> job.art().hand().origin(),
                    "art.hand.origin")
            .typed("WORD")
            .at("art", "source")
            .shown(
                    "The art is",
                    "What was scanned. 'printed' finds the screens of a printed page and spreads each dot over its own cell, so that its dots don't beat with the film's; scan at four pixels to a dot or more. 'automatic' says so if the art is a print, and changes nothing; 'continuous' doesn't look. 'line' is for pen, woodcut and text: strokes get hard edges, as wide in print as they are drawn, and no grain but where a black is too wide for the plate.");

    public static final JobField<Double> EVEN_PAPER = JobField.part(
                    "even-paper", Hand.EVEN_PAPER, 0.01, job -> job.art().hand().evenPaper(), "art.hand.evenPaper")
            .typed("SHARE")
            .at("art", "evenPaper")
            .shown(
                    "Even paper",
                    "Takes uneven light, yellowed paper and stains out of a page, such as 3%. What is darker than the paper around it and wider than this share of the art's longer side counts as a stain, unless it is darker than half the paper; so choose it wider than any stroke or pale wash. A warning says where pale drawing may go with it. Comes before white and black are found and before line art is parted from its paper.");

    public static final JobField<List<ToneWish.Point>> TONES = JobField.part(
                    "tones", new Points(), job -> job.art().hand().wish().points(), "art.hand.wish.points")
            .typed("L:L,...")
            .at("art", "tones")
            .shown(
                    "Tones by points",
                    "Tones of the art and where they go, such as 30:38,60:64, in L* from the art's black, 0, to its white, 100; or 'none'. A smooth curve goes through them and never turns two tones round. It acts before the picture's range is fitted to the print's.");

    public static final JobField<Double> MIDDLE = JobField.part(
                    "middle", ToneWish.MIDDLE, 1, job -> job.art().hand().wish().middle(), "art.hand.wish.middle")
            .typed("L")
            .at("art", "middle")
            .shown(
                    "Middle tones",
                    "How far middle grey moves, in L*: +6 is lighter, -6 darker. Black and white stay where they are. Comes after the points.");

    public static final JobField<Double> HARDNESS = JobField.part(
                    "hardness",
                    ToneWish.HARDNESS,
                    0.05,
                    job -> job.art().hand().wish().hardness(),
                    "art.hand.wish.hardness")
            .typed("SHARE")
            .at("art", "hardness")
            .shown(
                    "Hardness",
                    "Contrast of the middle tones at the cost of the ends, such as 15%; below 0 softer. 100% doubles it, -100% halves it. Comes after the middle.");

    public static final JobField<Double> LOCAL_CONTRAST = JobField.part(
                    "local-contrast",
                    Hand.LOCAL_CONTRAST,
                    0.05,
                    job -> job.art().hand().localContrast(),
                    "art.hand.localContrast")
            .typed("SHARE")
            .at("art", "localContrast")
            .shown(
                    "Local contrast",
                    "Raises the contrast of what is smaller than about 2 mm on the plate and fainter than about 4 L*, such as 20%, without haloes at edges; below 0 calms it. Brings out cloth, bark and cloud where the whole picture has contrast enough.");

    public static final JobField<Optional<Double>> CRISP = JobField.part(
                    "crisp",
                    new Or<>("plate", new Measured(Hand.CRISPNESS, 0.05), Optional.of(0.0)),
                    job -> job.art().hand().crispness(),
                    "art.hand.crispness")
            .typed("SHARE")
            .at("art", "crispness")
            .shown(
                    "Crispness",
                    "How much the contrast of fine detail is raised before the plate lowers it, such as 40%, or 'plate' for as much as this plate takes from it. 10 to 40 % makes up for a plate, above 60 % is taste. Noise, hard edges, and what would leave the plate's range or cut its grain into slivers stay as they are.");

    public static final JobField<Optional<Double>> CRISP_RADIUS = JobField.part(
                    "crisp-radius",
                    new Or<>("automatic", new Measured(Hand.CRISP_RADIUS, 5)),
                    job -> job.art().hand().crispRadius(),
                    "art.hand.crispRadius")
            .typed("LENGTH")
            .at("art", "crispRadiusMicrometres")
            .shown(
                    "Crispness radius",
                    "How fine the detail is that gets crisper, on the plate, such as 60um, or 'automatic' for a quarter of the grain's spacing.");

    /** In the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(
            THROUGH, EMULSION, SOURCE, EVEN_PAPER, LOCAL_CONTRAST, CRISP, CRISP_RADIUS, TONES, MIDDLE, HARDNESS);

    private HandFields() {}

    private static <T extends Enum<T>> Way<T> way(T value, String label) {
        return new Way<>(value, ColourSight.word(value), label);
    }

    /** Tones and where they go. */
    record Points() implements Kind<List<ToneWish.Point>> {
        private static final String NONE = "none";

        @Override
        public List<ToneWish.Point> parse(String what, String text, Kind.Art art) {
            List<ToneWish.Point> points = new ArrayList<>();
            if (text.strip().equals(NONE)) {
                return points;
            }
            for (String part : text.split(",", -1)) {
                String[] ends = part.strip().split(":", -1);
                if (ends.length != 2) {
                    throw Refusal.use(
                            what + " \"" + text.strip() + "\" has the part \"" + part.strip()
                                    + "\"; each must be a tone of the art and where it goes, from 0 to 100: such as 30:38,60:64");
                }
                points.add(new ToneWish.Point(
                        ToneWish.LIGHTNESS.unit().parse(what, ends[0]),
                        ToneWish.LIGHTNESS.unit().parse(what, ends[1])));
            }
            return new ToneWish(points, 0, 0).points();
        }

        @Override
        public String print(List<ToneWish.Point> value) {
            return value.isEmpty()
                    ? NONE
                    : value.stream()
                            .map(point -> plain(point.from()) + ":" + plain(point.to()))
                            .collect(Collectors.joining(","));
        }

        @Override
        public List<ToneWish.Point> read(JsonFields fields, String name, @Nullable List<ToneWish.Point> usual) {
            return parse("job art." + name, fields.word(name, usual == null ? "" : print(usual)), Kind.Art.UNKNOWN);
        }
    }

    /** A number as it was typed, to its last digit. */
    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }

    /** An emulsion by its word, or three weights. */
    record Receiving() implements Kind<ColourSight> {
        private static final List<Way<ColourSight>> WAYS = Stream.of(Emulsion.values())
                .map(emulsion -> new Way<>(
                        new ColourSight(Filter.NONE, emulsion, Optional.empty()),
                        ColourSight.word(emulsion),
                        emulsion == Emulsion.LUMINANCE
                                ? "the eye: luminance"
                                : ColourSight.article(emulsion) + " emulsion"))
                .toList();

        private static final Choice<ColourSight> CHOICE = Choice.of(WAYS);

        @Override
        public ColourSight parse(String what, String text, Kind.Art art) {
            if (!text.contains(",")) {
                return CHOICE.parse(what, text, art);
            }
            List<Double> weights = new ArrayList<>();
            for (String part : text.split(",", -1)) {
                if (!part.strip().matches("[0-9]*[.]?[0-9]+")) {
                    throw Refusal.use(what + " \"" + text.strip() + "\" has the part \"" + part.strip()
                            + "\"; weights are three numbers from 0 to 1, red, green and blue: such as 0.3,0.6,0.1");
                }
                weights.add(Double.parseDouble(part.strip()));
            }
            if (weights.size() != 3) {
                throw Refusal.use(what + " \"" + text.strip() + "\" has " + weights.size()
                        + " weights; it must have 3, red, green and blue: such as 0.3,0.6,0.1");
            }
            return new ColourSight(
                    Filter.NONE,
                    Emulsion.LUMINANCE,
                    Optional.of(new ColourWeights(weights.get(0), weights.get(1), weights.get(2))));
        }

        @Override
        public String print(ColourSight value) {
            return value.own()
                    .map(own -> DoubleStream.of(own.red(), own.green(), own.blue())
                            .mapToObj(HandFields::plain)
                            .collect(Collectors.joining(",")))
                    .orElseGet(() -> ColourSight.word(value.emulsion()));
        }

        @Override
        public ColourSight read(JsonFields fields, String name, @Nullable ColourSight usual) {
            return parse("job art." + name, fields.word(name, usual == null ? "" : print(usual)), Kind.Art.UNKNOWN);
        }

        @Override
        public List<Way<ColourSight>> ways() {
            return WAYS;
        }
    }
}
