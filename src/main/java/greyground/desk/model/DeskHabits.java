package greyground.desk.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** How the window was left: its size and place, what is folded, the plates used lately. Kept between runs; what can't be read is as if nothing was left. */
public final class DeskHabits {
    private static final String NAME = "habits.json";
    private static final String KIND = "desk habits";
    private static final int MOST_PLATES = 4;

    private final DeskFolder folder;
    private ObjectNode tree = JsonText.object();

    public DeskHabits(DeskFolder folder) {
        this.folder = folder;
        folder.read(NAME).ifPresent(text -> {
            try {
                tree = JsonText.read(KIND, 1, text);
            } catch (Refusal spoilt) {
                tree = JsonText.object();
            }
        });
    }

    /**
     * Where the window lay on its screen, in the window's own units.
     *
     * @param whole whether it filled the screen
     */
    public record Frame(double left, double top, double width, double height, boolean whole) {}

    public Optional<Frame> frame() {
        JsonNode kept = tree.path("window");
        Frame frame = new Frame(
                kept.path("left").asDouble(),
                kept.path("top").asDouble(),
                kept.path("width").asDouble(),
                kept.path("height").asDouble(),
                kept.path("whole").asBoolean());
        return Optional.of(frame).filter(each -> each.width() >= 1 && each.height() >= 1);
    }

    public void keep(Frame frame) {
        ObjectNode kept = tree.putObject("window");
        kept.put("left", frame.left());
        kept.put("top", frame.top());
        kept.put("width", frame.width());
        kept.put("height", frame.height());
        kept.put("whole", frame.whole());
        keep();
    }

    /** What the person chose for a part of the window; empty where it was never touched. */
    public Optional<Boolean> chosen(String part) {
        JsonNode kept = tree.path(part);
        return kept.isBoolean() ? Optional.of(kept.asBoolean()) : Optional.empty();
    }

    public void choose(String part, boolean wanted) {
        tree.put(part, wanted);
        keep();
    }

    /** A word that was kept for a part of the window; "" where none was. */
    public String word(String part) {
        JsonNode kept = tree.path(part);
        return kept.isTextual() ? kept.asText() : "";
    }

    public void keep(String part, String word) {
        tree.put(part, word);
        keep();
    }

    /** A number that was kept for a part of the window; empty where none was, or none within a range. */
    public OptionalDouble number(String part, double least, double most) {
        double kept = tree.path(part).asDouble(Double.NaN);
        return kept >= least && kept <= most ? OptionalDouble.of(kept) : OptionalDouble.empty();
    }

    public void keep(String part, double number) {
        tree.put(part, number);
        keep();
    }

    /** Plates that were used lately, upright, latest first. */
    public List<Size> plates() {
        List<Size> plates = new ArrayList<>();
        tree.path("plates").forEach(kept -> plate(kept).ifPresent(plates::add));
        return plates;
    }

    private static Optional<Size> plate(JsonNode kept) {
        try {
            return Optional.of(new Size(kept.path(0).asDouble(), kept.path(1).asDouble()));
        } catch (Refusal spoilt) {
            return Optional.empty();
        }
    }

    public void usePlate(Size plate) {
        Size upright = plate.widthMillimetres() > plate.heightMillimetres() ? plate.turned() : plate;
        List<Size> plates = new ArrayList<>(plates());
        plates.remove(upright);
        plates.add(0, upright);
        ArrayNode kept = tree.putArray("plates");
        plates.stream()
                .limit(MOST_PLATES)
                .forEach(each -> kept.addArray().add(each.widthMillimetres()).add(each.heightMillimetres()));
        keep();
    }

    private void keep() {
        tree.put("greyground", KIND);
        tree.put("version", 1);
        folder.keep("window's habits", NAME, JsonText.print(tree));
    }
}
