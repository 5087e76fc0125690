package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One of a few with settings of its own, kept as an object of a file.
 *
 * @param write puts them into the object
 * @param read takes them out, each as usual where it is missing
 */
record Making<T>(Kind.Choice<T> choice, BiConsumer<ObjectNode, T> write, Function<JsonFields, T> read)
        implements Kind<T> {
    @Override
    public T parse(String what, String text, Art art) {
        return choice.parse(what, text, art);
    }

    @Override
    public String print(T value) {
        return choice.print(value);
    }

    @Override
    public void write(ObjectNode node, String name, T value) {
        write.accept(node.putObject(name), value);
    }

    @Override
    public T read(JsonFields fields, String name, @Nullable T usual) {
        return read.apply(fields.section(name));
    }

    @Override
    public List<Way<T>> ways() {
        return choice.ways();
    }
}
