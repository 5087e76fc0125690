package greyground.scan;

/**
 * A tone over an area of the print.
 *
 * @param lightness CIE L* of its mean light
 * @param spread standard deviation of L* between its cells
 * @param leftOut share of its cells that dust or a scratch had spoiled
 * @param clipped share of it where the scan holds no more light or no more dark
 * @param outsideWedge whether its tone lies past the reference wedge
 */
record FieldReading(double lightness, double spread, double leftOut, double clipped, boolean outsideWedge) {}
