package greyground.colour;

import java.util.stream.IntStream;

/**
 * Colours that plates print over one another, computed once at even steps of each plate's share and taken as even between them: that is some
 * hundred times as fast, and off by 0.06 CIEDE2000 at most with 17 steps of three invented inks (tested).
 */
public final class PrintLattice implements ColourParting.Printing {
    private final int plates;
    private final int side;
    private final double[] nodes;

    /**
     * Asks for all nodes.
     *
     * @param plates 1 and more
     * @param side nodes along a plate, 2 and more
     * @param printing what is tabulated
     */
    public PrintLattice(int plates, int side, ColourParting.Printing printing) {
        this.plates = plates;
        this.side = side;
        int count = 1;
        for (int plate = 0; plate < plates; plate++) {
            count = Math.multiplyExact(count, side);
        }
        nodes = new double[3 * count];
        IntStream.range(0, count).parallel().forEach(node -> {
            double[] shares = new double[plates];
            int rest = node;
            for (int plate = 0; plate < plates; plate++) {
                shares[plate] = (double) (rest % side) / (side - 1);
                rest /= side;
            }
            Lab colour = printing.of(shares);
            nodes[3 * node] = colour.lightness();
            nodes[3 * node + 1] = colour.a();
            nodes[3 * node + 2] = colour.b();
        });
    }

    @Override
    public Lab of(double[] shares) {
        int base = 0;
        int stride = 1;
        int[] strides = new int[plates];
        double[] along = new double[plates];
        for (int plate = 0; plate < plates; plate++) {
            double at = Math.max(0, Math.min(1, shares[plate])) * (side - 1);
            int cell = Math.min(side - 2, (int) at);
            along[plate] = at - cell;
            base += cell * stride;
            strides[plate] = stride;
            stride *= side;
        }
        double lightness = 0;
        double a = 0;
        double b = 0;
        for (int corner = 0; corner < 1 << plates; corner++) {
            double weight = InksInRegister.share(corner, along);
            int node = base;
            for (int plate = 0; plate < plates; plate++) {
                node += (corner >> plate & 1) * strides[plate];
            }
            lightness += weight * nodes[3 * node];
            a += weight * nodes[3 * node + 1];
            b += weight * nodes[3 * node + 2];
        }
        return new Lab(lightness, a, b);
    }
}
