package greyground.art.line;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.art.OutsideTools;
import greyground.raster.ArrayPlane;
import greyground.raster.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SpecksTest {
    private static final int WIDTH = 90;
    private static final int HEIGHT = 110;

    private static int[] touched(ArrayPlane art, Specks specks, int bandRows, int threads) throws Exception {
        int[] all = new int[art.width() * art.height()];
        specks.rows(
                art,
                bandRows,
                threads,
                (first, count, rows) -> {
                    for (int i = 0; i < rows.length; i++) {
                        all[first * art.width() + i] = rows[i] & 0xFFFF;
                    }
                },
                Progress.NONE);
        return all;
    }

    private static ArrayPlane noise() {
        Random random = new Random(3);
        boolean[] dark = new boolean[WIDTH * HEIGHT];
        for (int i = 0; i < dark.length; i++) {
            dark[i] = random.nextInt(100) < (i / WIDTH < 50 ? 20 : 70);
        }
        return ArrayPlane.of(WIDTH, HEIGHT, (x, y) -> dark[y * WIDTH + x] ? 3000 + x : 60_000 - y);
    }

    @Test
    void bandsAndThreadsCanNotBeSeen() throws Exception {
        Specks whole = new Specks(30_000, 2000, 64_000, 3.3);
        int[] expected = touched(noise(), whole, HEIGHT, 1);
        for (int rows : new int[] {1, 7, 64}) {
            Specks banded = new Specks(30_000, 2000, 64_000, 3.3);
            assertArrayEquals(expected, touched(noise(), banded, rows, 2), rows + " rows");
            assertEquals(whole.dots(), banded.dots());
            assertEquals(whole.holes(), banded.holes());
        }
    }

    /** A dot, a hair of the same area, a square just too large, and a pinhole. */
    @Test
    void smallPartsGoAndHairsStay() throws Exception {
        ArrayPlane art = ArrayPlane.of(100, 60, (x, y) -> {
            boolean dot = x >= 10 && x < 12 && y >= 10 && y < 12;
            boolean hair = y == 20 && x >= 10 && x < 24;
            boolean square = x >= 30 && x < 34 && y >= 10 && y < 14;
            boolean black = x >= 50 && x < 90 && y >= 5 && y < 55 && !(x == 70 && y == 30);
            return dot || hair || square || black ? 1000 : 65_000;
        });
        Specks specks = new Specks(30_000, 1000, 65_000, 3.9);
        int[] found = touched(art, specks, 16, 2);
        assertEquals(65_000, found[10 * 100 + 10]);
        assertEquals(1000, found[20 * 100 + 17], "a hair of 14 pixels stays, being longer than a speck");
        assertEquals(1000, found[12 * 100 + 32]);
        assertEquals(1000, found[30 * 100 + 70]);
        assertEquals(1, specks.dots());
        assertEquals(1, specks.holes());
    }

    /** scipy's labels, by area alone where no part is long: away from the upper and lower edge, where ours count mirrored. */
    @Test
    void scipyFindsTheSameParts(@TempDir Path folder) throws Exception {
        String python = OutsideTools.python("import scipy.ndimage, numpy");
        Random random = new Random(8);
        int[] codes = new int[WIDTH * HEIGHT];
        for (int i = 0; i < codes.length; i++) {
            boolean rim = i < 4 * WIDTH || i >= (HEIGHT - 4) * WIDTH;
            codes[i] = !rim && random.nextInt(100) < 22 ? 0 : 65_535;
        }
        int[] found = touched(
                ArrayPlane.of(WIDTH, HEIGHT, (x, y) -> codes[y * WIDTH + x]),
                new Specks(30_000, 0, 65_535, 3.9),
                32,
                2);
        StringBuilder text = new StringBuilder();
        for (int code : codes) {
            text.append(code == 0 ? '1' : '0');
        }
        Files.writeString(folder.resolve("art.txt"), text);
        String script = "import numpy, scipy.ndimage as n\n"
                + "a=numpy.array([int(c) for c in open('art.txt').read()]).reshape("
                + HEIGHT + "," + WIDTH + ")\n"
                + "def small(m,s):\n l,k=n.label(m,s)\n b=n.find_objects(l)\n z=n.sum_labels(numpy.ones_like(l),l,range(k+1))\n"
                + " g=numpy.array([False]+[z[i+1]<3.9*3.9 and max(q.stop-q.start for q in b[i])<=8 for i in range(k)])\n return g[l]\n"
                + "o=a.copy()\no[small(a==1,numpy.ones((3,3)))]=0\no[small(a==0,None)]=1\nprint(''.join(str(v) for v in o.ravel()))";
        String said =
                OutsideTools.run(folder, List.of(python, "-c", script), null).strip();
        StringBuilder ours = new StringBuilder();
        for (int code : found) {
            ours.append(code == 0 ? '1' : '0');
        }
        assertEquals(said, ours.toString());
    }
}
