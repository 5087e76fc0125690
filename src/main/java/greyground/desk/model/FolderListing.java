package greyground.desk.model;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What of a folder is shown to choose from: folders first, then files, each by name without regard to case. Names that begin with a dot are left out.
 *
 * @param folder that is looked into; empty where the system's own roots are listed
 * @param trouble why nothing is listed; else empty
 */
public record FolderListing(Optional<Path> folder, List<Entry> entries, String trouble) {
    private static final double THOUSAND = 1000;

    /**
     * A file or a folder.
     *
     * @param bytes of a file; 0 of a folder
     */
    public record Entry(Path path, boolean isFolder, long bytes) {
        public String name() {
            return path.getFileName() == null
                    ? path.toString()
                    : path.getFileName().toString();
        }

        /** "folder", or how large it is, such as "12.4 MB" (powers of ten, as the SI has them). */
        public String size() {
            if (isFolder) {
                return "folder";
            }
            double size = bytes;
            String unit = "bytes";
            for (String next : new String[] {"kB", "MB", "GB", "TB"}) {
                if (size < THOUSAND) {
                    break;
                }
                size /= THOUSAND;
                unit = next;
            }
            return String.format(Locale.ROOT, size < 100 && !unit.equals("bytes") ? "%.1f %s" : "%.0f %s", size, unit);
        }
    }

    /** The system's roots: where there is no folder above. */
    public static FolderListing roots() {
        List<Entry> roots = new ArrayList<>();
        FileSystems.getDefault().getRootDirectories().forEach(root -> roots.add(new Entry(root, true, 0)));
        return new FolderListing(Optional.empty(), roots, "");
    }

    /**
     * Looks into a folder.
     *
     * @param kind of files to list; null for all
     */
    public static FolderListing of(Path folder, FileAsking.@Nullable Kind kind) {
        List<Entry> entries = new ArrayList<>();
        try (DirectoryStream<Path> paths = Files.newDirectoryStream(folder)) {
            for (Path path : paths) {
                entry(path, kind).ifPresent(entries::add);
            }
        } catch (IOException | SecurityException unreadable) {
            return new FolderListing(
                    Optional.of(folder), List.of(), folder + " can't be read: go to the folder above, or type another");
        }
        entries.sort(Comparator.comparing((Entry entry) -> !entry.isFolder())
                .thenComparing(entry -> entry.name().toLowerCase(Locale.ROOT))
                .thenComparing(Entry::name));
        return new FolderListing(Optional.of(folder), entries, "");
    }

    private static Optional<Entry> entry(Path path, FileAsking.@Nullable Kind kind) {
        String name = path.getFileName().toString();
        boolean isFolder = Files.isDirectory(path);
        if (name.startsWith(".") || (!isFolder && (!Files.isRegularFile(path) || !fits(name, kind)))) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Entry(path, isFolder, isFolder ? 0 : Files.size(path)));
        } catch (IOException goneMeanwhile) {
            return Optional.empty();
        }
    }

    private static boolean fits(String name, FileAsking.@Nullable Kind kind) {
        return kind == null
                || kind.patterns().stream()
                        .anyMatch(pattern -> name.toLowerCase(Locale.ROOT).endsWith(pattern.substring(1)));
    }

    /** What a typed name means here: relative to the folder, or from a root; empty where it is no name. */
    public Optional<Path> typed(String words) {
        try {
            Path path = Path.of(words.strip());
            return words.isBlank()
                    ? Optional.empty()
                    : Optional.of(
                            folder.map(here -> here.resolve(path)).orElse(path).normalize());
        } catch (InvalidPathException noName) {
            return Optional.empty();
        }
    }
}
