package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.print.PrinterAtHand;
import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.print.DocFlavor;
import javax.print.StreamPrintServiceFactory;
import org.junit.jupiter.api.Test;

public class PrintingModelTest {
    private static final SheetSize SMALL = new SheetSize(150, 150, new Resolution(720));

    /** Java's own writer of PostScript stands for a printer. */
    public static List<PrinterAtHand> printers(OutputStream out) {
        return Stream.of(StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
                        DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript"))
                .map(kind -> PrinterAtHand.of(kind.getPrintService(out)))
                .toList();
    }

    private static PrintingModel model(SheetSize sheet) {
        return new PrintingModel(sheet, printers(OutputStream.nullOutputStream()));
    }

    @Test
    void theSmallestPaperThatFitsIsChosen() {
        PrintingModel model = model(SMALL);
        PrintPaper chosen = model.paper().orElseThrow();
        assertEquals(Optional.empty(), model.refusal());
        for (PrintPaper paper : model.papers().subList(0, model.papers().size() - 1)) {
            boolean smaller = paper.width() * paper.height() < chosen.width() * chosen.height();
            assertEquals(smaller, smaller && model.words(paper).endsWith("too small"), paper.name());
        }
    }

    @Test
    void whatIsTooLargeForThePaperIsRefusedWithBothSizes() {
        PrintingModel model = model(new SheetSize(258, 227, new Resolution(720)));
        model.choose(model.papers().stream()
                .filter(paper -> paper.name().equals("a4"))
                .findFirst()
                .orElseThrow());
        String refusal = model.refusal().orElseThrow();
        assertTrue(refusal.contains("258.0 x 227.0 mm") && refusal.contains(" of a4"), refusal);
    }

    @Test
    void aSheetLargerThanAnyPaperCanStillGoOnARollOfItsOwnSize() {
        PrintingModel model = model(new SheetSize(1500, 2000, new Resolution(720)));
        assertTrue(model.refusal().isPresent());
        model.choose(model.papers().get(model.papers().size() - 1));
        assertEquals(Optional.empty(), model.refusal());
        assertEquals(1500, model.order().paper().width());
    }

    @Test
    void withoutAPrinterItSaysWhatToDo() {
        PrintingModel model = new PrintingModel(SMALL, List.of());
        assertEquals(PrintingModel.NO_PRINTER, model.refusal().orElseThrow());
        assertTrue(model.papers().isEmpty());
    }

    @Test
    void copiesAreAWholeNumber() {
        PrintingModel model = model(SMALL);
        model.tellCopies(" 3 ");
        model.addPlan(true);
        assertEquals(3, model.order().copies());
        assertTrue(model.order().withPlan());
        for (String wrong : List.of("", "0", "two", "100", "1.5")) {
            assertThrows(Refusal.class, () -> model.tellCopies(wrong), wrong);
        }
        assertEquals(3, model.order().copies());
    }

    @Test
    void theRulersAreAlwaysNamed() {
        assertTrue(model(SMALL).advice().contains("100 mm rulers"));
        assertFalse(model(SMALL).advice().contains("names"));
    }

    @Test
    void aSheetThatLiesAlongThePaperIsToldOf() {
        PrintingModel model = model(new SheetSize(258, 150, new Resolution(720)));
        model.choose(model.papers().stream()
                .filter(each -> each.width() < 240 && each.height() > 280)
                .findFirst()
                .orElseThrow());
        assertTrue(model.advice().startsWith(PrintingModel.LENGTHWISE), model.advice());
        assertFalse(model(SMALL).advice().contains(PrintingModel.LENGTHWISE));
    }
}
