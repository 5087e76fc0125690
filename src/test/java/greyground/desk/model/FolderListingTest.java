package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderListingTest {
    @TempDir
    Path folder;

    private List<String> names(FileAsking.Kind kind) {
        return FolderListing.of(folder, kind).entries().stream()
                .map(entry -> entry.name() + " " + entry.size())
                .toList();
    }

    @Test
    void foldersComeFirstThenFilesOfTheKindByName() throws Exception {
        Files.createDirectory(folder.resolve("scans"));
        Files.createDirectory(folder.resolve(".hidden"));
        Files.write(folder.resolve("b.PNG"), new byte[1_240_000]);
        Files.write(folder.resolve("A.tif"), new byte[999]);
        Files.write(folder.resolve("job.json"), new byte[1000]);
        Files.write(folder.resolve("notes.txt"), new byte[0]);
        Files.createSymbolicLink(folder.resolve("lost.png"), folder.resolve("nowhere.png"));
        assertEquals(List.of("scans folder", "A.tif 999 bytes", "b.PNG 1.2 MB"), names(FileAsking.Kind.PICTURE));
        assertEquals(List.of("scans folder", "job.json 1.0 kB"), names(FileAsking.Kind.JOB));
        assertEquals(
                List.of("scans folder", "A.tif 999 bytes", "b.PNG 1.2 MB", "job.json 1.0 kB", "notes.txt 0 bytes"),
                names(null));
    }

    @Test
    void typedNamesCountFromTheFolderOrTheRoot() {
        FolderListing here = FolderListing.of(folder, null);
        assertEquals(Optional.of(folder.resolve("x.png")), here.typed(" x.png "));
        assertEquals(Optional.of(folder.resolveSibling("x")), here.typed("../x"));
        assertEquals(Optional.of(Path.of("/etc/hosts")), here.typed("/etc/hosts"));
        assertTrue(here.typed("  ").isEmpty() && here.typed("a\0b").isEmpty());
    }

    @Test
    void whatCantBeReadIsSaidAndRootsHaveNothingAbove() {
        FolderListing none = FolderListing.of(folder.resolve("gone"), null);
        assertTrue(none.trouble().contains("gone") && none.trouble().contains(":"), none.trouble());
        assertFalse(FolderListing.roots().entries().isEmpty());
    }
}
