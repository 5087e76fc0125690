package greyground.art;

import greyground.art.page.Unreadable;
import greyground.quantity.Refusal;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.CancellationException;

/**
 * The one place where whatever goes wrong with a picture file becomes a {@link Refusal}. Decoders throw unchecked exceptions
 * of every kind at damaged files, and run out of memory or stack at malicious ones.
 */
final class ArtBoundary {
    private static final String ANEW = ": fetch the file again, or open it elsewhere and save it anew";

    private ArtBoundary() {}

    /** Work on a file. */
    @FunctionalInterface
    interface Work<T> {
        T run() throws IOException;
    }

    static <T> T keep(Path file, Work<T> work) {
        try {
            return work.run();
        } catch (Refusal | CancellationException plain) {
            throw plain;
        } catch (OutOfMemoryError full) {
            throw refusal(
                    file,
                    "there is not enough memory to read it: close other work, give Java more memory (-Xmx), or make"
                            + " the picture smaller",
                    full);
        } catch (UncheckedIOException wrapped) {
            throw refusal(file, reason(Objects.requireNonNull(wrapped.getCause())), wrapped);
        } catch (IOException failed) {
            throw refusal(file, reason(failed), failed);
        } catch (RuntimeException | StackOverflowError | LinkageError unchecked) {
            throw refusal(file, "it is damaged" + ANEW, unchecked);
        }
    }

    private static Refusal refusal(Path file, String reason, Throwable cause) {
        return Refusal.failure("art " + file + " can't be read: " + reason, cause);
    }

    /** Words of our own: what the system, the platform or a library says stays in the cause. */
    private static String reason(IOException failed) {
        if (failed instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (failed instanceof AccessDeniedException) {
            return "you may not read it: change its permissions";
        }
        String reason = failed instanceof EOFException
                ? "the picture data end early"
                : failed instanceof Unreadable ours ? ours.reason() : "it is damaged, or its disk is";
        return reason.contains(": ") ? reason : reason + ANEW;
    }

    static void checkOrdinary(Path file) throws IOException {
        if (!Files.exists(file)) {
            throw new NoSuchFileException(file.toString());
        }
        if (Files.isDirectory(file)) {
            throw new Unreadable("it is a folder: name one picture in it");
        }
        if (!Files.isRegularFile(file)) {
            throw new Unreadable("it is not an ordinary file: copy the picture to one");
        }
        if (Files.size(file) == 0) {
            throw new Unreadable("it is empty (0 bytes)" + ANEW);
        }
    }
}
