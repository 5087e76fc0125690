package greyground.app.recipe;

import greyground.art.touch.EvenPaper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is said of paper that was made even. */
final class PaperWords {
    private static final double PERCENT = 100;

    /** Smaller places go unsaid (assumed). */
    private static final double LEAST_SHARE = 0.001;

    private PaperWords() {}

    /**
     * What the printmaker should hear.
     *
     * @param width that was asked for, as a share of the art's longer side
     */
    static List<String> of(EvenPaper.Found found, double width) {
        List<String> words = new ArrayList<>();
        words.add(String.format(
                Locale.ROOT,
                "the paper was made even: the light on it differed by %.0f %% from its lightest place to its darkest",
                PERCENT * (1 - 1 / found.lightRatio())));
        if (found.stainedShare() > LEAST_SHARE) {
            words.add(String.format(
                    Locale.ROOT,
                    "%.1f %% of the art, up to L* %.0f darker than the paper around it, was taken for stains wider than"
                            + " %.1f %% of its longer side and made paper: if pale drawing went with it, give a larger"
                            + " --even-paper, or none",
                    PERCENT * found.stainedShare(),
                    found.deepestStain(),
                    PERCENT * width));
        }
        return words;
    }
}
