package greyground.art;

import greyground.art.colour.Luminance;
import greyground.art.page.Page;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.jspecify.annotations.Nullable;

/**
 * Decodes a page into a plane, band by band: samples are read, turned into luminance and put the right way up. Pages whose
 * bands can be read in any order are read on all cores; the others by one thread, while the rest convert.
 */
final class Decoding {
    /** Assumed: larger art than any scanner gives; it bounds the disk a spill file takes. */
    private static final long PIXELS_AT_MOST = 1_000_000_000L;

    /** A picture larger than this, of more pixels to the byte than line art ever packs to, is blank or a trap (both assumed). */
    private static final long BLANK = 250_000_000;

    private static final long BLANK_PER_BYTE = 4096;
    private static final int THREADS_AT_MOST = 8;
    /** Rows of a band of lying art, so that its columns are written in long runs. */
    private static final int LYING_BAND_ROWS = 256;

    private final Page page;
    private final Luminance luminance;
    private final Progress progress;
    private final int threads;
    private final int bandRows;

    Decoding(Page page, Luminance luminance, Progress progress) {
        this.page = page;
        this.luminance = luminance;
        this.progress = progress;
        this.threads =
                Math.max(1, Math.min(THREADS_AT_MOST, Runtime.getRuntime().availableProcessors()));
        int rows = page.bandRows();
        if (page.lying() && rows < LYING_BAND_ROWS) {
            rows *= (LYING_BAND_ROWS + rows - 1) / rows;
        }
        this.bandRows = Math.min(rows, page.samples().height());
    }

    /** Refuses sizes that can't be true of a file this small, before any memory is taken. */
    static void checkPlausible(Page page, long fileBytes) throws IOException {
        Samples samples = page.samples();
        long pixels = (long) samples.width() * samples.height();
        String claim = "it claims " + samples.width() + " x " + samples.height() + " pixels";
        if (pixels > PIXELS_AT_MOST) {
            throw new Unreadable(claim + ", " + pixels / 1_000_000 + " megapixels; at most "
                    + PIXELS_AT_MOST / 1_000_000 + " can be read: make it smaller");
        }
        if (pixels > fileBytes * page.pixelsPerByteAtMost()
                || (pixels > BLANK && pixels > fileBytes * BLANK_PER_BYTE)) {
            throw new Unreadable(
                    claim + ", more than its " + fileBytes + " bytes can hold: the file lies or is cut short");
        }
    }

    GreyPlane run(long heapBudgetBytes, Path spillFolder) throws IOException {
        long working = workingBytes();
        if (working > heapBudgetBytes) {
            throw tooLarge(working, heapBudgetBytes);
        }
        try (PlaneStore store = PlaneStore.open(page.width(), page.height(), heapBudgetBytes - working, spillFolder)) {
            Upright upright = new Upright(page, store);
            if (page.anyOrder()) {
                inAnyOrder(upright);
            } else {
                fromTheTop(upright);
            }
            return store.finish();
        }
    }

    /** Bytes that the readers, one band of samples and one of luminance take on every thread. */
    private long workingBytes() {
        long band =
                bandRows * (page.samples().bytesPerRow() + 4L * page.samples().width());
        return page.anyOrder() ? threads * (page.wholeBytes() + band) : page.wholeBytes() + (threads + 2) * band;
    }

    private Refusal tooLarge(long working, long budget) {
        boolean whole = page.wholeBytes() > 0;
        return Refusal.failure("art of " + page.width() + " x " + page.height() + " pixels needs "
                + ((working >> 20) + 1) + " MiB of memory" + (whole ? ", since its kind can't be read in bands" : "")
                + "; "
                + (budget >> 20) + " MiB may be used: "
                + (whole ? "save it as TIFF in strips or as PNG without interlacing, " : "")
                + "give Java more memory (-Xmx), or make the picture smaller");
    }

    private void inAnyOrder(Upright upright) throws IOException {
        Queue<SampleRows> opened = new ConcurrentLinkedQueue<>();
        try {
            Bands.<Boolean>inOrder(
                    page.samples().height(),
                    bandRows,
                    threads,
                    () -> new BandMaker(upright, opened),
                    (first, count, done) -> {
                        // The maker has put the rows already; only progress is due.
                    },
                    progress);
        } finally {
            for (SampleRows rows : opened) {
                rows.close();
            }
        }
    }

    /** One thread's own reader and buffers. */
    private final class BandMaker implements Bands.Maker<Boolean> {
        private final Upright upright;
        private final Queue<SampleRows> opened;
        private @Nullable SampleRows rows;
        private final Workbench bench = new Workbench();

        BandMaker(Upright upright, Queue<SampleRows> opened) {
            this.upright = upright;
            this.opened = opened;
        }

        @Override
        public Boolean make(int firstRow, int rowCount) throws IOException {
            if (rows == null) {
                rows = page.rows().open();
                opened.add(rows);
            }
            rows.read(firstRow, rowCount, bench.samples);
            bench.convert(firstRow, rowCount, upright);
            return true;
        }
    }

    /** Buffers for one band at one moment. */
    private final class Workbench {
        private final byte[] samples =
                new byte[Math.toIntExact(bandRows * page.samples().bytesPerRow())];
        private final short[] light =
                new short[Math.multiplyExact(bandRows, page.samples().width())];

        void convert(int firstRow, int rowCount, Upright upright) {
            luminance.convert(samples, 0, rowCount * page.samples().width(), light, 0);
            upright.put(firstRow, rowCount, light);
        }
    }

    private void fromTheTop(Upright upright) throws IOException {
        int height = page.samples().height();
        try (SampleRows rows = page.rows().open();
                Converters converters = new Converters(threads)) {
            for (int first = 0; first < height; first += bandRows) {
                int firstRow = first;
                int rowCount = Math.min(bandRows, height - first);
                Workbench bench = converters.take(Workbench::new);
                rows.read(firstRow, rowCount, bench.samples);
                converters.convert(bench, () -> bench.convert(firstRow, rowCount, upright));
                progress.done((double) (first + rowCount) / height);
            }
            converters.join();
        }
    }
}
