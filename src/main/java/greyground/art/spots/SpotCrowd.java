package greyground.art.spots;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which of many discs stand out. A speck of dust lies alone; a light of a hull, a blade of grass or a star has others like it near, so that
 * a disc scores less for each, by how nearly as strong and as clear they are.
 */
final class SpotCrowd {
    /** Discs that score less are not looked at. */
    static final double LEAST_SCORE = 1.8;

    /** In L* (assumed: what is fainter is hardly seen in print). */
    static final double LEAST_CONTRAST = 6;

    /** What a disc is rated at least to be of the crowd that tells what the picture itself has: its score, less for its likes. */
    static final double OF_THE_CROWD = 2.2;

    /** What each of a crowd takes, and how near it lies, in pixels, for spots up to a radius of 1.7 pixels. */
    private static final double WEIGHT = 0.1;

    private static final double NEAR = 25;

    private static final double SMALL = 1.7;

    private static final int CELL = 32;

    /**
     * A disc that fits.
     *
     * @param across of its middle, in pixels
     * @param down of its middle
     * @param radius in pixels
     * @param amount in L*
     * @param score of {@link SpotFit}
     */
    record Candidate(double across, double down, double radius, double amount, double score) {
        double distance(Candidate other) {
            double x = across - other.across;
            double y = down - other.down;
            return Math.sqrt(x * x + y * y);
        }
    }

    private final Map<Long, List<Candidate>> cells = new HashMap<>();

    private SpotCrowd() {}

    /** Those that stand out, surest first. */
    static SpotsFound standing(List<Candidate> all) {
        SpotCrowd crowd = new SpotCrowd();
        List<Candidate> alone = new ArrayList<>();
        all.stream()
                .sorted(Comparator.comparingDouble(Candidate::score)
                        .reversed()
                        .thenComparingDouble(Candidate::down)
                        .thenComparingDouble(Candidate::across))
                .forEach(candidate -> {
                    if (crowd.isFree(candidate)) {
                        crowd.cells
                                .computeIfAbsent(
                                        key(cell(candidate.across()), cell(candidate.down())), at -> new ArrayList<>())
                                .add(candidate);
                        alone.add(candidate);
                    }
                });
        List<SpotsFound.Rated> rated = alone.stream()
                .filter(candidate -> candidate.score() >= OF_THE_CROWD)
                .map(candidate -> new SpotsFound.Rated(candidate, crowd.rating(candidate)))
                .filter(each -> each.rating() >= OF_THE_CROWD)
                .sorted(Comparator.comparingDouble(SpotsFound.Rated::rating).reversed())
                .toList();
        return SpotsFound.of(rated);
    }

    private static int cell(double place) {
        return (int) (place / CELL);
    }

    private static long key(int column, int row) {
        return (long) row << 32 | column;
    }

    private boolean isFree(Candidate candidate) {
        return near(candidate, 48).stream()
                .noneMatch(other -> other.distance(candidate) <= Math.max(other.radius(), candidate.radius()) + 1.5);
    }

    private List<Candidate> near(Candidate candidate, double reach) {
        List<Candidate> near = new ArrayList<>();
        for (int row = Math.max(0, cell(candidate.down() - reach)); row <= cell(candidate.down() + reach); row++) {
            for (int column = Math.max(0, cell(candidate.across() - reach));
                    column <= cell(candidate.across() + reach);
                    column++) {
                near.addAll(cells.getOrDefault(key(column, row), List.of()));
            }
        }
        return near;
    }

    private double rating(Candidate candidate) {
        double reach = NEAR * Math.max(1, candidate.radius() / SMALL);
        double crowd = 0;
        for (Candidate other : near(candidate, reach)) {
            double distance = other.distance(candidate);
            if (distance <= reach && distance > Math.max(4, candidate.radius() + 2)) {
                double strong = Math.min(1, Math.abs(other.amount() / candidate.amount()));
                double clear = Math.min(1, other.score() / candidate.score());
                crowd += strong * strong * clear * clear;
            }
        }
        return candidate.score() / (1 + WEIGHT * crowd);
    }
}
