package greyground.app.teach;

import greyground.app.recipe.JobPlate;
import greyground.finding.Findings;
import greyground.fit.CodePower;
import greyground.fit.SharedErrors;
import greyground.fit.SharedErrors.ToneScale;
import greyground.quantity.Refusal;
import greyground.scan.Glare;
import greyground.scan.ScanReading;
import greyground.tone.Confidence;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * How far what was read can be trusted beyond its scatter, and what would make it better.
 *
 * @param errors that all readings share
 * @param glareTold whether a person said how much stray light there is
 * @param glare how much the plate itself shows, where nobody said it and it has darks
 * @param paperMeasured whether the paper's white is a measured one
 */
record ReadingTrust(SharedErrors errors, boolean glareTold, Optional<Glare> glare, boolean paperMeasured) {
    /** Tones at which it is said: light, middle and dark. */
    private static final double[] SAID = {80, 50, 20};

    /** Dots of a film without any: edges then count for nothing. */
    private static final double NO_DOTS_MICROMETRES = 10_000;

    private static final int LARGE = 10_000;

    static ReadingTrust of(TestFilm film, Workshop shop, ReadWords words, PlateFindings found) {
        boolean paper = words.paperLightness().isPresent()
                || !shop.paper().whiteDensity().isAssumed();
        double spacing = JobPlate.spacingMicrometres(film.job());
        Optional<Glare> glare = found.scan().flatMap(ScanReading::glare);
        double glareError = words.flareTold()
                ? SharedErrors.GLARE_TOLD
                : glare.filter(Glare::isSure)
                        .map(seen -> SharedErrors.glareSeen(found.toneScale(), seen.share(), seen.error()))
                        .orElse(SharedErrors.GLARE_UNTOLD);
        return new ReadingTrust(
                new SharedErrors(
                        found.toneScale(),
                        glareError,
                        paper ? SharedErrors.PAPER_MEASURED : SharedErrors.PAPER_ASSUMED,
                        spacing > 0 ? spacing : NO_DOTS_MICROMETRES),
                words.flareTold(),
                glare,
                paper);
    }

    /** One line. {@code bare} is the lightness of bare paper; {@code power} what the plate itself makes of the codes. */
    String words(double bare, Optional<CodePower> power) {
        String scale = errors.toneScale().words();
        String off = "tones may be off by "
                + String.join(
                        ", ",
                        DoubleStream.of(SAID)
                                .mapToObj(tone -> tenth(half(tone, bare)) + " at L* " + Math.round(tone))
                                .toList());
        if (errors.toneScale() == ToneScale.DENSITOMETER) {
            return off + " (95 %), as a densitometer's may";
        }
        List<String> known = new ArrayList<>(List.of("tone scale " + scale));
        List<String> better = new ArrayList<>();
        power.filter(any -> errors.toneScale() == ToneScale.UNSTATED)
                .ifPresent(found -> known.add("by ink and paper its power is " + tenth(found.power()) + " (95 %: "
                        + tenth(found.power() - found.half95()) + " to " + tenth(found.power() + found.half95())
                        + "; sRGB's is 2.2" + (found.isDoubtful() ? ", so it may well not be sRGB)" : ")")));
        if (errors.toneScale() != ToneScale.WEDGE) {
            known.add(paperMeasured ? "paper measured" : "paper assumed");
            better.add("lay a reflection wedge beside the proof (--reference)");
        }
        known.add(
                glareTold
                        ? "glare as given"
                        : glare.map(ReadingTrust::glareWords).orElse("glare not given, 0 to 2 % believed"));
        if (!paperMeasured && errors.toneScale() != ToneScale.WEDGE) {
            better.add("measure the bare paper (--paper)");
        }
        return off + " (95 %): " + String.join("; ", known)
                + (better.isEmpty() ? "" : ". To trust it more, " + String.join(", or ", better));
    }

    private static String glareWords(Glare seen) {
        return "glare " + percent(seen.share()) + " % of the light about a place (95 %: "
                + percent(Math.max(0, seen.share() - half95(seen))) + " to " + percent(seen.share() + half95(seen))
                + " %) as the plate's darks show it, "
                + (seen.isSure() ? "taken out" : "too unsure to be taken out, so 0 to 2 % believed");
    }

    private static double half95(Glare seen) {
        return Confidence.quantile(0.95, LARGE) * seen.error();
    }

    private static String percent(double share) {
        return tenth(100 * share);
    }

    Findings findings(double bare, Optional<CodePower> power) {
        Findings findings = new Findings()
                .put("toneScale", errors.toneScale().name().toLowerCase(java.util.Locale.ROOT))
                .put("glareTold", glareTold)
                .put("paperMeasured", paperMeasured);
        glare.ifPresent(seen -> findings.put(
                "glare",
                new Findings()
                        .put("share", seen.share())
                        .put("half95", half95(seen))
                        .put("takenOut", seen.isSure())));
        power.filter(any -> errors.toneScale() == ToneScale.UNSTATED)
                .ifPresent(found -> findings.put(
                        "codePower",
                        new Findings()
                                .put("power", found.power())
                                .put("half95", found.half95())
                                .put("doubtful", found.isDoubtful())));
        return findings.rows(
                "off",
                DoubleStream.of(SAID)
                        .mapToObj(tone -> new Findings().put("lightness", tone).put("half95", half(tone, bare)))
                        .toList());
    }

    private double half(double tone, double bare) {
        return Confidence.quantile(0.95, LARGE) * errors.scannerError(tone, bare);
    }

    private static String tenth(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10);
    }
}
