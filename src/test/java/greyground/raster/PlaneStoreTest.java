package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.File;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One contract for planes in memory and in a spill file. */
class PlaneStoreTest {
    @TempDir
    Path folder;

    private static short sample(int x, int y) {
        return (short) (x * 7 + y * 1301);
    }

    private PlaneStore open(boolean spills) {
        return PlaneStore.open(37, 53, spills ? 0 : 1 << 20, folder);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void rowsPutInAnyOrderComeBack(boolean spills) {
        try (PlaneStore store = open(spills)) {
            for (int first : new int[] {40, 0, 20}) {
                int count = Math.min(20, 53 - first);
                short[] rows = new short[37 * count];
                for (int i = 0; i < rows.length; i++) {
                    rows[i] = sample(i % 37, first + i / 37);
                }
                store.putRows(first, count, rows);
            }
            check(store.finish());
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void runsPutByManyThreadsComeBackToManyReaders(boolean spills) {
        try (PlaneStore store = open(spills)) {
            IntStream.range(0, 53 * 4).parallel().forEach(i -> {
                int y = i / 4;
                int x = i % 4 * 10;
                short[] run = new short[12];
                int count = Math.min(10, 37 - x);
                for (int k = 0; k < count; k++) {
                    run[2 + k] = sample(x + k, y);
                }
                store.putRun(x, y, count, run, 2);
            });
            check(store.finish());
        }
    }

    private void check(GreyPlane plane) {
        try (plane) {
            IntStream.range(0, 53).parallel().forEach(y -> {
                short[] row = new short[40];
                plane.readRow(y, row);
                for (int x = 0; x < 37; x++) {
                    assertEquals(sample(x, y), row[x]);
                }
                int from = y % 30;
                plane.readRun(from, y, 37 - from, row, 2);
                for (int x = from; x < 37; x++) {
                    assertEquals(sample(x, y), row[2 + x - from]);
                }
            });
            assertThrows(IndexOutOfBoundsException.class, () -> plane.readRun(30, 0, 8, new short[37], 0));
            assertThrows(IndexOutOfBoundsException.class, () -> plane.readRun(-1, 1, 2, new short[37], 0));
            assertThrows(IndexOutOfBoundsException.class, () -> plane.readRow(53, new short[37]));
            assertThrows(IndexOutOfBoundsException.class, () -> plane.readRow(-1, new short[37]));
        }
        plane.close();
        File[] left = folder.toFile().listFiles();
        assertTrue(left != null && left.length == 0, "a closed plane leaves no file");
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void anUnfinishedStoreLeavesNothing(boolean spills) {
        open(spills).close();
        assertEquals(0, folder.toFile().list().length);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true})
    void aSpilledPlaneCanBeReadByAnInterruptedThreadWithoutHarmToOthers(boolean spills) {
        PlaneStore store = open(spills);
        store.putRows(0, 1, new short[37]);
        try (GreyPlane plane = store.finish()) {
            Thread.currentThread().interrupt();
            plane.readRow(0, new short[37]);
            assertTrue(Thread.interrupted());
            plane.readRow(0, new short[37]);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true})
    void aFolderThatIsNotThereIsRefused(boolean spills) {
        assertTrue(spills);
        Refusal refusal = assertThrows(Refusal.class, () -> PlaneStore.open(9, 9, 0, folder.resolve("none")));
        assertFalse(refusal.getMessage().isBlank());
    }
}
