package greyground.app.files;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.jspecify.annotations.Nullable;

/** Why a file could not be read or written, in a person's words; Java often gives a bare path, and libraries speak of their own parts. */
public final class FileFault {
    /** Names of packages, classes and methods. */
    private static final String OF_CODE = "(?s).*([a-z]\\.[a-zA-Z]|[A-Z][a-z]+[A-Z]|\\(\\)).*";

    private FileFault() {}

    public static String words(IOException failed) {
        if (failed instanceof NoSuchFileException) {
            return "the file or its folder has vanished meanwhile";
        }
        if (failed instanceof AccessDeniedException) {
            return "permission is denied there";
        }
        if (failed instanceof FileAlreadyExistsException) {
            return "a file of that name is there already";
        }
        @Nullable String reason = failed instanceof FileSystemException known ? known.getReason() : failed.getMessage();
        return reason == null || reason.isBlank() || reason.matches(OF_CODE)
                ? "the system gives no reason"
                : reason.replaceAll("\\s*\\R\\s*", " ");
    }
}
