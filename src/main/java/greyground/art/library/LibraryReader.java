package greyground.art.library;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Page;
import greyground.art.page.Patience;
import greyground.art.page.PixelDensity;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.EOFException;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import org.jspecify.annotations.Nullable;

/**
 * One picture of a file read by a library: its size before its pixels, in bounded memory, within a time limit, and with every fault in words of
 * our own, since libraries throw errors of all kinds at damaged files. Pixels come as stored, never converted.
 */
public final class LibraryReader {
    /** Seconds for all that stands before the pixels (assumed, ample). */
    private static final long LOOK_SECONDS = 10;
    /** Memory of what is read at once, where a reader can go to any row (assumed). */
    private static final long BAND_BYTES = 128L << 20;

    private static final String DAMAGED =
            "it is damaged, or packed in a way that can't be read: save it anew as TIFF or PNG";

    /** Makes what a picture is read with; one of each for every use. */
    @FunctionalInterface
    public interface Maker {
        ImageReader make() throws IOException;

        /** The file as the reader shall see it. */
        default LibraryInput input(ArtBytes file) throws IOException {
            return new LibraryInput(file);
        }
    }

    /** How far a reader can go. */
    public enum Reach {
        /** To any rows, at the cost of passing over the rows before. */
        BANDS,
        /** Only through the whole picture. */
        WHOLE
    }

    /**
     * What the file says beside the samples.
     *
     * @param profile the embedded profile, or null
     * @param orientation 1 to 8
     * @param density the resolution
     * @param remarks what the printmaker should hear
     */
    @SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
    public record Beside(byte @Nullable [] profile, int orientation, PixelDensity density, List<String> remarks) {}

    private final ArtBytes file;
    private final Maker maker;
    private final int index;
    private final Reach reach;

    /** The picture {@code index}, from 0, of {@code file}. */
    public LibraryReader(ArtBytes file, Maker maker, int index, Reach reach) {
        this.file = file;
        this.maker = maker;
        this.index = index;
        this.reach = reach;
    }

    /** Work with a reader that has its file. */
    @FunctionalInterface
    public interface Question<T> {
        T ask(ImageReader reader) throws IOException;
    }

