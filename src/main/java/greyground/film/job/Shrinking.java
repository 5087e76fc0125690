package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.PaperShrink;
import greyground.quantity.Unit;
import org.jspecify.annotations.Nullable;

/** Shrinkage across and down. */
record Shrinking() implements Kind<PaperShrink> {
    @Override
    public PaperShrink parse(String what, String text, Kind.Art art) {
        return PaperShrink.parse(what, text);
    }

    @Override
    public String print(PaperShrink value) {
        return Unit.PERCENT.text(value.acrossPercent()) + "," + Unit.PERCENT.text(value.downPercent());
    }

    @Override
    public void write(ObjectNode node, String name, PaperShrink value) {
        node.set("shrinkAcrossPercent", JsonText.number(value.acrossPercent()));
        node.set("shrinkDownPercent", JsonText.number(value.downPercent()));
    }

    @Override
    public PaperShrink read(JsonFields fields, String name, @Nullable PaperShrink usual) {
        return new PaperShrink(
                fields.number("shrinkAcrossPercent", 0, PaperShrink.PERCENT),
                fields.number("shrinkDownPercent", 0, PaperShrink.PERCENT));
    }
}
