package greyground.app.proof;

import greyground.app.check.PlateWarning;
import greyground.app.recipe.FilmWords;
import greyground.app.recipe.JobTones;
import greyground.finding.Findings;
import greyground.fit.MeasuredResponse;
import greyground.plate.PrintableRange;
import greyground.plate.ToneTerms;
import greyground.plate.neighbourhood.NeighbourhoodPlate;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.tone.SteepTones;
import greyground.workshop.Figure;
import greyground.workshop.Provenance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/** What a proof says of a plate. */
public final class ProofFindings {
    /** A gap in the lights below this can't be seen (1 L* side by side is about the least that is seen; from memory, unverified). */
    private static final double LEAST_GAP_TOLD = 1;

    private static final double USUAL_DOTS_PER_INCH = 150;

    private ProofFindings() {}

    /**
     * Finds.
     *
     * @param warnings what the film's own checks found, most pressing first
     */
    public static Findings of(ProofWork work, List<PlateWarning> warnings) {
        JobTones tones = work.tones();
        PrintableRange range = tones.printableRange();
        Findings findings = new Findings()
                .say(
                        "plate",
                        work.job().plate() + ", " + work.job().process().words() + ", "
                                + work.job().grain().name() + " at "
                                + Refusal.plain(work.job().resolution().dotsPerInch()) + " dpi, "
                                + work.plate().conditions().wellsName(),
                        work.job().plate().toString())
                .put("process", work.job().process().word())
                .put("grain", work.job().grain().name())
                .put("bite", work.plate().conditions().wellsName())
                .rows(
                        "response",
                        tones.predicted().levels().stream()
                                .map(ProofFindings::level)
                                .toList());
        work.looks().read().ifPresent(seen -> findings.put("read", read(seen)));
        tones.measured().ifPresent(measured -> findings.rows("measuredResponse", levels(measured)));
        work.spots().say(findings);
        FilmWords.sayGap(findings, work.job(), SteepTones.of(tones.response()), "");
        return findings.put("responseName", tones.name())
                .put("known", tones.isMeasured() ? "measured" : "predicted")
                .say(
                        "printableRange",
                        toneWords(work),
                        new Findings()
                                .put("bare", range.bare())
                                .put("lightest", range.lightest())
                                .put("darkest", range.darkest()))
                .say("turningPoint", turnWords(tones), tones.turningPoint())
                .say("reserve", work.reserve().words(), work.reserve().findings())
                .say(
                        "reads",
                        "print as it hangs; plate face up "
                                + (work.plateMirrorsPrint() ? "is its mirror" : "reads like it")
                                + "; places count from the print's top left")
                .put("plateMirrorsPrint", work.plateMirrorsPrint())
                .say("conditions", knownWords(work), conditions(work.workshop().figures()))
                .rows(
                        "warnings",
                        warningWords(warnings),
                        warnings.stream().map(PlateWarning::figures).toList())
                .list("notes", work.notes())
                .put("computed", computedWords(work));
    }

    private static Findings level(ToneTerms level) {
        return new Findings()
                .put("coverage", level.coverage())
                .put("lightness", level.lightness())
                .put("lightnessError", level.lightnessError())
                .put("landLeft", level.landLeft())
                .put("meanDepthMicrometres", level.meanDepthMicrometres())
                .put("inkVolumeMicrometres", level.inkVolumeMicrometres());
    }

    private static List<Findings> levels(MeasuredResponse measured) {
        return measured.levels().stream()
                .map(level -> new Findings()
                        .put("coverage", level.coverage())
                        .put("lightness", level.lightness())
                        .put("halfWidth", measured.halfWidth(level.coverage())))
                .toList();
    }

    private static Findings conditions(Map<String, Figure> figures) {
        Findings conditions = new Findings();
        figures.forEach((path, figure) -> conditions.put(
                path,
                new Findings()
                        .put("value", figure.value())
                        .put("known", figure.provenance() instanceof Provenance.Assumed ? "assumed" : "measured")
                        .put("basis", figure.provenance().basis())));
        return conditions;
    }

