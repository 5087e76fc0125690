package greyground.plate.neighbourhood;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.picture.CopperRelief;
import greyground.plate.DrawnFilm;
import greyground.plate.FilmPatch;
import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;
import greyground.plate.PlateWindow;
import greyground.plate.Studio;
import greyground.plate.VirtualPlate;
import greyground.plate.WholePlate;
import greyground.plate.edge.NoiseGrain;
import greyground.raster.Progress;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Held against the engine on the same pixels, which are wide here so that it is quick. */
class NeighbourhoodPlateTest {
    private static final double PITCH = 25_400 / 1440.0;
    private static final double WIDEST = 9;
    private static final int SIDE = 280;
    private static final double CELL = 25_400 / 150.0;
    private static final NoiseGrain GRAIN = new NoiseGrain(1440, 180, 2.2, 5);
    private static final List<FilmPatch> LEVELS =
            IntStream.rangeClosed(0, 100).mapToObj(i -> GRAIN.at(i / 100.0)).toList();
    private static final PlateWindow WINDOW =
            new PlateWindow(0, 0, CELL, (int) (SIDE * PITCH / CELL), (int) (SIDE * PITCH / CELL));
    private static final PlateConditions ETCHED = Studio.etched(40, 2);
    private static final NeighbourhoodSample SAMPLE = sample(ETCHED);

    private static NeighbourhoodSample sample(PlateConditions conditions) {
        return sample(conditions, List.of(conditions.ink()));
    }

    private static NeighbourhoodSample sample(PlateConditions conditions, List<Ink> inks) {
        return NeighbourhoodSample.of(
                new VirtualPlate(conditions, null, WIDEST), inks, GRAIN, CopperRelief::fromCorners);
    }

    /** Grain of whatever tone is wanted at each place, in percent. */
    private static PlateFilm film(IntBinaryOperator percent) {
        return new DrawnFilm(SIDE, SIDE, PITCH, (x, y) -> {
            FilmPatch level = LEVELS.get(Math.max(0, Math.min(100, percent.applyAsInt(x, y))));
            return level.black(Math.floorMod(x, level.width()), Math.floorMod(y, level.height())) ? 1 : 0;
        });
    }

    /** A tone that darkens to the right, an edge across it and a stroke of solid black. */
    private static PlateFilm drawing() {
        return film((x, y) -> x - y > 100 && x - y < 109 ? 100 : y > 150 + x / 9 ? 80 - x / 4 : 5 + x / 4);
    }

    private static NeighbourhoodPlate.Seen read(PlateFilm film, NeighbourhoodSample sample, int threads)
            throws Exception {
        double reach = NeighbourhoodPlate.reachMicrometres(sample.plate().conditions(), WINDOW, PITCH);
        FilmBits bits = FilmBits.read(film, WINDOW, reach, Progress.NONE);
        return new NeighbourhoodPlate(bits, WINDOW, sample)
                .look(List.of(NeighbourhoodPlate.Look.values()), false, threads, Progress.NONE);
    }

    private static List<PlateMap> computed(PlateFilm film, PlateConditions conditions) throws Exception {
        List<WholePlate.Look> looks = List.of(
                new WholePlate.Look(conditions, PlateView.printRoot()),
                new WholePlate.Look(conditions, PlateView.covered()),
                new WholePlate.Look(conditions, CopperRelief.asPrinted()));
        return new WholePlate(film, null, WIDEST).look(WINDOW, looks, 2, Progress.NONE);
    }

    private static double lightness(PlateConditions conditions, double root) {
        return Paper.lightness(conditions.paper().reflectance(root));
    }

    private static void checkAgainstTheEngine(PlateFilm film, NeighbourhoodSample sample, double rms, double most)
            throws Exception {
        PlateConditions conditions = sample.plate().conditions();
        List<PlateMap> wanted = computed(film, conditions);
        NeighbourhoodPlate.Seen seen = read(film, sample, 2);
        double bias = 0;
        double squares = 0;
        double[] off = new double[WINDOW.area()];
        for (int i = 0; i < off.length; i++) {
            double error = lightness(conditions, seen.maps().get(0).values()[i])
                    - lightness(conditions, wanted.get(0).values()[i]);
            bias += error / off.length;
            squares += error * error / off.length;
            off[i] = Math.abs(error);
        }
        Arrays.sort(off);
        String found = "bias " + bias + ", rms " + Math.sqrt(squares) + ", 99 % " + off[off.length * 99 / 100]
                + ", worst " + off[off.length - 1];
        assertTrue(Math.abs(bias) < 0.1 && squares < rms * rms && off[off.length * 99 / 100] < most, found);
        for (int map = 1; map < 3; map++) {
            for (int i = 0; i < off.length; i++) {
                // Shares and brightness; a picture's grey step is 0.004.
                assertEquals(wanted.get(map).values()[i], seen.maps().get(map).values()[i], 0.025, map + " at " + i);
            }
        }
        assertTrue(seen.guessed() < 0.01 * seen.pixels(), seen.guessed() + " guessed of " + seen.pixels());
    }

