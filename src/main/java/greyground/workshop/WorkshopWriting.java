package greyground.workshop;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import java.util.Locale;

/** Notes every field in a tree and gives it back unchanged. Used by one thread, for one writing. */
final class WorkshopWriting implements Fields {
    private final ObjectNode file;
    private ObjectNode section;

    WorkshopWriting(ObjectNode file) {
        this.file = file;
        this.section = file;
    }

    @Override
    public Fields section(String name) {
        section = file.putObject(name);
        return this;
    }

    @Override
    public Figure figure(String name, Figure present) {
        ObjectNode node = section.putObject(name);
        node.set("value", JsonText.number(present.value()));
        ProvenanceFields.write(present.provenance(), node);
        return present;
    }

    @Override
    public String text(String name, String present) {
        file.put(name, present);
        return present;
    }

    @Override
    public <E extends Enum<E>> E choice(String name, E present) {
        section.put(name, present.name().toLowerCase(Locale.ROOT));
        return present;
    }
}
