package greyground.desk.setting;

import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import greyground.desk.model.Turning;
import greyground.desk.model.Unit;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

    /**
     * A number of the job.
     *
     * @param word of {@link greyground.app.recipe.JobWords} that holds it
     * @param place which of the word's numbers it is, from 0
     * @param unless what the word looks like when it holds no number yet
     */
    record JobNumber(
            String id,
            Station station,
            String label,
            Unit unit,
            double least,
            double most,
            double step,
            String word,
            int place,
            String unless,
            String explanation)
            implements Measure {
        private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:\\.[0-9]+)?");

        @Override
        public boolean applies(BenchState state) {
            return state.words().containsKey(word);
        }

        @Override
        public Optional<Double> value(BenchState state) {
            Matcher numbers = NUMBER.matcher(state.words().getOrDefault(word, ""));
            for (int i = 0; numbers.find(); i++) {
                if (i == place) {
                    return Optional.of(Double.parseDouble(numbers.group()));
                }
            }
            return Optional.empty();
        }

        @Override
        public BenchState with(BenchState state, double value, LocalDate today) {
            check(value);
            String present = state.words().getOrDefault(word, unless);
            Matcher numbers = NUMBER.matcher(NUMBER.matcher(present).find() ? present : unless);
            StringBuilder told = new StringBuilder();
            for (int i = 0; numbers.find(); i++) {
                numbers.appendReplacement(told, i == place ? Refusal.plain(value) : numbers.group());
            }
            numbers.appendTail(told);
            return state.told(
                    Map.of(word, word.equals("crop") ? Turning.held(told.toString(), place) : told.toString()));
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
     * @param when what kind of plate it belongs to
     */
    record ShopNumber(
            String id,
            Station station,
            String label,
            Unit unit,
            double least,
            double most,
            double step,
            String path,
            Predicate<Map<String, String>> when,
            String explanation)
            implements Measure {
        @Override
        public boolean applies(BenchState state) {
            return when.test(state.words());
        }

        @Override
        public Optional<Double> value(BenchState state) {
            return figure(state.workshop()).map(Figure::value);
        }

        @Override
        public BenchState with(BenchState state, double value, LocalDate today) {
            check(value);
            boolean measured = !figure(state.workshop()).orElseThrow().isAssumed();
            Figure told = measured
                    ? Figure.measured(value, today, "entered at the desk")
                    : Figure.assumed(value, "set at the desk, not measured yet");
            return state.in(state.workshop().with(path, told));
        }

        /** The same value, known from a test of this shop or only taken. */
        public BenchState known(BenchState state, boolean measured, LocalDate today) {
            double value = figure(state.workshop()).orElseThrow().value();
            Figure told = measured
                    ? Figure.measured(value, today, "entered at the desk")
                    : Figure.assumed(value, "set at the desk, not measured yet");
            return state.in(state.workshop().with(path, told));
        }

        @Override
        public Optional<Figure> figure(Workshop workshop) {
            return Optional.ofNullable(workshop.figures().get(path));
        }
    }

    /** A number with a range. */
    sealed interface Measure extends Setting permits JobNumber, ShopNumber {
        Unit unit();

        double least();

        double most();

        /** What an arrow key adds. */
        double step();

        /** Its value; empty where the program finds it. */
        Optional<Double> value(BenchState state);

        /** The state with another value; refused outside the range. */
        BenchState with(BenchState state, double value, LocalDate today);

        /** How it is known, if it is the workshop's. */
        Optional<Figure> figure(Workshop workshop);

        default void check(double value) {
            Refusal.checkRange(
                    label().toLowerCase(java.util.Locale.ROOT),
                    value,
                    least(),
                    most(),
                    unit().symbol(false),
                    "choose a value in between");
        }
    }

    /**
     * One of a few ways.
     *
     * @param shown whether the job may choose
     */
    record Choice(
            String id,
            Station station,
            String label,
            List<Way> ways,
            Predicate<Map<String, String>> shown,
            String explanation)
            implements Setting {
        public Choice {
            ways = List.copyOf(ways);
        }

        @Override
        public boolean applies(BenchState state) {
            return shown.test(state.words());
        }

        /** The way chosen now; empty where it is none of these. */
        Optional<Way> chosen(BenchState state) {
            Map<String, String> words = state.words();
            return ways.stream().filter(way -> way.chosen().test(words)).findFirst();
        }
    }

    /**
     * A way to choose.
     *
     * @param words that tell the job so
     * @param chosen whether a job's words are this way
     */
    record Way(String label, Map<String, String> words, Predicate<Map<String, String>> chosen) {
        public Way {
            words = Map.copyOf(words);
        }

        /** A way that is one word. */
        static Way of(String label, String word, String value) {
            return new Way(label, Map.of(word, value), present -> value.equals(present.get(word)));
        }
    }

    /**
     * A line of words.
     *
     * @param word of the job
     */
    record Text(String id, Station station, String label, String word, String explanation) implements Setting {
        @Override
        public boolean applies(BenchState state) {
            return true;
        }

        String value(BenchState state) {
            return state.words().getOrDefault(word, "");
        }
    }
}
