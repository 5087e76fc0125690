package greyground.desk.window;

import greyground.app.live.LivePlate;
import greyground.app.live.ToneCurves;
import greyground.desk.look.Controls;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchModel;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Station;
import greyground.desk.picture.DiagramView;
import greyground.desk.picture.HistogramView;
import greyground.film.job.ArtFields;
import greyground.film.job.HandFields;
import greyground.film.job.JobField;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.layout.HBox;
import org.jspecify.annotations.Nullable;

/** What is known of tones, in one strip below the picture: how many of each, with the art's own under the hand, and their way to the print. */
final class ToneStrip extends HBox {
    private static final double HEIGHT = 192;
    private static final double DIAGRAM_WIDTH = 340;

    private final BenchModel model;
    private final LiveDesk live;
    private final HistogramView histogram;
    private final DiagramView diagram;
    private @Nullable LivePlate plate;
    private Station station = Station.ART;

    ToneStrip(BenchModel model, LiveDesk live, DiagramView diagram) {
        this.model = model;
        this.live = live;
        this.diagram = diagram;
        this.histogram = new HistogramView(new ByHand());
        getStyleClass().add("tones");
        diagram.tall(HEIGHT);
        diagram.setMinWidth(DIAGRAM_WIDTH);
        diagram.setPrefWidth(DIAGRAM_WIDTH);
        setMinHeight(HEIGHT);
        setMaxHeight(HEIGHT);
        getChildren().addAll(Controls.growing(histogram), diagram);
    }

    HistogramView histogram() {
        return histogram;
    }

    /** What is pulled by hand goes into the job; one pull is one step back. */
    private final class ByHand implements HistogramView.Pulled {
        @Override
        public void white(double luminance) {
            pull("paper white", ArtFields.WHITE, luminance);
        }

        @Override
        public void black(double luminance) {
            pull("ink black", ArtFields.BLACK, luminance);
        }

        private void pull(String what, JobField<Optional<Double>> end, double luminance) {
            // To a hundredth of a percent: the hand is no finer.
            double rounded = Math.rint(luminance * 1e4) / 1e4;
            change(
                    what,
                    () -> model.change(
                            what, "pull " + what, state -> state.with(job -> end.with(job, Optional.of(rounded)))));
        }

        @Override
        public void points(List<ToneCurves.Point> told) {
            String words = told.isEmpty()
                    ? "none"
                    : told.stream()
                            .map(point -> Math.round(point.in()) + ":" + Math.round(point.out()))
                            .collect(Collectors.joining(","));
            change(
                    "tones",
                    () -> model.change(
                            "tones", "pull tones", state -> state.with(job -> HandFields.TONES.told(job, words))));
        }

        private void change(String what, Runnable step) {
            try {
                step.run();
            } catch (Refusal past) {
                // The hand has pulled as far as it goes.
                histogram.setAccessibleHelp(what + " can't go farther");
            }
        }

        @Override
        public void letGo() {
            model.letGo();
        }
    }

    void choose(Station chosen) {
        if (chosen != station) {
            station = chosen;
            histogram.show(null, null);
            ask();
        }
    }

    void look(RoomLight light) {
        histogram.look(light);
    }

    void stale() {
        histogram.stale();
    }

    void clear() {
        plate = null;
        histogram.show(null, null);
    }

    void show(LivePlate made) {
        plate = made;
        diagram.show(made.curves());
        ask();
    }

    /** The strip is seen again, or there is something new to see. */
    void ask() {
        LivePlate of = plate;
        if (of != null && isVisible()) {
            Station asked = station;
            live.counts(asked, counts -> {
                if (asked == station) {
                    histogram.show(counts, asked == Station.ART ? of.hand() : null);
                }
            });
        }
    }
}