    private static String knownWords(ProofWork work) {
        int all = work.workshop().figures().size();
        long assumed = work.workshop().figures().values().stream()
                .filter(Figure::isAssumed)
                .count();
        return (all - assumed) + " of the workshop's " + all + " numbers are measured, " + assumed + " assumed";
    }

    /** Of warnings that have places, the worst of each kind. */
    private static List<String> warningWords(List<PlateWarning> warnings) {
        List<String> words = new ArrayList<>();
        for (String kind :
                new TreeSet<>(warnings.stream().map(PlateWarning::kind).toList())) {
            List<PlateWarning> alike =
                    warnings.stream().filter(each -> each.kind().equals(kind)).toList();
            PlateWarning worst = alike.get(0);
            if (worst.place().isEmpty()) {
                alike.forEach(each -> words.add(each.words()));
            } else {
                words.add(worst.words() + " at " + place(worst.place().get())
                        + (alike.size() == 1 ? "" : ", and " + (alike.size() - 1) + " more places"));
            }
        }
        return words;
    }

    /** As --loupe takes it. */
    private static String place(Offset place) {
        return String.format(Locale.ROOT, "%.1fmm,%.1fmm", place.acrossMillimetres(), place.downMillimetres());
    }

    private static String toneWords(ProofWork work) {
        PrintableRange range = work.tones().printableRange();
        String tones = "L* " + whole(range.bare()) + " (bare paper) to " + whole(range.darkest());
        String gap = range.lightGap() < LEAST_GAP_TOLD
                ? ""
                : "; nothing between " + whole(range.bare()) + " and " + whole(range.lightest());
        return tones + gap + "; " + (work.tones().isMeasured() ? work.tones().name() : "predicted");
    }

    private static String turnWords(JobTones tones) {
        return tones.turningPoint() < 1
                ? "above " + whole(100 * tones.turningPoint())
                        + " % black on the film the print gets paler again, a solid at L* "
                        + whole(tones.solidLightness())
                : "nowhere: the print darkens up to solid black, L* " + whole(tones.solidLightness());
    }

    /** How pictures of the whole plate are computed, in one sentence. */
    private static String computedWords(ProofWork work) {
        PlateLooks looks = work.looks();
        double pixel = looks.pixelMicrometres(work.whole(USUAL_DOTS_PER_INCH));
        String how = looks.haveNeighbourhoods()
                ? "each by what light, resist, bath, wipe and ink make of the film within some 60 \u00b5m of it, known from a"
                        + " sample of this grain on pixels of %.2f \u00b5m"
                : "on pixels of %.2f \u00b5m, taken in tiles through light, resist, ground, bath, wipe and ink";
        return String.format(
                        Locale.ROOT,
                        "whole plates: the film's %d x %d pixels, " + how,
                        work.filmWidth(),
                        work.filmHeight(),
                        pixel)
                + looks.read().map(ProofFindings::readWords).orElse("") + "; R^(1/n), n "
                + Refusal.plain(work.workshop().ink().yuleNielsenFactor().value())
                + ", averaged over the picture's pixels (Yule and Nielsen 1951)"
                + looks.ontoMeasured()
                        .map(alignment -> String.format(
                                Locale.ROOT,
                                "; even tones moved by at most %.1f L* onto the response, which is %s",
                                alignment.mostLightness(),
                                work.tones().name()))
                        .orElse("");
    }

    private static String readWords(NeighbourhoodPlate.Seen seen) {
        return String.format(
                Locale.ROOT,
                " (%s %% of pixels on this film itself, %s %% guessed from likenesses; the pad followed by itself over %s %%)",
                percent(seen.computed(), seen.pixels()),
                percent(seen.guessed(), seen.pixels()),
                percent(seen.wiped(), seen.pixels()));
    }

    private static String percent(long some, long all) {
        return Refusal.plain(Math.rint(10_000.0 * some / all) / 100);
    }

    private static Findings read(NeighbourhoodPlate.Seen seen) {
        return new Findings()
                .put("pixels", (double) seen.pixels())
                .put("computed", (double) seen.computed())
                .put("guessed", (double) seen.guessed())
                .put("wiped", (double) seen.wiped());
    }

    private static String whole(double value) {
        return Refusal.plain(Math.rint(value));
    }
}
