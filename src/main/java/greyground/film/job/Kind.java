package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a setting's value is: how it is typed, printed and kept.
 *
 * @param <T> of the value
 */
public sealed interface Kind<T>
        permits Kind.Measured,
                Kind.Whole,
                Kind.Or,
                Kind.Choice,
                Making,
                Kind.Switch,
                Kind.Line,
                FilmFields.Sides,
                FilmFields.Sharing,
                PlacingFields.Shrinking,
                ArtFields.Fragment,
                HandFields.Receiving,
                HandFields.Points,
                RetouchFields.Touches,
                RetouchFields.Spotting,
                OutlineFields.Shape,
                OutlineFields.Tearing {
    /**
     * Art as it stands after its quarter turns; 0 x 0 where it is not known.
     *
     * @param width pixels
     * @param height pixels
     */
    record Art(double width, double height) {
        public static final Art UNKNOWN = new Art(0, 0);

        Art turned(int quarters) {
            return quarters % 2 == 0 ? this : new Art(/* width= */ height, /* height= */ width);
        }
    }

    /** Reads a value as a person types it, or refuses. {@code what} names it, {@code art} is what pixels are counted on. */
    T parse(String what, String text, Art art);

    /** A value as it is typed, to a ten-thousandth. */
    String print(T value);

    /** A value as a row of the window shows it: short. */
    default String brief(T value) {
        return print(value);
    }

    /** Puts a value into an object of a file. */
    default void write(ObjectNode node, String name, T value) {
        node.put(name, print(value));
    }

    /** Takes it out again; {@code usual} where it is missing, without which it must be there. */
    T read(JsonFields fields, String name, @Nullable T usual);

    /** A number's limits; empty for what is none. */
    default Optional<Range> range() {
        return Optional.empty();
    }

    /** What an arrow key adds to a number. */
    default double step() {
        return 1;
    }

    /** A value as a number, empty where the program finds it. */
    default Optional<Double> number(T value) {
        return Optional.empty();
    }

    /** A number as a value. */
    default T of(double number) {
        throw new IllegalStateException("this kind of setting is no number");
    }

    /** What stands in a number's place where the program finds it, such as "automatic"; empty where it never does. */
    default Optional<String> instead() {
        return Optional.empty();
    }

    /** What can be chosen; empty for what is no choice. */
    default List<Way<T>> ways() {
        return List.of();
    }

    /** Words that may be typed where else a file is named. */
    default List<String> words() {
        return List.of();
    }

    /** Whether a value is chosen by a way. */
    default boolean is(Way<T> way, T value) {
        return print(value).equals(way.word());
    }

    /**
     * One of a few.
     *
     * @param word as it is typed and kept
     * @param label as the window shows it
     */
    record Way<T>(T value, String word, String label) {}

    record Measured(Range limits, double step) implements Kind<Double> {
        @Override
        public Double parse(String what, String text, Art art) {
            return limits.check(what, limits.unit().parse(what, text));
        }

        @Override
        public String print(Double value) {
            return limits.unit().text(value);
        }

        @Override
        public void write(ObjectNode node, String name, Double value) {
            node.set(name, JsonText.number(value));
        }

        @Override
        public Double read(JsonFields fields, String name, @Nullable Double usual) {
            return fields.number(name, usual == null ? Double.NaN : usual, limits);
        }

        @Override
        public Optional<Range> range() {
            return Optional.of(limits);
        }

        @Override
        public Optional<Double> number(Double value) {
            return Optional.of(value);
        }

        @Override
        public Double of(double number) {
            return number;
        }
    }

    record Whole(Range limits) implements Kind<Long> {
        @Override
        public Long parse(String what, String text, Art art) {
            try {
                long number = Long.parseLong(text.strip());
                limits.check(what, (double) number);
                return number;
            } catch (NumberFormatException notWhole) {
                throw Refusal.use(what + " is \"" + text.strip() + "\"; it must be a whole number from "
                        + Refusal.plain(limits.least()) + " to " + Refusal.plain(limits.most()));
            }
        }

        @Override
        public String print(Long value) {
            return Long.toString(value);
        }

        @Override
        public void write(ObjectNode node, String name, Long value) {
            node.put(name, value);
        }

        @Override
        public Long read(JsonFields fields, String name, @Nullable Long usual) {
            return fields.integer(name, usual == null ? 0 : usual, (long) limits.least(), (long) limits.most());
        }

        @Override
        public Optional<Range> range() {
            return Optional.of(limits);
        }

        @Override
        public Optional<Double> number(Long value) {
            return Optional.of((double) value);
        }

        @Override
        public Long of(double number) {
            return Math.round(number);
        }
    }

    /**
     * Something or a word instead, such as "automatic".
     *
     * @param word also known by its first letters
     * @param unsaid what a file means that doesn't name it; empty for the word
     */
    record Or<T>(String word, Kind<T> kind, Optional<T> unsaid) implements Kind<Optional<T>> {
        private static final int SHORTEST = 4;

        Or(String word, Kind<T> kind) {
            this(word, kind, Optional.empty());
        }

        @Override
        public Optional<T> parse(String what, String text, Art art) {
            String typed = text.strip();
            boolean other = word.startsWith(typed) && typed.length() >= Math.min(SHORTEST, word.length());
            return other ? Optional.empty() : Optional.of(kind.parse(what, text, art));
        }

        @Override
        public String print(Optional<T> value) {
            return value.map(kind::print).orElse(word);
        }

        @Override
        public void write(ObjectNode node, String name, Optional<T> value) {
            if (unsaid.isEmpty() || !value.equals(unsaid)) {
                value.ifPresentOrElse(each -> kind.write(node, name, each), () -> node.put(name, word));
            }
        }

        @Override
        @SuppressWarnings("NullableOptional") // a kind's usual value may be missing, whatever its kind
        public Optional<T> read(JsonFields fields, String name, @Nullable Optional<T> usual) {
            if (unsaid.isPresent() && !fields.has(name)) {
                return unsaid;
            }
            return fields.isWord(name, word) ? Optional.empty() : Optional.of(kind.read(fields, name, null));
        }

        @Override
        public Optional<String> instead() {
            return Optional.of(word);
        }

        @Override
        public Optional<Range> range() {
            return kind.range();
        }

        @Override
        public double step() {
            return kind.step();
        }

        @Override
        public Optional<Double> number(Optional<T> value) {
            return value.flatMap(kind::number);
        }

        @Override
        public Optional<T> of(double number) {
            return Optional.of(kind.of(number));
        }
    }

    /**
     * One of a few.
     *
     * @param wordOf a value's word
     * @param unsaid the word that a file means that names none, so that it is not written; empty where each is
     */
    record Choice<T>(Function<T, String> wordOf, List<Way<T>> ways, String unsaid) implements Kind<T> {
        public Choice {
            ways = List.copyOf(ways);
        }

        Choice(Function<T, String> wordOf, List<Way<T>> ways) {
            this(wordOf, ways, "");
        }

        Choice<T> meaning(String newUnsaid) {
            return new Choice<>(wordOf, ways, newUnsaid);
        }

        @Override
        public void write(ObjectNode node, String name, T value) {
            if (!print(value).equals(unsaid)) {
                node.put(name, print(value));
            }
        }

        /** Of these values alone. */
        static <T> Choice<T> of(List<Way<T>> ways) {
            return new Choice<>(
                    value -> ways.stream()
                            .filter(way -> way.value().equals(value))
                            .map(Way::word)
                            .findFirst()
                            .orElseThrow(),
                    ways);
        }

        @Override
        public T parse(String what, String text, Art art) {
            return named(text.strip())
                    .orElseThrow(() -> Refusal.use(what + " \"" + text.strip() + "\" is unknown: choose "
                            + ways.stream().map(Way::word).collect(Collectors.joining(", "))));
        }

        private Optional<T> named(String word) {
            return ways.stream()
                    .filter(way -> way.word().equals(word))
                    .map(Way::value)
                    .findFirst();
        }

        @Override
        public String print(T value) {
            return wordOf.apply(value);
        }

        @Override
        public T read(JsonFields fields, String name, @Nullable T usual) {
            Set<String> words = ways.stream().map(Way::word).collect(Collectors.toSet());
            return named(fields.choice(name, usual == null ? "" : print(usual), words))
                    .orElseThrow();
        }
    }

    record Switch(String off, String on) implements Kind<Boolean> {
        @Override
        public Boolean parse(String what, String text, Art art) {
            return !text.strip().equals("no");
        }

        @Override
        public String print(Boolean value) {
            return value ? "yes" : "no";
        }

        @Override
        public void write(ObjectNode node, String name, Boolean value) {
            node.put(name, value);
        }

        @Override
        public Boolean read(JsonFields fields, String name, @Nullable Boolean usual) {
            return fields.yes(name, usual != null && usual);
        }

        @Override
        public List<Way<Boolean>> ways() {
            return List.of(new Way<>(false, "no", off), new Way<>(true, "yes", on));
        }
    }

    record Line() implements Kind<String> {
        @Override
        public String parse(String what, String text, Art art) {
            return text;
        }

        @Override
        public String print(String value) {
            return value;
        }

        @Override
        public String read(JsonFields fields, String name, @Nullable String usual) {
            return fields.word(name, usual == null ? "" : usual);
        }
    }
}
