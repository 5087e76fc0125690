package greyground.desk.model;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;

/**
 * Art that has just been read, seen whole before there is any plate.
 *
 * @param width of the art as the job turns it, in its pixels
 * @param height the same, down
 * @param view what of it the picture shows
 */
public record FirstSight(int width, int height, LiveView view, LivePicture picture) {
    /** What to see of art of so many pixels; asked for on the worker's thread. */
    @FunctionalInterface
    public interface WholeView {
        LiveView of(int width, int height);
    }
}
