package greyground.desk.model;

import greyground.app.print.FilmPrinting;
import greyground.app.print.PrinterAtHand;
import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is chosen for printing one film: printer, paper, copies, and whether the plan comes with it. One thread uses it. */
public final class PrintingModel {
    public static final String NO_PRINTER =
            "No printer is set up on this computer: make the film as a PDF and print it elsewhere, at 100 %.";

    /** What no program can know of a driver. */
    static final String DRIVER =
            "Sent at 100 %, pixel by pixel. The driver may still fit to the page, thin the toner or screen the dots anew: switch"
                    + " that off, then measure both 100 mm rulers.";

    static final String LENGTHWISE = "The sheet lies along the paper. ";

    private final SheetSize sheet;
    private @Nullable PrinterAtHand printer;
    private @Nullable PrintPaper paper;
    private int copies = 1;
    private boolean withPlan;

    /**
     * Chooses the first printer, and its smallest paper that the sheet goes on.
     *
     * @param sheet the largest film
     * @param printers the usual one first; may be none
     */
    public PrintingModel(SheetSize sheet, List<PrinterAtHand> printers) {
        this.sheet = sheet;
        printers.stream().findFirst().ifPresent(this::choose);
    }

    public SheetSize sheet() {
        return sheet;
    }

    public Optional<PrinterAtHand> printer() {
        return Optional.ofNullable(printer);
    }

    public Optional<PrintPaper> paper() {
        return Optional.ofNullable(paper);
    }

    /** The printer's papers, those that fit first, and the sheet's own size last. */
    public List<PrintPaper> papers() {
        List<PrintPaper> papers = new ArrayList<>();
        printer().ifPresent(chosen -> {
            papers.addAll(chosen.papersFor(sheet));
            papers.add(PrinterAtHand.ownSize(sheet));
        });
        return papers;
    }

    public void choose(PrinterAtHand chosen) {
        printer = chosen;
        paper = papers().get(0);
    }

    public void choose(PrintPaper chosen) {
        paper = chosen;
    }

    /** Reads the number of copies; refused where it is none. */
    public void tellCopies(String words) {
        try {
            int told = Integer.parseInt(words.strip());
            Refusal.checkRange("copies", told, 1, 99, "", "print the rest afterwards");
            copies = told;
        } catch (NumberFormatException noNumber) {
            throw Refusal.use("copies are \"" + words.strip() + "\"; they must be a whole number from 1 to 99");
        }
    }

    public void addPlan(boolean wanted) {
        withPlan = wanted;
    }

    /** A paper in words. */
    public String words(PrintPaper each) {
        return each.name() + "  " + Refusal.plain(Math.rint(each.width())) + " \u00d7 "
                + Refusal.plain(Math.rint(each.height())) + " mm"
                + (SheetOnPaper.lay(sheet, each).isEmpty() ? "  too small" : "");
    }

    /** Why it can't be printed so; empty where it can. */
    public Optional<String> refusal() {
        PrintPaper chosen = paper;
        if (chosen == null) {
            return Optional.of(NO_PRINTER);
        }
        try {
            SheetOnPaper.laid(sheet, chosen);
            return Optional.empty();
        } catch (Refusal tooLarge) {
            return Optional.of(String.valueOf(tooLarge.getMessage()));
        }
    }

    /** What to see to before and after; with a printer that can't give the film's own dots, that first. */
    public String advice() {
        boolean along = paper().flatMap(chosen -> SheetOnPaper.lay(sheet, chosen))
                .filter(SheetOnPaper::lengthwise)
                .isPresent();
        String driver = along ? LENGTHWISE + DRIVER : DRIVER;
        return printer()
                .flatMap(chosen -> chosen.resolutionWarning(sheet.resolution()))
                .map(warning -> DeskWords.of(warning) + ". " + driver)
                .orElse(driver);
    }

    /** What to do, once nothing stands in the way. */
    public FilmPrinting.Order order() {
        return new FilmPrinting.Order(printer().orElseThrow(), paper().orElseThrow(), copies, withPlan);
    }
}
