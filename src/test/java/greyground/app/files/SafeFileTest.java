package greyground.app.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafeFileTest {
    @TempDir
    Path folder;

    private static ByteBuffer bytes(String text) {
        return ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void replacesTheOldFileOnlyWhenTheNewOneIsWhole() throws Exception {
        Path film = folder.resolve("film.pdf");
        Files.writeString(film, "old");
        SafeFile.write("film", film, channel -> {
            channel.write(bytes("new"));
            assertEquals("old", Files.readString(film));
        });
        assertEquals("new", Files.readString(film));
        assertEquals(List.of("film.pdf"), names());
    }

    @Test
    void keepsTheOldFileWhenWritingFails() throws Exception {
        Path film = folder.resolve("film.pdf");
        Files.writeString(film, "old");
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> SafeFile.write("film", film, channel -> {
                    channel.write(bytes("half"));
                    throw new IOException("No space left on device");
                }));
        assertTrue(refusal.getMessage().contains("No space left on device"), refusal.getMessage());
        assertEquals("old", Files.readString(film));
        assertEquals(List.of("film.pdf"), names());
    }

    @Test
    void clearsWhatAKilledProgramLeft() throws Exception {
        Files.writeString(folder.resolve(".film.pdf.greyground-999999999.part"), "half");
        Files.writeString(folder.resolve(".mine.part"), "somebody else's");
        SafeFile.write("film", folder.resolve("film.pdf"), channel -> channel.write(bytes("whole")));
        assertEquals(List.of(".mine.part", "film.pdf"), names());
    }

    @Test
    void refusesAVanishedFolderBeforeTheWork() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> SafeFile.checkWritable("film", folder.resolve("gone").resolve("film.pdf")));
        assertTrue(refusal.getMessage().contains("does not exist"), refusal.getMessage());
    }

    @Test
    void whatAnotherProgramStillHoldsIsLeftAlone() throws Exception {
        // A process of this number runs on another machine that shares the folder; here none does.
        Path held = Files.writeString(folder.resolve(".film.pdf.greyground-999999999.part"), "half");
        try (FileChannel theirs = FileChannel.open(held, StandardOpenOption.WRITE)) {
            assertTrue(theirs.tryLock().isValid());
            SafeFile.write("film", folder.resolve("film.pdf"), channel -> channel.write(bytes("whole")));
            assertTrue(Files.exists(held));
        }
        SafeFile.write("film", folder.resolve("film.pdf"), channel -> channel.write(bytes("whole")));
        assertEquals(List.of("film.pdf"), names());
    }

    /** Systems give the numbers of ended processes to new ones. */
    @Test
    void whatAnEarlierProcessOfARunningOnesNumberLeftIsCleared() throws Exception {
        long running = ProcessHandle.current().pid();
        Path left = Files.writeString(folder.resolve(".old.pdf.greyground-" + running + ".part"), "half");
        Files.setLastModifiedTime(left, FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        SafeFile.write("film", folder.resolve("film.pdf"), channel -> channel.write(bytes("whole")));
        assertEquals(List.of("film.pdf"), names());
    }

    @Test
    void aFolderThatVanishesMeanwhileIsNamedAsTheReason() throws Exception {
        Path sub = Files.createDirectory(folder.resolve("sub"));
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> SafeFile.write("film", sub.resolve("film.pdf"), channel -> {
                    channel.write(bytes("half"));
                    try (Stream<Path> files = Files.list(sub)) {
                        for (Path file : files.toList()) {
                            Files.delete(file);
                        }
                    }
                    Files.delete(sub);
                }));
        assertTrue(refusal.getMessage().contains("vanished meanwhile"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains("film.pdf"), refusal.getMessage());
        assertEquals(List.of(), names());
    }

    @Test
    void aNameThatStandsForAnotherFileKeepsDoingSo() throws Exception {
        Path real =
                Files.writeString(Files.createDirectory(folder.resolve("real")).resolve("shop.json"), "old");
        Path name;
        try {
            name = Files.createSymbolicLink(folder.resolve("shop.json"), real);
        } catch (IOException | UnsupportedOperationException noLinks) {
            Assumptions.abort("this system makes no symbolic links");
            return;
        }
        SafeFile.write("workshop", name, channel -> channel.write(bytes("new")));
        assertTrue(Files.isSymbolicLink(name));
        assertEquals("new", Files.readString(real));
        assertEquals(List.of("real", "shop.json"), names());
    }

    @Test
    void twoWritesOfOneNameAtOnceEachWriteAWholeFile() throws Exception {
        Path film = folder.resolve("film.pdf");
        SafeFile.write("film", film, outer -> {
            outer.write(bytes("out"));
            SafeFile.write("film", film, inner -> inner.write(bytes("inner")));
            assertEquals("inner", Files.readString(film));
            outer.write(bytes("er"));
        });
        assertEquals("outer", Files.readString(film));
        assertEquals(List.of("film.pdf"), names());
    }

    @Test
    void aNewFileNeverTakesTheNameOfAnother() throws Exception {
        Path kept = folder.resolve("kept.json");
        assertTrue(SafeFile.writeNew("workshop", kept, channel -> channel.write(bytes("first"))));
        assertFalse(SafeFile.writeNew("workshop", kept, channel -> channel.write(bytes("second"))));
        // Taken while the second was being written.
        Path other = folder.resolve("other.json");
        assertFalse(SafeFile.writeNew("workshop", other, channel -> {
            channel.write(bytes("second"));
            Files.writeString(other, "somebody else's");
        }));
        assertEquals("first", Files.readString(kept));
        assertEquals("somebody else's", Files.readString(other));
        assertEquals(List.of("kept.json", "other.json"), names());
    }
}
