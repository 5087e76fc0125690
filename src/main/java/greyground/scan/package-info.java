/**
 * Reads a test plate's print back from a scan: finds the plate by its corner codes, measures its fields and targets, and says
 * no in plain words to anything else. {@link greyground.scan.ChartReader} is the way in, {@link greyground.scan.ScanReading}
 * what comes out. Knows no file and no workshop: a scan is a plane of linear luminance. Door: {@link
 * greyground.scan.ChartReader}.
 */
@NullMarked
package greyground.scan;

import org.jspecify.annotations.NullMarked;
