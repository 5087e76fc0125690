package greyground.app.recipe;

import greyground.art.spots.Spot;
import greyground.art.spots.SpotsFound;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.SpotWish;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.util.List;

/**
 * What is said of dust, hairs and scratches.
 *
 * @param wish which are healed
 * @param spots that were found or chosen, healed those that are accepted; none where none were looked for
 * @param own whether the picture has spots of its own
 */
public record HealedSpots(SpotWish wish, List<Spot> spots, boolean own) {
    private static final String OWN = "this picture has spots of its own, as stars, craters or grain are";

    private static final String CHOOSE =
            "write them with --spots-out FILE.json, look at them with --spots-picture FILE.png, and choose by number";

    /** No film says it of a job that asks for none. */
    public static final HealedSpots NONE = new HealedSpots(SpotWish.NONE, List.of(), false);

    /** Those that a job has chosen: all that a film says of them. */
    public static HealedSpots chosen(Job job) {
        SpotWish wish = job.art().hand().retouching().spots();
        return wish instanceof SpotWish.Chosen chosen ? new HealedSpots(wish, chosen.spots(), false) : NONE;
    }

    /** Looks for them where the job says so. */
    static HealedSpots of(ArtSource art, ArtChoice choice) throws IOException {
        SpotWish wish = choice.hand().retouching().spots();
        return wish instanceof SpotWish.None ? NONE : of(wish, art, choice);
    }

    /** Those that a job chose, or all that stand out. */
    static HealedSpots of(SpotWish wish, ArtSource art, ArtChoice choice) throws IOException {
        if (wish instanceof SpotWish.Chosen chosen) {
            return new HealedSpots(wish, chosen.spots(), false);
        }
        SpotsFound found = art.spots(choice);
        return new HealedSpots(wish, found.spots(), found.own());
    }

    private List<Spot> healed() {
        return spots.stream().filter(Spot::accepted).toList();
    }

    /** Says how many were healed; nothing where none are wished. */
    public void say(Findings findings) {
        if (wish instanceof SpotWish.None) {
            return;
        }
        List<Spot> healed = healed();
        long lighter = healed.stream().filter(spot -> spot.contrast() > 0).count();
        long darker = healed.stream().filter(spot -> spot.contrast() < 0).count();
        findings.say(
                "spots",
                words(healed, lighter, darker),
                new Findings()
                        .put("healed", (double) healed.size())
                        .put("lighter", (double) lighter)
                        .put("darker", (double) darker)
                        .put("left", (double) (spots.size() - healed.size()))
                        .put("own", own));
    }

    private String words(List<Spot> healed, long lighter, long darker) {
        int left = spots.size() - healed.size();
        String widths = healed.isEmpty()
                ? "none healed"
                : healed.size() + " healed, " + lighter + " lighter and " + darker + " darker than what lies around, "
                        + plain(healed.stream()
                                .mapToDouble(Spot::widthPixels)
                                .min()
                                .orElseThrow()) + " to "
                        + plain(healed.stream()
                                .mapToDouble(Spot::widthPixels)
                                .max()
                                .orElseThrow()) + " pixels wide";
        if (wish instanceof SpotWish.Chosen) {
            return widths + (left == 0 ? "" : "; " + left + " refused");
        }
        if (spots.isEmpty()) {
            return own ? widths + ": " + OWN + ", too many to tell apart" : widths + ": nothing stands out";
        }
        if (left == 0) {
            return widths;
        }
        String others = left + (left == 1 ? " place" : " places") + " that could as well be the picture's own left";
        return widths + (own ? ": " + OWN + "; " : "; ") + others + ": " + CHOOSE;
    }

    private static String plain(double pixels) {
        return Refusal.plain(Math.rint(10 * pixels) / 10);
    }
}
