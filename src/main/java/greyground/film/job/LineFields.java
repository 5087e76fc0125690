package greyground.film.job;

import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import java.util.List;
import java.util.Optional;

/** How art of lines becomes strokes: settings of {@link JobFields}. */
public final class LineFields {
    private static final String LINES = "line art: give --source line";

    public static final JobField<Optional<Double>> THRESHOLD = JobField.part(
                    "threshold",
                    new Or<>("automatic", new Measured(LineWish.THRESHOLD, 0.05)),
                    job -> job.art().hand().line().threshold(),
                    "art.hand.line.threshold")
            .typed("SHARE")
            .at("art", "threshold")
            .shown(
                    "Threshold",
                    "How far from ink to paper, in light, line art still counts as ink, such as 60% for bolder strokes; 'automatic' is half way, where a sharp edge runs. Given, it also makes strokes of art that has tones between.")
            .where(LineFields::lines, LINES);

    public static final JobField<Optional<Double>> SPECKS = JobField.part(
                    "specks",
                    new Or<>("automatic", new Measured(LineWish.SPECKS, 10)),
                    job -> job.art().hand().line().specksMicrometres(),
                    "art.hand.line.specksMicrometres")
            .typed("LENGTH")
            .at("art", "specksMicrometres")
            .shown(
                    "Specks",
                    "Specks and pinholes of line art smaller than a square of this side on the plate are left out, such as 80um; 'automatic' is 40 \u00b5m, 0 keeps all. How many went is said; dots of a drawing may be small, too.")
            .where(LineFields::lines, LINES);

    public static final JobField<Optional<Double>> GROWTH = JobField.part(
                    "edge-growth",
                    new Or<>("automatic", new Measured(LineWish.GROWTH, 1)),
                    job -> job.art().hand().line().growthMicrometres(),
                    "art.hand.line.growthMicrometres")
            .typed("LENGTH")
            .at("art", "edgeGrowthMicrometres")
            .shown(
                    "Edge growth",
                    "How far an edge of line art grows between film and print, such as 8um: strokes are made thinner by as much on either side, so that they print as wide as they are drawn. 'automatic' takes it from a bar on the virtual plate; 0um leaves strokes as drawn. Half of what your test plate's bars print too wide.")
            .where(LineFields::lines, LINES);

    /** In the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(THRESHOLD, SPECKS, GROWTH);

    private LineFields() {}

    private static boolean lines(Job job) {
        return job.art().hand().origin() == Origin.LINE;
    }
}
