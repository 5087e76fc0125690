package greyground.film.job;

import greyground.quantity.PaperShrink;
import greyground.quantity.Range;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import java.util.Optional;

/**
 * How the art lies on the plate and the plate on the film.
 *
 * @param fit how art and plate of different proportions meet
 * @param bleedMillimetres how far the art runs past the platemark, 0 to 6
 * @param bevelMillimetres width of the plate's bevel, 0 to 6
 * @param shrink how much the damp paper shrinks; the film's image is made larger by as much
 * @param readingSide ink side and transfers, from which mirroring follows
 * @param sheet the film printer's sheet, or empty for one just large enough
 * @param tiled whether a plate too large for the sheet is split over several with an overlap
 * @param strip where the wedge lies
 * @param outlines the shapes of plate and picture
 */
public record Placing(
        Fit fit,
        double bleedMillimetres,
        double bevelMillimetres,
        PaperShrink shrink,
        ReadingSide readingSide,
        Optional<Size> sheet,
        boolean tiled,
        Strip strip,
        Outlines outlines) {
    /** How far a picture may run past the platemark. */
    public static final Range BLEED = new Range(0, 6, Unit.MILLIMETRES, "3 to 5 mm is usual");

    public static final Range BEVEL = new Range(0, 6, Unit.MILLIMETRES, "1 to 3 mm is usual");

    /** From the least that a tile shows anything on to what a page of a PDF holds (ISO 32000-1:2008, annex C: 14 400 units, 5080 mm). */
    public static final Range SHEET_SIDE = new Range(40, 5000, Unit.MILLIMETRES, "give the film's own size");

    /** 3 mm of bleed past a 2 mm bevel (common practice: 3-5 mm, 1-3 mm). */
    public static final Placing USUAL = new Placing(
            Fit.FILL, 3, 2, PaperShrink.NONE, ReadingSide.USUAL, Optional.empty(), false, Strip.BESIDE, Outlines.NONE);

    /** How art and plate of different proportions meet. */
    public enum Fit {
        /** The plate is covered; what does not fit is cut off evenly on both sides. */
        FILL,
        /** All the art is shown, centred; the rest of the plate is clear film. */
        WHOLE
    }

    /** Where the wedge's fields lie, and so whether they reach copper. */
    public enum Strip {
        /** On the film beside the plate, unnumbered, as films up to 0.2.0 have it. */
        BESIDE,
        /** Beside the plate within the platemark of an offcut that is laid there, numbered. */
        OFFCUT,
        /** On the plate below a picture that leaves it room, numbered. */
        MARGIN,
        /** Nowhere. */
        NONE
    }

    public Placing {
        BLEED.check("bleed", bleedMillimetres);
        BEVEL.check("bevel", bevelMillimetres);
        sheet.ifPresent(film -> SHEET_SIDE.check("sheet width", film.widthMillimetres()));
        sheet.ifPresent(film -> SHEET_SIDE.check("sheet height", film.heightMillimetres()));
    }

    /** The same on one sheet of a given size, or on one just large enough. */
    public Placing onOneSheet(Optional<Size> one) {
        return new Placing(fit, bleedMillimetres, bevelMillimetres, shrink, readingSide, one, false, strip, outlines);
    }

    /** The same at its true size and with no picture past the platemark. */
    public Placing trueSize() {
        return new Placing(fit, 0, bevelMillimetres, PaperShrink.NONE, readingSide, sheet, tiled, strip, outlines);
    }

    /** The size of each film where a sheet too large for one is split; empty where none is. */
    public Optional<Size> tile() {
        return tiled ? sheet : Optional.empty();
    }
}
