package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptField;
import greyground.quantity.PaperShrink;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.workshop.CarrierFields;
import java.util.List;
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
        CarrierFields.writeProcess(file.putObject("process"), job.process());
        file.set("resolutionDotsPerInch", JsonText.number(job.resolution().dotsPerInch()));
        CarrierFields.writeGrain(file.putObject("grain"), job.grain());
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
        JsonFields file = new JsonFields(KIND, List.of(), JsonText.read(KIND, VERSION, text));
        file.integer("version", 1, 1, VERSION);
        file.word("greyground", KIND);
        JsonFields plate = file.section("plate");
        return new Job(
                file.word("title", ""),
                file.word("date", ""),
                new Size(
                        plate.number("widthMillimetres", Double.NaN, 10, 3000),
                        plate.number("heightMillimetres", Double.NaN, 10, 3000)),
                CarrierFields.readProcess(file.section("process")),
                new Resolution(file.number("resolutionDotsPerInch", 1440, 60, 20_000)),
                CarrierFields.readGrain(file.section("grain")),
                readArt(file.section("art")),
                readPlacing(file.section("placing")),
                file.word("rangeMapping", "lightness"),
                file.yes("mended", false),
                file.unknown());
    }

    private static ArtChoice readArt(JsonFields fields) {
        JsonFields crop = fields.section("crop");
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

    private static TonePoint readPoint(JsonFields fields, String name) {
        return fields.isWord(name, "automatic")
                ? new TonePoint.Automatic()
                : new TonePoint.Given(fields.number(name, Double.NaN, 0, 1));
    }

    private static Placing readPlacing(JsonFields fields) {
        Placing usual = Placing.USUAL;
        Optional<Size> sheet = Optional.empty();
        if (!fields.isWord("sheet", "automatic")) {
            JsonFields size = fields.section("sheet");
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
