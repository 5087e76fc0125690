package greyground.app.kept;

import greyground.film.job.Job;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plate.PlateProcess;
import greyground.quantity.RecordWords;
import greyground.quantity.Resolution;
import greyground.tone.ToneCurve;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.zip.CRC32;
import org.jspecify.annotations.Nullable;

/**
 * Keeps grains that have been made, so that the next film with the same grain need not wait for them.
 *
 * <p>A grain is named by all that decides it: spacing or ruling, seed, resolution, and the number of the algorithm
 * that makes it; so a change in code never meets a grain of before. What is kept is checked
 * when it is read; anything damaged is made anew.
 */
public final class GrainStore {
    public static final long SCREEN_SEED = 1;

    private static final GrainStore USUAL = new GrainStore(CacheFolder.usual().folder());
    private static final int MAGIC = 0x47524E31;
    private static final int HEAD_BYTES = 12;
    private static final int LARGEST_SIDE = 4096;

    private final CacheFolder cache;
    private final int algorithm;
    private volatile @Nullable Last last;

    /** The grain asked for last: most changes of a job keep it. */
    private record Last(String name, ThresholdTile tile) {}

    GrainStore(Path folder) {
        this(folder, ThresholdTile.ALGORITHM);
    }

    /** A store of grains that an algorithm of this number makes. */
    GrainStore(Path folder, int algorithm) {
        this.cache = new CacheFolder(folder);
        this.algorithm = algorithm;
    }

    /** The tile of a grain, kept or made now. */
    ThresholdTile tile(Grain grain, Resolution resolution) {
        String name = name(grain, resolution);
        Last present = last;
        if (present == null || !present.name().equals(name)) {
            present = new Last(name, keptOrMade(name, grain, resolution));
            last = present;
        }
        return present.tile();
    }

    private ThresholdTile keptOrMade(String name, Grain grain, Resolution resolution) {
        Optional<ThresholdTile> kept =
                cache.read(name, HEAD_BYTES + 2L * LARGEST_SIDE * LARGEST_SIDE).flatMap(GrainStore::tile);
        if (kept.isPresent()) {
            return kept.get();
        }
        ThresholdTile made = ThresholdTile.of(grain, resolution);
        if (made.width() <= LARGEST_SIDE && made.height() <= LARGEST_SIDE) {
            keep(cache, name, made);
        }
        return made;
    }

    static void keep(CacheFolder cache, String name, ThresholdTile tile) {
        cache.keep(name, bytes(tile));
    }

    private String name(Grain grain, Resolution resolution) {
        CRC32 words = new CRC32();
        words.update((RecordWords.of(grain) + " " + RecordWords.of(resolution)).getBytes(StandardCharsets.UTF_8));
        String plain = (grain.name() + " " + resolution.dotsPerInch()).replaceAll("[^A-Za-z0-9.]+", "-");
        return plain + "-" + Long.toHexString(words.getValue()) + "-" + algorithm + ".grain";
    }

    private static Optional<ThresholdTile> tile(ByteBuffer bytes) {
        if (bytes.remaining() < HEAD_BYTES || bytes.getInt() != MAGIC) {
            return Optional.empty();
        }
        int width = bytes.getInt();
        int height = bytes.getInt();
        boolean plausible = width > 0 && height > 0 && width <= LARGEST_SIDE && height <= LARGEST_SIDE;
        if (!plausible || bytes.remaining() != 2L * width * height) {
            return Optional.empty();
        }
        char[] thresholds = new char[width * height];
        bytes.asCharBuffer().get(thresholds);
        return Optional.of(new ThresholdTile(width, height, thresholds));
    }

    private static byte[] bytes(ThresholdTile tile) {
        ByteBuffer bytes = ByteBuffer.allocate(HEAD_BYTES + 2 * tile.width() * tile.height());
        bytes.putInt(MAGIC).putInt(tile.width()).putInt(tile.height());
        CharBuffer thresholds = bytes.asCharBuffer();
        char[] row = new char[tile.width()];
        for (int y = 0; y < tile.height(); y++) {
            tile.copyRow(0, y, tile.width(), row);
            thresholds.put(row);
        }
        return bytes.array();
    }

    /** The positive's grain; empty for continuous tone. */
    public static Optional<ThresholdTile> positive(Job job) {
        return job.grain() instanceof Grain.Continuous
                ? Optional.empty()
                : Optional.of(USUAL.tile(job.grain(), job.resolution()));
    }

    /** The aquatint screen of photogravure. */
    public static AquatintScreen screen(PlateProcess.Photogravure process, Resolution resolution) {
        Grain grain = new Grain.Stochastic(process.screenSpacingMicrometres(), SCREEN_SEED);
        ThresholdTile tile = USUAL.tile(grain, resolution);
        return new AquatintScreen(tile, (int) Math.round(process.screenBlack() * ToneCurve.SOLID));
    }
}
