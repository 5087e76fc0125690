package greyground.workshop;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.grain.Grain;
import greyground.grain.Grain.DotShape;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.plate.LightSplit;
import greyground.plate.PlateProcess;
import greyground.quantity.Ruling;
import java.util.Optional;
import java.util.Set;

/** How a plate is made and what carries its tones, as objects of a kept file. A missing field takes its usual value. */
public final class CarrierFields {
    private CarrierFields() {}

    public static void writeProcess(ObjectNode node, PlateProcess process) {
        node.put("kind", process.word());
        if (process instanceof PlateProcess.SprayedAquatint ground) {
            node.set("landFraction", JsonText.number(ground.landFraction()));
            node.set("grainMicrometres", JsonText.number(ground.grainMicrometres()));
            node.put("seed", ground.seed());
        } else if (process instanceof PlateProcess.Photogravure screen) {
            node.set("screenBlack", JsonText.number(screen.screenBlack()));
            node.set("screenSpacingMicrometres", JsonText.number(screen.screenSpacingMicrometres()));
            screen.split().ifPresent(split -> writeSplit(node.putObject("split"), split));
        }
    }

    private static void writeSplit(ObjectNode node, LightSplit split) {
        node.set("screenDose", JsonText.number(split.screenDose()));
        node.set("imageDose", JsonText.number(split.imageDose()));
        node.set("edgeBlurMicrometres", JsonText.number(split.edgeBlurMicrometres()));
    }

    private static LightSplit readSplit(JsonFields fields) {
        return new LightSplit(
                fields.number("screenDose", Double.NaN, LightSplit.DOSE),
                fields.number("imageDose", Double.NaN, LightSplit.DOSE),
                fields.number("edgeBlurMicrometres", Double.NaN, LightSplit.EDGE_BLUR));
    }

    public static void writeGrain(ObjectNode node, Grain grain) {
        if (grain instanceof Grain.Stochastic stochastic) {
            node.put("kind", "stochastic");
            node.set("spacingMicrometres", JsonText.number(stochastic.spacingMicrometres()));
            node.put("seed", stochastic.seed());
        } else if (grain instanceof Grain.Halftone halftone) {
            node.put("kind", "halftone");
            node.set("linesPerCentimetre", JsonText.number(halftone.ruling().linesPerCentimetre()));
            node.set("angleDegrees", JsonText.number(halftone.angleDegrees()));
            node.put("dots", halftone.shape().word());
        } else if (grain instanceof Grain.Continuous continuous) {
            node.put("kind", "continuous");
            node.put("bits", continuous.bits());
        }
    }

    public static PlateProcess readProcess(JsonFields fields) {
        PlateProcess usual = PlateProcess.named(fields.word("kind", "etched-film"));
        if (usual instanceof PlateProcess.SprayedAquatint ground) {
            return new PlateProcess.SprayedAquatint(
                    fields.number("landFraction", ground.landFraction(), PlateProcess.SprayedAquatint.LAND),
                    fields.number("grainMicrometres", ground.grainMicrometres(), PlateProcess.SprayedAquatint.GRAIN),
                    fields.integer("seed", ground.seed(), Long.MIN_VALUE, Long.MAX_VALUE));
        }
        if (usual instanceof PlateProcess.Photogravure) {
            PlateProcess.Photogravure screen = PlateProcess.Photogravure.unsaid();
            return new PlateProcess.Photogravure(
                    fields.number("screenBlack", screen.screenBlack(), PlateProcess.Photogravure.BLACK),
                    fields.number(
                            "screenSpacingMicrometres",
                            screen.screenSpacingMicrometres(),
                            PlateProcess.Photogravure.SPACING),
                    fields.has("split") ? Optional.of(readSplit(fields.section("split"))) : Optional.empty());
        }
        return usual;
    }

    public static Grain readGrain(JsonFields fields) {
        String kind = fields.choice("kind", "stochastic", Set.of("stochastic", "halftone", "continuous"));
        return switch (kind) {
            case "halftone" ->
                new Grain.Halftone(
                        new Ruling(fields.number(
                                "linesPerCentimetre",
                                Grain.Halftone.USUAL.ruling().linesPerCentimetre(),
                                Ruling.LINES)),
                        fields.number("angleDegrees", Grain.Halftone.USUAL.angleDegrees(), Grain.Halftone.ANGLE),
                        fields.choice("dots", "round", Set.of("round", "line")).equals("line")
                                ? DotShape.LINE
                                : DotShape.ROUND);
            case "continuous" -> new Grain.Continuous((int) fields.integer("bits", 16, 8, 16));
            default ->
                new Grain.Stochastic(
                        fields.number(
                                "spacingMicrometres",
                                Grain.Stochastic.USUAL.spacingMicrometres(),
                                Grain.Stochastic.SPACING),
                        fields.integer("seed", 1, Long.MIN_VALUE, Long.MAX_VALUE));
        };
    }
}
