package greyground.ink;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.colour.Acceptance;
import greyground.colour.InkInBands;
import greyground.colour.Lab;
import greyground.colour.Xyz;
import greyground.ink.InkSet.Overprint;
import greyground.ink.PrintingInk.Opacity;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.workshop.ResponseFields;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The inks of a set as a plain JSON file: docs/plates.md. */
public final class InksFile {
    /** The newest format that this program writes and reads. */
    static final int VERSION = 1;

    private static final String KIND = "inks";
    private static final String ACCEPTANCE = "acceptance";
    private static final String PAIRS = "pairs";
    private static final String TONES = "tones";
    private static final String COLOURS = "colours";
    private static final Range LAB = new Range(-200, 200, Unit.LIGHTNESS, "give L*, a* and b* under D50");
    private static final Pattern CODE = Pattern.compile("#[0-9A-Fa-f]{6}");
    private static final Set<String> OPACITIES =
            Arrays.stream(Opacity.values()).map(Opacity::word).collect(Collectors.toSet());

    private InksFile() {}

    /** Reads inks from the text of their file; a name that looks misspelt is refused. */
    public static InkSet read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "correct the inks file");
        if (!file.has(KIND)) {
            throw Refusal.use("inks file holds no list \"inks\"; it must have one: see docs/plates.md");
        }
        List<PrintingInk> inks = file.list(KIND).stream().map(InksFile::ink).toList();
        List<Overprint> overprints = file.list("overprints").stream()
                .map(each -> overprint(each, inks))
                .toList();
        Acceptance acceptance = acceptance(file, inks);
        Optional<Lab> paper = colour(file.section("paper"));
        file.unknown().stream()
                .flatMap(field -> field.question(KIND).stream())
                .findFirst()
                .ifPresent(question -> {
                    throw Refusal.use(question);
                });
        return new InkSet(paper, inks, overprints, acceptance);
    }

    private static PrintingInk ink(JsonFields fields) {
        return new PrintingInk(
                fields.word("name"),
                colour(fields),
                fields.number("filmMicrometres", PrintingInk.USUAL_FILM_MICROMETRES, InkInBands.FILM),
                fields.number("strength", 1, PrintingInk.STRENGTH),
                Opacity.valueOf(
                        fields.choice("opacity", "transparent", OPACITIES).toUpperCase(Locale.ROOT)),
                fields.has(TONES) ? Optional.of(tones(fields.section(TONES))) : Optional.empty());
    }

    private static InkTones tones(JsonFields fields) {
        return new InkTones(
                ResponseFields.response(fields),
                fields.list(COLOURS).stream()
                        .map(each -> colour(each)
                                .orElseThrow(() -> Refusal.use(
                                        "inks file has a tone without colour: add its \"lab\", or read the test"
                                                + " plates again")))
                        .toList());
    }

    /** A colour by L*a*b* or as a screen shows it. */
    private static Optional<Lab> colour(JsonFields fields) {
        if (fields.has("lab") && fields.has("screen")) {
            throw Refusal.use("inks file gives one colour both as lab "
                    + Arrays.toString(fields.triple("lab", LAB)) + " and as screen \"" + fields.word("screen")
                    + "\": leave one of them out");
        }
        if (fields.has("lab")) {
            double[] lab = fields.triple("lab", LAB);
            return Optional.of(new Lab(lab[0], lab[1], lab[2]));
        }
        if (!fields.has("screen")) {
            return Optional.empty();
        }
        String code = fields.word("screen");
        if (!CODE.matcher(code).matches()) {
            throw Refusal.use("inks file has the screen colour \"" + code
                    + "\"; it must be # and six digits of red, green and blue, such as \"#E8D44D\": correct it");
        }
        return Optional.of(Lab.of(Xyz.ofCode(Integer.parseInt(code.substring(1), 16))));
    }

    private static Acceptance acceptance(JsonFields file, List<PrintingInk> inks) {
        Map<Integer, Double> pairs = new TreeMap<>();
        for (JsonFields each : file.list(PAIRS)) {
            int plates = plates("a pair", each, inks);
            if (Integer.bitCount(plates) != 2 || pairs.containsKey(plates)) {
                throw Refusal.use("inks file has a pair of " + each.words(KIND)
                        + "; each pair must name two inks, and once only: correct it");
            }
            pairs.put(plates, each.number(ACCEPTANCE, Double.NaN, Acceptance.SHARE));
        }
        return new Acceptance(file.number(ACCEPTANCE, 1, Acceptance.SHARE), pairs);
    }

    private static int plates(String what, JsonFields fields, List<PrintingInk> inks) {
        int plates = 0;
        List<String> names = fields.words(KIND);
        for (String name : names) {
            int at = inks.stream().map(PrintingInk::name).toList().indexOf(name);
            if (at < 0 || (plates >> at & 1) != 0) {
                throw Refusal.use("inks file has " + what + " of " + names + ", and " + name
                        + (at < 0 ? " is none of its inks" : " is named twice") + ": correct the name");
            }
            plates |= 1 << at;
        }
        if (names.size() < 2) {
            throw Refusal.use("inks file has " + what + " of " + names
                    + "; it must name two inks or more, such as [\"yellow\", \"blue\"]: correct it");
        }
        return plates;
    }

    private static Overprint overprint(JsonFields fields, List<PrintingInk> inks) {
        int plates = plates("an overprint", fields, inks);
        List<String> names = fields.words(KIND);
        return new Overprint(
                plates,
                colour(fields)
                        .orElseThrow(() -> Refusal.use("inks file gives no colour for the overprint of " + names
                                + ": add its \"lab\" or \"screen\"")));
    }

    /** Inks as the text of their file, every colour by L*a*b*. */
    public static String text(InkSet set) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        set.paper().ifPresent(paper -> put(file.putObject("paper"), paper));
        ArrayNode inks = file.putArray(KIND);
        for (PrintingInk ink : set.inks()) {
            ObjectNode each = inks.addObject().put("name", ink.name());
            ink.patch().ifPresent(patch -> {
                put(each, patch);
                each.set("filmMicrometres", JsonText.number(ink.filmMicrometres()));
            });
            each.set("strength", JsonText.number(ink.strength()));
            each.put("opacity", ink.opacity().word());
            ink.tones().ifPresent(tones -> {
                ObjectNode node = each.putObject(TONES);
                ResponseFields.write(tones.response(), node);
                ArrayNode colours = node.putArray(COLOURS);
                tones.colours().forEach(colour -> put(colours.addObject(), colour));
            });
        }
        if (!set.acceptance().isWhole()) {
            file.set(ACCEPTANCE, JsonText.number(set.acceptance().usual()));
        }
        if (!set.acceptance().pairs().isEmpty()) {
            ArrayNode pairs = file.putArray(PAIRS);
            new TreeMap<>(set.acceptance().pairs())
                    .forEach((plates, share) -> named(pairs, set, plates).set(ACCEPTANCE, JsonText.number(share)));
        }
        if (!set.overprints().isEmpty()) {
            ArrayNode overprints = file.putArray("overprints");
            set.overprints().forEach(over -> put(named(overprints, set, over.plates()), over.colour()));
        }
        return JsonText.print(file);
    }

    private static ObjectNode named(ArrayNode list, InkSet set, int plates) {
        ObjectNode each = list.addObject();
        ArrayNode names = each.putArray(KIND);
        for (int i = 0; i < set.inks().size(); i++) {
            if ((plates >> i & 1) != 0) {
                names.add(set.inks().get(i).name());
            }
        }
        return each;
    }

    private static void put(ObjectNode node, Lab colour) {
        node.putArray("lab")
                .add(JsonText.number(colour.lightness()))
                .add(JsonText.number(colour.a()))
                .add(JsonText.number(colour.b()));
    }
}
