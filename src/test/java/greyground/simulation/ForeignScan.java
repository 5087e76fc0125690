package greyground.simulation;

import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.scan.Glare;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/**
 * A foreign shop's test plate on a scanner whose glare and tone scale are its own, in mean light of fields: what a reader that knows
 * neither would measure.
 *
 * @param fields as read
 * @param lines lightness of line pairs by their period
 * @param gamma of the scanner
 * @param glare share of the light about a place that it adds there
 * @param glareTold what the shop says of that; not a number where nothing
 * @param scale what the reader knows of the tone scale
 * @param seen glare as the plate's own darks showed it, where a whole scan was read and nobody told it
 */
record ForeignScan(
        List<MeasuredPatch> fields,
        Map<Integer, Double> lines,
        double gamma,
        double glare,
        double glareTold,
        Scale scale,
        Optional<Glare> seen) {
    /** What is known of codes and light. */
    enum Scale {
        /** Nothing: the codes are taken for sRGB. */
        UNSTATED,
        /** The file states a power that is nearly right. */
        STATED,
        /** A reflection wedge lies beside the proof. */
        WEDGE
    }

    private static final double[] WEDGE = {0.05, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2};

    /** Prints one plate and scans it. */
    static ForeignScan of(ForeignShop shop, ForeignShop.Plate plate, ForeignFilm film, TestPlate chart, Random random) {
        double gamma = 1.6 + random.nextDouble();
        double glare = 0.02 * random.nextDouble();
        double told = Math.floorMod(shop.seed / 3, 2L) == 0 ? Double.NaN : glare + 0.002 * random.nextGaussian();
        Scale scale = Scale.values()[(int) Math.floorMod(shop.seed, 3L)];
        double reach = 6000 + 10_000 * random.nextDouble();
        double noise = 0.15 + 0.35 * random.nextDouble();
        double slantX = 1.2 * (2 * random.nextDouble() - 1);
        double slantY = 1.2 * (2 * random.nextDouble() - 1);
        double paper = Math.pow(10, -shop.paperDensity);
        double toldPaper = Math.pow(10, -shop.paperDensity + 0.007 * random.nextGaussian());
        double power = scale == Scale.STATED ? gamma * (1 + 0.015 * random.nextGaussian()) : 0;
        double[] wedge = new double[WEDGE.length];
        for (int i = 0; i < wedge.length; i++) {
            double light = (1 - glare) * Math.pow(10, -WEDGE[i] - 0.008 * random.nextGaussian()) + glare * 0.4;
            wedge[i] = Math.pow(light, 1 / gamma);
        }
        List<Double> printed = new ArrayList<>();
        for (LevelPatch patch : chart.patches()) {
            double light = shop.reflectance(film.level(patch.coveragePerMille()), shop.place(plate, random));
            double x = patch.area().middleX() / chart.recipe().widthMicrometres() * 2 - 1;
            double y = patch.area().middleY() / chart.recipe().heightMicrometres() * 2 - 1;
            double share = Math.log(light / paper) / Math.log(0.05);
            double change =
                    (slantX * x + slantY * y) * Math.min(1, Math.max(0.1, share)) + noise * random.nextGaussian();
            double lightness = Math.max(0, Math.min(100, PaintedPrint.lightness(light) + change));
            printed.add(PaintedPrint.reflectance(lightness));
        }
        double bare = shop.reflectance(film.level(0), plate);
        // Paper is read round the plate: half of what lies about it is paper.
        double about = 0.75 * paper;
        double paperCode = Math.pow((1 - glare) * paper + glare * about, 1 / gamma);
        List<MeasuredPatch> fields = new ArrayList<>();
        for (int i = 0; i < chart.patches().size(); i++) {
            LevelPatch patch = chart.patches().get(i);
            double x = patch.area().middleX();
            double y = patch.area().middleY();
            double round = surround(chart, printed, bare, paper, x, y, reach);
            double code = Math.pow((1 - glare) * printed.get(i) + glare * round, 1 / gamma);
            double read = decoded(scale, power, wedge, code, paperCode, toldPaper);
            fields.add(new MeasuredPatch(
                    patch.coverage(), Math.max(0, Math.min(100, PaintedPrint.lightness(read))), x / 1000, y / 1000, 1));
        }
        Map<Integer, Double> lines = new TreeMap<>();
        for (int period : Target.Lines.PERIODS) {
            double light = shop.reflectance(ForeignFilm.lines(period), plate);
            double code = Math.pow((1 - glare) * light + glare * 0.6 * paper, 1 / gamma);
            double read = decoded(scale, power, wedge, code, paperCode, toldPaper);
            lines.put(period, PaintedPrint.lightness(read) + noise * random.nextGaussian());
        }
        return new ForeignScan(fields, lines, gamma, glare, told, scale, Optional.empty());
    }

    /** Absolute reflectance that a reader makes of a code. */
    private static double decoded(
            Scale scale, double power, double[] wedge, double code, double paperCode, double toldPaper) {
        return switch (scale) {
            case UNSTATED -> srgb(code) / srgb(paperCode) * toldPaper;
            case STATED -> Math.pow(code / paperCode, power) * toldPaper;
            case WEDGE -> Math.pow(10, -density(wedge, code));
        };
    }

    private static double srgb(double code) {
        return code <= 0.04045 ? code / 12.92 : Math.pow((code + 0.055) / 1.055, 2.4);
    }

    /** Straight between the wedge's patches, in the logarithm of the code. */
    private static double density(double[] wedge, double code) {
        int at = 0;
        while (at < wedge.length - 2 && code < wedge[at + 1]) {
            at++;
        }
        double share = Math.log(code / wedge[at]) / Math.log(wedge[at + 1] / wedge[at]);
        return WEDGE[at] + share * (WEDGE[at + 1] - WEDGE[at]);
    }

    /** Mean light of a disc about a place. */
    private static double surround(
            TestPlate chart, List<Double> fields, double bare, double paper, double x, double y, double radius) {
        double sum = 0;
        int count = 0;
        for (int i = -8; i <= 8; i++) {
            for (int j = -8; j <= 8; j++) {
                if (i * i + j * j <= 64) {
                    sum += light(chart, fields, bare, paper, x + radius * i / 8, y + radius * j / 8);
                    count++;
                }
            }
        }
        return sum / count;
    }

    private static double light(TestPlate chart, List<Double> fields, double bare, double paper, double x, double y) {
        if (!chart.recipe().plate().holds(x, y)) {
            return paper;
        }
        for (int i = 0; i < fields.size(); i++) {
            if (chart.patches().get(i).area().holds(x, y)) {
                return fields.get(i);
            }
        }
        return bare;
    }
}
