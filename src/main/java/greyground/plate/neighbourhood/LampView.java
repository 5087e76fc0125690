package greyground.plate.neighbourhood;

import greyground.plate.PlateView;

/** A look at the copper that depends on where the lamp stands, so that a pattern's turns look otherwise. */
@FunctionalInterface
public interface LampView {
    /** The look by a lamp at one of the four corners. */
    PlateView from(boolean right, boolean below);
}
