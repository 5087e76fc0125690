package greyground.picture;

import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredResponse;
import greyground.picture.Drawing.Anchor;
import greyground.picture.Drawing.Point;
import greyground.plate.PrintableRange;
import greyground.plate.ToneTerms;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.tone.Compensation;
import greyground.tone.PlateResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The four-quadrant diagram of tone, after L. A. Jones (1920s to 1940s; from memory, his papers not seen): the art's lightness runs to the
 * right, the film's black down, the copper's ink to the left, the print's lightness up. A tone goes round clockwise through
 * the three curves of film, plate and ink, and the fourth quadrant holds print against art.
 *
 * <p>Every curve is the numbers it is given: the tone curve's nodes and the response's computed levels.
 */
public final class ToneDiagram extends DrawnPage {
    private static final double WIDTH = 960;
    private static final double HEIGHT = 980;
    private static final double LEFT = ToneQuadrants.MIDDLE_X - ToneQuadrants.SIDE;
    private static final double RIGHT = ToneQuadrants.MIDDLE_X + ToneQuadrants.SIDE;
    private static final double WISH_WEIGHT = 8;
    private static final int FOLLOWED_LIGHTNESS = 50;
    private static final int CURVE_STEPS = 200;

    /** A gap smaller than this can't be seen (1 L* side by side is about the least that is seen; from memory, unverified). */
    private static final double LEAST_GAP_SHOWN = 1;

    private final List<Compensation.Node> nodes;
    private final VirtualResponse predicted;
    private final Optional<MeasuredResponse> measured;
    private final double limit;
    private final PlateResponse response;
    private final PrintableRange range;
    private final ToneQuadrants at;

    private ToneDiagram(
            String title,
            List<Compensation.Node> nodes,
            VirtualResponse predicted,
            Optional<MeasuredResponse> measured,
            double limit) {
        super(WIDTH, HEIGHT, "Four-quadrant tone diagram: " + title);
        this.nodes = nodes;
        this.predicted = predicted;
        this.measured = measured;
        this.limit = limit;
        this.response = measured.<PlateResponse>map(one -> one).orElse(predicted);
        this.range = measured.map(MeasuredResponse::printableRange).orElseGet(predicted::printableRange);
        double most = predicted.levels().stream()
                .mapToDouble(ToneTerms::inkVolumeMicrometres)
                .max()
                .orElse(1);
        this.at = new ToneQuadrants(drawing, most);
    }

    /**
     * Draws the diagram.
     *
     * @param title whose tones they are, one line
     * @param nodes of the tone curve
     * @param predicted response of the plate
     * @param measured response of a test plate made alike, if there is one
     * @param limit most film black that the curve uses: the turning point, or a reserve short of it
     */
    public static ToneDiagram of(
            String title,
            List<Compensation.Node> nodes,
            VirtualResponse predicted,
            Optional<MeasuredResponse> measured,
            double limit) {
        ToneDiagram diagram = new ToneDiagram(title, nodes, predicted, measured, limit);
        diagram.draw(title);
        return diagram;
    }

    private void draw(String title) {
        heading(60, "How each tone travels", title);
        at.grid();
        gapAndTurn();
        curves();
        follow();
        at.frame(measured.isPresent());
        legend();
    }

