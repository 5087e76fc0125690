package greyground.simulation;

import greyground.chart.Levels;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a film's own bits say of its black once all edges have moved: its share of the surface and its mean width, measured on the bits
 * by a distance transform of its own. It is geometry, and all that a {@link ForeignShop} takes from the program.
 */
final class ForeignFilm {
    /** Parts of a film pixel each way. */
    private static final int FINER = 3;

    static final double LEAST = -40;
    static final double MOST = 90;
    private static final double STEP = 1;

    /** What one tone's black does as its edges move outward by -40 to 90 um. */
    interface Black {
        /** Share of the surface, 0 to 1. */
        double share(double outwardMicrometres);

        /** Length of its edges over the surface, per um. */
        double edges(double outwardMicrometres);

        /** Mean chord, pi times surface over edges (Cauchy; Santalo 1976, from memory), at most a field's own width. */
        default double chord(double outwardMicrometres) {
            double edges = edges(outwardMicrometres);
            double share = share(outwardMicrometres);
            return edges * FIELD > Math.PI * share ? Math.PI * share / edges : FIELD;
        }
    }

    private static final double FIELD = 4000;

    private final Map<Integer, Black> levels = new TreeMap<>();

    private ForeignFilm() {}

    /** Measures every level of the wedge. */
    static ForeignFilm of(FilmPatches film) {
        ForeignFilm all = new ForeignFilm();
        for (int level : Levels.WEDGE) {
            all.levels.put(level, level == 0 ? even(0) : level == 1000 ? even(1) : grain(film, level / 1000.0));
        }
        return all;
    }

    Black level(int perMille) {
        return levels.get(perMille);
    }

    private static Black even(double share) {
        return new Black() {
            @Override
            public double share(double outward) {
                return share;
            }

            @Override
            public double edges(double outward) {
                return 0;
            }
        };
    }

    /** Line pairs: two edges to a period. */
    static Black lines(double periodMicrometres) {
        return new Black() {
            @Override
            public double share(double outward) {
                return Math.max(0, Math.min(1, 0.5 + 2 * outward / periodMicrometres));
            }

            @Override
            public double edges(double outward) {
                double share = 0.5 + 2 * outward / periodMicrometres;
                return share > 0 && share < 1 ? 2 / periodMicrometres : 0;
            }
        };
    }

    private static Black grain(FilmPatches film, double coverage) {
        FilmPatch patch = film.at(coverage);
        int width = patch.width() * FINER;
        int height = patch.height() * FINER;
        double part = patch.pitchMicrometres() / FINER;
        boolean[] black = new boolean[width * height];
        for (int i = 0; i < black.length; i++) {
            black[i] = patch.black(i % width / FINER, i / width / FINER);
        }
        int bins = (int) ((MOST - LEAST) / STEP) + 1;
        double[] below = new double[bins];
        double[] inside = distances(black, false, width, height, (int) Math.ceil(-LEAST / part) + 2);
        double[] outside = distances(black, true, width, height, (int) Math.ceil(MOST / part) + 2);
        for (int i = 0; i < black.length; i++) {
            // An edge lies half a part before the next one's middle; each part is spread over its own width.
            double place = black[i] ? -(inside[i] - 0.5) * part : (outside[i] - 0.5) * part;
            for (int b = 0; b < bins; b++) {
                double over = (LEAST + b * STEP - place) / part + 0.5;
                if (over >= 1) {
                    for (int rest = b; rest < bins; rest++) {
                        below[rest] += 1;
                    }
                    break;
                }
                below[b] += Math.max(0, over);
            }
        }
        for (int b = 0; b < bins; b++) {
            below[b] /= black.length;
        }
        return new Black() {
            @Override
            public double share(double outward) {
                double at = Math.max(0, Math.min(bins - 1.001, (outward - LEAST) / STEP));
                int low = (int) at;
                return below[low] + (at - low) * (below[low + 1] - below[low]);
            }

            @Override
            public double edges(double outward) {
                double reach = 3;
                return (share(outward + reach) - share(outward - reach)) / (2 * reach);
            }
        };
    }

    /** To the nearest part of that colour, in parts, over wrapped sides; {@code reach + 1} where none is within reach. */
    private static double[] distances(boolean[] black, boolean toBlack, int width, int height, int reach) {
        int[] down = new int[black.length];
        for (int x = 0; x < width; x++) {
            int since = reach + 1;
            for (int y = -reach; y < height; y++) {
                int at = Math.floorMod(y, height) * width + x;
                since = black[at] == toBlack ? 0 : Math.min(reach + 1, since + 1);
                if (y >= 0) {
                    down[at] = since;
                }
            }
            since = reach + 1;
            for (int y = height + reach; y >= 0; y--) {
                int at = Math.floorMod(y, height) * width + x;
                since = black[at] == toBlack ? 0 : Math.min(reach + 1, since + 1);
                if (y < height) {
                    down[at] = Math.min(down[at], since);
                }
            }
        }
        double[] away = new double[black.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int best = (reach + 1) * (reach + 1);
                for (int across = 0; across * across < best && across <= reach; across++) {
                    int left = down[y * width + Math.floorMod(x - across, width)];
                    int right = down[y * width + Math.floorMod(x + across, width)];
                    int near = Math.min(left, right);
                    best = Math.min(best, across * across + near * near);
                }
                away[y * width + x] = Math.sqrt(best);
            }
        }
        return away;
    }
}
