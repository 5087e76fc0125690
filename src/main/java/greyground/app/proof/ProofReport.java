package greyground.app.proof;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.check.PlateWarning;
import greyground.app.recipe.JobTones;
import greyground.fit.MeasuredLevel;
import greyground.json.JsonText;
import greyground.plate.PrintableRange;
import greyground.plate.ToneTerms;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Provenance;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** What a proof says of a plate, in words for the bench and as JSON. */
public final class ProofReport {
    /** A gap in the lights below this can't be seen (1 L* side by side is about the least that is seen; from memory, unverified). */
    private static final double LEAST_GAP_TOLD = 1;

    private final ProofWork work;
    private final List<PlateWarning> warnings;

    /**
     * A report.
     *
     * @param warnings what the film's own checks found, most pressing first
     */
    public ProofReport(ProofWork work, List<PlateWarning> warnings) {
        this.work = work;
        this.warnings = List.copyOf(warnings);
    }

    /** The report in lines, each with its word in front. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("plate   " + work.job().plate() + ", " + work.job().process().words() + ", "
                + work.job().grain().name() + " at "
                + Refusal.plain(work.job().resolution().dotsPerInch()) + " dpi, "
                + work.plate().conditions().wellsName());
        lines.add("prints  " + toneWords());
        lines.add("turns   " + turnWords());
        lines.add("reads   " + readingWords());
        long assumed = work.workshop().figures().values().stream()
                .filter(Figure::isAssumed)
                .count();
        lines.add("known   " + (work.workshop().figures().size() - assumed) + " of the workshop's "
                + work.workshop().figures().size() + " numbers are measured, " + assumed + " assumed");
        for (String kind :
                new TreeSet<>(warnings.stream().map(PlateWarning::kind).toList())) {
            List<PlateWarning> alike =
                    warnings.stream().filter(each -> each.kind().equals(kind)).toList();
            PlateWarning worst = alike.get(0);
            if (worst.place().isEmpty()) {
                alike.forEach(each -> lines.add("look    " + each.words()));
            } else {
                lines.add("look    " + worst.words() + " at "
                        + place(worst.place().get())
                        + (alike.size() == 1 ? "" : ", and " + (alike.size() - 1) + " more places"));
            }
        }
        work.notes().forEach(note -> lines.add("note    " + note));
        return lines;
    }

    /** As --loupe takes it. */
    private static String place(Offset place) {
        return String.format(Locale.ROOT, "%.1fmm,%.1fmm", place.acrossMillimetres(), place.downMillimetres());
    }

    private String toneWords() {
        PrintableRange range = work.tones().printableRange();
        String tones = "L* " + whole(range.bare()) + " (bare paper) to " + whole(range.darkest());
        String gap = range.lightGap() < LEAST_GAP_TOLD
                ? ""
                : "; nothing between " + whole(range.bare()) + " and " + whole(range.lightest());
        return tones + gap + "; " + (work.tones().isMeasured() ? work.tones().name() : "foretold");
    }

    private String turnWords() {
        JobTones tones = work.tones();
        return tones.turningPoint() < 1
                ? "back past " + whole(100 * tones.turningPoint())
                        + " % black on the film: more black prints paler, a solid at L* "
                        + whole(tones.solidLightness())
                : "nowhere: it darkens up to solid black, L* " + whole(tones.solidLightness());
    }

    private String readingWords() {
        return "print as it hangs; plate face up " + (work.plateMirrorsPrint() ? "is its mirror" : "reads like it")
                + "; places count from the print's top left";
    }

    /** How pictures of the whole plate are computed, in one sentence. */
    public String computedWords() {
        double pixel = work.pixelMicrometres();
        return String.format(
                Locale.ROOT,
                "whole plates: the film's %d x %d pixels on pixels of %.2f um, taken in tiles through light, resist, bath,"
                        + " wipe and ink; R^(1/n), n %s, averaged over the picture's pixels (Yule and Nielsen 1951); even"
                        + " tones moved by at most %.1f L* onto the response, which is "
                        + (work.tones().isMeasured() ? work.tones().name() : "computed more finely"),
                work.filmWidth(),
                work.filmHeight(),
                pixel,
                Refusal.plain(work.workshop().ink().yuleNielsenFactor().value()),
                work.mostAlignedLightness(),
                work.tones().isMeasured() ? work.tones().name() : "computed more finely");
    }

    /** Adds the report to a JSON object. */
    public void describe(ObjectNode tree) {
        JobTones tones = work.tones();
        tree.put("plate", work.job().plate().toString());
        tree.put("process", work.job().process().word());
        tree.put("grain", work.job().grain().name());
        tree.put("bite", work.plate().conditions().wellsName());
        tree.put("plateMirrorsPrint", work.plateMirrorsPrint());
        ArrayNode levels = tree.putArray("response");
        for (ToneTerms level : tones.foretold().levels()) {
            ObjectNode each = levels.addObject();
            put(each, "coverage", level.coverage());
            put(each, "lightness", level.lightness());
            put(each, "lightnessError", level.lightnessError());
            put(each, "landLeft", level.landLeft());
            put(each, "meanDepthMicrometres", level.meanDepthMicrometres());
            put(each, "inkVolumeMicrometres", level.inkVolumeMicrometres());
        }
        tones.measured().ifPresent(measured -> {
            ArrayNode read = tree.putArray("measuredResponse");
            for (MeasuredLevel level : measured.levels()) {
                ObjectNode each = read.addObject();
                put(each, "coverage", level.coverage());
                put(each, "lightness", level.lightness());
                put(each, "halfWidth", measured.halfWidth(level.coverage()));
            }
        });
        tree.put("responseName", tones.name());
        tree.put("known", tones.isMeasured() ? "measured" : "foretold");
        put(tree, "turningPoint", tones.turningPoint());
        ObjectNode range = tree.putObject("printableRange");
        put(range, "bare", tones.printableRange().bare());
        put(range, "lightest", tones.printableRange().lightest());
        put(range, "darkest", tones.printableRange().darkest());
        ArrayNode list = tree.putArray("warnings");
        for (PlateWarning warning : warnings) {
            ObjectNode each = list.addObject();
            each.put("kind", warning.kind());
            each.put("words", warning.words());
            warning.place().ifPresent(place -> {
                put(each, "xMillimetres", place.acrossMillimetres());
                put(each, "yMillimetres", place.downMillimetres());
            });
            put(each, "sizeMillimetres", warning.sizeMillimetres());
            put(each, "areaSquareMillimetres", warning.areaSquareMillimetres());
        }
        ArrayNode notes = tree.putArray("notes");
        work.notes().forEach(notes::add);
        ObjectNode conditions = tree.putObject("conditions");
        work.workshop().figures().forEach((path, figure) -> {
            ObjectNode each = conditions.putObject(path);
            each.set("value", JsonText.number(figure.value()));
            each.put("known", figure.provenance() instanceof Provenance.Assumed ? "assumed" : "measured");
            each.put("basis", figure.provenance().basis());
        });
        tree.put("computed", computedWords());
    }

    /** Six decimals say all that the model knows, and keep the file readable. */
    private static void put(ObjectNode node, String field, double value) {
        node.set(field, JsonText.number(Math.rint(value * 1e6) / 1e6));
    }

    private static String whole(double value) {
        return Refusal.plain(Math.rint(value));
    }
}
