package greyground.film.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SheetTilesTest {
    private static final Resolution COARSE = new Resolution(100);

    @ParameterizedTest
    @ValueSource(ints = {1, 8, 16})
    void everyPixelIsOnASheetAndNeighboursOverlap(int bits) throws Exception {
        FilmRows film = new Noise(1003, 777, bits);
        Size sheet = new Size(90, 70);
        List<SheetTiles.Tile> tiles = SheetTiles.of(whole(film), film, sheet, 0);
        byte[] whole = film.maker().make(0, film.height());
        int[] seen = new int[film.width() * film.height()];
        for (SheetTiles.Tile tile : tiles) {
            PixelRect window = tile.window();
            FilmRows rows = tile.rows();
            assertTrue(rows.width() <= COARSE.pixels(90) && rows.height() <= COARSE.pixels(70));
            byte[] part = rows.maker().make(0, rows.height());
            for (int y = 0; y < window.height(); y++) {
                for (int x = 0; x < window.width(); x++) {
                    seen[(window.top() + y) * film.width() + window.left() + x]++;
                    int expected = first(film, whole, window.left() + x, window.top() + y);
                    int actual = first(rows, part, tile.border() + x, tile.border() + y);
                    if (expected != actual) {
                        assertEquals(expected, actual, window + " at " + x + "," + y);
                    }
                }
            }
        }
        for (int count : seen) {
            assertTrue(count >= 1);
        }
        for (int i = 1; i < tiles.size(); i++) {
            PixelRect before = tiles.get(i - 1).window();
            PixelRect here = tiles.get(i).window();
            if (before.top() == here.top()) {
                assertTrue(before.right() - here.left() >= COARSE.pixels(10));
            }
        }
    }

    /** With a margin of 5 mm, tiles are 2 x 4 mm less than their films: register marks keep 1 mm inside a tile's own edge. */
    @Test
    void tilesKeepTheirMarksOutOfThePrintersMargin() {
        FilmRows film = new Noise(1003, 777, 1);
        for (SheetTiles.Tile tile : SheetTiles.of(whole(film), film, new Size(90, 70), 5)) {
            assertTrue(tile.rows().width() <= COARSE.pixels(82), tile.rows().width() + " pixels");
            assertTrue(tile.rows().height() <= COARSE.pixels(62), tile.rows().height() + " pixels");
        }
    }

    @Test
    void bandsOfAnyHeightAreTheSame() throws Exception {
        FilmRows film = new Noise(1003, 777, 1);
        FilmRows tile =
                SheetTiles.of(whole(film), film, new Size(90, 70), 0).get(1).rows();
        byte[] atOnce = tile.maker().make(0, tile.height());
        for (int first = 0; first < tile.height(); first += 7) {
            int count = Math.min(7, tile.height() - first);
            byte[] band = tile.maker().make(first, count);
            int from = first * tile.bytesPerRow();
            assertArrayEquals(Arrays.copyOfRange(atOnce, from, from + band.length), band);
        }
    }

    @Test
    void refusesASheetTooSmallToOverlap() {
        FilmRows film = new Noise(300, 200, 1);
        assertThrows(Refusal.class, () -> SheetTiles.of(whole(film), film, new Size(30, 200), 0));
    }

    private static Sheet whole(FilmRows film) {
        PixelRect all = new PixelRect(0, 0, film.width(), film.height());
        return new Sheet(FilmPixels.of(COARSE), film.width(), film.height(), all, all, List.of());
    }

    private static int first(FilmRows film, byte[] samples, int x, int y) {
        int at = y * film.bytesPerRow();
        return film.bitsPerSample() == 1
                ? samples[at + x / 8] >> (7 - x % 8) & 1
                : samples[at + x * film.bitsPerSample() / 8] & 0xFF;
    }

    private record Noise(int width, int height, int bitsPerSample) implements FilmRows {
        @Override
        public Bands.Maker<byte[]> maker() {
            return (firstRow, rowCount) -> {
                byte[] band = new byte[rowCount * bytesPerRow()];
                for (int i = 0; i < band.length; i++) {
                    band[i] = (byte) ((firstRow * bytesPerRow() + i) * 0x9E3779B1 >>> 24);
                }
                return band;
            };
        }
    }
}
