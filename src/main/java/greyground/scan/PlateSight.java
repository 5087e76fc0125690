package greyground.scan;

import java.util.List;

/**
 * A plate found on a scan.
 *
 * @param place its map
 * @param notes what a person should know of the finding
 */
record PlateSight(Projective place, List<String> notes) {
    PlateSight {
        notes = List.copyOf(notes);
    }
}
