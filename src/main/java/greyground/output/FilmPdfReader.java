package greyground.output;

import greyground.film.sheet.Legend;
import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.jspecify.annotations.Nullable;

/**
 * Reads a film PDF back: its attachments, where everything lies, and the film itself, band by band.
 *
 * <p>A file from outside is hostile until shown otherwise: only attachments of an exact name are taken, only inflated up to a
 * limit; scripts, actions, links and outside files are never looked at; whatever is wrong becomes one {@link Refusal}. One
 * thread uses a reader and closes it.
 */
public final class FilmPdfReader implements Closeable {
    /** More pages than any film document has. */
    private static final int MOST_PAGES = 1_000;

    private static final int MOST_FILES = 1_000;

    private static final int READ_BYTES = 1 << 18;

    private final String name;
    private final PDDocument document;

    private FilmPdfReader(String name, PDDocument document) {
        this.name = name;
        this.document = document;
    }

    /**
     * A film page.
     *
     * @param widthPixels of the whole sheet
     * @param heightPixels of the whole sheet
     * @param bitsPerSample 1, 8 or 16
     * @param resolution pixels over the page's width; a film's pixels are square
     * @param plate the TrimBox
     * @param image the BleedBox
     */
    public record ReadFilm(
            int widthPixels,
            int heightPixels,
            int bitsPerSample,
            Resolution resolution,
            PixelRect plate,
            PixelRect image) {
        /** Bytes of one row. */
        public int bytesPerRow() {
            return Math.toIntExact(((long) widthPixels * bitsPerSample + 7) / 8);
        }
    }

    /** Opens a film PDF; refuses whatever can't be read as one. */
    public static FilmPdfReader open(Path file) {
        String name = String.valueOf(file.getFileName());
        if (!Files.isRegularFile(file)) {
            throw Refusal.failure("there is no file " + file + ": give a film PDF made by this program");
        }
        return guarded(name, () -> {
            PDDocument document = Loader.loadPDF(file.toFile(), IOUtils.createTempFileOnlyStreamCache());
            return new FilmPdfReader(name, document);
        });
    }

    /** The file of exactly this name, if the PDF carries one of at most {@value Attachment#LARGEST_BYTES} bytes. */
    public Optional<byte[]> attachment(String exactName) {
        return guarded(name, () -> {
            COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
            COSArray files = catalog.getCOSArray(COSName.getPDFName("AF"));
            for (int i = 0; files != null && i < Math.min(files.size(), MOST_FILES); i++) {
                COSBase file = files.getObject(i);
                if (file instanceof COSDictionary specification
                        && exactName.equals(specification.getString(COSName.UF, specification.getString(COSName.F)))) {
                    COSDictionary embedded = specification.getCOSDictionary(COSName.EF);
                    COSStream stream = embedded == null ? null : embedded.getCOSStream(COSName.F);
                    if (stream != null) {
                        return Optional.of(limited(stream, exactName));
                    }
                }
            }
            return Optional.empty();
        });
    }

    /** The film pages, in order; refuses a PDF that has none. */
    public List<ReadFilm> films() {
        return guarded(name, () -> {
            List<ReadFilm> films = new ArrayList<>();
            for (PDPage page : filmPages()) {
                films.add(film(page, picture(page)));
            }
            if (films.isEmpty()) {
                throw notOurs("it has no film page");
            }
            return films;
        });
    }

    /**
     * Hands on the rows of a film, in order, counting black as {@link greyground.film.sheet.FilmRows} does.
     *
     * @param index of the film, from 0
     * @param rowsPerBand at least 1; the last band may be shorter
     * @param taker is given one array again and again
     */
    public void readRows(int index, int rowsPerBand, Bands.Taker<byte[]> taker) {
        guarded(name, () -> {
            try (FilmStream rows = stream(index)) {
                byte[] band = new byte[Math.multiplyExact(rows.film.bytesPerRow(), rowsPerBand)];
                for (int first = 0; first < rows.film.heightPixels(); first += rowsPerBand) {
                    int count = Math.min(rowsPerBand, rows.film.heightPixels() - first);
                    rows.read(band, 0, count);
                    taker.take(first, count, band);
                }
                return rows;
            }
        });
    }

