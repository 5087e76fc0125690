package greyground.art.spots;

import greyground.art.spots.SpotCrowd.Candidate;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands out in a picture.
 *
 * <p>Ratings of what a picture has of its own thin out exponentially; how fast is told by its crowd, the many discs that are rated too low to
 * be proposed. That says how many of its own a picture will have above any rating. Spots are taken for dust from that rating on from which
 * at most a quarter of them will be its own: the false discovery rate (Benjamini and Hochberg 1995) with a null found on the data
 * (Efron 2004).
 *
 * @param spots surest first; accepted are those taken for dust
 * @param crowded whether there were more candidates than can be kept, so that nothing is proposed
 */
public record SpotsFound(List<Spot> spots, boolean crowded) {
    static final SpotsFound CROWDED = new SpotsFound(List.of(), true);

    /** What a proposal is rated at least, and what parts the crowd in two (chosen on photographs: docs/spots.md). */
    private static final double PROPOSED = 3.2;

    private static final double PARTED = 2.7;

    /** Of those taken for dust, the share that may be the picture's own (assumed). */
    private static final double OWN_SHARE = 0.25;

    /** Over which rating the crowd thins out to 1/e, at least (photographs have 0.5 to 1), and that of a crowd of 28 known beforehand. */
    private static final double LEAST_THINNING = 0.85;

    private static final double BEFORE_BELOW = 18;

    private static final double BEFORE_ABOVE = 10;

    /** Spots told at most (assumed: nobody looks through more). */
    private static final int MOST = 2000;

    /** Fewer than so many proposals are looked through at once, whatever they are (assumed). */
    private static final int MANY = 10;

    public SpotsFound {
        spots = List.copyOf(spots);
    }

    /** A disc with its rating. */
    record Rated(Candidate disc, double rating) {}

    /** What stands out of discs that are sorted by their ratings, highest first. */
    static SpotsFound of(List<Rated> rated) {
        List<Rated> proposed =
                rated.stream().filter(each -> each.rating() >= PROPOSED).toList();
        int dust = dust(rated, proposed);
        List<Spot> spots = new ArrayList<>();
        for (Rated each : proposed.subList(0, Math.min(MOST, proposed.size()))) {
            spots.add(spot(each.disc(), spots.size() < dust));
        }
        return new SpotsFound(spots, false);
    }

    /** How many of the first are taken for dust. */
    private static int dust(List<Rated> rated, List<Rated> proposed) {
        long above = rated.stream()
                .filter(each -> each.rating() >= PARTED && each.rating() < PROPOSED)
                .count();
        long below = rated.size() - proposed.size() - above;
        double ratio = (below + BEFORE_BELOW) / (above + BEFORE_ABOVE);
        if (ratio <= 1) {
            return 0;
        }
        double thinning = Math.max(LEAST_THINNING, (PROPOSED - PARTED) / StrictMath.log(ratio));
        double own = (above + below) / (StrictMath.exp((PROPOSED - SpotCrowd.OF_THE_CROWD) / thinning) - 1);
        int dust = 0;
        for (int i = 0; i < proposed.size(); i++) {
            double expected = own * StrictMath.exp((PROPOSED - proposed.get(i).rating()) / thinning);
            if (expected <= OWN_SHARE * (i + 1)) {
                dust = i + 1;
            }
        }
        return dust;
    }

    private static Spot spot(Candidate disc, boolean dust) {
        double width = Math.max(Spot.WIDTH.least(), Math.rint(20 * (1.1 * disc.radius() + 0.25)) / 10);
        return new Spot(
                List.of(new Spot.Place(disc.across(), disc.down())), width, Math.rint(10 * disc.amount()) / 10, dust);
    }

    /** Those taken for dust. */
    public List<Spot> dust() {
        return spots.stream().filter(Spot::accepted).toList();
    }

    /** Whether most of what stands out is the picture's own: stars, craters, texture. */
    public boolean own() {
        return crowded || (spots.size() >= MANY && 2 * dust().size() < spots.size());
    }
}
