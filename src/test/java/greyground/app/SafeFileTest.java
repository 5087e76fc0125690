package greyground.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
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
}
