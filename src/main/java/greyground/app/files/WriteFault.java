package greyground.app.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.jspecify.annotations.Nullable;

/** Why a file could not be written, in a person's words; Java often gives a bare path. */
final class WriteFault {
    private WriteFault() {}

    static String words(IOException failed) {
        if (failed instanceof NoSuchFileException) {
            return "the folder, or the file half written there, has vanished meanwhile";
        }
        if (failed instanceof AccessDeniedException) {
            return "permission is denied there";
        }
        @Nullable String reason = failed instanceof FileSystemException known ? known.getReason() : failed.getMessage();
        if (reason == null || reason.isBlank()) {
            reason = failed.getMessage();
        }
        return reason == null ? "the system gives no reason" : reason.replaceAll("\\s*\\R\\s*", " ");
    }
}
