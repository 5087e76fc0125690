package greyground.app.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
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
