package greyground.app.kept;

import greyground.app.files.Siblings;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * Things that were computed once and may be needed again, each a file. Whatever can't be read, or fails its checksum, is as if
 * it were not there; whatever can't be written is not kept. It costs time, never a film.
 */
public record CacheFolder(Path folder) {
    /** In the user's cache folder, by the freedesktop.org base directory rules; elsewhere in the home folder. */
    public static CacheFolder usual() {
        String cache = System.getenv("XDG_CACHE_HOME");
        Path base = cache != null && cache.startsWith("/")
                ? Path.of(cache)
                : Path.of(System.getProperty("user.home", "."), ".cache");
        return new CacheFolder(base.resolve("greyground"));
    }

    /**
     * What was kept under a name.
     *
     * @param mostBytes a file larger than this is something else
     */
    Optional<ByteBuffer> read(String name, long mostBytes) {
        Path file = folder.resolve(name);
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > mostBytes + Long.BYTES) {
                return Optional.empty();
            }
            byte[] bytes = Files.readAllBytes(file);
            int length = bytes.length - Long.BYTES;
            if (length < 0 || ByteBuffer.wrap(bytes).getLong(length) != checksum(bytes, length)) {
                return Optional.empty();
            }
            return Optional.of(ByteBuffer.wrap(bytes, 0, length).slice());
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    /** Keeps bytes under a name, whole or not at all. */
    void keep(String name, byte[] content) {
        ByteBuffer bytes = ByteBuffer.allocate(content.length + Long.BYTES);
        bytes.put(content).putLong(checksum(content, content.length));
        try {
            Files.createDirectories(folder);
            Siblings.clearAbandoned(folder);
            Path sibling = Siblings.begin(folder, folder.resolve(name));
            try {
                Files.write(sibling, bytes.array(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                Files.move(
                        sibling,
                        folder.resolve(name),
                        StandardCopyOption.ATOMIC_MOVE,
                        StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Siblings.end(sibling);
            }
        } catch (IOException notKept) {
            // It is made; it will be made again next time.
            return;
        }
    }

    private static long checksum(byte[] bytes, int length) {
        CRC32 sum = new CRC32();
        sum.update(bytes, 0, length);
        return sum.getValue();
    }
}
