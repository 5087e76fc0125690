package greyground.app;

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
 * @param measured ink in the plate to the print's L* at the levels that a test plate was read at; none where the tones are foretold
 * @param leastCoverage of the lightest tone that holds
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
        List<Point> measured,
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
                tones.measured().stream()
                        .flatMap(read -> read.levels().stream())
                        .map(level -> new Point(ink(plate, level.coverage()), level.lightness()))
                        .toList(),
                response.usable().least(),
                tones.turningPoint(),
                tones.printableRange().bare(),
                tones.printableRange().lightest(),
                tones.printableRange().darkest());
    }

    /** One tone of the art on its way. */
    ToneAt at(int grey, ToneCurve curve, PlateResponse response) {
        double coverage = (double) curve.coverage(grey) / ToneCurve.SOLID;
        return new ToneAt(
                Lightness.ofLuminance((double) grey / (ToneCurve.CODES - 1)),
                coverage,
                ink(plate, coverage),
                response.lightness(coverage));
    }

    private static double ink(List<Point> plate, double coverage) {
        for (int i = 1; i < plate.size(); i++) {
            Point from = plate.get(i - 1);
            Point to = plate.get(i);
            if (coverage <= to.in()) {
                return from.out() + (coverage - from.in()) / (to.in() - from.in()) * (to.out() - from.out());
            }
        }
        return plate.get(plate.size() - 1).out();
    }
}
