package greyground.app.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GrainStoreTest {
    private static final Grain GRAIN = new Grain.Stochastic(300, 5);
    private static final Resolution COARSE = new Resolution(360);

    @TempDir
    Path folder;

    private List<Path> kept() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    private static void assertSame(ThresholdTile expected, ThresholdTile actual) {
        assertEquals(expected.width(), actual.width());
        assertEquals(expected.height(), actual.height());
        for (int y = 0; y < expected.height(); y++) {
            for (int x = 0; x < expected.width(); x++) {
                assertEquals(expected.threshold(x, y), actual.threshold(x, y));
            }
        }
    }

    @Test
    void keptGrainIsTheGrainThatWasMade() throws IOException {
        ThresholdTile made = ThresholdTile.of(GRAIN, COARSE);
        assertSame(made, new GrainStore(folder).tile(GRAIN, COARSE));
        assertEquals(1, kept().size());
        assertSame(made, new GrainStore(folder).tile(GRAIN, COARSE));
    }

    @Test
    void damagedGrainIsMadeAnew() throws IOException {
        ThresholdTile made = new GrainStore(folder).tile(GRAIN, COARSE);
        Path file = kept().get(0);
        byte[] whole = Files.readAllBytes(file);
        for (int at : new int[] {0, 5, whole.length / 2, whole.length - 1}) {
            byte[] damaged = whole.clone();
            damaged[at] ^= 0x41;
            Files.write(file, damaged);
            assertSame(made, new GrainStore(folder).tile(GRAIN, COARSE));
        }
        Files.write(file, new byte[0]);
        assertSame(made, new GrainStore(folder).tile(GRAIN, COARSE));
    }

    @Test
    void anAlgorithmOfAnotherNumberIsNotServedTheGrainOfThisOne() throws IOException {
        ThresholdTile ours = new GrainStore(folder, 1).tile(GRAIN, COARSE);
        Path file = kept().get(0);
        char[] other = new char[ours.width() * ours.height()];
        // As if the code of number 1 had made another grain.
        ThresholdTile before = new ThresholdTile(ours.width(), ours.height(), other);
        GrainStore.keep(new CacheFolder(folder), String.valueOf(file.getFileName()), before);
        assertSame(before, new GrainStore(folder, 1).tile(GRAIN, COARSE));
        assertSame(ours, new GrainStore(folder, 2).tile(GRAIN, COARSE));
    }

    /**
     * Not what a grain should be, but what it is: where one of these changes, {@link ThresholdTile#ALGORITHM} must be raised and this
     * written anew, lest the grain of before be served from people's caches.
     */
    @Test
    void grainsOfTheNumberAreTheseAndNoOthers() {
        assertEquals(
                "1: 234x234 5f3bf532 451x451 57567047",
                ThresholdTile.ALGORITHM + ": " + print(GRAIN) + " "
                        + print(new Grain.Halftone(new Ruling(20), 45, Grain.DotShape.ROUND)));
    }

    private static String print(Grain grain) {
        ThresholdTile tile = ThresholdTile.of(grain, COARSE);
        CRC32 sum = new CRC32();
        for (int y = 0; y < tile.height(); y++) {
            for (int x = 0; x < tile.width(); x++) {
                sum.update(tile.threshold(x, y) >> 8);
                sum.update(tile.threshold(x, y));
            }
        }
        return tile.width() + "x" + tile.height() + " " + Long.toHexString(sum.getValue());
    }

    @Test
    void anotherSeedIsAnotherGrain() throws IOException {
        new GrainStore(folder).tile(GRAIN, COARSE);
        new GrainStore(folder).tile(new Grain.Stochastic(300, 6), COARSE);
        assertEquals(2, kept().size());
        assertNotEquals(kept().get(0), kept().get(1));
    }

    @Test
    void aFolderThatCannotBeMadeCostsNoFilm() throws IOException {
        Path occupied = Files.writeString(folder.resolve("occupied"), "a file");
        assertSame(ThresholdTile.of(GRAIN, COARSE), new GrainStore(occupied).tile(GRAIN, COARSE));
    }

    @Test
    void whatAKilledProgramHalfKeptIsCleared() throws IOException {
        Path half = Files.writeString(folder.resolve(".a.grain.greyground-999999999.part"), "half");
        new GrainStore(folder).tile(GRAIN, COARSE);
        assertEquals(1, kept().size());
        assertFalse(Files.exists(half));
    }
}
