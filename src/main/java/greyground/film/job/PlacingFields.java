package greyground.film.job;

import greyground.film.job.Kind.Choice;
import greyground.film.job.Kind.Measured;
import greyground.film.job.Kind.Or;
import greyground.film.job.Kind.Switch;
import greyground.film.job.Kind.Way;
import greyground.film.job.Kind.Whole;
import greyground.film.job.Placing.Fit;
import greyground.film.job.ReadingSide.InkSide;
import greyground.quantity.PaperShrink;
import greyground.quantity.Size;
import java.util.List;
import java.util.Optional;

/** How art, plate and sheet lie: settings of {@link JobFields}. */
public final class PlacingFields {
    /** Sheets that film printers take are A3 (ISO 216) where nobody says otherwise (assumed). */
    private static final Size OWN_SHEET = Size.parse("sheet", "A3");

    public static final JobField<Fit> FIT = JobField.of(
                    "fit",
                    new Choice<>(
                            Fit::word,
                            List.of(
                                    new Way<>(Fit.FILL, Fit.FILL.word(), "fills the plate"),
                                    new Way<>(Fit.WHOLE, Fit.WHOLE.word(), "shown whole"))),
                    draft -> draft.fit,
                    (draft, value) -> draft.fit = value)
            .typed("WORD")
            .at("placing", "fit")
            .shown(
                    "Picture",
                    "Fill cuts off evenly what does not suit the plate's proportions; whole leaves clear film round the art, which prints as paper.");

    public static final JobField<Double> BLEED = JobField.number(
                    "bleed", Placing.BLEED, 0.5, draft -> draft.bleed, (draft, value) -> draft.bleed = value)
            .typed("LENGTH")
            .at("placing", "bleedMillimetres")
            .shown(
                    "Bleed",
                    "How far the picture runs past the platemark, so that a plate laid askew has no clear strip; 3 to 5 mm is usual.");

    public static final JobField<Double> BEVEL = JobField.number(
                    "bevel", Placing.BEVEL, 0.5, draft -> draft.bevel, (draft, value) -> draft.bevel = value)
            .typed("LENGTH")
            .at("placing", "bevelMillimetres")
            .shown("Bevel", "Width of the plate's filed edge; short ticks on the film show where it ends.");

    public static final JobField<PaperShrink> PAPER_SHRINK = JobField.of(
                    "paper-shrink", new Shrinking(), draft -> draft.shrink, (draft, value) -> draft.shrink = value)
            .typed("X,Y")
            .at("placing", "shrink")
            .shown(
                    "Paper shrinks",
                    "How much damp paper shrinks on drying, across and down, such as 0.7%,0.4%; usually as in the workshop.");

    public static final JobField<Double> SHRINK_ACROSS = JobField.number(
                    "shrink-across",
                    PaperShrink.PERCENT,
                    0.1,
                    draft -> draft.shrink.acrossPercent(),
                    (draft, value) -> draft.shrink = new PaperShrink(value, draft.shrink.downPercent()))
            .shown(
                    "Shrinks across",
                    "The paper, from damp to dry. The film's picture is made larger by as much, so that a circle dries round. Measure a platemark damp and dry.");

    public static final JobField<Double> SHRINK_DOWN = JobField.number(
                    "shrink-down",
                    PaperShrink.PERCENT,
                    0.1,
                    draft -> draft.shrink.downPercent(),
                    (draft, value) -> draft.shrink = new PaperShrink(draft.shrink.acrossPercent(), value))
            .shown("Shrinks down", "The same along the other edge; paper shrinks more across its grain.");

    public static final JobField<InkSide> INK_SIDE = JobField.of(
                    "ink-side",
                    new Choice<>(
                            InkSide::word,
                            List.of(
                                    new Way<>(InkSide.DOWN, InkSide.DOWN.word(), "down, on the resist"),
                                    new Way<>(InkSide.UP, InkSide.UP.word(), "up, towards the lamp"))),
                    draft -> draft.inkSide,
                    (draft, value) -> draft.inkSide = value)
            .typed("WORD")
            .at("placing", "inkSide")
            .shown(
                    "Ink side",
                    "Down is sharper: the black touches the resist. Whether the film is mirrored follows from this and from the transfers.");

    public static final JobField<Long> TRANSFERS = JobField.of(
                    "transfers",
                    new Whole(ReadingSide.TRANSFERS),
                    draft -> (long) draft.transfers,
                    (draft, value) -> draft.transfers = value.intValue())
            .typed("N")
            .at("placing", "transfers")
            .shown(
                    "Transfers",
                    "Contacts from the plate to the final sheet: 1 is direct printing, 2 offset or a counterproof.");

    public static final JobField<Optional<Size>> SHEET = JobField.of(
                    "sheet",
                    new Or<>("automatic", new Sides(Placing.SHEET_SIDE)),
                    draft -> draft.sheet,
                    (draft, value) -> draft.sheet = value)
            .typed("SIZE")
            .at("placing", "sheet")
            .shown("Sheet", "The film printer's sheet, such as A3, or 'automatic' for just large enough.");

    public static final JobField<Boolean> OWN_SHEET_SIZE = JobField.of(
                    "sheet-kind",
                    new Switch("as large as it takes", "a size of its own"),
                    draft -> draft.sheet.isPresent(),
                    (draft, value) ->
                            draft.sheet = value ? Optional.of(draft.sheet.orElse(OWN_SHEET)) : Optional.empty())
            .shown(
                    "Film sheet",
                    "The film your printer takes. Plate, marks, rulers and wedge strip must find room on it; registered plates of one edition share one size.");

    public static final JobField<Optional<Double>> SHEET_WIDTH = JobField.of(
                    "sheet-width",
                    new Or<>("automatic", new Measured(Placing.SHEET_SIDE, 1)),
                    draft -> draft.sheet.map(Size::widthMillimetres),
                    (draft, value) -> draft.sheet = value.map(width ->
                            new Size(width, draft.sheet.orElse(OWN_SHEET).heightMillimetres())))
            .shown("Sheet width", "Width of the film sheet. Left empty, it is as wide as plate and marks need.");

    public static final JobField<Optional<Double>> SHEET_HEIGHT = JobField.of(
                    "sheet-height",
                    new Or<>("automatic", new Measured(Placing.SHEET_SIDE, 1)),
                    draft -> draft.sheet.map(Size::heightMillimetres),
                    (draft, value) -> draft.sheet = value.map(
                            height -> new Size(draft.sheet.orElse(OWN_SHEET).widthMillimetres(), height)))
            .shown("Sheet height", "Height of the film sheet. Left empty, it is as tall as plate and marks need.");

    public static final JobField<Boolean> TILE = JobField.of(
                    "tile",
                    new Switch("is refused", "goes over several sheets"),
                    draft -> draft.tiled,
                    (draft, value) -> draft.tiled = value)
            .typed("YES")
            .at("placing", "tiled")
            .where(draft -> draft.sheet.isPresent(), "")
            .shown(
                    "Too large a plate",
                    "Splits a plate that is larger than the sheet over several. They overlap and are taped together by their marks.");

    /** Those that are typed or kept, in the order of the job's file. */
    static final List<JobField<?>> LISTED = List.of(FIT, BLEED, BEVEL, PAPER_SHRINK, INK_SIDE, TRANSFERS, SHEET, TILE);

    private PlacingFields() {}
}
