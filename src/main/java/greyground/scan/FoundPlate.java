package greyground.scan;

import java.util.List;
import java.util.Set;

/**
 * A plate found on a scan.
 *
 * @param place its map
 * @param hidden fields, by their number in the layout, of which no edge is seen though most others' are
 * @param notes what a person should know of the finding
 */
record FoundPlate(Projective place, Set<Integer> hidden, List<String> notes) {
    FoundPlate {
        hidden = Set.copyOf(hidden);
        notes = List.copyOf(notes);
    }
}
