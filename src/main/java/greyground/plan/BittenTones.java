package greyground.plan;

import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * What a plate prints when it is bitten to one depth, in absolute L*.
 *
 * @param bare paper where nothing is bitten
 * @param lightest the lightest tone that can be printed
 * @param darkest at the turning point
 * @param turningCoverage film coverage past which more black prints paler; 1 where none does
 */
public record BittenTones(double bare, double lightest, double darkest, double turningCoverage) {
    private static final double FIRST_DEPTH = 12;
    private static final double DEEPER = 1.6;
    private static final double SHALLOWEST = 1;
    private static final double DEEPEST = 130;
    private static final double NEAR_ENOUGH = 0.5;
    private static final int MOST_TRIES = 5;

    /** Predicts a plate at any depth: the seam through which the virtual plate reaches the plan. */
    @FunctionalInterface
    public interface OfDepth {
        /** What it prints, or null where nobody can say. */
        @Nullable
        BittenTones at(double depthMicrometres);
    }

    public static BittenTones of(VirtualResponse response) {
        return new BittenTones(
                response.printableRange().bare(),
                response.printableRange().lightest(),
                response.printableRange().darkest(),
                response.turningPoint());
    }

    /**
     * Least depth whose darkest tone is as dark as is wanted, or a few tenths of L* darker. Deeper wells hold more ink, until
     * undercut takes the lands and the blacks bite open; what lies past that darkest depth is never given.
     *
     * @param lightness wanted, 1 to 99
     */
    static double depthFor(double lightness, OfDepth tones) {
        checkedDarkest(lightness);
        double depth = FIRST_DEPTH;
        double reached = darkest(tones, depth);
        double shallow = 0;
        double before = Double.NaN;
        if (reached <= lightness) {
            while (reached <= lightness && depth / DEEPER >= SHALLOWEST) {
                before = reached;
                shallow = depth;
                depth /= DEEPER;
                reached = darkest(tones, depth);
            }
            return reached <= lightness ? depth : between(lightness, tones, depth, reached, shallow, before);
        }
        while (reached > lightness) {
            shallow = depth;
            before = reached;
            depth *= DEEPER;
            if (depth > DEEPEST) {
                throw tooDark(lightness, before, shallow);
            }
            reached = darkest(tones, depth);
            if (reached > before) {
                throw tooDark(lightness, before, shallow);
            }
        }
        return between(lightness, tones, shallow, before, depth, reached);
    }

    /** Refuses a darkest tone, L*, unless it is 1 to 99. */
    public static double checkedDarkest(double lightness) {
        return Refusal.checkRange("darkest tone", lightness, 1, 99, "L*", "15 to 30 is a deep black");
    }

    /** Narrows down by straight lines through the ends, halving when an end stays. */
    private static double between(
            double lightness, OfDepth tones, double shallow, double pale, double deep, double dark) {
        double from = shallow;
        double fromTone = pale;
        double to = deep;
        double toTone = dark;
        for (int i = 0; i < MOST_TRIES && toTone < lightness - NEAR_ENOUGH; i++) {
            double share = (fromTone - lightness) / (fromTone - toTone);
            double depth = from + (i % 2 == 0 ? share : 0.5) * (to - from);
            double tone = darkest(tones, depth);
            if (tone <= lightness) {
                to = depth;
                toTone = tone;
            } else {
                from = depth;
                fromTone = tone;
            }
        }
        return to;
    }

    private static double darkest(OfDepth tones, double depth) {
        BittenTones predicted = tones.at(depth);
        if (predicted == null) {
            throw Refusal.use("darkest tone can't be planned for this plate: ask for a depth instead");
        }
        return predicted.darkest();
    }

    private static Refusal tooDark(double lightness, double darkest, double depth) {
        return Refusal.use("darkest tone is L* " + Refusal.plain(lightness) + "; on this plate it must be "
                + Refusal.plain(Math.ceil(darkest * 10) / 10) + " or paler, which about "
                + Refusal.plain(Math.rint(depth))
                + " µm reaches, for deeper bites take the lands away: ask for less, or"
                + " choose a coarser grain");
    }
}
