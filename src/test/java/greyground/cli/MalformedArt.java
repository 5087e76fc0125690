package greyground.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

/** Damaged pictures of every kind, made from sound ones by seeded mutation: the same on every machine. */
final class MalformedArt {
    /** Small sound pictures, made by {@code art.ArtSeeds}. */
    static final Path SOUND = Path.of("src/test/resources/greyground/fuzz/art/seeds");

    private static final int HEAD_BYTES = 64;

    private MalformedArt() {}

    /** One damaged picture. */
    record Mutant(String name, byte[] bytes) {}

    /** {@code each} of every sound picture. */
    static List<Mutant> all(int each) throws IOException {
        List<Mutant> all = new ArrayList<>();
        try (Stream<Path> files = Files.list(SOUND)) {
            for (Path file : files.sorted().toList()) {
                String name = String.valueOf(file.getFileName());
                byte[] sound = Files.readAllBytes(file);
                Random random = new Random(name.hashCode());
                for (int i = 0; i < each; i++) {
                    all.add(new Mutant(i + "-" + name, mutant(sound, i, random)));
                }
            }
        }
        return all;
    }

    private static byte[] mutant(byte[] sound, int way, Random random) {
        return switch (way % 6) {
            case 0 -> cut(sound, 0, random.nextInt(sound.length));
            case 1 -> turned(sound, 1 + random.nextInt(3), Math.min(HEAD_BYTES, sound.length), random);
            case 2 -> turned(sound, 1 + random.nextInt(16), sound.length, random);
            case 3 -> extreme(sound, random);
            case 4 -> without(sound, random);
            default -> doubled(sound, random);
        };
    }

    private static byte[] cut(byte[] sound, int from, int length) {
        byte[] part = new byte[length];
        System.arraycopy(sound, from, part, 0, length);
        return part;
    }

    private static byte[] turned(byte[] sound, int times, int reach, Random random) {
        byte[] bytes = sound.clone();
        for (int i = 0; i < times; i++) {
            bytes[random.nextInt(reach)] = (byte) random.nextInt();
        }
        return bytes;
    }

    /** Somewhere a number of four bytes that a length, a place or a size might be, become huge or nothing. */
    private static byte[] extreme(byte[] sound, Random random) {
        byte[] bytes = sound.clone();
        int[] values = {0, -1, 0x7F, 0x80};
        int at = random.nextInt(Math.max(1, Math.min(4 * HEAD_BYTES, sound.length) - 4));
        byte high = (byte) values[random.nextInt(values.length)];
        for (int i = 0; i < Math.min(4, bytes.length - at); i++) {
            bytes[at + i] = i == 0 || high == 0 ? high : -1;
        }
        return bytes;
    }

    private static byte[] without(byte[] sound, Random random) {
        int from = random.nextInt(sound.length);
        int gap = 1 + random.nextInt(sound.length - from);
        return joined(cut(sound, 0, from), cut(sound, from + gap, sound.length - from - gap));
    }

    private static byte[] doubled(byte[] sound, Random random) {
        int from = random.nextInt(sound.length);
        int length = random.nextInt(sound.length - from);
        return joined(cut(sound, 0, from + length), cut(sound, from, sound.length - from));
    }

    private static byte[] joined(byte[] one, byte[] other) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(one);
        out.writeBytes(other);
        return out.toByteArray();
    }
}
