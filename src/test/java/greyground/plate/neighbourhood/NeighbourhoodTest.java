package greyground.plate.neighbourhood;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.FilmPatch;
import greyground.plate.edge.NoiseGrain;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Laws of every disc, each pattern counted pixel by pixel beside it. */
class NeighbourhoodTest {
    private static final int SIZE = 70;

    private static FilmPatch noise() {
        Random random = new Random(7);
        boolean[] black = new boolean[SIZE * SIZE];
        for (int i = 0; i < black.length; i++) {
            black[i] = random.nextInt(8) < i % SIZE / 9;
        }
        return NoiseGrain.patch(SIZE, 20, i -> black[i]);
    }

    private static boolean black(FilmPatch film, int x, int y) {
        return film.black(Math.floorMod(x, SIZE), Math.floorMod(y, SIZE));
    }

    @Test
    void aPatternIsTheDiscsPixelsRowByRow() {
        FilmPatch film = noise();
        FilmBits bits = FilmBits.of(film);
        for (int square : new int[] {5, 10, 16, 17}) {
            Neighbourhood disc = new Neighbourhood(square);
            long[] rows = new long[2 * disc.radius() + 1];
            for (int y = 0; y < SIZE; y += 3) {
                for (int from = 0; from < SIZE; from += 30) {
                    bits.rows(from, y, rows);
                    for (int i = 0; i < 30 && from + i < SIZE; i++) {
                        long wanted = 0;
                        for (int dy = -disc.radius(); dy <= disc.radius(); dy++) {
                            for (int dx = -disc.radius(); dx <= disc.radius(); dx++) {
                                if (dx * dx + dy * dy <= square) {
                                    wanted = wanted << 1 | (black(film, from + i + dx, y + dy) ? 1 : 0);
                                }
                            }
                        }
                        assertEquals(wanted, disc.pattern(rows, 0, i));
                        boolean mixed = wanted != 0 && wanted != (1L << disc.bits()) - 1;
                        assertEquals(mixed, disc.mixed(rows) << Neighbourhood.MOST_RADIUS + i < 0);
                        int inner = Neighbourhood.inner(rows, disc.radius() - 2, i);
                        assertEquals(inner, disc.innerOf(wanted));
                        assertEquals(inner, Neighbourhood.INNER.pattern(rows, disc.radius() - 2, i));
                    }
                }
            }
        }
    }

    /** The film turned has the pattern turned; and all eight turns of a pattern meet in one. */
    @Test
    void aTurnedFilmHasTurnedPatterns() {
        FilmPatch film = noise();
        Neighbourhood disc = new Neighbourhood(17);
        long[] rows = new long[2 * disc.radius() + 1];
        for (int turn = 0; turn < Neighbourhood.SYMMETRIES; turn++) {
            int way = turn;
            FilmPatch turned = NoiseGrain.patch(SIZE, 20, i -> {
                int x = (way & 1) != 0 ? SIZE - 1 - i % SIZE : i % SIZE;
                int y = (way & 2) != 0 ? SIZE - 1 - i / SIZE : i / SIZE;
                return (way & 4) != 0 ? film.black(y, x) : film.black(x, y);
            });
            for (int at = 0; at < SIZE; at++) {
                FilmBits.of(film).rows(at, 20, rows);
                long pattern = disc.pattern(rows, 0, 0);
                int x = (way & 4) != 0 ? 20 : at;
                int y = (way & 4) != 0 ? at : 20;
                FilmBits.of(turned).rows((way & 1) != 0 ? SIZE - 1 - x : x, (way & 2) != 0 ? SIZE - 1 - y : y, rows);
                long other = disc.pattern(rows, 0, 0);
                assertEquals(other, disc.turned(pattern, turn));
                assertEquals(disc.turned(pattern, disc.leastTurn(pattern)), disc.turned(other, disc.leastTurn(other)));
            }
        }
    }

    /** A corner goes where the disc's own corner pixel goes. */
    @Test
    void cornersTurnWithThePattern() {
        Neighbourhood square = new Neighbourhood(2);
        long[] corners = {1L << 8, 1L << 6, 1L << 2, 1};
        for (int turn = 0; turn < Neighbourhood.SYMMETRIES; turn++) {
            for (int corner = 0; corner < 4; corner++) {
                assertEquals(corners[Neighbourhood.corner(corner, turn)], square.turned(corners[corner], turn));
            }
        }
        assertTrue(square.bits() == 9);
    }
}
