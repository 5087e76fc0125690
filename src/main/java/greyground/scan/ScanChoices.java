package greyground.scan;

import java.util.List;
import java.util.Optional;

/**
 * What a person says about a scan beside the scan itself.
 *
 * @param corners the plate's four corners on the scan, as the print reads from top left clockwise, x then y in pixels; empty to find the
 *     plate by its codes
 * @param references patches of known density on the same scan; empty to take paper white alone
 * @param flareShare share of the mean light of its surroundings that a dark patch takes up in this scanner, 0 to 0.1; empty to read it off
 *     the plate, where its darks tell it
 * @param paperLightness CIE L* of the bare paper, absolute, 50 to 100
 */
public record ScanChoices(
        List<Double> corners, List<Reference> references, Optional<Double> flareShare, double paperLightness) {
    public ScanChoices {
        corners = List.copyOf(corners);
        references = List.copyOf(references);
    }

    /**
     * One patch of a reflection wedge that lies on the scanner's glass with the proof.
     *
     * @param xPixels of its middle
     * @param yPixels of its middle
     * @param sidePixels of the square that is measured
     * @param density absolute, 0 to 4 (ISO 5-4)
     */
    public record Reference(double xPixels, double yPixels, double sidePixels, double density) {}
}