    private void gapAndTurn() {
        if (range.lightGap() >= LEAST_GAP_SHOWN) {
            double from = at.up(range.bare());
            drawing.rectangle(LEFT, from, RIGHT - LEFT, at.up(range.lightest()) - from, Palette.GAP);
            drawing.words(
                    ToneQuadrants.MIDDLE_X + 12,
                    from - 6,
                    SMALL,
                    Anchor.START,
                    Palette.ACCENT,
                    "nothing prints between L* " + whole(range.bare()) + " and " + whole(range.lightest()));
        }
        double turn = turningPoint();
        if (turn < 1) {
            double y = at.down(turn);
            drawing.dashed(LEFT, y, RIGHT, y, 1.2, Palette.ACCENT, 5);
            drawing.words(
                    RIGHT - 12,
                    y - 7,
                    SMALL,
                    Anchor.END,
                    Palette.ACCENT,
                    "turning point, " + whole(100 * turn) + " %: more black prints paler");
        }
        if (limit < turn) {
            double y = at.down(limit);
            drawing.dashed(LEFT, y, RIGHT, y, 1, Palette.RULE, 3);
            drawing.words(
                    LEFT + 12,
                    y - 7,
                    SMALL,
                    Anchor.START,
                    Palette.QUIET,
                    "used up to " + whole(100 * limit) + " %: the rest is reserve");
        }
        double darkest = at.up(range.darkest());
        drawing.dashed(LEFT, darkest, RIGHT, darkest, 1, Palette.RULE, 3);
        drawing.words(
                RIGHT - 12,
                darkest - 6,
                SMALL,
                Anchor.END,
                Palette.QUIET,
                "darkest print, L* " + whole(range.darkest()));
    }

    private void curves() {
        List<Point> film = new ArrayList<>();
        List<Point> wish = new ArrayList<>();
        List<Point> print = new ArrayList<>();
        for (Compensation.Node node : nodes) {
            film.add(new Point(at.right(node.artLightness()), at.down(node.coverage())));
            wish.add(new Point(at.right(node.artLightness()), at.up(node.wishedLightness())));
            print.add(new Point(at.right(node.artLightness()), at.up(response.lightness(node.coverage()))));
        }
        List<Point> plate = new ArrayList<>();
        List<Point> ink = new ArrayList<>();
        List<Point> platePast = new ArrayList<>();
        List<Point> inkPast = new ArrayList<>();
        for (ToneTerms level : predicted.levels()) {
            Point held = new Point(at.left(level.inkVolumeMicrometres()), at.down(level.coverage()));
            Point printed = new Point(at.left(level.inkVolumeMicrometres()), at.up(level.lightness()));
            if (level.coverage() <= predicted.turningPoint()) {
                plate.add(held);
                ink.add(printed);
            }
            if (level.coverage() >= predicted.turningPoint()) {
                platePast.add(held);
                inkPast.add(printed);
            }
        }
        // What lies past the turning point begins where the rest ends.
        if (!plate.isEmpty() && !platePast.isEmpty()) {
            platePast.add(0, plate.get(plate.size() - 1));
            inkPast.add(0, ink.get(ink.size() - 1));
        }
        drawing.path(platePast, 2, Palette.ACCENT, 5);
        drawing.path(wish, WISH_WEIGHT, Palette.WISH, 0);
        drawing.path(film, 2.4, Palette.INK, 0);
        drawing.path(plate, 2.4, Palette.INK, 0);
        if (measured.isPresent()) {
            read(measured.get());
            drawing.path(ink, 1.6, Palette.QUIET, 3);
        } else {
            drawing.path(inkPast, 2, Palette.ACCENT, 5);
            drawing.path(ink, 2.4, Palette.INK, 0);
        }
        drawing.path(print, 2.4, Palette.INK, 0);
    }

    /** What was read, over the ink that is predicted for its coverage: band, curve and points. */
    private void read(MeasuredResponse read) {
        List<Point> above = new ArrayList<>();
        List<Point> below = new ArrayList<>();
        List<Point> curve = new ArrayList<>();
        for (int i = 0; i <= CURVE_STEPS; i++) {
            double coverage = turningPoint() * i / CURVE_STEPS;
            double x = at.left(ink(coverage));
            curve.add(new Point(x, at.up(read.lightness(coverage))));
            above.add(new Point(x, at.up(Math.min(100, read.lightness(coverage) + read.halfWidth(coverage)))));
            below.add(0, new Point(x, at.up(Math.max(0, read.lightness(coverage) - read.halfWidth(coverage)))));
        }
        above.addAll(below);
        drawing.area(above, Palette.FAINT);
        drawing.path(curve, 2.4, Palette.INK, 0);
        for (MeasuredLevel level : read.levels()) {
            boolean used = level.coverage() <= turningPoint();
            drawing.ring(
                    at.left(ink(level.coverage())),
                    at.up(level.lightness()),
                    3,
                    Palette.PAGE,
                    used ? Palette.INK : Palette.ACCENT);
        }
    }

