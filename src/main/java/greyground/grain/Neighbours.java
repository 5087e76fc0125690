package greyground.grain;

import java.util.Arrays;

/** For each of many sites on a tile that wraps, the others within a distance. Owned by one thread; reused. */
final class Neighbours {
    private final int[] first;
    private int[] list = new int[0];

    Neighbours(int sites) {
        first = new int[sites + 1];
    }

    /** Where the neighbours of {@code site} begin in {@link #list}; they end before {@code first(site + 1)}. */
    int first(int site) {
        return first[site];
    }

    int[] list() {
        return list;
    }

    void find(double[] x, double[] y, double side, double reach) {
        SiteCells cells = new SiteCells(x, y, side, Math.max(1, (int) (side / reach * 2)));
        int span = cells.span(reach);
        double reach2 = reach * reach;
        double half = side / 2;
        int filled = 0;
        for (int a = 0; a < x.length; a++) {
            first[a] = filled;
            for (int j = 0; j < span; j++) {
                for (int i = 0; i < span; i++) {
                    int cell = cells.near(a, i, j, span);
                    for (int n = cells.first(cell); n < cells.first(cell + 1); n++) {
                        int b = cells.site(n);
                        double dx = Math.abs(x[a] - x[b]);
                        double dy = Math.abs(y[a] - y[b]);
                        dx = dx > half ? side - dx : dx;
                        dy = dy > half ? side - dy : dy;
                        if (dx * dx + dy * dy < reach2 && b != a) {
                            if (filled == list.length) {
                                list = Arrays.copyOf(list, Math.max(x.length * 24, filled * 3 / 2));
                            }
                            list[filled++] = b;
                        }
                    }
                }
            }
        }
        first[x.length] = filled;
    }
}
