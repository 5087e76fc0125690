package greyground.plate;

import greyground.plate.edge.Grid;

/**
 * A patch of plate at every stage, pixel by pixel. Whoever holds it owns the arrays and should not change them.
 *
 * @param grid the raster of every plane
 * @param transmission of the positive film, 0 to 1
 * @param dose that reached the resist, in hardening doses of the tested thickness
 * @param resist true where hardened film stands after developing
 * @param covered true where resist or sprayed ground keeps the bath off; the resist itself on an unetched plate
 * @param depthMicrometres of the surface below the plate's face
 * @param inkMicrometres ink in the plate after wiping, plate tone included
 * @param printMicrometres ink on the paper, plate tone included
 */
@SuppressWarnings("ArrayRecordComponent") // planes of megapixels, handed on without copying; equality is never asked
public record PlateStates(
        Grid grid,
        float[] transmission,
        float[] dose,
        boolean[] resist,
        boolean[] covered,
        float[] depthMicrometres,
        float[] inkMicrometres,
        float[] printMicrometres) {}
