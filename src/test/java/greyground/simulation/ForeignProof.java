package greyground.simulation;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * A foreign shop's test plate painted whole, laid on its scanner and read from the scan's pixels: grain, paper, wiping, a slight turn, blur,
 * noise, dust, a power of its own, and glare that falls off with the distance.
 */
final class ForeignProof {
    private static final double PIXELS_PER_INCH = 240;
    private static final double MARGIN = 14_000;
    private static final double CELL = 90;
    private static final double[] WEDGE = {0.05, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2};
    private static final int WEDGE_SIDE = 56;

    /** Of the scanner's full scale. */
    private static final double WHITE = 0.95;

    private final ForeignShop shop;
    private final ForeignShop.Plate plate;
    private final ForeignFilm film;
    private final FilmPatches grain;
    private final TestPlate chart;
    private final Random random;
    private final Canvas canvas;
    private final double slantX;
    private final double slantY;
    private final double noise;
    private final double paper;
    private final double bare;

    private ForeignProof(
            ForeignShop shop,
            ForeignShop.Plate plate,
            ForeignFilm film,
            FilmPatches grain,
            TestPlate chart,
            Random random) {
        this.shop = shop;
        this.plate = plate;
        this.film = film;
        this.grain = grain;
        this.chart = chart;
        this.random = random;
        this.canvas =
                new Canvas(chart.recipe().widthMicrometres(), chart.recipe().heightMicrometres(), MARGIN, CELL);
        this.slantX = 1.2 * (2 * random.nextDouble() - 1);
        this.slantY = 1.2 * (2 * random.nextDouble() - 1);
        this.noise = 0.15 + 0.35 * random.nextDouble();
        this.paper = Math.pow(10, -shop.paperDensity);
        this.bare = shop.reflectance(film.level(0), plate);
    }

    /** Prints, scans and reads. */
    static ForeignScan of(
            ForeignShop shop,
            ForeignShop.Plate plate,
            ForeignFilm film,
            FilmPatches grain,
            TestPlate chart,
            Random random) {
        return new ForeignProof(shop, plate, film, grain, chart, random).read();
    }

    private ForeignScan read() {
        double gamma = 1.6 + random.nextDouble();
        double glare = 0.02 * random.nextDouble();
        double reach = 2 + 5 * random.nextDouble();
        // One in three says it; the others leave it to the plate.
        double told =
                Math.floorMod(shop.seed / 3, 3L) == 0 ? Math.max(0, glare + 0.002 * random.nextGaussian()) : Double.NaN;
        ForeignScan.Scale scale = ForeignScan.Scale.values()[(int) Math.floorMod(shop.seed, 3L)];
        paint();
        stray(glare, reach);
        Scanner scanner = new Scanner(
                PIXELS_PER_INCH,
                6 * random.nextDouble() - 3,
                false,
                0.004 * random.nextDouble(),
                0.004 * random.nextDouble(),
                0.5 + 0.5 * random.nextDouble(),
                0.04 * (2 * random.nextDouble() - 1),
                0,
                WHITE,
                0.001 + 0.002 * random.nextDouble(),
                Scanner.Coding.LINEAR_16,
                random.nextInt(30));
        SimulatedScan scan = scanner.scan(
                canvas, chart.recipe().widthMicrometres(), chart.recipe().heightMicrometres(), random);
        double power = scale == ForeignScan.Scale.STATED ? gamma * (1 + 0.015 * random.nextGaussian()) : 0;
        double toldPaper = Math.pow(10, -shop.paperDensity + 0.007 * random.nextGaussian());
        List<ScanChoices.Reference> references = new ArrayList<>();
        double[] wedge = new double[WEDGE.length];
        for (int i = 0; i < wedge.length; i++) {
            wedge[i] = WHITE
                    * ((1 - glare) * Math.pow(10, -WEDGE[i] - 0.008 * random.nextGaussian()) + glare * 0.6 * paper);
            if (scale == ForeignScan.Scale.WEDGE) {
                references.add(new ScanChoices.Reference(
                        WEDGE_SIDE * (i * 1.3 + 1), scan.height() + WEDGE_SIDE, 0.7 * WEDGE_SIDE, WEDGE[i]));
            }
        }
        int height = scan.height() + (references.isEmpty() ? 0 : 2 * WEDGE_SIDE);
        // As an 8-bit file holds it, and as a reader takes its codes.
        GreyPlane plane = ArrayPlane.of(scan.width(), height, (x, y) -> {
            double light = y < scan.height()
                    ? scan.codes()[y * scan.width() + x] / 65_535.0
                    : beside(wedge, x, y - scan.height());
            double code = Math.rint(255 * Math.pow(light, 1 / gamma)) / 255;
            double taken = power > 0 ? Math.pow(code, power) : srgb(code);
            return (int) Math.round(GreyPlane.WHITE * taken);
        });
        ScanReading reading = ChartReader.read(
                plane,
                chart,
                new ScanChoices(
                        List.of(),
                        references,
                        Double.isNaN(told) ? Optional.empty() : Optional.of(told),
                        PaintedPrint.lightness(toldPaper)),
                Progress.NONE);
        return new ForeignScan(reading.patches(), lines(reading), gamma, glare, told, scale, reading.glare());
    }

