package greyground.app.live;

import greyground.app.recipe.JobTones;
import greyground.plate.ToneTerms;
import greyground.plate.VirtualResponse;
import greyground.tone.Compensation;
import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import greyground.tone.ToneCurve;
import java.util.List;

/**
 * The four curves that a tone goes through, as points to be drawn, and what can't be printed.
 *
 * @param film art L* to film coverage
 * @param wish art L* to the print's L* asked for
 * @param print art L* to the print's L* foretold
 * @param plate film coverage to ink in the plate, in micrometres
 * @param ink ink in the plate to the print's L*
 * @param measured what a test plate measured, by coverage; empty where the response is foretold
 * @param leastCoverage below which the film holds nothing; 0 where every tone holds
 * @param turningCoverage past which more black prints paler; 1 where none does
 * @param bareLightness L* of bare paper
 * @param lightestLightness L* of the lightest tone that holds
 * @param darkestLightness L* of the darkest tone
 */
public record ToneCurves(
        List<Point> film,
        List<Point> wish,
        List<Point> print,
        List<Point> plate,
        List<Point> ink,
        List<Measured> measured,
        double leastCoverage,
        double turningCoverage,
        double bareLightness,
        double lightestLightness,
        double darkestLightness) {
    public ToneCurves {
        film = List.copyOf(film);
        wish = List.copyOf(wish);
        print = List.copyOf(print);
        plate = List.copyOf(plate);
        ink = List.copyOf(ink);
        measured = List.copyOf(measured);
    }

    /**
     * A tone that was measured.
     *
     * @param coverage of the film
     * @param inkMicrometres that the virtual plate has there
     * @param lightness measured, CIE L*
     * @param halfWidth of its band, in L*
     */
    public record Measured(double coverage, double inkMicrometres, double lightness, double halfWidth) {}

    /** A point of a curve, what goes in and what comes out. */
    public record Point(double in, double out) {}

    static ToneCurves of(Compensation compensation, JobTones tones) {
        VirtualResponse foretold = tones.foretold();
        PlateResponse response = tones.response();
        List<Compensation.Node> nodes = compensation.nodes();
        List<ToneTerms> levels = foretold.levels();
        List<Point> plate = levels.stream()
                .map(level -> new Point(level.coverage(), level.inkVolumeMicrometres()))
                .toList();
        return new ToneCurves(
                nodes.stream()
                        .map(node -> new Point(node.artLightness(), node.coverage()))
                        .toList(),
                nodes.stream()
                        .map(node -> new Point(node.artLightness(), node.wishedLightness()))
                        .toList(),
                nodes.stream()
                        .map(node -> new Point(node.artLightness(), response.lightness(node.coverage())))
                        .toList(),
                plate,
                levels.stream()
                        .map(level -> new Point(level.inkVolumeMicrometres(), response.lightness(level.coverage())))
                        .toList(),
                measured(tones, plate),
                response.usable().least(),
                tones.turningPoint(),
                tones.printableRange().bare(),
                tones.printableRange().lightest(),
                tones.printableRange().darkest());
    }

    private static List<Measured> measured(JobTones tones, List<Point> plate) {
        return tones.measured().stream()
                .flatMap(response -> response.levels().stream()
                        .map(level -> new Measured(
                                level.coverage(),
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
