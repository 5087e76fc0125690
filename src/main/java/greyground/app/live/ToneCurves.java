package greyground.app.live;

import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobTones;
import greyground.plate.ToneTerms;
import greyground.tone.Compensation;
import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import greyground.tone.ToneCurve;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The four curves that a tone goes through, as points to be drawn, and what can't be printed.
 *
 * @param film art L* to film coverage
 * @param wish art L* to the print's L* asked for
 * @param print art L* to the print's L* predicted
 * @param plate film coverage to ink in the plate, in micrometres
 * @param ink ink in the plate to the print's L*
 * @param measured what a test plate measured, by coverage; empty where the response is predicted
 * @param leastCoverage below which the film holds nothing; 0 where every tone holds
 * @param mostCoverage most black that the film uses: the turning point, or a reserve short of it
 * @param turningCoverage past which more black prints paler; 1 where none does
 * @param bareLightness L* of bare paper
 * @param lightestLightness L* of the lightest tone that holds
 * @param darkestLightness L* of the darkest tone that the film uses
 */
public record ToneCurves(
        List<Point> film,
        List<Point> wish,
        List<Point> print,
        List<Point> plate,
        List<Point> ink,
        List<Measured> measured,
        double leastCoverage,
        double mostCoverage,
        double turningCoverage,
        double bareLightness,
        double lightestLightness,
        double darkestLightness) {
    /**
     * A tone that was measured.
     *
     * @param inkMicrometres that the virtual plate has there
     * @param lightness measured, CIE L*
     * @param halfWidth of its band, in L*
     */
    public record Measured(double inkMicrometres, double lightness, double halfWidth) {}

    /** A point of a curve, what goes in and what comes out. */
    public record Point(double in, double out) {}

    static ToneCurves of(FilmRecipe recipe) {
        Compensation compensation = recipe.compensation();
        JobTones tones = recipe.tones();
        PlateResponse response = tones.response();
        List<Compensation.Node> nodes = compensation.nodes();
        List<ToneTerms> levels = tones.predicted().levels();
        List<Point> plate = points(levels, ToneTerms::coverage, ToneTerms::inkVolumeMicrometres);
        return new ToneCurves(
                points(nodes, Compensation.Node::artLightness, Compensation.Node::coverage),
                points(nodes, Compensation.Node::artLightness, Compensation.Node::wishedLightness),
                points(nodes, Compensation.Node::artLightness, node -> response.lightness(node.coverage())),
                plate,
                points(levels, ToneTerms::inkVolumeMicrometres, level -> response.lightness(level.coverage())),
                measured(tones, plate),
                response.usable().least(),
                recipe.reserve().limit(),
                tones.turningPoint(),
                tones.printableRange().bare(),
                tones.printableRange().lightest(),
                compensation.darkestLightness());
    }

    private static <T> List<Point> points(List<T> all, ToDoubleFunction<T> in, ToDoubleFunction<T> out) {
        return all.stream()
                .map(each -> new Point(in.applyAsDouble(each), out.applyAsDouble(each)))
                .toList();
    }

    private static List<Measured> measured(JobTones tones, List<Point> plate) {
        return tones.measured().stream()
                .flatMap(response -> response.levels().stream()
                        .map(level -> new Measured(
                                between(plate, level.coverage()),
                                level.lightness(),
                                response.halfWidth(level.coverage()))))
                .toList();
    }

    /** A tone of the art on its way, between the points that are drawn. */
    public ToneAt at(double artLightness) {
        double coverage = between(film, artLightness);
        return new ToneAt(artLightness, coverage, ink(coverage), between(print, artLightness));
    }

    /** One tone of the art on its way. */
    ToneAt at(int grey, ToneCurve curve, PlateResponse response) {
        double coverage = (double) curve.coverage(grey) / ToneCurve.SOLID;
        return new ToneAt(
                Lightness.ofLuminance((double) grey / (ToneCurve.CODES - 1)),
                coverage,
                ink(coverage),
                response.lightness(coverage));
    }

    private double ink(double coverage) {
        return between(plate, coverage);
    }

    private static double between(List<Point> points, double at) {
        for (int i = 1; i < points.size(); i++) {
            Point from = points.get(i - 1);
            Point to = points.get(i);
            if (at <= to.in()) {
                return from.out() + (at - from.in()) / (to.in() - from.in()) * (to.out() - from.out());
            }
        }
        return points.get(points.size() - 1).out();
    }
}
