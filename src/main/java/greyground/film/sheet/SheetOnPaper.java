package greyground.film.sheet;

import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.util.Locale;
import java.util.Optional;

/**
 * Where a film sheet lies on a printer's paper: in its middle, or as near to it as all that is drawn can be printed; never scaled. The
 * place is a whole number of film pixels, so that on a printer of the film's own resolution pixel falls on pixel.
 *
 * @param lengthwise whether the sheet lies along the paper's length
 * @param leftMillimetres from the paper's left edge, turned with the sheet
 * @param topMillimetres from its upper edge, turned with the sheet
 */
public record SheetOnPaper(boolean lengthwise, double leftMillimetres, double topMillimetres) {
    /** Nothing is drawn nearer to a sheet's edge: {@link SheetLayout}. */
    public static final double CLEAR_RIM_MILLIMETRES = 2;

    /** Printers give their sizes rounded to some hundredths (assumed). */
    private static final double SLACK_MILLIMETRES = 0.05;

    /**
     * A sheet as its file has it.
     *
     * @param widthMillimetres above 0
     * @param heightMillimetres above 0
     */
    public record SheetSize(double widthMillimetres, double heightMillimetres, Resolution resolution) {
        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.1f x %.1f mm", widthMillimetres, heightMillimetres);
        }
    }

    /** Lays a sheet on paper; empty where it does not go on it. */
    public static Optional<SheetOnPaper> lay(SheetSize sheet, PrintPaper paper) {
        return upright(sheet, paper, false).or(() -> upright(sheet, turned(paper), true));
    }

    /** As {@link #lay}, but refused in a line that says both sizes. */
    public static SheetOnPaper laid(SheetSize sheet, PrintPaper paper) {
        return lay(sheet, paper)
                .orElseThrow(() -> Refusal.use("the film sheet is " + sheet + ", the printer reaches " + paper.reach()
                        + ": choose larger paper, or a smaller plate, or make the PDF and have it printed elsewhere"));
    }

    /** The paper as a page lies on it lengthwise: its left edge is the upright paper's bottom. */
    private static PrintPaper turned(PrintPaper paper) {
        double foot = paper.height() - paper.printableTop() - paper.printableHeight();
        double along = paper.height();
        double over = paper.width();
        double reachAlong = paper.printableHeight();
        double reachOver = paper.printableWidth();
        return new PrintPaper(paper.name(), along, over, foot, paper.printableLeft(), reachAlong, reachOver);
    }

    private static Optional<SheetOnPaper> upright(SheetSize sheet, PrintPaper paper, boolean lengthwise) {
        double width = sheet.widthMillimetres() - 2 * CLEAR_RIM_MILLIMETRES;
        double height = sheet.heightMillimetres() - 2 * CLEAR_RIM_MILLIMETRES;
        if (width > paper.printableWidth() + SLACK_MILLIMETRES
                || height > paper.printableHeight() + SLACK_MILLIMETRES) {
            return Optional.empty();
        }
        double left = held(
                (paper.width() - sheet.widthMillimetres()) / 2,
                paper.printableLeft() - CLEAR_RIM_MILLIMETRES,
                paper.printableLeft() + paper.printableWidth() - sheet.widthMillimetres() + CLEAR_RIM_MILLIMETRES);
        double top = held(
                (paper.height() - sheet.heightMillimetres()) / 2,
                paper.printableTop() - CLEAR_RIM_MILLIMETRES,
                paper.printableTop() + paper.printableHeight() - sheet.heightMillimetres() + CLEAR_RIM_MILLIMETRES);
        // Printers count from the upright paper's upper left corner; lengthwise, that is the page's lower left.
        double right = paper.width() - sheet.widthMillimetres() - left;
        double fromLeft =
                lengthwise ? paper.width() - sheet.widthMillimetres() - whole(right, sheet) : whole(left, sheet);
        return Optional.of(new SheetOnPaper(lengthwise, fromLeft, whole(top, sheet)));
    }

    private static double held(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    private static double whole(double millimetres, SheetSize sheet) {
        double pixel = Lengths.MILLIMETRES_PER_INCH / sheet.resolution().dotsPerInch();
        return Math.rint(millimetres / pixel) * pixel;
    }
}
