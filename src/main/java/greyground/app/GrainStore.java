package greyground.app;

import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * Keeps grains that have been made, so that the next film with the same grain need not wait for them.
 *
 * <p>A grain is named by all that decides it: spacing or ruling, seed, resolution and program version. What is kept is checked
 * when it is read; anything damaged is made anew. A store that can't be read or written costs time, never a film.
 */
final class GrainStore {
    private static final int MAGIC = 0x47524E31;
    private static final int HEAD_BYTES = 12;
    private static final int LARGEST_SIDE = 4096;

    private final Path folder;

    GrainStore(Path folder) {
        this.folder = folder;
    }

    /** The store in the user's cache folder, by the freedesktop.org base directory rules; elsewhere in the home folder. */
    static GrainStore usual() {
        String cache = System.getenv("XDG_CACHE_HOME");
        Path base = cache != null && cache.startsWith("/")
                ? Path.of(cache)
                : Path.of(System.getProperty("user.home", "."), ".cache");
        return new GrainStore(base.resolve("greyground"));
    }

    /** The tile of a grain, kept or made now. */
    ThresholdTile tile(Grain grain, Resolution resolution) {
        Path file = folder.resolve(name(grain, resolution));
        Optional<ThresholdTile> kept = read(file);
        if (kept.isPresent()) {
            return kept.get();
        }
        ThresholdTile made = ThresholdTile.of(grain, resolution);
        if (made.width() <= LARGEST_SIDE && made.height() <= LARGEST_SIDE) {
            keep(file, made);
        }
        return made;
    }

    private static String name(Grain grain, Resolution resolution) {
        CRC32 words = new CRC32();
        words.update((grain + " " + resolution).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        String plain = (grain.name() + " " + resolution.dotsPerInch()).replaceAll("[^A-Za-z0-9.]+", "-");
        return plain + "-" + Long.toHexString(words.getValue()) + "-" + Program.VERSION + ".grain";
    }

    private static Optional<ThresholdTile> read(Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > HEAD_BYTES + 8 + 2L * LARGEST_SIDE * LARGEST_SIDE) {
                return Optional.empty();
            }
            ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
            if (bytes.remaining() < HEAD_BYTES + 8 || bytes.getInt() != MAGIC) {
                return Optional.empty();
            }
            int width = bytes.getInt();
            int height = bytes.getInt();
            boolean plausible = width > 0 && height > 0 && width <= LARGEST_SIDE && height <= LARGEST_SIDE;
            if (!plausible || bytes.remaining() != 2L * width * height + 8) {
                return Optional.empty();
            }
            CRC32 sum = new CRC32();
            sum.update(bytes.array(), 0, bytes.limit() - 8);
            if (bytes.getLong(bytes.limit() - 8) != sum.getValue()) {
                return Optional.empty();
            }
            char[] thresholds = new char[width * height];
            bytes.asCharBuffer().get(thresholds);
            return Optional.of(new ThresholdTile(width, height, thresholds));
        } catch (IOException unreadable) {
            return Optional.empty();
        }
    }

    private void keep(Path file, ThresholdTile tile) {
        ByteBuffer bytes = ByteBuffer.allocate(HEAD_BYTES + 2 * tile.width() * tile.height() + 8);
        bytes.putInt(MAGIC).putInt(tile.width()).putInt(tile.height());
        CharBuffer thresholds = bytes.asCharBuffer();
        char[] row = new char[tile.width()];
        for (int y = 0; y < tile.height(); y++) {
            tile.copyRow(0, y, tile.width(), row);
            thresholds.put(row);
        }
        CRC32 sum = new CRC32();
        sum.update(bytes.array(), 0, bytes.capacity() - 8);
        bytes.putLong(bytes.capacity() - 8, sum.getValue());
        try {
            Files.createDirectories(folder);
            Path sibling = Files.createTempFile(folder, "grain", ".part");
            try {
                Files.write(sibling, bytes.array());
                Files.move(sibling, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(sibling);
            }
        } catch (IOException notKept) {
            // The grain itself is made; it will be made again next time.
            return;
        }
    }
}
