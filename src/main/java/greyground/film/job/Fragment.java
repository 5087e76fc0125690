package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.job.ArtChoice.Crop;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A fragment of the art. */
record Fragment() implements Kind<Crop> {
    @Override
    public Crop parse(String what, String text, Kind.Art art) {
        String[] parts = text.split(",", -1);
        if (parts.length != 4) {
            throw Refusal.use(
                    what + " \"" + text + "\" has " + parts.length
                            + " parts; it must have 4: left,top,width,height, each in % or pixels, such as 10%,5%,80%,80%; or be the word covered");
        }
        double[] shares = new double[4];
        for (int i = 0; i < 4; i++) {
            String part = parts[i].strip();
            if (part.endsWith("%")) {
                shares[i] = Unit.SHARE.parse(what, part);
            } else if (part.matches("[0-9]{1,9}(px)?") && art.width() > 0) {
                shares[i] = Integer.parseInt(part.replace("px", "")) / (i % 2 == 0 ? art.width() : art.height());
            } else {
                throw Refusal.use(
                        what + " part \"" + part + "\" is neither a percentage nor whole pixels: write 10% or 240");
            }
        }
        return new Crop(shares[0], shares[1], shares[2], shares[3]);
    }

    @Override
    public String print(Crop crop) {
        return Stream.of(crop.left(), crop.top(), crop.width(), crop.height())
                .map(Unit.SHARE::text)
                .collect(Collectors.joining(","));
    }

    @Override
    public void write(ObjectNode node, String name, Crop value) {
        ObjectNode crop = node.putObject(name);
        crop.set("left", JsonText.number(value.left()));
        crop.set("top", JsonText.number(value.top()));
        crop.set("width", JsonText.number(value.width()));
        crop.set("height", JsonText.number(value.height()));
    }

    @Override
    public Crop read(JsonFields fields, String name, @Nullable Crop usual) {
        JsonFields crop = fields.section(name);
        return new Crop(
                crop.number("left", 0, Crop.SHARE),
                crop.number("top", 0, Crop.SHARE),
                crop.number("width", 1, Crop.SHARE),
                crop.number("height", 1, Crop.SHARE));
    }
}