    /**
     * Opens a film to be read at the caller's own pace; any number may be open at once, all on one thread.
     *
     * @param index of the film, from 0
     */
    public FilmStream stream(int index) {
        return guarded(name, () -> {
            PDPage page = filmPages().get(index);
            COSStream picture = picture(page);
            return new FilmStream(film(page, picture), !blackIsCounted(picture), decoded(picture));
        });
    }

    /** The words on a film, in the order in which they were set. */
    public List<Legend> legends(int index) {
        return guarded(name, () -> LegendReader.legends(filmPages().get(index)));
    }

    /** The rows of one film, from top to bottom; whoever opened it closes it. */
    public final class FilmStream implements Closeable {
        private final ReadFilm film;
        private final boolean turn;
        private final InputStream in;
        private int next;

        private FilmStream(ReadFilm film, boolean turn, InputStream in) {
            this.film = film;
            this.turn = turn;
            this.in = in;
        }

        /**
         * Reads the next rows, counting black as {@link greyground.film.sheet.FilmRows} does.
         *
         * @param into receives them from {@code offset} on
         * @param rows at most as many as are left
         */
        public void read(byte[] into, int offset, int rows) {
            guarded(name, () -> {
                int wanted = Math.multiplyExact(rows, film.bytesPerRow());
                if (in.readNBytes(into, offset, wanted) < wanted) {
                    throw notOurs("its film breaks off in row " + next + " of " + film.heightPixels());
                }
                next += rows;
                if (turn) {
                    Blackness.turn(into, offset, wanted);
                }
                return next;
            });
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }

    /** The PDF itself, to draw its pages; the reader closes it. */
    PDDocument document() {
        return document;
    }

    @Override
    public void close() throws IOException {
        document.close();
    }

    private List<PDPage> filmPages() {
        List<PDPage> pages = new ArrayList<>();
        int seen = 0;
        for (PDPage page : document.getPages()) {
            if (++seen > MOST_PAGES) {
                throw notOurs("it has more than " + MOST_PAGES + " pages");
            }
            if (pictureOrNothing(page).isPresent()) {
                pages.add(page);
            }
        }
        return pages;
    }

    private COSStream picture(PDPage page) {
        return pictureOrNothing(page).orElseThrow(() -> notOurs("it has no film page"));
    }

    private static Optional<COSStream> pictureOrNothing(PDPage page) {
        COSDictionary resources = page.getCOSObject().getCOSDictionary(COSName.RESOURCES);
        COSDictionary pictures = resources == null ? null : resources.getCOSDictionary(COSName.XOBJECT);
        return Optional.ofNullable(pictures == null ? null : pictures.getCOSStream(COSName.getPDFName("Film")));
    }

    private ReadFilm film(PDPage page, COSStream picture) {
        int width = picture.getInt(COSName.WIDTH);
        int height = picture.getInt(COSName.HEIGHT);
        int bits = picture.getInt(COSName.BITS_PER_COMPONENT);
        if (width < 1 || height < 1 || (bits != 1 && bits != 8 && bits != 16) || (long) width * bits / 8 > 1 << 28) {
            throw notOurs("its film measures " + width + " x " + height + " pixels of " + bits + " bits");
        }
        if (!COSName.DEVICEGRAY.equals(picture.getItem(COSName.COLORSPACE))) {
            throw notOurs("its film is not grey");
        }
        PDRectangle sheet = page.getMediaBox();
        double dotsPerInch = width * 72.0 / sheet.getWidth();
        double down = height * 72.0 / sheet.getHeight();
        if (!(dotsPerInch >= 60 && dotsPerInch <= 20_000) || Math.abs(down / dotsPerInch - 1) > 1e-3) {
            throw notOurs("its film has " + Refusal.plain(dotsPerInch) + " x " + Refusal.plain(down)
                    + " dpi, not one resolution between 60 and 20000");
        }
        Resolution resolution = new Resolution(nearWhole(dotsPerInch));
        return new ReadFilm(
                width,
                height,
                bits,
                resolution,
                rect(page.getTrimBox(), sheet, resolution),
                rect(page.getBleedBox(), sheet, resolution));
    }