    @Test
    void aDrawingInGrainPrintsAsTheEngineHasIt() throws Exception {
        checkAgainstTheEngine(drawing(), SAMPLE, 0.2, 0.8);
    }

    /** A block ten times as wide as what the sample holds: the pad wipes its middle, and rests on a speck in it. */
    @Test
    void aWideBlackIsWipedAsTheEngineHasIt() throws Exception {
        PlateFilm block =
                film((x, y) -> x > 60 && x < 220 && y > 60 && y < 160 && Math.hypot(x - 110, y - 120) > 6 ? 100 : 20);
        checkAgainstTheEngine(block, SAMPLE, 0.4, 1.3);
        assertTrue(read(block, SAMPLE, 2).wiped() > 160 * 100 / 2);
    }

    @Test
    void unetchedFilmPrintsAsTheEngineHasIt() throws Exception {
        checkAgainstTheEngine(drawing(), sample(Studio.unetched(1.5)), 0.2, 0.8);
    }

    /** One reading of the film for all inks: the blackest bit for bit as by itself, the paler ones as the engine has them. */
    @Test
    void inksPrintSideBySideAsByThemselves() throws Exception {
        List<Ink> inks = List.of(
                ETCHED.ink(),
                ETCHED.ink().withDensityPerMicrometre(0.06),
                ETCHED.ink().withDensityPerMicrometre(0.02));
        List<PlateMap> seen = read(drawing(), sample(ETCHED, inks), 2).maps();
        assertEquals(5, seen.size());
        assertArrayEquals(
                read(drawing(), SAMPLE, 2).maps().get(0).values(), seen.get(0).values());
        List<WholePlate.Look> looks = inks.stream()
                .map(ink -> new WholePlate.Look(ETCHED.withInk(ink), PlateView.printRoot()))
                .toList();
        List<PlateMap> wanted = new WholePlate(drawing(), null, WIDEST).look(WINDOW, looks, 2, Progress.NONE);
        for (int ink = 1; ink < 3; ink++) {
            double squares = 0;
            for (int i = 0; i < WINDOW.area(); i++) {
                double off = lightness(ETCHED, seen.get(ink).values()[i])
                        - lightness(ETCHED, wanted.get(ink).values()[i]);
                squares += off * off / WINDOW.area();
            }
            assertTrue(squares < 0.2 * 0.2, "rms " + Math.sqrt(squares) + " of ink " + ink);
        }
    }

    @Test
    void evenTonesAreAsLightAsTheirResponse() throws Exception {
        for (int percent : new int[] {0, 10, 40, 80}) {
            float[] roots =
                    read(film((x, y) -> percent), SAMPLE, 2).maps().get(0).values();
            double mean = 0;
            for (float root : roots) {
                mean += root / roots.length;
            }
            double wanted =
                    SAMPLE.plate().terms(percent / 100.0, LEVELS.get(percent)).lightness();
            // 2.2 repeats of the patch lie in the window: what is cut off has its own mean.
            assertEquals(wanted, lightness(ETCHED, mean), percent == 0 ? 1e-3 : 0.6, percent + " %");
        }
    }

    @Test
    void threadsChangeNotOneBit() throws Exception {
        List<PlateMap> one = read(drawing(), SAMPLE, 1).maps();
        List<PlateMap> three = read(drawing(), SAMPLE, 3).maps();
        for (int i = 0; i < one.size(); i++) {
            assertArrayEquals(one.get(i).values(), three.get(i).values());
        }
    }

    @Test
    void aKeptSampleReadsTheSamePlate() throws Exception {
        NeighbourhoodSample kept = NeighbourhoodSample.kept(
                        SAMPLE.plate(),
                        List.of(ETCHED.ink()),
                        GRAIN,
                        CopperRelief::fromCorners,
                        ByteBuffer.wrap(SAMPLE.bytes()))
                .orElseThrow();
        assertArrayEquals(
                read(drawing(), SAMPLE, 2).maps().get(0).values(),
                read(drawing(), kept, 2).maps().get(0).values());
        byte[] cut = Arrays.copyOf(SAMPLE.bytes(), SAMPLE.bytes().length - 1);
        assertTrue(NeighbourhoodSample.kept(
                        SAMPLE.plate(), List.of(ETCHED.ink()), GRAIN, CopperRelief::fromCorners, ByteBuffer.wrap(cut))
                .isEmpty());
    }
}
