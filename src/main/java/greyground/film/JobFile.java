package greyground.film;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.ArtChoice.Crop;
import greyground.film.ArtChoice.TonePoint;
import greyground.grain.Grain;
import greyground.grain.Grain.DotShape;
import greyground.plate.PlateProcess;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.workshop.JsonText;
import greyground.workshop.KeptField;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The job as a plain JSON file, units in the names of its fields, always in the same order; the same job gives the same bytes.
 * Unknown fields are kept and written back.
 */
public final class JobFile {
    /** The newest format that this program writes and reads. */
    public static final int VERSION = 1;

    private static final String KIND = "job";

    private JobFile() {}

    /** The job as the text of its file. */
    public static String text(Job job) {
        return JsonText.print(tree(job));
    }

    /** The job as a tree, in the file's order. */
    public static ObjectNode tree(Job job) {
        ObjectNode file = JsonText.object();
        file.put("greyground", KIND);
        file.put("version", VERSION);
        file.put("title", job.title());
        file.put("date", job.date());
        ObjectNode plate = file.putObject("plate");
        plate.set("widthMillimetres", JsonText.number(job.plate().widthMillimetres()));
        plate.set("heightMillimetres", JsonText.number(job.plate().heightMillimetres()));
        writeProcess(file.putObject("process"), job.process());
        file.set("resolutionDotsPerInch", JsonText.number(job.resolution().dotsPerInch()));
        writeGrain(file.putObject("grain"), job.grain());
        writeArt(file.putObject("art"), job.art());
        writePlacing(file.putObject("placing"), job.placing());
        file.put("rangeMapping", job.rangeMapping());
        file.put("mended", job.mended());
        for (KeptField kept : job.kept()) {
            ObjectNode holder = file;
            for (String name : kept.place()) {
                holder = holder.get(name) instanceof ObjectNode inner ? inner : holder.putObject(name);
            }
            holder.set(kept.name(), JsonText.parse("kept field " + kept.name(), kept.json()));
        }
        return file;
    }

    private static void writeProcess(ObjectNode node, PlateProcess process) {
        node.put("kind", process.word());
        if (process instanceof PlateProcess.SprayedAquatint ground) {
            node.set("landFraction", JsonText.number(ground.landFraction()));
            node.set("grainMicrometres", JsonText.number(ground.grainMicrometres()));
            node.put("seed", ground.seed());
        } else if (process instanceof PlateProcess.Photogravure screen) {
            node.set("screenBlack", JsonText.number(screen.screenBlack()));
            node.set("screenSpacingMicrometres", JsonText.number(screen.screenSpacingMicrometres()));
        }
    }

    private static void writeGrain(ObjectNode node, Grain grain) {
        if (grain instanceof Grain.Stochastic stochastic) {
            node.put("kind", "stochastic");
            node.set("spacingMicrometres", JsonText.number(stochastic.spacingMicrometres()));
            node.put("seed", stochastic.seed());
        } else if (grain instanceof Grain.Halftone halftone) {
            node.put("kind", "halftone");
            node.set("linesPerCentimetre", JsonText.number(halftone.ruling().linesPerCentimetre()));
            node.set("angleDegrees", JsonText.number(halftone.angleDegrees()));
            node.put("dots", halftone.shape() == DotShape.LINE ? "line" : "round");
        } else if (grain instanceof Grain.Continuous continuous) {
            node.put("kind", "continuous");
            node.put("bits", continuous.bits());
        }
    }

    private static void writeArt(ObjectNode node, ArtChoice art) {
        node.put("fileName", art.fileName());
        node.put("sha256", art.sha256());
        node.put("page", art.page());
        ObjectNode crop = node.putObject("crop");
        crop.set("left", JsonText.number(art.crop().left()));
        crop.set("top", JsonText.number(art.crop().top()));
        crop.set("width", JsonText.number(art.crop().width()));
        crop.set("height", JsonText.number(art.crop().height()));
        node.put("quarterTurns", art.quarterTurns());
        node.set("straightenDegrees", JsonText.number(art.straightenDegrees()));
        writePoint(node, "whiteLuminance", art.white());
        writePoint(node, "blackLuminance", art.black());
    }

    private static void writePoint(ObjectNode node, String name, TonePoint point) {
        if (point instanceof TonePoint.Given given) {
            node.set(name, JsonText.number(given.luminance()));
        } else {
            node.put(name, "automatic");
        }
    }

    private static void writePlacing(ObjectNode node, Placing placing) {
        node.put("fit", placing.fit().word());
        node.set("bleedMillimetres", JsonText.number(placing.bleedMillimetres()));
        node.set("bevelMillimetres", JsonText.number(placing.bevelMillimetres()));
        node.set("shrinkAcrossPercent", JsonText.number(placing.shrink().acrossPercent()));
        node.set("shrinkDownPercent", JsonText.number(placing.shrink().downPercent()));
        node.put("inkSide", placing.readingSide().inkSide().word());
        node.put("transfers", placing.readingSide().transfers());
        if (placing.sheet().isPresent()) {
            ObjectNode sheet = node.putObject("sheet");
            sheet.set("widthMillimetres", JsonText.number(placing.sheet().get().widthMillimetres()));
            sheet.set("heightMillimetres", JsonText.number(placing.sheet().get().heightMillimetres()));
        } else {
            node.put("sheet", "automatic");
        }
        node.put("tiled", placing.tiled());
    }

