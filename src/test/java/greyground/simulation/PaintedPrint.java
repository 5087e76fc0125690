package greyground.simulation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.google.zxing.EncodeHintType;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import greyground.plate.FilmPatch;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * The print of a test plate, painted from its chart file: fields in the true tone of the hidden workshop with its grain, codes as zxing
 * encodes their text, targets as that plate prints them, uneven wiping, plate tone, paper, platemark.
 */
final class PaintedPrint {
    private static final double MARGIN = 14_000;
    private static final double SOLID_TILE_PIXELS = 8;

    private final JsonNode chart;
    private final ShopTones tones;
    private final Wiping wiping;
    private final Random random;
    private final Canvas canvas;
    private final List<Field> fields = new ArrayList<>();
    private final double pitch;

    /**
     * One field as it was printed.
     *
     * @param coverage of the film
     * @param lightness of the tone, evenly wiped
     * @param printed the same as wiped
     */
    record Field(double coverage, double lightness, double printed, double xMillimetres, double yMillimetres) {}

    private PaintedPrint(
            JsonNode chart, ShopTones tones, Wiping wiping, Random random, double cell, double pitchMicrometres) {
        this.chart = chart;
        this.tones = tones;
        this.wiping = wiping;
        this.random = random;
        this.pitch = pitchMicrometres;
        this.canvas = new Canvas(
                chart.get("plateWidthMicrometres").asDouble(),
                chart.get("plateHeightMicrometres").asDouble(),
                MARGIN,
                cell);
    }

    /** @param chart text of the film's chart attachment */
    static PaintedPrint of(
            String chart, ShopTones tones, Wiping wiping, Random random, double cell, double pitchMicrometres)
            throws Exception {
        JsonNode tree = JsonMapper.builder().build().readTree(chart);
        PaintedPrint print = new PaintedPrint(tree, tones, wiping, random, cell, pitchMicrometres);
        print.paint();
        return print;
    }

    Canvas canvas() {
        return canvas;
    }

    List<Field> fields() {
        return fields;
    }

    double width() {
        return chart.get("plateWidthMicrometres").asDouble();
    }

    double height() {
        return chart.get("plateHeightMicrometres").asDouble();
    }

    /** Y of a lightness, CIE 15. */
    static double reflectance(double lightness) {
        return lightness > 8 ? Math.pow((lightness + 16) / 116, 3) : lightness * 27 / 24_389.0;
    }

    static double lightness(double reflectance) {
        return reflectance > 216.0 / 24_389 ? 116 * Math.cbrt(reflectance) - 16 : reflectance * 24_389.0 / 27;
    }

    private void paint() throws Exception {
        double paper = reflectance(tones.paperLightness());
        java.util.Arrays.fill(canvas.reflectance, (float) paper);
        double bare = reflectance(tones.lightness(0));
        canvas.fill(0, 0, width(), height(), (x, y) -> bare);
        for (JsonNode patch : chart.get("patches")) {
            double coverage = patch.get("coveragePercent").asDouble() / 100;
            Place place = Place.of(patch);
            tone(place, coverage);
            double lightness = tones.lightness(coverage);
            double x = place.left() + place.width() / 2;
            double y = place.top() + place.height() / 2;
            fields.add(new Field(coverage, lightness, lightness + meanWiping(place), x / 1000, y / 1000));
        }
        for (JsonNode target : chart.get("targets")) {
            target(target);
        }
        for (JsonNode code : chart.get("codes")) {
            code(code);
        }
        wipe();
        platemark(paper);
        paperGrain();
    }

    private record Place(double left, double top, double width, double height) {
        static Place of(JsonNode node) {
            return new Place(
                    node.get("left").asDouble(),
                    node.get("top").asDouble(),
                    node.get("width").asDouble(),
                    node.get("height").asDouble());
        }
    }

    /** The middle six tenths, which a reader may average. */
    private double meanWiping(Place place) {
        double sum = 0;
        for (int i = 0; i < 25; i++) {
            sum += wipingAt(
                    place.left() + place.width() * (0.2 + 0.15 * (i % 5)),
                    place.top() + place.height() * (0.2 + 0.15 * (i / 5)));
        }
        return sum / 25;
    }

    private double wipingAt(double x, double y) {
        return wiping.at(2 * x / width() - 1, 2 * y / height() - 1, x / 1000, y / 1000);
    }

    private void tone(Place place, double coverage) {
        double whole = reflectance(tones.lightness(coverage));
        ShopTones.Texture texture = tones.texture(coverage, canvas.cell);
        double across = texture.side() * random.nextDouble();
        double down = texture.side() * random.nextDouble();
        canvas.fill(
                place.left(),
                place.top(),
                place.width(),
                place.height(),
                (x, y) -> Math.min(1, whole * texture.at(x + across, y + down)));
    }

    private void flat(Place place, double lightness) {
        double whole = reflectance(lightness);
        canvas.fill(place.left(), place.top(), place.width(), place.height(), (x, y) -> whole);
    }

    private void code(JsonNode code) throws Exception {
        ByteMatrix matrix = Encoder.encode(
                        code.get("text").asText(), ErrorCorrectionLevel.Q, Map.of(EncodeHintType.QR_VERSION, 2))
                .getMatrix();
        Place place = Place.of(code);
        double module = place.width() / matrix.getWidth();
        double coverage = chart.get("codePercent").asDouble() / 100;
        for (int row = 0; row < matrix.getHeight(); row++) {
            for (int column = 0; column < matrix.getWidth(); column++) {
                if (matrix.get(column, row) == 1) {
                    tone(
                            new Place(place.left() + column * module, place.top() + row * module, module, module),
                            coverage);
                }
            }
        }
    }

