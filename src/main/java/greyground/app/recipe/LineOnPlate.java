package greyground.app.recipe;

import greyground.art.line.Specks;
import greyground.film.compose.LineGrowth;
import greyground.film.job.Hand;
import greyground.film.job.Job;
import greyground.film.job.LineWish;
import greyground.film.job.Origin;
import greyground.finding.Findings;
import greyground.grain.Grain;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;

/**
 * How a drawing becomes strokes on its plate.
 *
 * @param art what is known of it
 * @param threshold lightest grey code that is ink
 * @param growth of its edges on this plate
 * @param specks that are left out; empty where none are so small
 * @param pixelMicrometres of the art on the plate
 */
record LineOnPlate(LineArt art, int threshold, LineGrowth growth, Optional<Specks> specks, double pixelMicrometres) {
    private static final double PERCENT = 100;

    /** Empty where the job wants none, or its art or its film can't be strokes. */
    static Optional<LineOnPlate> of(ArtSource source, Job job, Workshop workshop, ArtRange range, double pixel)
            throws IOException {
        if (job.art().hand().origin() != Origin.LINE || job.grain() instanceof Grain.Continuous) {
            return Optional.empty();
        }
        LineArt art = source.line(job.art());
        LineWish wish = job.art().hand().line();
        if (art.range().isEmpty() && wish.threshold().isEmpty()) {
            return Optional.empty();
        }
        double luminance = range.black() + wish.threshold().orElse(0.5) * (range.white() - range.black());
        int threshold = (int) Math.max(0, Math.min(GreyPlane.WHITE - 1, luminance * GreyPlane.WHITE));
        LineGrowth growth = LineGrowth.of(
                JobPlate.conditions(workshop, job, workshop.usualDepthMicrometres()),
                wish.growthMicrometres().orElse(Double.NaN),
                workshop.filmPrinter().pixels(job.resolution()).pitchMicrometres());
        double side = wish.specksMicrometres().orElse(LineWish.USUAL_SPECKS_MICROMETRES) / pixel;
        Specks specks = new Specks(threshold, code(range.black()), code(range.white()), side);
        return Optional.of(
                new LineOnPlate(art, threshold, growth, side > 1 ? Optional.of(specks) : Optional.empty(), pixel));
    }

    private static int code(double luminance) {
        return (int) Math.rint(luminance * GreyPlane.WHITE);
    }

    /** Share of the strokes' length that prints wider than it is drawn, since thinner would not wash out. */
    private double widened() {
        return art.strokes().thinnerThan(growth.thinnest() / pixelMicrometres);
    }

    /** Says what became of it. */
    void say(Findings findings) {
        double growing = growth.edge();
        StringBuilder words = new StringBuilder(String.format(
                Locale.ROOT,
                "ink up to %.1f %% of light; edges lie %.1f \u00b5m inside the strokes, which the plate makes up for",
                PERCENT * threshold / GreyPlane.WHITE,
                growing));
        if (widened() > 0) {
            words.append(String.format(
                    Locale.ROOT,
                    "; %.0f %% of the strokes are thinner than %.0f \u00b5m, which is what prints of them",
                    Math.max(1, PERCENT * widened()),
                    growth.thinnest()));
        }
        specks.ifPresent(gone -> words.append(
                gone.dots() + gone.holes() == 0
                        ? "; no specks"
                        : "; " + gone.dots() + " specks and " + gone.holes() + " pinholes left out"));
        findings.say(
                "line",
                words.toString(),
                new Findings()
                        .put("threshold", (double) threshold / GreyPlane.WHITE)
                        .put("separation", art.tones().separation())
                        .put("edgeGrowthMicrometres", growing)
                        .put("thinnestStrokeMicrometres", growth.thinnest())
                        .put("strokesWidenedShare", widened())
                        .put("strokePixels", art.strokes().median())
                        .put("edgePixels", art.strokes().edgePixels())
                        .put("specks", (double) specks.map(Specks::dots).orElse(0L))
                        .put("pinholes", (double) specks.map(Specks::holes).orElse(0L)));
    }

    /** Says what a drawing has no use for; empty where nothing of it is asked for. */
    static Optional<String> idle(Job job) {
        Hand hand = job.art().hand();
        boolean tones = !hand.wish().changesNothing()
                || hand.localContrast() != 0
                || !hand.crispness().equals(Optional.of(0.0));
        return tones
                ? Optional.of(
                        "tones, local contrast and crispness change nothing of line art: leave them out, or --source line")
                : Optional.empty();
    }

    /** Why a job that asks for strokes gets none, for other reasons than its art. */
    static Optional<String> refused(Job job) {
        return job.art().hand().origin() == Origin.LINE && job.grain() instanceof Grain.Continuous
                ? Optional.of(
                        "a continuous-tone film has no hard edges, so that the line art keeps its tones: choose the"
                                + " process etched-film with a grain for it")
                : Optional.empty();
    }

    /** Names all that decides what is left out. */
    String digest() {
        return threshold + " " + specks.map(Specks::reach).orElse(0) + " " + pixelMicrometres + " "
                + Refusal.plain(growth.edge());
    }
}
