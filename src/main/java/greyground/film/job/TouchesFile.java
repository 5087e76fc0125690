package greyground.film.job;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.art.burnish.LocalTouch;
import greyground.art.burnish.LocalTouch.Ellipse;
import greyground.art.burnish.LocalTouch.Gradient;
import greyground.art.burnish.LocalTouch.Stroke;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Offset;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.List;
import java.util.Set;

/** Places burnished and deepened, as a plain JSON file and within that of a job: docs/touches.md. */
final class TouchesFile {
    /** The newest format that this program writes and reads. */
    static final int VERSION = 1;

    private static final String KIND = "touches";
    private static final String BURNISH = "burnish";
    private static final String DEEPEN = "deepen";

    private static final Range STRENGTH =
            new Range(0, LocalTouch.LIGHTNESS.most(), Unit.LIGHTNESS, LocalTouch.LIGHTNESS.remedy());

    private TouchesFile() {}

    static ObjectNode tree(List<LocalTouch> touches) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        write(file.putArray(KIND), touches);
        return file;
    }

    /** Reads touches from the text of their file; a name that looks misspelt is refused. */
    static List<LocalTouch> read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "correct the touches file");
        if (!file.has(KIND)) {
            throw Refusal.use("touches file holds no list \"touches\"; it must have one: see docs/touches.md");
        }
        List<LocalTouch> touches = read(file, KIND);
        file.unknown().stream()
                .flatMap(field -> field.question(KIND).stream())
                .findFirst()
                .ifPresent(question -> {
                    throw Refusal.use(question);
                });
        return touches;
    }

    static List<LocalTouch> read(JsonFields fields, String name) {
        return fields.list(name).stream().map(TouchesFile::touch).toList();
    }

    private static LocalTouch touch(JsonFields fields) {
        String shape = fields.choice("shape", "", Set.of("stroke", "ellipse", "gradient"));
        boolean deepened = fields.has(DEEPEN) && !fields.has(BURNISH);
        double lightness = deepened
                ? -fields.number(DEEPEN, Double.NaN, STRENGTH)
                : fields.number(BURNISH, Double.NaN, STRENGTH) - fields.number(DEEPEN, 0, STRENGTH);
        return switch (shape) {
            case "stroke" ->
                new Stroke(
                        lightness,
                        fields.number("widthMillimetres", Double.NaN, LocalTouch.WIDTH),
                        fields.number("featherMillimetres", Double.NaN, LocalTouch.FEATHER),
                        fields.pairs("pointsMillimetres", LocalTouch.PLACE).stream()
                                .map(TouchesFile::place)
                                .toList());
            case "ellipse" -> {
                double[] radii = fields.pair("radiiMillimetres", LocalTouch.WIDTH);
                yield new Ellipse(
                        lightness,
                        place(fields.pair("centreMillimetres", LocalTouch.PLACE)),
                        radii[0],
                        radii[1],
                        fields.number("turnDegrees", 0, LocalTouch.TURN),
                        fields.number("featherMillimetres", Double.NaN, LocalTouch.FEATHER));
            }
            default ->
                new Gradient(
                        lightness,
                        place(fields.pair("fromMillimetres", LocalTouch.PLACE)),
                        place(fields.pair("toMillimetres", LocalTouch.PLACE)));
        };
    }

    private static Offset place(double[] pair) {
        return new Offset(pair[0], pair[1]);
    }

    static void write(ArrayNode list, List<LocalTouch> touches) {
        touches.forEach(touch -> write(list.addObject(), touch));
    }

    private static void write(ObjectNode node, LocalTouch touch) {
        String shape = touch instanceof Stroke ? "stroke" : touch instanceof Ellipse ? "ellipse" : "gradient";
        node.put("shape", shape);
        node.set(touch.lightness() < 0 ? DEEPEN : BURNISH, JsonText.number(Math.abs(touch.lightness())));
        if (touch instanceof Stroke stroke) {
            node.set("widthMillimetres", JsonText.number(stroke.widthMillimetres()));
            node.set("featherMillimetres", JsonText.number(stroke.featherMillimetres()));
            ArrayNode points = node.putArray("pointsMillimetres");
            stroke.points().forEach(point -> put(points.addArray(), point));
        } else if (touch instanceof Ellipse ellipse) {
            put(node.putArray("centreMillimetres"), ellipse.centre());
            put(node.putArray("radiiMillimetres"), new Offset(ellipse.acrossMillimetres(), ellipse.downMillimetres()));
            node.set("turnDegrees", JsonText.number(ellipse.turnDegrees()));
            node.set("featherMillimetres", JsonText.number(ellipse.featherMillimetres()));
        } else if (touch instanceof Gradient gradient) {
            put(node.putArray("fromMillimetres"), gradient.from());
            put(node.putArray("toMillimetres"), gradient.to());
        }
    }

    private static void put(ArrayNode pair, Offset place) {
        pair.add(JsonText.number(place.acrossMillimetres()));
        pair.add(JsonText.number(place.downMillimetres()));
    }
}
