package greyground.output;

import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.output.FilmPdfReader.ReadFilm;
import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.raster.Progress;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.print.PageFormat;
import java.awt.print.Pageable;
import java.awt.print.Paper;
import java.awt.print.Printable;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.rendering.PageDrawer;
import org.apache.pdfbox.rendering.PageDrawerParameters;
import org.apache.pdfbox.rendering.RenderDestination;

/**
 * A film PDF on a printer's pages: every film at its true size, pixel by pixel as the file holds them, with its words as outlines; then,
 * if wanted, the plan, which alone may be made smaller. What the printer's driver does with it afterwards is out of our hands.
 *
 * <p>One thread prints it and closes it.
 */
public final class FilmPrintout implements Pageable, Printable, Closeable {
    private static final double POINTS = 72 / Lengths.MILLIMETRES_PER_INCH;

    /** Java asks for each page at least twice: to see what is on it, and to print it (shares assumed). */
    private static final double FIRST_PASS_SHARE = 0.4;

    /** Edges exactly on the printer's grid would be rounded now one way, now the other, and bands lie a pixel apart (assumed). */
    private static final double NUDGE_PIXELS = 0.2;

    private final FilmPdfReader reader;
    private final PDDocument document;
    private final List<ReadFilm> films;
    private final PrintPaper paper;
    private final int pages;
    private final Progress progress;
    private int page = -1;
    private int pass;

    private FilmPrintout(FilmPdfReader reader, PrintPaper paper, boolean withPlan, Progress progress) {
        this.reader = reader;
        this.document = reader.document();
        this.films = reader.films();
        this.paper = paper;
        this.pages = withPlan ? document.getNumberOfPages() : films.size();
        this.progress = progress;
    }

    /** The largest film sheet of a film PDF. */
    public static SheetSize size(Path pdf) {
        try (FilmPdfReader reader = FilmPdfReader.open(pdf)) {
            return size(reader.films());
        } catch (IOException broken) {
            throw Refusal.failure(pdf.getFileName() + " can't be read as a film PDF: make it anew", broken);
        }
    }

    private static SheetSize size(List<ReadFilm> films) {
        double width = 0;
        double height = 0;
        for (ReadFilm film : films) {
            width = Math.max(width, film.resolution().millimetres(film.widthPixels()));
            height = Math.max(height, film.resolution().millimetres(film.heightPixels()));
        }
        return new SheetSize(width, height, films.get(0).resolution());
    }

    /**
     * Opens a film PDF for a paper; refused where a film does not go on it.
     *
     * @param withPlan whether the plan's pages follow the films
     * @param progress hears how far it is; may stop the printing
     */
    public static FilmPrintout open(Path pdf, PrintPaper paper, boolean withPlan, Progress progress) {
        SheetOnPaper.laid(size(pdf), paper);
        return new FilmPrintout(FilmPdfReader.open(pdf), paper, withPlan, progress);
    }

    /** Of the films. */
    public Resolution resolution() {
        return films.get(0).resolution();
    }

    @Override
    public int getNumberOfPages() {
        return pages;
    }

    @Override
    public PageFormat getPageFormat(int index) {
        Paper sheet = new Paper();
        sheet.setSize(paper.width() * POINTS, paper.height() * POINTS);
        // All of it: a margin that the driver keeps is its own, and a clip of ours could only cost marks.
        sheet.setImageableArea(0, 0, sheet.getWidth(), sheet.getHeight());
        PageFormat format = new PageFormat();
        format.setPaper(sheet);
        // Upright always: what lies lengthwise is turned here, since Java turns pictures at the cost of some of their
        // pixels.
        format.setOrientation(PageFormat.PORTRAIT);
        return format;
    }

    private SheetOnPaper place(int index) {
        return SheetOnPaper.laid(size(films.subList(index, index + 1)), paper);
    }

    @Override
    public Printable getPrintable(int index) {
        return this;
    }

    @Override
    public int print(Graphics graphics, PageFormat format, int index) {
        if (index >= pages) {
            return NO_SUCH_PAGE;
        }
        pass = index == page ? pass + 1 : 0;
        page = index;
        Graphics2D pen = (Graphics2D) graphics.create();
        try {
            pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
            double scale = 1;
            if (index < films.size()) {
                SheetOnPaper place = place(index);
                double nudge = NUDGE_PIXELS * 72 / films.get(index).resolution().dotsPerInch();
                pen.translate(nudge, nudge);
                if (place.lengthwise()) {
                    pen.transform(new AffineTransform(0, -1, 1, 0, 0, paper.height() * POINTS));
                }
                pen.translate(place.leftMillimetres() * POINTS, place.topMillimetres() * POINTS);
            } else {
                scale = planScale(index);
                pen.translate(paper.printableLeft() * POINTS, paper.printableTop() * POINTS);
            }
            new FilmRenderer(document, index)
                    .renderPageToGraphics(index, pen, (float) scale, (float) scale, RenderDestination.PRINT);
            done(1);
        } catch (IOException broken) {
            throw Refusal.failure(
                    "the film can't be printed: make it anew, or print the PDF elsewhere at 100 %", broken);
        } finally {
            pen.dispose();
        }
        return PAGE_EXISTS;
    }

    private double planScale(int index) {
        PDRectangle box = document.getPage(index).getCropBox();
        return Math.min(
                1,
                Math.min(
                        paper.printableWidth() * POINTS / box.getWidth(),
                        paper.printableHeight() * POINTS / box.getHeight()));
    }

    private void done(double share) {
        double ofPage = pass == 0 ? FIRST_PASS_SHARE * share : FIRST_PASS_SHARE + (1 - FIRST_PASS_SHARE) * share;
        progress.done(pass > 1 ? (page + 1.0) / pages : (page + ofPage) / pages);
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }

    /** Draws a page of the PDF; its film comes band by band, since the library would hold all of it in memory. */
    private final class FilmRenderer extends PDFRenderer {
        private final int index;

        FilmRenderer(PDDocument document, int index) {
            super(document);
            this.index = index;
        }

        @Override
        protected PageDrawer createPageDrawer(PageDrawerParameters parameters) throws IOException {
            return index < films.size() ? new FilmDrawer(parameters, index) : super.createPageDrawer(parameters);
        }
    }

    private final class FilmDrawer extends PageDrawer {
        private final int index;

        FilmDrawer(PageDrawerParameters parameters, int index) throws IOException {
            super(parameters);
            this.index = index;
        }

        @Override
        public void drawImage(org.apache.pdfbox.pdmodel.graphics.image.PDImage image) throws IOException {
            AffineTransform page =
                    getGraphicsState().getCurrentTransformationMatrix().createAffineTransform();
            ReadFilm film = films.get(index);
            try (FilmPdfReader.FilmStream rows = reader.stream(index)) {
                FilmBands.draw(film, rows, place(index).lengthwise(), getGraphics(), page, FilmPrintout.this::done);
            }
        }
    }
}
