package greyground.art;

import greyground.art.colour.Luminance;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Interpretation;
import greyground.art.page.Page;
import greyground.art.page.Unreadable;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ColourWeights;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;

/**
 * One page of a picture file that has been looked into; {@link #decode} turns it into linear luminance.
 *
 * <p>Kinds are told by content, never by name. Colour goes by the embedded ICC profile (luminance of its D50 connection space);
 * without one grey and RGB count as sRGB and CMYK as plain inks. Transparent art lies over paper white. Unchanging; any thread
 * may use it.
 */
public final class Art {
    private final Path file;
    private final ArtFormat format;
    private final int pageNumber;
    private final int pages;
    private final Page page;
    private final Luminance luminance;
    private final String colour;
    private final boolean tonesStated;
    private final List<String> remarks;

    private Art(Path file, ArtFormat format, int pageNumber, int pages, Page page) {
        this.file = file;
        this.format = format;
        this.pageNumber = pageNumber;
        this.pages = pages;
        this.page = page;
        List<String> heard = new ArrayList<>();
        this.luminance = Luminance.of(page, heard::add);
        this.colour = Luminance.describe(page, heard.isEmpty());
        this.tonesStated = Luminance.stated(page, heard.isEmpty());
        heard.addAll(page.remarks());
        this.remarks = List.copyOf(heard);
    }

    /** Looks into the first page of a file. */
    public static Art open(Path file) {
        return open(file, 1);
    }

    /**
     * Looks into a page of a file, without reading its pixels.
     *
     * @param pageNumber from 1
     * @throws Refusal if the file can't be read, is of no known kind, claims what can't be true, or has no such page
     */
    public static Art open(Path file, int pageNumber) {
        return ArtBoundary.keep(file, () -> {
            ArtBoundary.checkOrdinary(file);
            try (ArtBytes bytes = new ArtBytes(file)) {
                ArtFormat format = ArtKinds.tell(bytes);
                List<ArtFormat.PageOpener> pages = format.pages(bytes);
                if (pages.isEmpty()) {
                    throw new Unreadable("it holds no picture");
                }
                Refusal.checkRange("page", pageNumber, 1, pages.size(), "", "the file has no other pages");
                Page page = pages.get(pageNumber - 1).open();
                Decoding.checkPlausible(page, bytes.size());
                return new Art(file, format, pageNumber, pages.size(), page);
            }
        });
    }

    /**
     * Decodes this page the right way up: 65 535 is the art's white. The result does not depend on budget or threads.
     *
     * @param heapBudgetBytes memory that decoding and the plane may take together; a plane beyond it goes to a spill file
     * @param spillFolder where a spill file may be made
     * @throws Refusal if the file is damaged or cut short, or can't be read within the budget
     */
    public GreyPlane decode(Progress progress, long heapBudgetBytes, Path spillFolder) {
        return decode(Optional.empty(), progress, heapBudgetBytes, spillFolder);
    }

    /**
     * The same with colours seen by other weights than those of luminance.
     *
     * @param weights of red, green and blue; empty for luminance
     */
    public GreyPlane decode(
            Optional<ColourWeights> weights, Progress progress, long heapBudgetBytes, Path spillFolder) {
        return ArtBoundary.keep(file, () -> {
            try (ArtBytes bytes = new ArtBytes(file)) {
                Page fresh = format.pages(bytes).get(pageNumber - 1).open();
                if (!fresh.samples().equals(page.samples())) {
                    throw new Unreadable("it has changed since it was opened: open it again");
                }
                Luminance seen = weights.isEmpty() ? luminance : Luminance.of(page, weights, said -> {});
                return new Decoding(fresh, seen, progress).run(heapBudgetBytes, spillFolder);
            }
        });
    }

    /**
     * The SHA-256 of the file's bytes, in lower-case hexadecimal, computed on a thread of its own from now on. Joining it gives
     * a {@link java.util.concurrent.CompletionException} around a {@link Refusal} if the file can't be read.
     */
    public CompletableFuture<String> fingerprint() {
        CompletableFuture<String> result = new CompletableFuture<>();
        Thread worker = new Thread(
                () -> {
                    try {
                        result.complete(ArtBoundary.keep(file, () -> Fingerprint.of(file)));
                    } catch (Refusal | CancellationException failed) {
                        result.completeExceptionally(failed);
                    }
                },
                "fingerprint");
        worker.setDaemon(true);
        worker.start();
        return result;
    }

    /** Where it lies. */
    public Path file() {
        return file;
    }

    /** The kind's name, such as TIFF. */
    public String kind() {
        return format.kind();
    }

    /** Pixels across, the right way up. */
    public int width() {
        return page.width();
    }

    /** Pixels down, the right way up. */
    public int height() {
        return page.height();
    }

    /** Bits of one stored sample, 1 to 16; of samples that differ, the largest. */
    public int bitsPerSample() {
        return page.bits();
    }

    /** Which page this is, from 1. */
    public int page() {
        return pageNumber;
    }

    /** Pictures in the file, at least 1. */
    public int pages() {
        return pages;
    }

    /** The page's own resolution across, the right way up; 0 where it states none that can be meant. */
    public double pixelsPerInch() {
        return page.lying() ? page.resolution().down() : page.resolution().across();
    }

    /** What its samples are taken for, in words: the profile's name, or the assumption. */
    public String colour() {
        return colour;
    }

    /** Whether its samples can say a colour. */
    public boolean coloured() {
        return page.meaning().model() != Interpretation.Model.GREY;
    }

    /** Whether the file says what its tones mean, and not only that they look right on a screen. */
    public boolean tonesStated() {
        return tonesStated;
    }

    /** Whether it can be read band by band, so that its size does not set the memory. */
    public boolean readInBands() {
        return page.wholeBytes() == 0;
    }

    /** What the printmaker should hear, such as a profile passed over; mostly empty. One line each. */
    public List<String> remarks() {
        return remarks;
    }

    @Override
    public String toString() {
        return file.getFileName() + ": " + kind() + ", " + width() + " x " + height() + " pixels, " + bitsPerSample()
                + "-bit, " + colour;
    }
}
