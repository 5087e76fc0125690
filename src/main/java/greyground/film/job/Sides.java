package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import org.jspecify.annotations.Nullable;

/** Width and height. */
record Sides(Range side) implements Kind<Size> {
    @Override
    public Size parse(String what, String text, Kind.Art art) {
        Size size = Size.parse(what, text);
        side.check(what + " width", size.widthMillimetres());
        side.check(what + " height", size.heightMillimetres());
        return size;
    }

    @Override
    public String print(Size value) {
        return Refusal.plain(value.widthMillimetres()) + "x" + Refusal.plain(value.heightMillimetres()) + "mm";
    }

    @Override
    public void write(ObjectNode node, String name, Size value) {
        ObjectNode size = node.putObject(name);
        size.set("widthMillimetres", JsonText.number(value.widthMillimetres()));
        size.set("heightMillimetres", JsonText.number(value.heightMillimetres()));
    }

    @Override
    public Size read(JsonFields fields, String name, @Nullable Size usual) {
        JsonFields size = fields.section(name);
        return new Size(
                size.number("widthMillimetres", Double.NaN, side), size.number("heightMillimetres", Double.NaN, side));
    }
}
