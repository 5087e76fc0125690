package greyground.plate;

import greyground.quantity.Refusal;

/**
 * The plate's outline on a film, in film pixels from the film's top left.
 *
 * @param left first column
 * @param top first row
 * @param width columns, at least 1
 * @param height rows, at least 1
 */
public record PlateOnFilm(int left, int top, int width, int height) {
    public PlateOnFilm {
        if (left < 0 || top < 0 || width < 1 || height < 1) {
            throw Refusal.use("the plate lies at " + left + ", " + top + " on the film and measures " + width + " x "
                    + height + " pixels; it must lie on the film: correct its outline");
        }
    }

    int right() {
        return left + width;
    }

    int bottom() {
        return top + height;
    }
}
