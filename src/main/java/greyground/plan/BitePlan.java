package greyground.plan;

import greyground.plate.Paper;
import greyground.quantity.Refusal;
import greyground.workshop.InkFigures;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Minutes for a wanted depth, what a little less or more time does, and how much longer after a proof.
 *
 * @param depthMicrometres wanted
 * @param minutes that reach it
 * @param rows from 20 % less time to 20 % more
 */
public record BitePlan(double depthMicrometres, double minutes, List<Row> rows) {
    /** Width that a land must keep to hold on, from memory 5 to 10 um. */
    private static final double LEAST_LAND_MICROMETRES = 5;

    public BitePlan {
        rows = List.copyOf(rows);
    }

    /**
     * The plate after one time.
     *
     * @param timePercent of the planned time
     * @param minutes in the bath
     * @param depthMicrometres reached
     * @param undercutMicrometres under each edge
     * @param leastLandMicrometres narrowest land, measured on the resist, that outlives the bite
     * @param solidDensity visual density of a deep cell that holds its ink, paper included
     * @param copperGramsPerLitre in the bath afterwards
     * @param tones what it prints, or null where no virtual plate was asked
     */
    public record Row(
            double timePercent,
            double minutes,
            double depthMicrometres,
            double undercutMicrometres,
            double leastLandMicrometres,
            double solidDensity,
            double copperGramsPerLitre,
            @Nullable BittenTones tones) {}

    /** The same, with what the plate prints after each time. */
    public static BitePlan toDepth(
            Workshop workshop, PlanRequest request, double depthMicrometres, BittenTones.OfDepth tones) {
        Bite.WANTED.check("wanted depth", depthMicrometres);
        Bite bite = Bite.of(workshop, request, depthMicrometres);
        double minutes = bite.minutesTo(depthMicrometres);
        List<Row> rows = new ArrayList<>();
        for (int percent = 80; percent <= 120; percent += 10) {
            double time = minutes * percent / 100;
            double depth = percent == 100 ? depthMicrometres : bite.depthAfter(time);
            rows.add(new Row(
                    percent,
                    time,
                    depth,
                    bite.undercut(depth),
                    leastLand(bite, depth),
                    workshop.solidDensity(depth),
                    bite.copperAfter(depth),
                    tones.at(depth)));
        }
        return new BitePlan(depthMicrometres, minutes, rows);
    }

    /**
     * Plans the shallowest bite whose darkest tone is as dark as is wanted.
     *
     * @param lightness of the print's darkest tone, absolute L*, 1 to 99
     * @param tones of the virtual plate at any depth
     */
    public static BitePlan toDarkest(
            Workshop workshop, PlanRequest request, double lightness, BittenTones.OfDepth tones) {
        double most = workshop.paper().whiteDensity().value()
                + workshop.ink().saturationDensity().value();
        double least = Paper.lightness(StrictMath.pow(10, -most));
        if (lightness <= least) {
            throw Refusal.use("darkest tone is L* " + Refusal.plain(lightness) + "; it must be above "
                    + Refusal.plain(Math.ceil(least * 10) / 10) + ", this ink's darkest solid of density "
                    + Refusal.plain(most) + ": ask for less, or measure the ink again");
        }
        return toDepth(workshop, request, BittenTones.depthFor(lightness, tones), tones);
    }

    public Row planned() {
        return rows.get(rows.size() / 2);
    }

    static double leastLand(Bite bite, double depth) {
        return 2 * bite.undercut(depth) + LEAST_LAND_MICROMETRES;
    }

    /** Depth for a solid density, the inverse of {@link Workshop#solidDensity}. */
    public static double depthFor(Workshop workshop, double solidDensity) {
        InkFigures ink = workshop.ink();
        double paper = workshop.paper().whiteDensity().value();
        double most = ink.saturationDensity().value();
        double share = (solidDensity - paper) / most;
        if (!(share > 0 && share < 1)) {
            throw Refusal.use("solid density is " + Refusal.plain(solidDensity) + "; it must lie between the paper's "
                    + Refusal.plain(paper) + " and " + Refusal.plain(paper + most)
                    + ", the most this ink gives: ask for less, or measure the ink again");
        }
        double film = -StrictMath.log1p(-share) / ink.strengthPerMicrometre().value();
        return film / ink.transferFraction().value();
    }
}