    /** Asks a reader what stands before the pixels. */
    public static <T> T ask(ArtBytes file, Maker maker, Question<T> question) throws IOException {
        LibraryInput input = maker.input(file);
        CompletableFuture<T> answer = new CompletableFuture<>();
        Thread thread = new Thread(
                () -> {
                    try {
                        answer.complete(within(maker, input, question));
                    } catch (IOException | RuntimeException | Error failed) {
                        answer.completeExceptionally(failed);
                    }
                },
                "art");
        thread.setDaemon(true);
        thread.start();
        try {
            Patience patience = new Patience(LOOK_SECONDS);
            while (!answer.isDone() && !patience.over()) {
                waitFor(answer);
            }
            return answer.get(0, TimeUnit.SECONDS);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof IOException io) {
                throw io;
            }
            if (failed.getCause() instanceof Error full) {
                throw full;
            }
            throw new Unreadable(DAMAGED, failed);
        } catch (TimeoutException late) {
            throw new Unreadable(
                    "what stands before its pixels takes longer than " + LOOK_SECONDS
                            + " s to read, which no sound file needs: save it anew",
                    late);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new java.io.InterruptedIOException("stopped");
        } finally {
            input.stop();
        }
    }

    private static void waitFor(CompletableFuture<?> answer) throws InterruptedException, ExecutionException {
        try {
            answer.get(Patience.SLICE_MILLISECONDS, TimeUnit.MILLISECONDS);
        } catch (TimeoutException notYet) {
            // Then its patience is asked.
        }
    }

    private static <T> T within(Maker maker, LibraryInput input, Question<T> question) throws IOException {
        ImageReader reader = maker.make();
        try (input) {
            return walled(() -> {
                reader.setInput(input, false, true);
                return question.ask(reader);
            });
        } finally {
            reader.dispose();
        }
    }

    /** What a library does, with its words left out. */
    public interface Work<T> {
        T run() throws IOException;
    }

    /** Does it, and throws nothing but words of our own. */
    public static <T> T walled(Work<T> work) throws IOException {
        try {
            return work.run();
        } catch (Unreadable ours) {
            throw ours;
        } catch (EOFException early) {
            throw new Unreadable("the picture data end early");
        } catch (IOException | RuntimeException | StackOverflowError | AssertionError | LinkageError failed) {
            throw new Unreadable(DAMAGED, failed);
        }
    }

    /** The page, for which the file must have room: {@code pixelsPerByteAtMost} pixels to its byte. */
    public Page page(Beside beside, long pixelsPerByteAtMost) throws IOException {
        LibraryLayout layout = ask(file, maker, this::layout);
        Samples samples = layout.samples();
        long whole = samples.bytes() * 2;
        long atOnce = reach == Reach.BANDS ? Math.min(whole, BAND_BYTES) : whole;
        return new Page(
                samples,
                layout.meaning(),
                beside.profile(),
                beside.orientation(),
                beside.density(),
                layout.bits(),
                samples.bandRows(),
                false,
                atOnce,
                pixelsPerByteAtMost,
                () -> rows(file, maker, samples, (reader, sink) -> hand(reader, layout, sink)),
                beside.remarks());
    }

    private LibraryLayout layout(ImageReader reader) throws IOException {
        int width = reader.getWidth(index);
        int height = reader.getHeight(index);
        if (width < 1 || height < 1 || width > ArtFormat.SIDE_AT_MOST || height > ArtFormat.SIDE_AT_MOST) {
            throw new Unreadable("it claims " + width + " x " + height + " pixels; sides of 1 to "
                    + ArtFormat.SIDE_AT_MOST + " can be read");
        }
        ImageTypeSpecifier type = type(reader);
        return LibraryLayout.of(type.getColorModel(), type.getSampleModel(), width, height);
    }

    private ImageTypeSpecifier type(ImageReader reader) throws IOException {
        ImageTypeSpecifier raw = reader.getRawImageType(index);
        return raw == null ? reader.getImageTypes(index).next() : raw;
    }

    private void hand(ImageReader reader, LibraryLayout layout, RowSink sink) throws IOException {
        Samples samples = layout.samples();
        int rows = reach == Reach.WHOLE
                ? samples.height()
                : (int) Math.max(1, Math.min(samples.height(), BAND_BYTES / 2 / samples.bytesPerRow()));
        for (int first = 0; first < samples.height(); first += rows) {
            int from = first;
            int count = Math.min(rows, samples.height() - first);
            layout.hand(walled(() -> read(reader, layout, from, count)), sink);
        }
    }

    private BufferedImage read(ImageReader reader, LibraryLayout layout, int first, int count) throws IOException {
        int width = layout.samples().width();
        ImageReadParam param = reader.getDefaultReadParam();
        param.setDestinationType(type(reader));
        if (count < layout.samples().height()) {
            param.setSourceRegion(new Rectangle(0, first, width, count));
        }
        BufferedImage image = reader.read(index, param);
        LibraryLayout found = LibraryLayout.of(
                image.getColorModel(),
                image.getSampleModel(),
                width,
                layout.samples().height());
        if (image.getWidth() != width
                || image.getHeight() != count
                || !found.samples().equals(layout.samples())) {
            throw new Unreadable("its picture is not what its header says: save it anew");
        }
        return image;
    }

    /** Hands all rows of a picture on, from a reader that has its file. */
    public interface Delivery {
        void deliver(ImageReader reader, RowSink sink) throws IOException;
    }

    /** Rows of {@code samples} as {@code delivery} gives them, on a thread of its own. */
    public static RowPipe rows(ArtBytes file, Maker maker, Samples samples, Delivery delivery) throws IOException {
        LibraryInput input = maker.input(file);
        RowPipe.Source source = new RowPipe.Source() {
            @Override
            public void run(RowSink sink) throws IOException {
                ImageReader reader = maker.make();
                try (input) {
                    reader.setInput(input, false, true);
                    delivery.deliver(reader, sink);
                } finally {
                    reader.dispose();
                }
            }

            @Override
            public void abort() {
                // A reader that is not asked between rows stops at its next read.
                input.stop();
            }
        };
        long pixels = (long) samples.width() * samples.height();
        return new RowPipe(source, (int) samples.bytesPerRow(), RowPipe.limitSeconds(pixels));
    }
}
