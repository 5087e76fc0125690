package greyground.app.chart;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.chart.CheckPlate;
import greyground.chart.TestPlate;
import greyground.film.job.Job;
import greyground.film.sheet.Sheet;
import greyground.json.JsonText;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What came of making a test plate, in words and as JSON. */
public final class WedgeOutcome {
    private final Job job;
    private final TestPlate plate;
    private final Optional<CheckPlate> check;
    private final ExposurePlan plan;
    private final Sheet sheet;
    private final List<String> notes;

    WedgeOutcome(
            Job job, TestPlate plate, Optional<CheckPlate> check, ExposurePlan plan, Sheet sheet, List<String> notes) {
        this.job = job;
        this.plate = plate;
        this.check = check;
        this.plan = plan;
        this.sheet = sheet;
        List<String> all = new ArrayList<>(notes);
        all.addAll(plan.warnings());
        this.notes = List.copyOf(all);
    }

    /** Lines for a terminal, each led by one word. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("sheet   " + sheetWords());
        sheet.pixels().words().ifPresent(words -> lines.add("size    " + words));
        lines.add("plate   " + job.plate() + ", " + job.process().words() + ", "
                + job.grain().name() + " at " + Refusal.plain(job.resolution().dotsPerInch()) + " dpi");
        lines.add("chart   " + plate.recipe().kind().word() + " " + plate.id() + ", " + wedgeWords());
        check.ifPresent(tones -> lines.add(String.format(
                Locale.ROOT,
                "prints  L* %.1f (bare paper), then %.1f to %.1f in %d steps",
                tones.tones().get(0).lightness(),
                tones.tones().get(1).lightness(),
                tones.tones().get(tones.tones().size() - 1).lightness(),
                tones.tones().size() - 1)));
        lines.add("codes   " + plate.codes().size() + ", each "
                + Refusal.plain(plate.codes().get(0).area().width() / 1000.0) + " mm, dark parts "
                + plate.recipe().codePercent() + " % grain; they say " + plate.codeText());
        lines.add("reads   " + job.placing().readingSide().words());
        lines.add("plan    " + plan.summary());
        plate.leftOut().forEach(left -> lines.add("left out on a plate of this size: " + left));
        notes.forEach(note -> lines.add("note    " + note));
        return lines;
    }

    private String sheetWords() {
        return String.format(
                Locale.ROOT,
                "%.1f x %.1f mm, %d x %d pixels",
                sheet.pixels().acrossMillimetres(sheet.widthPixels()),
                sheet.pixels().downMillimetres(sheet.heightPixels()),
                sheet.widthPixels(),
                sheet.heightPixels());
    }

    private String wedgeWords() {
        if (!plate.strips().isEmpty()) {
            return plate.strips().size() + " strips";
        }
        long levels = plate.patches().stream()
                .map(patch -> patch.coveragePerMille())
                .distinct()
                .count();
        return plate.patches().size() + " fields of " + levels + " levels, each at least " + plate.fewestRepeats()
                + " times";
    }

    /** Adds the outcome to a JSON object. */
    public void describe(ObjectNode tree) {
        tree.put("kind", plate.recipe().kind().word());
        tree.put("id", plate.id());
        tree.put("code", plate.codeText());
        ObjectNode size = tree.putObject("sheet");
        size.put("widthPixels", sheet.widthPixels());
        size.put("heightPixels", sheet.heightPixels());
        size.set("resolutionDotsPerInch", JsonText.number(job.resolution().dotsPerInch()));
        sheet.pixels().words().ifPresent(words -> tree.put("size", words));
        tree.put("plate", job.plate().toString());
        check.ifPresent(tones -> {
            ArrayNode prints = tree.putArray("printsAtLightness");
            for (CheckPlate.Tone tone : tones.tones()) {
                ObjectNode node = prints.addObject();
                node.set("coveragePercent", JsonText.number(tone.coveragePerMille() / 10.0));
                node.set("lightness", JsonText.number(tone.lightness()));
            }
        });
        tree.put("fields", plate.patches().size());
        tree.put("fewestRepeats", plate.fewestRepeats());
        tree.put("strips", plate.strips().size());
        tree.put("codePercent", plate.recipe().codePercent());
        tree.put("mirrored", job.placing().readingSide().mirrored());
        tree.put("plan", plan.summary());
        plate.leftOut().forEach(tree.putArray("leftOut")::add);
        notes.forEach(tree.putArray("notes")::add);
    }
}
