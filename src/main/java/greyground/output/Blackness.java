package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.raster.Bands;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;

/** How a film's samples, which count black, become a file's samples. */
enum Blackness {
    /** The file counts black too. */
    KEPT,
    /** The file counts light: every sample is taken from its largest value, which turns every bit over. */
    TURNED;

    /** Bands of the film as the file wants them. Bits that only fill a row up are clear in the one and set in the other. */
    Supplier<Bands.Maker<byte[]>> bands(FilmRows rows) {
        if (this == KEPT) {
            return rows::maker;
        }
        return () -> {
            Bands.Maker<byte[]> maker = rows.maker();
            return (first, count) -> turned(maker.make(first, count));
        };
    }

    /** Turns a band over where it lies. */
    static byte[] turned(byte[] band) {
        turn(band, 0, band.length);
        return band;
    }

    /** Turns part of a band over where it lies. */
    static void turn(byte[] band, int offset, int count) {
        for (int i = offset; i < offset + count; i++) {
            band[i] = (byte) ~band[i];
        }
    }

    /** Work on bands that may fail in any way. */
    @FunctionalInterface
    interface Work {
        void run() throws Exception;
    }

    /** Runs the work; whatever fails leaves as itself, an interruption as a cancelling. */
    static void run(Work work) throws IOException {
        try {
            work.run();
        } catch (RuntimeException | IOException asIs) {
            throw asIs;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            CancellationException cancelled = new CancellationException("stopped");
            cancelled.initCause(stopped);
            throw cancelled;
        } catch (Exception other) {
            throw new IOException(other.toString(), other);
        }
    }

    /** The watcher of film {@code index} of {@code count}. */
    static Progress share(Progress progress, int index, int count) {
        return progress.part((double) index / count, (index + 1.0) / count);
    }
}
