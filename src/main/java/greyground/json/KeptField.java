package greyground.json;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A field of a kept file that this version does not know: kept word for word and written back, so that a file from a
 * shop with other habits, or with remarks added by hand, loses nothing.
 *
 * @param place the objects that hold it, from the outermost inwards; empty at the top
 * @param name of the field
 * @param json its value as JSON
 * @param meant the known field of the same object that its name is nearly spelt like; empty where there is none
 */
public record KeptField(List<String> place, String name, String json, Optional<String> meant) {
    /** A word of so many letters may be wrong in one for each, and in one besides (assumed). */
    private static final int LETTERS_PER_SLIP = 5;

    public KeptField {
        place = List.copyOf(place);
    }

    /** A field that is like no other. */
    public KeptField(List<String> place, String name, String json) {
        this(place, name, json, Optional.empty());
    }

    /** A field among those that are known beside it. */
    static KeptField among(Collection<String> known, List<String> place, String name, String json) {
        String plain = plain(name);
        String nearest = null;
        int fewest = 2 + plain.length() / LETTERS_PER_SLIP;
        for (String other : known.stream().sorted().toList()) {
            int slips = slips(plain, plain(other));
            if (slips < fewest) {
                fewest = slips;
                nearest = other;
            }
        }
        return new KeptField(place, name, json, Optional.ofNullable(nearest));
    }

    /** What to say of a name that is probably a slip; nothing of a remark of one's own. */
    public Optional<String> question(String kind) {
        String where = String.join(".", place) + (place.isEmpty() ? "" : ".");
        return meant.map(other -> kind + " " + where + name + " is not a field, so it changes nothing; did you mean "
                + where + other + "?");
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** Letters missing, too many, wrong or swapped with their neighbour: the restricted distance of Damerau (1964). */
    private static int slips(String one, String other) {
        int[][] slips = new int[one.length() + 1][other.length() + 1];
        for (int i = 0; i <= one.length(); i++) {
            for (int j = 0; j <= other.length(); j++) {
                if (i == 0 || j == 0) {
                    slips[i][j] = i + j;
                    continue;
                }
                int wrong = one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1;
                int least = Math.min(slips[i - 1][j], slips[i][j - 1]) + 1;
                slips[i][j] = Math.min(least, slips[i - 1][j - 1] + wrong);
                if (i > 1
                        && j > 1
                        && one.charAt(i - 1) == other.charAt(j - 2)
                        && one.charAt(i - 2) == other.charAt(j - 1)) {
                    slips[i][j] = Math.min(slips[i][j], slips[i - 2][j - 2] + 1);
                }
            }
        }
        return slips[one.length()][other.length()];
    }

    /** Writes it back; where a list of the file has no such object any more, it has no place. */
    public void into(ObjectNode file) {
        JsonNode at = file;
        for (String each : place) {
            at = at instanceof ArrayNode list
                    ? list.path(Integer.parseInt(each))
                    : at instanceof ObjectNode object && !object.path(each).isContainerNode()
                            ? object.putObject(each)
                            : at.path(each);
        }
        if (at instanceof ObjectNode object) {
            object.set(name, JsonText.parse("kept field " + name, json));
        }
    }
}
