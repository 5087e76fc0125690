package greyground.fit;

import greyground.quantity.Refusal;

/**
 * The tone over a field of line pairs, as it was measured. Black and clear take half the field each whatever the period, so wide
 * lines tell what ink and paper make of half a tone and narrow ones how far edges move: which no grain can tell apart.
 *
 * @param periodMicrometres of a black and a clear line, 20 to 2000
 * @param lightness mean CIE L*, absolute, 0 to 100
 * @param standardError of that mean, above 0
 */
public record MeasuredLines(int periodMicrometres, double lightness, double standardError) {
    public MeasuredLines {
        Refusal.checkRange("period of line pairs", periodMicrometres, 20, 2000, "µm", "give it as the chart does");
        Refusal.checkRange("lightness of line pairs", lightness, 0, 100, "L*", "100 is a perfect white: measure again");
        Refusal.checkRange("error of line pairs", standardError, 1e-3, 50, "L*", "give one standard error");
    }
}
