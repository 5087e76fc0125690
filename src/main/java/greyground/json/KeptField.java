package greyground.json;

import java.util.List;

/**
 * A field of a workshop file that this version does not know: kept word for word and written back, so that a file from a
 * shop with other habits, or with remarks added by hand, loses nothing.
 *
 * @param place the objects that hold it, from the outermost inwards; empty at the top
 * @param name of the field
 * @param json its value as JSON
 */
public record KeptField(List<String> place, String name, String json) {
    public KeptField {
        place = List.copyOf(place);
    }
}
