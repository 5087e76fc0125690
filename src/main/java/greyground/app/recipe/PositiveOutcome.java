package greyground.app.recipe;

import greyground.film.compose.MendReport;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.finding.Findings;
import greyground.output.FilmDocument;
import greyground.quantity.Refusal;
import greyground.tone.Compensation;
import greyground.tone.PrintRange;
import greyground.tone.ToneWish;
import greyground.workshop.Figure;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What came of preparing a positive.
 *
 * @param job with everything settled: digest, white and black as numbers
 */
public record PositiveOutcome(Job job, Findings findings) {
    static PositiveOutcome of(FilmRecipe recipe, Optional<MendReport> mended, boolean asPdf) throws IOException {
        int films = recipe.films().size();
        Job job = recipe.job();
        Compensation compensation = recipe.compensation();
        double pixels = Arrays.stream(recipe.greys()).sum();
        double light = compensation.light().pixels(recipe.greys()) / pixels;
        double dark = compensation.dark().pixels(recipe.greys()) / pixels;
        Findings findings = FilmWords.findings(job, recipe.films().get(0).sheet(), films)
                .say("colours", job.art().hand().sight().words())
                .say(
                        "tones",
                        toneWords(recipe)
                                + lost("lighter than the lightest tone that holds", light)
                                + lost("darker than the darkest", dark))
                .say("reserve", recipe.reserve().words(), recipe.reserve().findings())
                .put("unattainableLightShare", light)
                .put("unattainableDarkShare", dark)
                .put("assumedFigures", (double) recipe.workshop().figures().values().stream()
                        .filter(Figure::isAssumed)
                        .count());
        recipe.spots().say(findings);
        recipe.line().ifPresent(line -> line.say(findings));
        findings.say("crisp", HandOnPlate.words(recipe));
        TouchedPlaces.say(findings, job);
        PictureOutline.say(findings, job);
        sayWish(findings, recipe);
        FilmWords.sayGap(
                findings,
                job,
                compensation.steep(),
                lost("wished there", compensation.unsure().pixels(recipe.greys()) / pixels));
        mended.ifPresent(report -> findings.say(
                "mended",
                mendedWords(report),
                new Findings()
                        .put("solidSquareMillimetres", report.solidSquareMillimetres())
                        .put("grainSquareMillimetres", report.grainSquareMillimetres())
                        .put("wideBlacks", (double) report.wideBlacks())));
        List<String> notes = Stream.concat(recipe.warnings().stream(), recipe.plan().warnings().stream())
                .toList();
        return new PositiveOutcome(
                job,
                findings.say("plan", recipe.plan().summary())
                        .say("print", asPdf ? Optional.of(FilmDocument.paper(films)) : Optional.empty())
                        .list("notes", notes)
                        .put("curve", FilmFile.curve(recipe))
                        .put("job", JobFile.tree(job)));
    }

    /** The same, and says what it took over from the job of another picture; {@code base} is the job that was reused. */
    public PositiveOutcome reusing(Job base) {
        String was = base.art().sha256();
        if (was.isEmpty() || was.equals(job.art().sha256())) {
            return this;
        }
        List<String> kept = new ArrayList<>();
        List<String> own = new ArrayList<>();
        if (!base.title().isEmpty() && base.title().equals(job.title())) {
            kept.add("title \"" + base.title() + "\"");
            own.add("--title");
        }
        if (base.art().white().given().isPresent()
                && base.art().white().equals(job.art().white())) {
            kept.add(String.format(
                    Locale.ROOT, "white of %.1f %%", 100 * point(job.art().white())));
            own.add("--white automatic");
        }
        if (base.art().black().given().isPresent()
                && base.art().black().equals(job.art().black())) {
            kept.add(String.format(
                    Locale.ROOT, "black of %.1f %%", 100 * point(job.art().black())));
            own.add("--black automatic");
        }
        if (!HealedSpots.chosen(base).spots().isEmpty()
                && HealedSpots.chosen(base).equals(HealedSpots.chosen(job))) {
            kept.add("dust and scratches");
            own.add("--spots none");
        }
        findings.say(
                "reused",
                "a job of another picture, " + base.art().fileName()
                        + (kept.isEmpty()
                                ? ""
                                : ": its " + String.join(", ", kept) + " taken over; for this picture's own give "
                                        + String.join(" ", own)));
        return this;
    }

    /** How much of the art the print could not show, were its tones not fitted to the print's range: before the hand touched them, and after. */
    private static void sayWish(Findings findings, FilmRecipe recipe) throws IOException {
        ToneWish wish = recipe.job().art().hand().wish();
        if (wish.changesNothing()) {
            return;
        }
        PrintRange print = recipe.compensation().print();
        ToneWish.Outside before = ToneWish.AS_THEY_ARE.outside(recipe.greys(), recipe.range(), print);
        ToneWish.Outside after = wish.outside(recipe.greys(), recipe.range(), print);
        findings.say(
                "wish",
                String.format(
                        Locale.ROOT,
                        "%s; %.1f %% of the art was darker than this print's black and %.1f %% lighter than its paper,"
                                + " now %.1f %% and %.1f %%, all of it fitted in",
                        wish.words(),
                        100 * before.darker(),
                        100 * before.lighter(),
                        100 * after.darker(),
                        100 * after.lighter()),
                new Findings()
                        .put("darkerBefore", before.darker())
                        .put("lighterBefore", before.lighter())
                        .put("darkerAfter", after.darker())
                        .put("lighterAfter", after.lighter()));
    }

    private static String toneWords(FilmRecipe recipe) {
        return String.format(
                Locale.ROOT,
                "art white %.1f %%, black %.1f %%; print L* %.1f to %.1f; film coverage %.1f to %.1f %% (%s)",
                point(recipe.job().art().white()) * 100,
                point(recipe.job().art().black()) * 100,
                recipe.compensation().paperLightness(),
                recipe.compensation().darkestLightness(),
                recipe.tones().response().usable().least() * 100,
                recipe.reserve().limit() * 100,
                recipe.tones().name());
    }

    private static String lost(String what, double share) {
        if (share == 0) {
            return "";
        }
        String percent = share < 0.000_05 ? "less than 0.01" : String.format(Locale.ROOT, "%.2f", share * 100);
        return "; " + percent + " % of the art is " + what;
    }

    private static String mendedWords(MendReport report) {
        return String.format(
                        Locale.ROOT, "strokes made solid, %.1f mm\u00b2 more black", report.solidSquareMillimetres())
                + (report.wideBlacks() == 0
                        ? ", no black too wide for it"
                        : String.format(
                                Locale.ROOT,
                                "; %.1f mm\u00b2 in %d wide blacks kept in grain within a solid edge",
                                report.grainSquareMillimetres(),
                                report.wideBlacks()));
    }

    private static double point(TonePoint point) {
        if (point instanceof TonePoint.Given given) {
            return given.luminance();
        }
        throw Refusal.failure("a tone point was not settled: please report it");
    }
}
