package greyground.desk.window;

import greyground.app.check.PlateWarning;
import greyground.desk.model.BenchModel;
import greyground.desk.model.PictureMarks;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.desk.setting.Setting;
import greyground.film.job.Job;
import java.util.List;
import java.util.function.Consumer;

/** The warnings that have a place: marks them on the picture, with the fragment and the bevel, and goes to the one chosen. */
final class WarningPlaces {
    private final BenchModel model;
    private final PlateSight sight;
    private final WarningsView list;
    private int chosen = -1;

    /**
     * No places yet.
     *
     * @param choose goes to a station
     * @param set goes to a setting
     */
    WarningPlaces(BenchModel model, PlateSight sight, Consumer<Station> choose, Consumer<Setting> set) {
        this.model = model;
        this.sight = sight;
        this.list = new WarningsView(line -> {
            goTo(line, choose);
            if (line.place().isEmpty()) {
                line.setting().ifPresent(set);
            }
        });
    }

    /** The list below the picture. */
    WarningsView list() {
        return list;
    }

    /** The film has been looked through. */
    void checked(List<PlateWarning> found) {
        chosen = -1;
        list.checked(found);
        mark();
    }

    /** Marks the picture anew. */
    void mark() {
        model.state().ifPresent(state -> mark(state.job()));
    }

    private void mark(Job job) {
        sight.picture()
                .mark(new PictureMarks(
                        sight.plate().map(made -> Turning.area(job.art().crop(), made.artWidth(), made.artHeight())),
                        job.placing().bevelMillimetres(),
                        list.placed().stream()
                                .map(line -> new Viewport.Area(
                                        line.place().orElseThrow().acrossMillimetres(),
                                        line.place().orElseThrow().downMillimetres(),
                                        line.sizeMillimetres(),
                                        0))
                                .toList(),
                        chosen));
    }

    private void goTo(WarningsView.Line line, Consumer<Station> choose) {
        line.place().ifPresent(place -> {
            if (sight.picture().station() == Station.ART) {
                choose.accept(Station.COPPER);
            }
            chosen = line.number() - 1;
            mark();
            sight.picture().goTo(place.acrossMillimetres(), place.downMillimetres());
        });
    }
}
