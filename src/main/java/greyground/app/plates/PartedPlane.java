package greyground.app.plates;

import greyground.raster.GreyPlane;
import greyground.tone.Srgb;

/**
 * One number of each pixel of colour art, looked up in a lattice of coded red, green and blue by its tetrahedra, which keep greys on the lattice's
 * diagonal. As a plane it is 1 less that number. Light that touches gave or took from the art's luminance is given to all three lights alike.
 */
final class PartedPlane implements GreyPlane {
    private static final double[] LUMINANCE = {0.2224845402, 0.7169050786, 0.0606103812};
    private static final float[] CODED = new float[WHITE + 1];

    static {
        for (int i = 0; i <= WHITE; i++) {
            CODED[i] = (float) Srgb.encode((double) i / WHITE);
        }
    }

    private final GreyPlane touched;
    private final GreyPlane[] lights;
    private final float[] lattice;
    private final int side;
    private final int values;
    private final int value;

    PartedPlane(GreyPlane touched, GreyPlane[] lights, float[] lattice, int side, int values, int value) {
        this.touched = touched;
        this.lights = lights.clone();
        this.lattice = lattice;
        this.side = side;
        this.values = values;
        this.value = value;
    }

    @Override
    public int width() {
        return touched.width();
    }

    @Override
    public int height() {
        return touched.height();
    }

    /** The numbers of a row. */
    void values(int y, float[] into) {
        short[] grey = new short[width()];
        short[][] rgb = new short[3][width()];
        touched.readRow(y, grey);
        for (int i = 0; i < 3; i++) {
            lights[i].readRow(y, rgb[i]);
        }
        int[] cell = new int[3];
        float[] along = new float[3];
        int[] strides = {values, values * side, values * side * side};
        for (int x = 0; x < width(); x++) {
            double luminance = 0;
            for (int i = 0; i < 3; i++) {
                luminance += LUMINANCE[i] * (rgb[i][x] & 0xFFFF);
            }
            double factor = luminance < 1 ? 1 : (grey[x] & 0xFFFF) / luminance;
            int at = value;
            for (int i = 0; i < 3; i++) {
                float place = CODED[(int) Math.min(WHITE, Math.round((rgb[i][x] & 0xFFFF) * factor))] * (side - 1);
                cell[i] = Math.min(side - 2, (int) place);
                along[i] = place - cell[i];
                at += cell[i] * strides[i];
            }
            int first = along[0] >= along[1] ? along[0] >= along[2] ? 0 : 2 : along[1] >= along[2] ? 1 : 2;
            int last = first == 0
                    ? along[1] < along[2] ? 1 : 2
                    : first == 1 ? along[0] < along[2] ? 0 : 2 : along[0] < along[1] ? 0 : 1;
            int middle = 3 - first - last;
            float sum = lattice[at] * (1 - along[first]);
            at += strides[first];
            sum += lattice[at] * (along[first] - along[middle]);
            at += strides[middle];
            sum += lattice[at] * (along[middle] - along[last]);
            at += strides[last];
            into[x] = sum + lattice[at] * along[last];
        }
    }

    @Override
    public void readRow(int y, short[] into) {
        float[] row = new float[width()];
        values(y, row);
        for (int x = 0; x < row.length; x++) {
            into[x] = (short) Math.round(WHITE * (1 - Math.max(0, Math.min(1, row[x]))));
        }
    }

    @Override
    public void close() {
        // What it is made from is closed by who opened it.
    }
}