    private double beside(double[] wedge, int x, int down) {
        int at = (int) ((x - WEDGE_SIDE / 2.0) / (1.3 * WEDGE_SIDE));
        double within = x - WEDGE_SIDE / 2.0 - at * 1.3 * WEDGE_SIDE;
        boolean patch = at >= 0
                && at < wedge.length
                && within >= 0
                && within < WEDGE_SIDE
                && down >= WEDGE_SIDE / 2
                && down < WEDGE_SIDE * 3 / 2;
        return patch ? wedge[at] : WHITE * paper;
    }

    private static double srgb(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    private static Map<Integer, Double> lines(ScanReading reading) {
        Map<Integer, List<Double>> read = new TreeMap<>();
        for (ScanReading.TargetReading target : reading.targets()) {
            if (target.target() instanceof Target.Lines lines) {
                read.computeIfAbsent(lines.period(), any -> new ArrayList<>()).add(target.lightness());
            }
        }
        Map<Integer, Double> lines = new TreeMap<>();
        read.forEach((period, tones) -> lines.put(
                period, tones.stream().mapToDouble(tone -> tone).average().orElseThrow()));
        return lines;
    }

    private void paint() {
        java.util.Arrays.fill(canvas.reflectance, (float) paper);
        flat(chart.recipe().plate(), bare);
        for (LevelPatch patch : chart.patches()) {
            field(patch.area(), patch.coveragePerMille());
        }
        for (Target target : chart.targets()) {
            if (target instanceof Target.Dark dark) {
                field(dark.area(), dark.coveragePerMille());
            } else if (target instanceof Target.Lines lines) {
                flat(lines.area(), shop.reflectance(ForeignFilm.lines(lines.period()), plate));
            } else if (!(target instanceof Target.Bare)) {
                flat(target.area(), shop.reflectance(film.level(500), plate));
            }
        }
        for (CornerCode code : chart.codes()) {
            int module = code.area().width() / CornerCode.MODULES;
            for (CornerCode.Run run : code.runs()) {
                flat(
                        new Area(
                                code.area().left() + run.from() * module,
                                code.area().top() + run.row() * module,
                                (run.to() - run.from()) * module,
                                module),
                        shop.reflectance(film.level(10 * chart.recipe().codePercent()), plate));
            }
        }
        PaperNoise fine = new PaperNoise(180 + 200 * random.nextDouble(), random);
        PaperNoise broad = new PaperNoise(1500 + 2500 * random.nextDouble(), random);
        for (int row = 0; row < canvas.height; row++) {
            for (int column = 0; column < canvas.width; column++) {
                double x = canvas.x(column);
                double y = canvas.y(row);
                canvas.reflectance[row * canvas.width + column] *=
                        (float) (1 + 0.01 * fine.at(x, y) + 0.004 * broad.at(x, y));
            }
        }
    }

    private void flat(Area area, double reflectance) {
        canvas.fill(area.left(), area.top(), area.width(), area.height(), (x, y) -> reflectance);
    }

    /** The place's own tone, wiped as that place is, with the film's dots in it, whose mean changes nothing. */
    private void field(Area area, int perMille) {
        double light = shop.reflectance(film.level(perMille), shop.place(plate, random));
        double across = area.middleX() / chart.recipe().widthMicrometres() * 2 - 1;
        double down = area.middleY() / chart.recipe().heightMicrometres() * 2 - 1;
        double share = Math.min(1, Math.max(0.1, Math.log(light / paper) / Math.log(0.05)));
        double change = (slantX * across + slantY * down) * share + noise * random.nextGaussian();
        double whole = PaintedPrint.reflectance(Math.max(0, Math.min(100, PaintedPrint.lightness(light) + change)));
        double coverage = perMille / 1000.0;
        if (perMille == 0 || perMille == 1000) {
            flat(area, whole);
            return;
        }
        FilmPatch dots = grain.at(coverage);
        double depth = Math.min(0.6 * (paper - whole), 0.7 * whole / (1 - coverage));
        int fromX = random.nextInt(dots.width());
        int fromY = random.nextInt(dots.height());
        canvas.fill(area.left(), area.top(), area.width(), area.height(), (x, y) -> {
            int column = (fromX + (int) (x / dots.pitchMicrometres())) % dots.width();
            int row = (fromY + (int) (y / dots.pitchMicrometres())) % dots.height();
            return whole + depth * (coverage - (dots.black(column, row) ? 1 : 0));
        });
    }

    /** Takes a share of each place's light and spreads it by {@code exp(-r / reach)}; beyond the paper lies more of it. */
    private void stray(double share, double reachMillimetres) {
        int block = (int) Math.round(1000 / CELL);
        int columns = (canvas.width + block - 1) / block;
        int rows = (canvas.height + block - 1) / block;
        double[] light = new double[columns * rows];
        for (int y = 0; y < rows * block; y++) {
            for (int x = 0; x < columns * block; x++) {
                light[y / block * columns + x / block] += canvas.reflectance[
                                Math.min(canvas.height - 1, y) * canvas.width + Math.min(canvas.width - 1, x)]
                        / (double) (block * block);
            }
        }
        int far = (int) Math.ceil(6 * reachMillimetres);
        double[][] weights = new double[far + 1][far + 1];
        for (int dy = 0; dy <= far; dy++) {
            for (int dx = 0; dx <= far; dx++) {
                weights[dy][dx] = Math.exp(-Math.hypot(dx, dy) / reachMillimetres);
            }
        }
        double[] strayed = new double[light.length];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                double sum = 0;
                double all = 0;
                for (int dy = -far; dy <= far; dy++) {
                    for (int dx = -far; dx <= far; dx++) {
                        boolean on = y + dy >= 0 && y + dy < rows && x + dx >= 0 && x + dx < columns;
                        double weight = weights[Math.abs(dy)][Math.abs(dx)];
                        sum += weight * (on ? light[(y + dy) * columns + x + dx] : paper);
                        all += weight;
                    }
                }
                strayed[y * columns + x] = sum / all;
            }
        }
        for (int y = 0; y < canvas.height; y++) {
            for (int x = 0; x < canvas.width; x++) {
                int at = y * canvas.width + x;
                canvas.reflectance[at] = (float)
                        ((1 - share) * canvas.reflectance[at] + share * strayed[y / block * columns + x / block]);
            }
        }
    }
}
