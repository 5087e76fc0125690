package greyground.desk.model;

import java.util.List;
import java.util.Optional;

/**
 * What is drawn over the picture.
 *
 * @param crop the fragment, on the art
 * @param bevelMillimetres of the plate
 * @param places of warnings on the plate, numbered from 1 in this order
 * @param chosen index of the place in hand, -1 for none
 */
public record PictureMarks(
        Optional<Viewport.Area> crop, double bevelMillimetres, List<Viewport.Area> places, int chosen) {
    public static final PictureMarks NONE = new PictureMarks(Optional.empty(), 0, List.of(), -1);

    public PictureMarks {
        places = List.copyOf(places);
    }
}