    /** Reads a job from the text of its file; a missing field takes its usual value, except the plate, which must be there. */
    public static Job read(String text) {
        JobFields file = new JobFields(List.of(), JsonText.read(KIND, VERSION, text));
        file.integer("version", 1, 1, VERSION);
        file.word("greyground", KIND);
        JobFields plate = file.section("plate");
        return new Job(
                file.word("title", ""),
                file.word("date", ""),
                new Size(
                        plate.number("widthMillimetres", Double.NaN, 10, 3000),
                        plate.number("heightMillimetres", Double.NaN, 10, 3000)),
                readProcess(file.section("process")),
                new Resolution(file.number("resolutionDotsPerInch", 1440, 60, 20_000)),
                readGrain(file.section("grain")),
                readArt(file.section("art")),
                readPlacing(file.section("placing")),
                file.word("rangeMapping", "lightness"),
                file.yes("mended", false),
                file.unknown());
    }

    private static PlateProcess readProcess(JobFields fields) {
        PlateProcess usual = PlateProcess.named(fields.word("kind", "etched-film"));
        if (usual instanceof PlateProcess.SprayedAquatint ground) {
            return new PlateProcess.SprayedAquatint(
                    fields.number("landFraction", ground.landFraction(), 0.05, 0.9),
                    fields.number("grainMicrometres", ground.grainMicrometres(), 5, 300),
                    fields.integer("seed", ground.seed(), Long.MIN_VALUE, Long.MAX_VALUE));
        }
        if (usual instanceof PlateProcess.Photogravure screen) {
            return new PlateProcess.Photogravure(
                    fields.number("screenBlack", screen.screenBlack(), 0.2, 0.8),
                    fields.number("screenSpacingMicrometres", screen.screenSpacingMicrometres(), 60, 400));
        }
        return usual;
    }

    private static Grain readGrain(JobFields fields) {
        String kind = fields.choice("kind", "stochastic", Map.of("stochastic", 1, "halftone", 2, "continuous", 3));
        return switch (kind) {
            case "halftone" ->
                new Grain.Halftone(
                        new Ruling(fields.number("linesPerCentimetre", 60, 5, 400)),
                        fields.number("angleDegrees", 45, -180, 180),
                        fields.choice("dots", "round", Map.of("round", 1, "line", 2))
                                        .equals("line")
                                ? DotShape.LINE
                                : DotShape.ROUND);
            case "continuous" -> new Grain.Continuous((int) fields.integer("bits", 16, 8, 16));
            default ->
                new Grain.Stochastic(
                        fields.number("spacingMicrometres", 180, 20, 2000),
                        fields.integer("seed", 1, Long.MIN_VALUE, Long.MAX_VALUE));
        };
    }

    private static ArtChoice readArt(JobFields fields) {
        JobFields crop = fields.section("crop");
        return new ArtChoice(
                fields.word("fileName", ""),
                fields.word("sha256", ""),
                (int) fields.integer("page", 1, 1, 100_000),
                new Crop(
                        crop.number("left", 0, 0, 1),
                        crop.number("top", 0, 0, 1),
                        crop.number("width", 1, 0, 1),
                        crop.number("height", 1, 0, 1)),
                (int) fields.integer("quarterTurns", 0, 0, 3),
                fields.number("straightenDegrees", 0, -45, 45),
                readPoint(fields, "whiteLuminance"),
                readPoint(fields, "blackLuminance"));
    }

    private static TonePoint readPoint(JobFields fields, String name) {
        return fields.isWord(name, "automatic")
                ? new TonePoint.Automatic()
                : new TonePoint.Given(fields.number(name, Double.NaN, 0, 1));
    }

    private static Placing readPlacing(JobFields fields) {
        Placing usual = Placing.USUAL;
        Optional<Size> sheet = Optional.empty();
        if (!fields.isWord("sheet", "automatic")) {
            JobFields size = fields.section("sheet");
            sheet = Optional.of(new Size(
                    size.number("widthMillimetres", Double.NaN, 10, 10_000),
                    size.number("heightMillimetres", Double.NaN, 10, 10_000)));
        }
        return new Placing(
                Placing.Fit.named(fields.word("fit", usual.fit().word())),
                fields.number("bleedMillimetres", usual.bleedMillimetres(), 0, 6),
                fields.number("bevelMillimetres", usual.bevelMillimetres(), 0, 6),
                new PaperShrink(
                        fields.number("shrinkAcrossPercent", 0, -5, 10), fields.number("shrinkDownPercent", 0, -5, 10)),
                new ReadingSide(
                        ReadingSide.InkSide.named(fields.word(
                                "inkSide", usual.readingSide().inkSide().word())),
                        (int) fields.integer("transfers", 1, 1, 9)),
                sheet,
                fields.yes("tiled", false));
    }
}
