package greyground.app.files;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The files that a piece of work reads and writes, named before it begins, so that a wrong name costs nothing. None that is written is one
 * that is read, or another that is written, whatever names and links lead to it. One thread.
 */
public final class NamedFiles {
    private final List<Named> read = new ArrayList<>();
    private final Map<String, Path> written = new LinkedHashMap<>();

    private record Named(String what, Path file) {}

    /** What a written file holds. Its name must say so. */
    @SuppressWarnings("ImmutableEnumChecker") // the lists are made by List.of
    public enum Content {
        /** A film with all it carries, or the pages of a plan. */
        FILM("a PDF", "pdf"),
        /** A film's bits alone. */
        TIFF("a TIFF", "tif", "tiff"),
        /** A job or workshop. */
        KEPT("a text of JSON", "json"),
        /** Pixels. */
        PICTURE("a PNG picture", "png"),
        /** Lines, written as the name ends. */
        DIAGRAM("an SVG, PNG or PDF drawing", "svg", "png", "pdf");

        private final String words;
        private final List<String> endings;

        Content(String words, String... endings) {
            this.words = words;
            this.endings = List.of(endings);
        }
    }

    /**
     * Names a file that must survive.
     *
     * @param what the trade's name of it, for example "workshop"
     * @param file nothing, if none was given
     */
    public NamedFiles reads(String what, @Nullable Path file) {
        if (file != null) {
            written.forEach((output, outputFile) -> checkApart(output, outputFile, what, file));
            read.add(new Named(what, file));
        }
        return this;
    }

    /**
     * Names a file to write; refused if it could not be written, is named for something else than it holds, or is any other file of this
     * work.
     *
     * @param what the trade's name of it, for example "film"
     * @param file nothing, if none is wanted
     */
    public NamedFiles writes(String what, @Nullable Path file, Content content) {
        if (file == null) {
            return this;
        }
        String name = file.toString();
        if (name.isBlank() || name.equals("-")) {
            throw Refusal.use("the " + what + " goes to a file, never to standard output: give it a name, such as "
                    + what + "." + content.endings.get(0));
        }
        read.forEach(other -> checkApart(what, file, other.what(), other.file()));
        written.forEach((other, otherFile) -> checkApart(what, file, other, otherFile));
        SafeFile.checkWritable(what, file);
        checkEnding(what, file, content);
        written.put(what, file);
        return this;
    }

    /** Every file to write, by what it is, in the order of naming. */
    public Map<String, Path> written() {
        return Collections.unmodifiableMap(written);
    }

    private static void checkEnding(String what, Path file, Content content) {
        String ending = ending(file);
        if (content.endings.contains(ending) || (content == Content.KEPT && isKept(file))) {
            return;
        }
        String stem = String.valueOf(file.getFileName());
        if (List.of(Content.values()).stream().anyMatch(other -> other.endings.contains(ending))
                || ending.matches("jpe?g|webp|bmp|psd|txt|csv")) {
            stem = stem.substring(0, stem.length() - ending.length() - 1);
        }
        throw Refusal.use("the " + what + " " + file + " would hold " + content.words + ": let its name end in ."
                + String.join(" or .", content.endings) + ", such as " + stem + "." + content.endings.get(0));
    }

    /** A job or workshop that was named otherwise stays what it is. */
    private static boolean isKept(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return in.read() == '{';
        } catch (IOException none) {
            return false;
        }
    }

    /** What follows the last dot of a name, in small letters. */
    static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    private static void checkApart(String output, Path outputFile, String kept, Path keptFile) {
        if (isSame(outputFile, keptFile)) {
            throw Refusal.use("the " + output + " " + outputFile + " would replace the " + kept
                    + (outputFile.equals(keptFile) ? "" : " " + keptFile + ", which is the same file")
                    + ": give the two different names");
        }
    }

    /**
     * Whether two names stand for one file. Where neither exists yet, those that differ in the case of letters alone, or in how accents are
     * put together, are taken for one, as many file systems do.
     */
    private static boolean isSame(Path one, Path other) {
        try {
            if (Files.exists(one) || Files.exists(other)) {
                return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
            }
            return folded(one).equals(folded(other))
                    && Files.isSameFile(SafeFile.folderOf(one), SafeFile.folderOf(other));
        } catch (IOException unreachable) {
            return one.toAbsolutePath()
                    .normalize()
                    .equals(other.toAbsolutePath().normalize());
        }
    }

    private static String folded(Path path) {
        String name = Normalizer.normalize(String.valueOf(path.getFileName()), Normalizer.Form.NFC);
        return name.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    }
}
