package greyground.fit;

import greyground.quantity.Refusal;

/**
 * One patch of a test plate's print, as it was measured.
 *
 * @param coverage of the film, 0 (clear) to 1 (solid black)
 * @param lightness measured CIE L*, absolute, 0 to 100
 * @param xMillimetres of its middle from the plate's left edge, as the film shows it
 * @param yMillimetres of its middle from the plate's top edge
 * @param weight how much it counts beside the others, such as its measured area; above 0, only ratios matter
 */
public record MeasuredPatch(
        double coverage, double lightness, double xMillimetres, double yMillimetres, double weight) {
    public MeasuredPatch {
        Refusal.checkRange("film coverage of a patch", coverage, 0, 1, "", "0 is clear film and 1 solid black");
        Refusal.checkRange("lightness of a patch", lightness, 0, 100, "L*", "100 is a perfect white: measure again");
        Refusal.checkRange("place of a patch across", xMillimetres, -5000, 5000, "mm", "count from the plate's edge");
        Refusal.checkRange("place of a patch down", yMillimetres, -5000, 5000, "mm", "count from the plate's edge");
        Refusal.checkRange("weight of a patch", weight, 1e-6, 1e9, "", "leave the patch out instead");
    }
}
