package greyground.fit;

import greyground.quantity.Refusal;

/**
 * Where a test plate's print is darkest.
 *
 * @param seen whether some level past the darkest is lighter beyond chance; if not, more black was not seen to print paler
 * @param coverage of the darkest level
 * @param least coverage of the nearest lighter level before it that chance can't explain: the turn lies past this
 * @param most coverage of the nearest such level after it, or the last level: the turn lies before this
 */
public record MeasuredTurn(boolean seen, double coverage, double least, double most) {
    /** Whether a predicted turning point, 0 to 1, lies where the plate allows it. */
    public boolean agreesWith(double predicted) {
        return predicted >= least && (!seen || predicted <= most);
    }

    /** One line that compares it with the virtual plate's. */
    public String against(double predicted) {
        String found = seen
                ? "print is darkest at " + percent(coverage) + " % (between " + percent(least) + " and " + percent(most)
                        + " %)"
                : "print is darkest at " + percent(coverage) + " % and no patch past " + percent(least)
                        + " % is seen to turn paler";
        return found + "; predicted " + percent(predicted) + " %: "
                + (agreesWith(predicted) ? "they agree" : "they don't agree");
    }

    private static String percent(double share) {
        return Refusal.plain(Math.rint(share * 1000) / 10);
    }
}
