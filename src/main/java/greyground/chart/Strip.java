package greyground.chart;

/**
 * One strip of an exposure test, from edge to edge of the plate.
 *
 * @param number from 1, the shortest exposure, at the top
 * @param area what lies uncovered together
 */
public record Strip(int number, Area area) {}
