package greyground.desk.setting;

import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import greyground.film.job.FilmFields;
import greyground.film.job.JobField;
import greyground.film.job.Kind.Way;
import greyground.film.job.PlacingFields;
import greyground.plate.PlateProcess;
import greyground.quantity.Range;
import greyground.quantity.Size;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** One thing that can be set at a station: of the job, or of the workshop. Immutable; knows how to read and change a state. */
public sealed interface Setting {
    /** A name for programs, such as "plate-width". */
    String id();

    Station station();

    String label();

    /** What it does and how to choose it, in plain words. */
    String explanation();

    /** Whether it means anything for this state. */
    boolean applies(BenchState state);

    /** A setting of the job; the table of its fields says all about it. */
    sealed interface OfJob extends Setting {
        JobField<?> field();

        @Override
        default String id() {
            return field().name();
        }

        @Override
        default String label() {
            return field().label();
        }

        @Override
        default String explanation() {
            return field().help();
        }

        @Override
        default boolean applies(BenchState state) {
            return field().appliesTo(state.job());
        }
    }

    /** A field of the job in its row: a number, a choice, or a line of words. */
    static <T> Setting of(JobField<T> field, Station station) {
        return field.kind().range().isPresent()
                ? new JobNumber(field, station)
                : field.kind().ways().isEmpty() ? new Text(field, station) : new Choice<>(field, station);
    }

    record JobNumber(JobField<?> field, Station station) implements Measure, OfJob {
        /** Sizes whose names may be typed for one of their sides. */
        private static final Map<String, JobField<?>> SIZES = Map.of(
                FilmFields.PLATE_WIDTH.name(), FilmFields.PLATE,
                FilmFields.PLATE_HEIGHT.name(), FilmFields.PLATE,
                PlacingFields.SHEET_WIDTH.name(), PlacingFields.SHEET,
                PlacingFields.SHEET_HEIGHT.name(), PlacingFields.SHEET);

        @Override
        public Range range() {
            return field.kind().range().orElseThrow();
        }

        @Override
        public double step() {
            return field.kind().step();
        }

        @Override
        public Optional<Double> value(BenchState state) {
            return field.number(state.job());
        }

        @Override
        public BenchState with(BenchState state, double value, LocalDate today) {
            return state.with(job -> field.withNumber(job, value));
        }

        @Override
        public Optional<BenchState> told(BenchState state, String words) {
            Optional<JobField<?>> sheet = Optional.<JobField<?>>ofNullable(SIZES.get(field.name()))
                    .filter(size -> Size.named(words).isPresent());
            if (sheet.isPresent()) {
                return Optional.of(state.with(job -> sheet.get().told(job, words)));
            }
            return field.kind()
                    .instead()
                    .filter(word -> words.isBlank() || words.strip().equals(word))
                    .map(word -> state.with(job -> field.told(job, word)));
        }

        @Override
        public Optional<Figure> figure(Workshop workshop) {
            return Optional.empty();
        }
    }

    /**
     * A number of the workshop, whose provenance is shown.
     *
     * @param path in the workshop file, such as "bath.biteMinutes"
     */
    record ShopNumber(
            String id, Station station, String label, String path, Range range, double step, String explanation)
            implements Measure {
        /** The same with what it does and how to choose it, in plain words. */
        ShopNumber saying(String words) {
            return new ShopNumber(id, station, label, path, range, step, words);
        }

        @Override
        public boolean applies(BenchState state) {
            return station != Station.COPPER || !(state.job().process() instanceof PlateProcess.UnetchedFilm);
        }

        @Override
        public Optional<Double> value(BenchState state) {
            return figure(state.workshop()).map(Figure::value);
        }

        @Override
        public BenchState with(BenchState state, double value, LocalDate today) {
            range.check(label.toLowerCase(Locale.ROOT), value);
            return told(state, value, !figure(state.workshop()).orElseThrow().isAssumed(), today);
        }

        /** The same value, known from a test of this shop or only taken. */
        public BenchState known(BenchState state, boolean measured, LocalDate today) {
            return told(state, value(state).orElseThrow(), measured, today);
        }

        private BenchState told(BenchState state, double value, boolean measured, LocalDate today) {
            Figure told = measured
                    ? Figure.measured(value, today, "entered in the window")
                    : Figure.assumed(value, "set in the window, not measured yet");
            return state.in(state.workshop().with(path, told));
        }

        @Override
        public Optional<Figure> figure(Workshop workshop) {
            return Optional.ofNullable(workshop.figures().get(path));
        }
    }

    sealed interface Measure extends Setting permits JobNumber, ShopNumber {
        Range range();

        /** What an arrow key adds. */
        double step();

        /** Its value; empty where the program finds it. */
        Optional<Double> value(BenchState state);

        /** The state with another value; refused outside the range. */
        BenchState with(BenchState state, double value, LocalDate today);

        /** The state with what is no number: the name of a sheet for its sides, or a word or nothing for what the program finds; else empty. */
        default Optional<BenchState> told(BenchState state, String words) {
            return Optional.empty();
        }

        /** How it is known, if it is the workshop's. */
        Optional<Figure> figure(Workshop workshop);
    }

    record Choice<T>(JobField<T> field, Station station) implements OfJob {
        List<Way<T>> ways() {
            return field.kind().ways();
        }

        /** The way chosen now; empty where it is none of these. */
        Optional<Way<T>> chosen(BenchState state) {
            T value = field.of(state.job());
            return ways().stream().filter(way -> field.kind().is(way, value)).findFirst();
        }

        BenchState with(BenchState state, Way<T> way) {
            return state.with(job -> field.with(job, way.value()));
        }
    }

    record Text(JobField<?> field, Station station) implements OfJob {
        String value(BenchState state) {
            return field.brief(state.job());
        }

        BenchState with(BenchState state, String words) {
            return words.equals(value(state)) ? state : state.told(field, words);
        }
    }
}
