package greyground.app.print;

import greyground.app.recipe.ArtSource;
import greyground.app.recipe.PositiveWork;
import greyground.film.job.Job;
import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.output.FilmPrintout;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import javax.print.PrintException;
import javax.print.SimpleDoc;

public final class FilmPrinting {
    /** Composing takes about as long as handing over (assumed). */
    private static final double MAKING_SHARE = 0.5;

    private FilmPrinting() {}

    /**
     * How to print.
     *
     * @param copies 1 to 99
     * @param withPlan whether the plan's pages follow the film
     */
    public record Order(PrinterAtHand printer, PrintPaper paper, int copies, boolean withPlan) {
        public Order {
            Refusal.checkRange("copies", copies, 1, 99, "", "print the rest afterwards");
        }
    }

    public static SheetSize size(Path pdf) {
        return FilmPrintout.size(pdf);
    }

    /** Makes a job's film as a PDF of its own, which is gone afterwards, and prints it. */
    public static void print(Path art, Job job, Workshop workshop, Order order, Progress progress) throws IOException {
        Path folder = Files.createTempDirectory("greyground");
        Path film = folder.resolve("film.pdf");
        try {
            PositiveWork.prepare(
                    ArtSource.open(art),
                    job,
                    workshop,
                    Optional.of(film),
                    Optional.empty(),
                    progress.part(0, MAKING_SHARE));
            print(film, job.title(), order, progress.part(MAKING_SHARE, 1));
        } finally {
            Files.deleteIfExists(film);
            Files.deleteIfExists(folder);
        }
    }

    /**
     * Prints a film PDF.
     *
     * @param title by which the printer's queue knows it
     */
    public static void print(Path pdf, String title, Order order, Progress progress) throws IOException {
        Stopping stopping = new Stopping(progress);
        try (FilmPrintout pages = FilmPrintout.open(pdf, order.paper(), order.withPlan(), stopping)) {
            order.printer()
                    .service()
                    .createPrintJob()
                    .print(
                            new SimpleDoc(pages, PrinterAtHand.PAGES, null),
                            order.printer().request(order.paper(), order.copies(), pages.resolution(), title));
        } catch (PrintException | RuntimeException failed) {
            if (stopping.stopped) {
                throw new CancellationException("stopped");
            }
            if (failed instanceof Refusal refusal) {
                throw refusal;
            }
            throw Refusal.failure(
                    order.printer().name() + " did not take the film: see whether it is switched on, or make the PDF",
                    failed);
        }
    }

    /** Java's printing wraps what a page throws, so that the wish to stop must be remembered. */
    private static final class Stopping implements Progress {
        private final Progress progress;
        private boolean stopped;

        Stopping(Progress progress) {
            this.progress = progress;
        }

        @Override
        public void done(double fraction) {
            try {
                progress.done(fraction);
            } catch (CancellationException wanted) {
                stopped = true;
                throw wanted;
            }
        }
    }
}
