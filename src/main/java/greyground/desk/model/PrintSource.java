package greyground.desk.model;

import greyground.app.Greyground;
import greyground.app.print.FilmPrinting;
import greyground.app.print.FilmPrinting.Order;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import java.io.IOException;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;

/**
 * A film that can be printed.
 *
 * @param size of its largest sheet
 * @param printing prints it
 */
public record PrintSource(SheetSize size, Printing printing) {
    /** Prints, tells how far it is, and stops when told so by an exception of its listener. */
    @FunctionalInterface
    public interface Printing {
        void print(Order order, DoubleConsumer progress) throws IOException;
    }

    /** The film of what lies on the bench. */
    public static PrintSource of(BenchState state, SheetSize size) {
        return new PrintSource(
                size,
                (order, progress) ->
                        Greyground.print(state.art(), state.job(), state.workshop(), order, progress::accept));
    }

    /** A film PDF, such as a test plate's; reads the file. */
    public static PrintSource of(Path pdf) {
        String title = String.valueOf(pdf.getFileName());
        return new PrintSource(
                FilmPrinting.size(pdf), (order, progress) -> Greyground.print(pdf, title, order, progress::accept));
    }
}
