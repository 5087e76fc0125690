package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.film.job.FilmFields.Sides;
import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Switch;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.film.job.Placing.Fit;
import greyground.film.job.Placing.Strip;
import greyground.film.job.ReadingSide.InkSide;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.quantity.PaperShrink;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** How art, plate and sheet lie: settings of {@link JobFields}. */
public final class PlacingFields {
    /** Sheets that film printers take are A3 (ISO 216) where nobody says otherwise (assumed). */
    private static final Size OWN_SHEET = Size.parse("sheet", "A3");

    public static final JobField<Fit> FIT = JobField.part(
                    "fit",
                    Choice.of(List.of(
                            new Way<>(Fit.FILL, "fill", "fills the plate"),
                            new Way<>(Fit.WHOLE, "whole", "shown whole"))),
                    job -> job.placing().fit(),
                    "placing.fit")
            .typed("WORD")
            .at("placing", "fit")
            .shown(
                    "Picture",
                    "Fill cuts off evenly what does not suit the plate's proportions; whole leaves clear film round the art, which prints as paper.");

    public static final JobField<Double> BLEED = JobField.part(
                    "bleed", Placing.BLEED, 0.5, job -> job.placing().bleedMillimetres(), "placing.bleedMillimetres")
            .typed("LENGTH")
            .at("placing", "bleedMillimetres")
            .shown(
                    "Bleed",
                    "How far the picture runs past the platemark, so that a plate laid askew has no clear strip; 3 to 5 mm is usual.");

    public static final JobField<Double> BEVEL = JobField.part(
                    "bevel", Placing.BEVEL, 0.5, job -> job.placing().bevelMillimetres(), "placing.bevelMillimetres")
            .typed("LENGTH")
            .at("placing", "bevelMillimetres")
            .shown("Bevel", "Width of the plate's filed edge; short ticks on the film show where it ends.");

    public static final JobField<PaperShrink> PAPER_SHRINK = JobField.part(
                    "paper-shrink", new Shrinking(), job -> job.placing().shrink(), "placing.shrink")
            .typed("X,Y")
            .at("placing", "shrink")
            .shown(
                    "Paper shrinks",
                    "How much damp paper shrinks on drying, across and down, such as 0.7%,0.4%; usually as in the workshop.");

    public static final JobField<Double> SHRINK_ACROSS = JobField.part(
                    "shrink-across",
                    PaperShrink.PERCENT,
                    0.1,
                    job -> job.placing().shrink().acrossPercent(),
                    "placing.shrink.acrossPercent")
            .shown(
                    "Shrinks across",
                    "The paper, from damp to dry. The film's picture is made larger by as much, so that a circle dries round. Measure a platemark damp and dry.");

    public static final JobField<Double> SHRINK_DOWN = JobField.part(
                    "shrink-down",
                    PaperShrink.PERCENT,
                    0.1,
                    job -> job.placing().shrink().downPercent(),
                    "placing.shrink.downPercent")
            .shown("Shrinks down", "The same along the other edge; paper shrinks more across its grain.");

    public static final JobField<InkSide> INK_SIDE = JobField.part(
                    "ink-side",
                    Choice.of(List.of(
                            new Way<>(InkSide.DOWN, "down", "down, on the resist"),
                            new Way<>(InkSide.UP, "up", "up, towards the lamp"))),
                    job -> job.placing().readingSide().inkSide(),
                    "placing.readingSide.inkSide")
            .typed("WORD")
            .at("placing", "inkSide")
            .shown(
                    "Ink side",
                    "Down is sharper: the black touches the resist. Whether the film is mirrored follows from this and from the transfers.");

    public static final JobField<Long> TRANSFERS = JobField.of(
                    "transfers",
                    new Whole(ReadingSide.TRANSFERS),
                    job -> (long) job.placing().readingSide().transfers(),
                    (job, value) -> job.with("placing.readingSide.transfers", value.intValue()))
            .typed("N")
            .at("placing", "transfers")
            .shown(
                    "Transfers",
                    "Contacts from the plate to the final sheet: 1 is direct printing, 2 offset or a counterproof.");

    public static final JobField<Optional<Size>> SHEET = JobField.part(
                    "sheet",
                    new Or<>("automatic", new Sides(Placing.SHEET_SIDE)),
                    job -> job.placing().sheet(),
                    "placing.sheet")
            .typed("SIZE")
            .at("placing", "sheet")
            .shown("Sheet", "The film printer's sheet, such as A3, or 'automatic' for just large enough.");

    public static final JobField<Boolean> OWN_SHEET_SIZE = JobField.of(
                    "sheet-kind",
                    new Switch("as large as it takes", "a size of its own"),
                    job -> job.placing().sheet().isPresent(),
                    (job, value) -> job.with("placing.sheet", value ? Optional.of(ownSheet(job)) : Optional.empty()))
            .shown(
                    "Film sheet",
                    "The film your printer takes. Plate, marks, rulers and wedge strip must find room on it; registered plates of one edition share one size.");

    public static final JobField<Optional<Double>> SHEET_WIDTH = JobField.of(
                    "sheet-width",
                    new Or<>("automatic", new Measured(Placing.SHEET_SIDE, 1)),
                    job -> job.placing().sheet().map(Size::widthMillimetres),
                    (job, value) -> job.with(
                            "placing.sheet",
                            value.map(width -> new Size(width, ownSheet(job).heightMillimetres()))))
            .shown(
                    "Sheet width",
                    "Width of the film sheet, or the name of its size, such as A3 landscape. Left empty, the sheet is as large as plate and marks need.");

    public static final JobField<Optional<Double>> SHEET_HEIGHT = JobField.of(
                    "sheet-height",
                    new Or<>("automatic", new Measured(Placing.SHEET_SIDE, 1)),
                    job -> job.placing().sheet().map(Size::heightMillimetres),
                    (job, value) -> job.with(
                            "placing.sheet",
                            value.map(height -> new Size(ownSheet(job).widthMillimetres(), height))))
            .shown(
                    "Sheet height",
                    "Height of the film sheet. Left empty, the sheet is as large as plate and marks need.");

    public static final JobField<Boolean> TILE = JobField.part(
                    "tile",
                    new Switch("is refused", "goes over several sheets"),
                    job -> job.placing().tiled(),
                    "placing.tiled")
            .typed("YES")
            .at("placing", "tiled")
            .where(job -> job.placing().sheet().isPresent(), "")
            .shown(
                    "Too large a plate",
                    "Splits a plate that is larger than the sheet over several. They overlap and are taped together by their marks.");

    public static final JobField<Strip> STRIP = JobField.part(
                    "strip",
                    Choice.of(List.of(
                                    new Way<>(Strip.BESIDE, "beside", "beside the plate"),
                                    new Way<>(Strip.OFFCUT, "offcut", "on an offcut"),
                                    new Way<>(Strip.MARGIN, "margin", "in the plate's margin"),
                                    new Way<>(Strip.NONE, "none", "left out")))
                            .meaning("beside"),
                    job -> job.placing().strip(),
                    "placing.strip")
            .typed("WORD")
            .at("placing", "strip")
            .shown(
                    "Wedge",
                    "Where the film's wedge lies. Beside the plate it shows the film alone; offcut frames a piece of copper to be laid there, with numbered fields; margin puts them on the plate below a picture that is shown whole; none leaves them out.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED =
            List.of(FIT, BLEED, BEVEL, PAPER_SHRINK, INK_SIDE, TRANSFERS, SHEET, TILE, STRIP);

    private PlacingFields() {}

    private static Size ownSheet(Job job) {
        return job.placing().sheet().orElse(OWN_SHEET);
    }

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
}
