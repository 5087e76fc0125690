package greyground.plate.inspect;

import greyground.raster.BitPlane;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The widest place of each run of wiped-out pixels in a slab, row by row. One thread fills it, then another reads. */
final class WidestRuns {
    private final List<Run> runs = new ArrayList<>();
    private int next;

    /**
     * A run, or the part of one that a strip of columns holds.
     *
     * @param y row of the slab
     * @param start first column
     * @param x column of the widest place
     * @param squaredPixels distance of that place from the nearest living land
     */
    record Run(int y, int start, int x, float squaredPixels) {}

    /** Adds the runs of a row between two columns; {@code line} holds squared distances from {@code from - most} on. */
    void add(BitPlane wiped, int row, int from, int to, int y, float[] line, int most, float farthest) {
        int start = -1;
        int best = 0;
        float value = -1;
        for (int x = from; x <= to; x++) {
            boolean inside = x < to && wiped.get(x, row);
            if (inside) {
                float here = Math.min(farthest, line[x - from + most]);
                if (start < 0) {
                    start = x;
                }
                if (here > value) {
                    value = here;
                    best = x;
                }
            } else if (start >= 0) {
                runs.add(new Run(y, start, best, value));
                start = -1;
                value = -1;
            }
        }
    }

    /** Puts the runs in order of rows, then columns. */
    void sort() {
        runs.sort(Comparator.comparingInt(Run::y).thenComparingInt(Run::start));
    }

    /** The widest run of a row that begins within columns {@code start} to {@code end - 1}; asked in order, each once. */
    Run widestWithin(int y, int start, int end) {
        Run widest = new Run(y, start, start, 0);
        while (next < runs.size()) {
            Run run = runs.get(next);
            if (run.y() > y || (run.y() == y && run.start() >= end)) {
                break;
            }
            if (run.y() == y && run.start() >= start && run.squaredPixels() > widest.squaredPixels()) {
                widest = run;
            }
            next++;
        }
        return widest;
    }
}