    /** PDFBox holds page sizes in single precision; a film printer's resolution is a whole number or plainly is not. */
    private static double nearWhole(double dotsPerInch) {
        double whole = Math.rint(dotsPerInch);
        return Math.abs(dotsPerInch - whole) < 0.01 ? whole : Math.rint(dotsPerInch * 1000) / 1000;
    }

    private static PixelRect rect(PDRectangle box, PDRectangle sheet, Resolution resolution) {
        double inch = Lengths.MILLIMETRES_PER_INCH / 72;
        return new PixelRect(
                resolution.pixels((box.getLowerLeftX() - sheet.getLowerLeftX()) * inch),
                resolution.pixels((sheet.getUpperRightY() - box.getUpperRightY()) * inch),
                resolution.pixels(box.getWidth() * inch),
                resolution.pixels(box.getHeight() * inch));
    }

    /** DeviceGray counts light unless Decode turns it over. */
    private static boolean blackIsCounted(COSStream picture) {
        COSArray decode = picture.getCOSArray(COSName.DECODE);
        return decode != null && decode.toFloatArray().length == 2 && decode.toFloatArray()[0] > 0.5;
    }

    private byte[] limited(COSStream stream, String exactName) throws IOException {
        try (InputStream in = decoded(stream)) {
            byte[] bytes = in.readNBytes(Attachment.LARGEST_BYTES + 1);
            if (bytes.length > Attachment.LARGEST_BYTES) {
                throw notOurs(
                        "its attachment " + exactName + " holds more than " + Attachment.LARGEST_BYTES + " bytes");
            }
            return bytes;
        }
    }

    /** Inflates on the way: the library's own decoding would hold the whole film in memory. */
    private InputStream decoded(COSStream stream) throws IOException {
        COSBase filter = stream.getDictionaryObject(COSName.FILTER);
        if (filter instanceof COSArray list && list.size() == 1) {
            filter = list.getObject(0);
        }
        if (filter == null) {
            return stream.createRawInputStream();
        }
        COSBase parameters = stream.getDictionaryObject(COSName.DECODE_PARMS);
        if (!COSName.FLATE_DECODE.equals(filter) || parameters != null) {
            throw notOurs("it was packed again by another program");
        }
        return new InflaterInputStream(stream.createRawInputStream(), new Inflater(), READ_BYTES);
    }

    private Refusal notOurs(String fault) {
        return refused(name, fault, null);
    }

    private static Refusal refused(String name, String fault, @Nullable Throwable cause) {
        String message = name + " can't be read as a film PDF: " + fault + "; give a film PDF as this program wrote it";
        return cause == null ? Refusal.failure(message) : Refusal.failure(message, cause);
    }

    /** Work on a file from outside. */
    @FunctionalInterface
    private interface Reading<T> {
        T run() throws IOException;
    }

    /**
     * A damaged file makes the PDF library fail in many ways, checked and unchecked, and a file that refers to itself can
     * exhaust the stack; the person who opened it hears the same one line.
     */
    private static <T> T guarded(String name, Reading<T> reading) {
        try {
            return reading.run();
        } catch (Refusal | CancellationException asIs) {
            throw asIs;
        } catch (StackOverflowError | OutOfMemoryError exhausted) {
            throw refused(name, "it is nested or sized beyond reason", exhausted);
        } catch (InvalidPasswordException | LinkageError locked) {
            // The library looks for other libraries when a PDF is encrypted for somebody's certificate.
            throw refused(name, "it is locked by a password or for a certificate", locked);
        } catch (Exception damaged) {
            throw refused(name, "it is damaged or not a PDF", damaged);
        }
    }
}
