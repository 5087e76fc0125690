package greyground.art.touch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.art.OutsideTools;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EvenPaperAgainstScipyTest {
    private static final int ACROSS = 61;
    private static final int DOWN = 47;

    private static final String SCRIPT = """
            import numpy as np
            from scipy.ndimage import grey_closing
            cells = np.fromfile('cells.raw', '<f8').reshape(47, 61)
            grey_closing(cells, size=(13, 13), mode='reflect').astype('<f8').tofile('closed.raw')
            """;

    @TempDir
    Path folder;

    @Test
    void theClosingIsScipysToTheLastBit() throws Exception {
        String python = OutsideTools.python("import scipy.ndimage");
        double[] cells = new Random(4).doubles((long) ACROSS * DOWN).toArray();
        ByteBuffer raw = ByteBuffer.allocate(8 * cells.length).order(ByteOrder.LITTLE_ENDIAN);
        for (double cell : cells) {
            raw.putDouble(cell);
        }
        Files.write(folder.resolve("cells.raw"), raw.array());
        OutsideTools.run(folder, List.of(python, "-c", SCRIPT), null);
        ByteBuffer expected = ByteBuffer.wrap(Files.readAllBytes(folder.resolve("closed.raw")))
                .order(ByteOrder.LITTLE_ENDIAN);
        double[] closed = EvenPaper.closed(cells, ACROSS, 6);
        for (int i = 0; i < closed.length; i++) {
            assertEquals(expected.getDouble(8 * i), closed[i], i % ACROSS + "," + i / ACROSS);
        }
    }
}
