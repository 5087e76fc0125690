package greyground.film;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.Bands;
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
        List<SheetTiles.Tile> tiles = SheetTiles.cut(film, COARSE, sheet);
        byte[] whole = film.maker().make(0, film.height());
        int[] seen = new int[film.width() * film.height()];
        for (SheetTiles.Tile tile : tiles) {
            PixelRect place = tile.place();
            assertTrue(place.width() <= COARSE.pixels(90) && place.height() <= COARSE.pixels(70));
            byte[] part = tile.rows().maker().make(0, place.height());
            for (int y = 0; y < place.height(); y++) {
                for (int x = 0; x < place.width(); x++) {
                    seen[(place.top() + y) * film.width() + place.left() + x]++;
                    int expected = first(film, whole, place.left() + x, place.top() + y);
                    if (expected != first(tile.rows(), part, x, y)) {
                        assertEquals(expected, first(tile.rows(), part, x, y), tile.words() + " at " + x + "," + y);
                    }
                }
            }
        }
        for (int count : seen) {
            assertTrue(count >= 1);
        }
        for (SheetTiles.Tile tile : tiles) {
            if (tile.column() > 1) {
                PixelRect before = tiles.get(tiles.indexOf(tile) - 1).place();
                assertTrue(before.right() - tile.place().left() >= COARSE.pixels(10));
            }
        }
    }

    @Test
    void filmThatFitsIsOneSheet() {
        List<SheetTiles.Tile> tiles = SheetTiles.cut(new Noise(300, 200, 1), COARSE, new Size(200, 200));
        assertEquals(1, tiles.size());
        assertEquals("sheet 1 of 1 (column 1, row 1)", tiles.get(0).words());
    }

    @Test
    void refusesASheetTooSmallToOverlap() {
        assertThrows(Refusal.class, () -> SheetTiles.cut(new Noise(300, 200, 1), COARSE, new Size(40, 200)));
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
