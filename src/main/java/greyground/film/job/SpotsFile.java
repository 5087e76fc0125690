package greyground.film.job;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.art.spots.Spot;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import java.util.List;

/** Dust, hairs and scratches, as a plain JSON file and within that of a job: docs/spots.md. */
public final class SpotsFile {
    /** The newest format that this program writes and reads. */
    static final int VERSION = 1;

    private static final String KIND = "spots";

    private SpotsFile() {}

    /** The text of a file of its own. */
    public static String text(SpotWish.Chosen chosen) {
        return JsonText.print(tree(chosen.spots()));
    }

    static ObjectNode tree(List<Spot> spots) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        write(file.putArray(KIND), spots);
        return file;
    }

    /** Reads spots from the text of their file; a name that looks misspelt is refused. */
    static List<Spot> read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "correct the spots file");
        if (!file.has(KIND)) {
            throw Refusal.use("spots file holds no list \"spots\"; it must have one: see docs/spots.md");
        }
        List<Spot> spots = read(file, KIND);
        file.unknown().stream()
                .flatMap(field -> field.question(KIND).stream())
                .findFirst()
                .ifPresent(question -> {
                    throw Refusal.use(question);
                });
        return spots;
    }

    /** Numbers are there for people: spots count in the file's order. */
    static List<Spot> read(JsonFields fields, String name) {
        return fields.list(name).stream()
                .map(spot -> {
                    spot.integer("number", 1, 1, SpotWish.Chosen.MOST);
                    return new Spot(
                            spot.pairs("placePixels", Spot.PLACE).stream()
                                    .map(pair -> new Spot.Place(pair[0], pair[1]))
                                    .toList(),
                            spot.number("widthPixels", Double.NaN, Spot.WIDTH),
                            spot.number("contrast", 0, Spot.CONTRAST),
                            spot.yes("accepted", true));
                })
                .toList();
    }

    static void write(ArrayNode list, List<Spot> spots) {
        for (int i = 0; i < spots.size(); i++) {
            Spot spot = spots.get(i);
            ObjectNode node = list.addObject();
            node.put("number", i + 1);
            node.put("accepted", spot.accepted());
            ArrayNode places = node.putArray("placePixels");
            spot.points().forEach(point -> {
                ArrayNode pair = places.addArray();
                pair.add(JsonText.number(point.across()));
                pair.add(JsonText.number(point.down()));
            });
            node.set("widthPixels", JsonText.number(spot.widthPixels()));
            node.set("contrast", JsonText.number(spot.contrast()));
        }
    }
}
