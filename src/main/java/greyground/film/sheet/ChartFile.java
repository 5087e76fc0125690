package greyground.film.sheet;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.chart.Area;
import greyground.chart.CheckPlate;
import greyground.chart.CodeText;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Recipe;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.chart.TestPlate.Strip;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A test plate's places as a plain JSON file, in micrometres from the plate's top left as the print reads. Reading needs only the code's
 * text, from which all the rest follows, and of a check plate the tones and how they should print; the rest is for other programs
 * and for people.
 */
public final class ChartFile {
    private static final String KIND = "chart";
    private static final int VERSION = 1;
    private static final String PRINTS = "printsAtLightness";
    private static final String PREDICTED = "predictedCoveragePercent";

    private ChartFile() {}

    public static String text(TestPlate plate) {
        return JsonText.print(tree(plate));
    }

    /** The text of a check plate's file, which says how each tone should print. */
    public static String text(CheckPlate check) {
        ObjectNode file = tree(check.plate());
        ArrayNode tones = file.putArray(PRINTS);
        for (CheckPlate.Tone tone : check.tones()) {
            ObjectNode node = tones.addObject();
            node.set("coveragePercent", JsonText.number(tone.coveragePerMille() / 10.0));
            node.set("lightness", JsonText.number(tone.lightness()));
            tone.predictedCoverage().ifPresent(coverage -> node.set(PREDICTED, JsonText.number(coverage * 100)));
        }
        return JsonText.print(file);
    }

    public static ObjectNode tree(TestPlate plate) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        file.put("kind", plate.recipe().kind().word());
        file.put("id", plate.id());
        file.put("code", plate.codeText());
        file.put("plateWidthMicrometres", plate.recipe().widthMicrometres());
        file.put("plateHeightMicrometres", plate.recipe().heightMicrometres());
        file.put("bevelMicrometres", plate.recipe().bevelMicrometres());
        file.put("seed", plate.recipe().seed());
        file.put("codePercent", plate.recipe().codePercent());
        file.put("codeModuleMicrometres", plate.recipe().codeModuleMicrometres());
        ArrayNode patches = file.putArray("patches");
        for (LevelPatch patch : plate.patches()) {
            ObjectNode node = place(patches.addObject(), patch.area());
            node.set("coveragePercent", JsonText.number(patch.coveragePerMille() / 10.0));
        }
        ArrayNode targets = file.putArray("targets");
        plate.targets().forEach(target -> describe(targets.addObject(), target));
        ArrayNode codes = file.putArray("codes");
        for (CornerCode code : plate.codes()) {
            place(codes.addObject(), code.area()).put("text", code.text());
        }
        ArrayNode strips = file.putArray("strips");
        for (Strip strip : plate.strips()) {
            place(strips.addObject(), strip.area()).put("number", strip.number());
        }
        plate.legend().forEach(file.putArray("legend")::add);
        plate.leftOut().forEach(file.putArray("leftOut")::add);
        return file;
    }

    /** The plate that a chart file tells of. */
    public static TestPlate read(String text) {
        return readCheck(text)
                .map(CheckPlate::plate)
                .orElseGet(() -> TestPlate.ofCode(fields(text).word("code")));
    }

    private static JsonFields fields(String text) {
        return JsonFields.read(KIND, VERSION, text, "make the test plate again");
    }

    /** The check plate that a chart file tells of; empty where it tells of another kind. */
    public static Optional<CheckPlate> readCheck(String text) {
        JsonFields file = fields(text);
        if (!file.word("kind", "").equals(Recipe.Kind.CHECK.word())) {
            return Optional.empty();
        }
        CodeText code = CodeText.read(file.word("code"));
        List<CheckPlate.Tone> tones =
                file.list(PRINTS).stream().map(ChartFile::tone).toList();
        CheckPlate check = CheckPlate.of(code.recipe(), tones);
        if (!check.plate().id().equals(code.id())) {
            throw Refusal.failure("the chart names itself " + code.id() + ", but its tones make it "
                    + check.plate().id() + ": make the test plate again");
        }
        return Optional.of(check);
    }

    /** Films of before 0.3 say "foretold". */
    private static CheckPlate.Tone tone(JsonFields fields) {
        Optional<Double> predicted = Stream.of(PREDICTED, "foretoldCoveragePercent")
                .filter(fields::has)
                .findFirst()
                .map(name -> fields.number(name) / 100);
        int perMille = (int) Math.round(fields.number("coveragePercent") * 10);
        return new CheckPlate.Tone(perMille, fields.number("lightness"), predicted);
    }

    private static void describe(ObjectNode node, Target target) {
        node.put("kind", word(target));
        place(node, target.area());
        if (target instanceof Target.Dots dots) {
            node.put("diameter", dots.diameter()).put("pitch", dots.pitch());
        } else if (target instanceof Target.Holes holes) {
            node.put("diameter", holes.diameter()).put("pitch", holes.pitch());
        } else if (target instanceof Target.Lines lines) {
            node.put("period", lines.period()).put("upright", lines.upright());
        } else if (target instanceof Target.Bar bar) {
            node.put("upright", bar.upright());
        } else if (target instanceof Target.Star) {
            node.put("wedges", Target.Star.WEDGES);
        } else if (target instanceof Target.Dark dark) {
            node.set("coveragePercent", JsonText.number(dark.coveragePerMille() / 10.0));
        } else if (target instanceof Target.Numeral numeral) {
            node.put("number", numeral.number());
        }
    }

    private static String word(Target target) {
        if (target instanceof Target.Dots) {
            return "dots";
        }
        if (target instanceof Target.Holes) {
            return "holes";
        }
        if (target instanceof Target.Lines) {
            return "lines";
        }
        if (target instanceof Target.Star) {
            return "star";
        }
        if (target instanceof Target.Dark) {
            return "dark";
        }
        if (target instanceof Target.Numeral) {
            return "numeral";
        }
        return target instanceof Target.Bar ? "bar" : "bare";
    }

    static ObjectNode place(ObjectNode node, Area area) {
        return node.put("left", area.left())
                .put("top", area.top())
                .put("width", area.width())
                .put("height", area.height());
    }
}
