package greyground.desk.window;

import greyground.app.live.LivePlate;
import greyground.desk.model.BenchState;
import greyground.desk.model.FirstSight;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.plan.ExposurePlan;
import greyground.plate.PlateProcess;
import greyground.quantity.Size;
import greyground.workshop.Figure;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Carries news between the model, the bench and the screen: what has changed, what is of before, and what has been computed. */
final class BenchNews {
    private final DeskWindow desk;
    private @Nullable ExposurePlan planned;
    private @Nullable BenchState computed;

    BenchNews(DeskWindow desk) {
        this.desk = desk;
    }

    /** The model has changed. */
    void changed() {
        Optional<BenchState> state = desk.model.state();
        boolean present = state.isPresent();
        boolean first = present && desk.empty.isVisible();
        desk.rail.setPresent(present);
        if (first && desk.place() == Place.STATION) {
            desk.rail.choose(desk.picture.station());
        }
        BenchState before = computed;
        boolean other = present && (before == null || !before.makesTheSameAs(state.get()));
        if (other) {
            desk.middle.refresh();
        } else {
            desk.middle.arrange();
        }
        desk.ticking.showClocks();
        if (first) {
            desk.picture.requestFocus();
        }
        if (!present) {
            desk.empty.refresh();
        }
        desk.warnings.setDisable(!present);
        desk.head.title(desk.files.title(), desk.files.longTitle());
        desk.head.refresh();
        desk.settings.refresh();
        desk.arrival.refresh();
        desk.workshop.refresh();
        desk.rail.tellAssumed(desk.model.workshop().figures().values().stream()
                .filter(Figure::isAssumed)
                .count());
        desk.testPlate.refresh();
        desk.plan.refresh();
        if (other) {
            desk.messages.clear();
            if (before == null || !before.art().equals(state.get().art())) {
                desk.warnings.idle();
                desk.choose(Station.ART);
            }
            show(state.get());
        }
        computed = state.orElse(null);
        if (!present) {
            desk.warnings.idle();
            desk.sight.clear();
            desk.sheet.clear();
            desk.tones.clear();
        }
        desk.autosave.changed();
    }

    /** Has a state computed; until it is, what is seen is of before. */
    private void show(BenchState state) {
        planned = null;
        desk.sight.expect(state);
        desk.sheet.stale(state);
        desk.plan.stale();
        desk.tones.stale();
        desk.warnings.mark();
        desk.warnings.stale();
        desk.live.show(state, desk.sight.whole(), this::arrived, this::ready);
    }

    /** A picture that comes without a job lies on the usual plate, on its side if the picture does. */
    BenchState onUsualPlate(BenchState fresh) {
        boolean lying = fresh.source().width() > fresh.source().height();
        return usualPlate()
                .map(plate -> fresh.with(job -> FilmFields.PLATE.with(job, lying ? plate.turned() : plate)))
                .orElse(fresh);
    }

    /** Upright: the one that is wished, else the one used last. */
    private Optional<Size> usualPlate() {
        String wished = desk.wishes.plate();
        if (wished.isEmpty()) {
            return desk.habits.plates().stream().findFirst();
        }
        Size plate = Size.parse("usual plate", wished);
        return Optional.of(plate.widthMillimetres() > plate.heightMillimetres() ? plate.turned() : plate);
    }

    private void arrived(FirstSight seen) {
        desk.sight.show(seen);
        desk.arrival.show(seen);
    }

    /** Shows again what lies here, after something else could not be opened. */
    void showAgain() {
        desk.model.state().ifPresent(this::show);
    }

    /** The plate of the model's state has been computed. */
    private void ready(LivePlate made) {
        desk.sight.show(made);
        desk.tones.show(made);
        desk.loupeBench.plateChanged();
        desk.artTools.plateChanged();
        desk.settings.found(Map.of(
                ArtFields.WHITE,
                made.artWhite(),
                ArtFields.BLACK,
                made.artBlack(),
                FilmFields.RESERVE,
                made.reserve()));
        desk.warnings.mark();
        desk.files.compare(made.job());
        desk.model
                .state()
                .ifPresent(state -> desk.sheet.screened(state.job().process() instanceof PlateProcess.Photogravure));
        desk.sheet.refresh();
        desk.sight.askAll();
        desk.sight.small(desk.files::keepPicture);
        desk.model
                .state()
                .ifPresent(state -> desk.live.words(this::planned, desk.warnings::remarks, desk.warnings::checked));
    }

    private void planned(ExposurePlan made) {
        planned = made;
        desk.model.state().ifPresent(state -> desk.plan.show(state.job().title(), made));
    }

    /** Shows the plan, where it has been made of what lies here. */
    void showPlan() {
        ExposurePlan made = planned;
        if (made != null) {
            desk.model.state().ifPresent(state -> desk.plan.show(state.job().title(), made));
        }
    }
}