    private void target(JsonNode target) {
        Place place = Place.of(target);
        switch (target.get("kind").asText()) {
            case "lines" -> flat(place, lines(tones, target.get("period").asInt(), pitch));
            case "dots" -> flat(place, discs(target, false));
            case "holes" -> flat(place, discs(target, true));
            case "bar" -> bar(place, target.get("upright").asBoolean());
            case "bare" -> bar(place, place.width() < place.height());
            case "dark" -> tone(place, target.get("coveragePercent").asDouble() / 100);
            case "star" -> flat(place, (tones.lightness(0) + tones.lightness(0.7)) / 2);
            default -> flat(place, tones.lightness(0.7));
        }
    }

    /** Lightness of line pairs as they are printed. */
    static double lines(ShopTones tones, int period, double pitch) {
        double pixels = Math.max(2, period / pitch);
        int pairs = 1;
        for (int count = 2; count <= 15; count++) {
            double off = Math.abs(count * pixels - Math.rint(count * pixels)) / count;
            double best = Math.abs(pairs * pixels - Math.rint(pairs * pixels)) / pairs;
            pairs = off < best - 1e-9 ? count : pairs;
        }
        int width = (int) Math.rint(pairs * pixels);
        double step = width / (double) pairs;
        return tones.lightness(
                "lines " + period,
                ShopTones.tile(
                        width,
                        (int) SOLID_TILE_PIXELS,
                        pitch,
                        (x, y) -> (x + 0.5) / step - Math.floor((x + 0.5) / step) < 0.5));
    }

    private double discs(JsonNode target, boolean holes) {
        double diameter = target.get("diameter").asDouble() / pitch;
        int side = Math.max(2, (int) Math.rint(target.get("pitch").asDouble() / pitch));
        FilmPatch tile = ShopTones.tile(
                side,
                side,
                pitch,
                (x, y) -> Math.hypot(x + 0.5 - side / 2.0, y + 0.5 - side / 2.0) <= diameter / 2 != holes);
        return tones.lightness((holes ? "holes " : "dots ") + target.get("diameter") + " " + target.get("pitch"), tile);
    }

    /** Solid while the pad bridges it; wider ones are wiped pale in their middle and keep a dark rim. */
    private void bar(Place place, boolean upright) {
        var truth = tones.truth();
        double depth = ((greyground.plate.Bath) truth.wells()).depthMicrometres();
        double radius = truth.wipe().padRadiusMillimetres() * 1000;
        double side = upright ? place.width() : place.height();
        canvas.fill(place.left(), place.top(), place.width(), place.height(), (x, y) -> {
            double from = Math.max(0, upright ? x - place.left() : y - place.top());
            double edge = Math.max(0, Math.min(from, side - from));
            // Ink stands as deep as the pad, a parabola of that radius leaning on both rims, or on one, leaves it.
            double sag = side * side / (8 * radius) < depth
                    ? edge * (side - edge) / (2 * radius)
                    : Math.min(depth, edge * Math.sqrt(2 * depth / radius) - edge * edge / (2 * radius));
            boolean past = edge > Math.sqrt(2 * depth * radius);
            double ink = past ? 0 : Math.max(0, depth - sag);
            double film = truth.ink().transferFraction() * (ink + truth.wipe().plateToneMicrometres());
            return Math.pow(10, -truth.paper().density() - truth.ink().density(film));
        });
    }

    private void wipe() {
        double[] table = new double[1025];
        for (int i = 0; i < table.length; i++) {
            table[i] = lightness(i / 1024.0);
        }
        for (int row = Math.max(0, canvas.column(0)); row < Math.min(canvas.height, canvas.column(height())); row++) {
            for (int column = canvas.column(0); column < Math.min(canvas.width, canvas.column(width())); column++) {
                int at = row * canvas.width + column;
                double change = wipingAt(canvas.x(column), canvas.y(row));
                double now = table[(int) (canvas.reflectance[at] * 1024)];
                // dY/dL = 3 (L + 16)^2 / 116^3.
                double slope = 3 * (now + 16) * (now + 16) / (116.0 * 116 * 116);
                canvas.reflectance[at] = (float) Math.max(0.002, Math.min(1, canvas.reflectance[at] + slope * change));
            }
        }
    }

    /** The rim of the plate as the press leaves it: a thin line with a little ink. */
    private void platemark(double paper) {
        double line = 150;
        double ink = paper * (0.6 + 0.3 * random.nextDouble());
        canvas.fill(-line, -line, width() + 2 * line, line, (x, y) -> ink);
        canvas.fill(-line, height(), width() + 2 * line, line, (x, y) -> ink);
        canvas.fill(-line, 0, line, height(), (x, y) -> ink);
        canvas.fill(width(), 0, line, height(), (x, y) -> ink);
    }

    private void paperGrain() {
        PaperNoise fine = new PaperNoise(180 + 200 * random.nextDouble(), random);
        PaperNoise broad = new PaperNoise(1500 + 2500 * random.nextDouble(), random);
        double fineSize = 0.004 + 0.014 * random.nextDouble();
        double broadSize = 0.002 + 0.004 * random.nextDouble();
        for (int row = 0; row < canvas.height; row++) {
            for (int column = 0; column < canvas.width; column++) {
                double x = canvas.x(column);
                double y = canvas.y(row);
                int at = row * canvas.width + column;
                double change = 1 + fineSize * fine.at(x, y) + broadSize * broad.at(x, y);
                canvas.reflectance[at] = (float) Math.max(0, Math.min(1, canvas.reflectance[at] * change));
            }
        }
    }
}
