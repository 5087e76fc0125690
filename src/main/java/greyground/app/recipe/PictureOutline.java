package greyground.app.recipe;

import greyground.film.compose.Outlined;
import greyground.film.job.Job;
import greyground.film.job.Outlines;
import greyground.film.sheet.SheetLayout;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import greyground.tone.PlateResponse;
import greyground.tone.ToneCurve;
import java.util.Locale;
import java.util.Optional;

/** What the outlines of a job's plate and picture come to on its film, and what is said of them. */
final class PictureOutline {
    /** Steps in lightness below this go unseen (assumed). */
    private static final double SEEN = 1;

    private PictureOutline() {}

    /**
     * On pixels that lie on the plate in a way.
     *
     * @param limit most film black that the curve uses, 0 to 1
     */
    static Optional<Outlined> of(Job job, Outlined.Lie lie, double limit, PlateResponse response) {
        return Outlined.of(
                job.placing().outlines(),
                job.plate(),
                job.placing().bleedMillimetres(),
                lie,
                (int) Math.floor(limit * ToneCurve.SOLID),
                (int) Math.ceil(response.usable().least() * ToneCurve.SOLID));
    }

    /** Where a film's pixels lie on its plate. */
    static Outlined.Lie lie(Job job, SheetLayout layout) {
        double across = job.plate().widthMillimetres() / layout.plate().width();
        double down = job.plate().heightMillimetres() / layout.plate().height();
        return new Outlined.Lie(
                (0.5 - layout.plate().left()) * across,
                (0.5 - layout.plate().top()) * down,
                across,
                down,
                layout.width(),
                false);
    }

    /** Says how much of the plate is left to the picture; nothing where that is all of it. */
    static void say(Findings findings, Job job) {
        Outlines outlines = job.placing().outlines();
        if (outlines.plate().isEmpty() && outlines.picture().isEmpty()) {
            return;
        }
        double[] means = Outlined.means(outlines, job.plate());
        String ground = outlines.picture().isEmpty()
                ? ""
                : String.format(
                        Locale.ROOT,
                        "; %.1f %% outside the outline, %s",
                        100 * means[1],
                        outlines.black() ? "black as far as the plate holds it" : "clear");
        findings.say(
                "outline",
                String.format(Locale.ROOT, "the picture has %.1f %% of the plate's rectangle", 100 * means[0]) + ground,
                new Findings().put("pictureShare", means[0]).put("outsideShare", means[1]));
    }

    /** Says that a fade ends before its end, with the width that is lost; empty where nobody would see it. */
    static Optional<String> gap(Job job, double limit, PlateResponse response) {
        Outlines outlines = job.placing().outlines();
        double least = response.usable().least();
        double step = response.lightness(0) - response.lightness(least);
        if (outlines.picture().isEmpty() || outlines.fadeMillimetres() == 0 || outlines.black() || step < SEEN) {
            return Optional.empty();
        }
        double share = least / (limit / 2);
        double from = 0;
        double to = 1;
        for (int i = 0; i < 40; i++) {
            double middle = (from + to) / 2;
            if (middle * middle * (3 - 2 * middle) < share) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return Optional.of(String.format(
                Locale.ROOT,
                "the outline's fade of %s mm ends in a step of L* %.1f where its tones no longer hold: a middle grey is clear in"
                        + " the last %.1f mm; a grain that holds lighter tones, or a hard edge, avoids it",
                Refusal.plain(outlines.fadeMillimetres()),
                step,
                from * outlines.fadeMillimetres()));
    }
}