    private double turningPoint() {
        return response.usable().most();
    }

    /** One tone's way round, and its numbers in words. */
    private void follow() {
        double coverage = coverage(FOLLOWED_LIGHTNESS);
        double ink = ink(coverage);
        double print = response.lightness(coverage);
        Point onFilm = new Point(at.right(FOLLOWED_LIGHTNESS), at.down(coverage));
        Point onCopper = new Point(at.left(ink), at.down(coverage));
        Point inked = new Point(at.left(ink), at.up(print));
        Point printed = new Point(at.right(FOLLOWED_LIGHTNESS), at.up(print));
        drawing.path(List.of(onFilm, onCopper, inked, printed, onFilm), 1.2, Palette.ACCENT, 0);
        for (Point point : List.of(onFilm, onCopper, inked, printed)) {
            drawing.ring(point.x(), point.y(), 4.5, Palette.PAGE, Palette.ACCENT);
        }
        drawing.words(
                60,
                HEIGHT - 64,
                LETTER,
                Anchor.START,
                Palette.ACCENT,
                "One tone followed: art L* " + FOLLOWED_LIGHTNESS + "  \u2192  film " + whole(100 * coverage)
                        + " % black  \u2192  ink " + Refusal.plain(Math.rint(ink * 10) / 10)
                        + " \u00b5m  \u2192  print L* " + whole(print));
    }

    private void legend() {
        double y = HEIGHT - 30;
        if (measured.isPresent()) {
            drawing.line(60, y - 5, 96, y - 5, 2.4, Palette.INK);
            drawing.ring(78, y - 5, 3, Palette.PAGE, Palette.INK);
            drawing.words(104, y, LETTER, Anchor.START, Palette.INK, "measured, with 95 % band");
            drawing.dashed(300, y - 5, 336, y - 5, 1.6, Palette.QUIET, 3);
            drawing.words(344, y, LETTER, Anchor.START, Palette.INK, "predicted");
        } else {
            drawing.line(60, y - 5, 96, y - 5, 2.4, Palette.INK);
            drawing.words(104, y, LETTER, Anchor.START, Palette.INK, "computed for this job");
        }
        double wished = measured.isPresent() ? 424 : 310;
        drawing.line(wished, y - 5, wished + 36, y - 5, WISH_WEIGHT, Palette.WISH);
        drawing.words(wished + 44, y, LETTER, Anchor.START, Palette.INK, "print wished for");
        if (turningPoint() < 1) {
            double past = measured.isPresent() ? 604 : 510;
            String words =
                    measured.isPresent() ? "past the turning point" : "past the turning point, never used for tone";
            drawing.dashed(past, y - 5, past + 36, y - 5, 2, Palette.ACCENT, 5);
            drawing.words(past + 44, y, LETTER, Anchor.START, Palette.INK, words);
        }
    }

    private double coverage(double artLightness) {
        for (int i = 1; i < nodes.size(); i++) {
            Compensation.Node from = nodes.get(i - 1);
            Compensation.Node to = nodes.get(i);
            if (artLightness <= to.artLightness()) {
                double share = (artLightness - from.artLightness()) / (to.artLightness() - from.artLightness());
                return from.coverage() + share * (to.coverage() - from.coverage());
            }
        }
        return 0;
    }

    private double ink(double coverage) {
        List<ToneTerms> levels = predicted.levels();
        for (int i = 1; i < levels.size(); i++) {
            ToneTerms from = levels.get(i - 1);
            ToneTerms to = levels.get(i);
            if (coverage <= to.coverage()) {
                double share = (coverage - from.coverage()) / (to.coverage() - from.coverage());
                return from.inkVolumeMicrometres() + share * (to.inkVolumeMicrometres() - from.inkVolumeMicrometres());
            }
        }
        return 0;
    }

    private static String whole(double value) {
        return Refusal.plain(Math.rint(value));
    }
}
