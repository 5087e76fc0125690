package greyground.plate.inspect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.plate.Exposure;
import greyground.plate.PlateConditions;
import greyground.plate.Resist;
import greyground.plate.SprayedGround;
import greyground.plate.Studio;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;

class FilmInspectionTest {
    /** 20 um pixels make 50 to the millimetre. */
    private static final double PITCH = 20;

    /** A bite of 20 um with undercut 10 um, wiped by a pad of 1.5 mm: sqrt(8 r h) = 0.489898 mm. */
    private static final PlateConditions CONDITIONS = Studio.etched(20, 2);

    private static final FilmLimits LIMITS = FilmLimits.of(CONDITIONS);

    /** A film of bits. */
    record Bits(int width, int height, boolean[] black) {
        static Bits of(int width, int height, Pixels pixels) {
            boolean[] black = new boolean[width * height];
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    black[y * width + x] = pixels.black(x, y);
                }
            }
            return new Bits(width, height, black);
        }

        boolean get(int x, int y) {
            return x >= 0 && y >= 0 && x < width && y < height && black[y * width + x];
        }

        Bits turned() {
            return of(height, width, (x, y) -> get(y, height - 1 - x));
        }

        Bits mirrored() {
            return of(width, height, (x, y) -> get(width - 1 - x, y));
        }

        byte[] packed(int from, int count) {
            int bytes = (width + 7) / 8;
            byte[] band = new byte[bytes * count];
            for (int y = 0; y < count; y++) {
                for (int x = 0; x < width; x++) {
                    if (get(x, from + y)) {
                        band[y * bytes + x / 8] |= (byte) (0x80 >> (x & 7));
                    }
                }
            }
            return band;
        }
    }

    interface Pixels {
        boolean black(int x, int y);
    }

    static FilmFindings inspected(Bits bits, PixelRect plate, FilmLimits limits, int band, int threads, int slab) {
        try (FilmInspection inspection = new FilmInspection(
                limits, new FilmPitch(PITCH, PITCH), bits.width(), bits.height(), plate, threads, slab)) {
            for (int y = 0; y < bits.height(); y += band) {
                int count = Math.min(band, bits.height() - y);
                inspection.take(y, count, bits.packed(y, count));
            }
            return inspection.finish();
        } catch (Exception failed) {
            throw new AssertionError(failed);
        }
    }

    static FilmFindings inspected(Bits bits) {
        return inspected(bits, new PixelRect(0, 0, bits.width(), bits.height()), LIMITS, 64, 2, 128);
    }

    private static Pixels rect(int left, int top, int width, int height) {
        return (x, y) -> x >= left && x < left + width && y >= top && y < top + height;
    }

    @Test
    void edgesMoveAsTheClosedFormsSay() {
        // Twice the hardening dose behind clear film: a blurred edge crosses at half its height, just where it lies.
        assertEquals(0, LIMITS.edgeShiftMicrometres(), 0.01);
        assertEquals(10, LIMITS.undercutMicrometres(), 1e-12);
        // Two undercuts and 5 um of hold.
        assertEquals(25, LIMITS.leastLandMicrometres(), 0.02);
        assertEquals(20, LIMITS.leastOpeningMicrometres(), 0.02);
        // Closed form: sqrt(8 x 1.5 mm x 0.020 mm).
        assertEquals(489.898, LIMITS.criticalWidthMicrometres(), 1e-3);
        assertEquals(469.898, LIMITS.widestBlackMicrometres(), 0.02);
    }

    @Test
    void moreLightMakesOpeningsNarrowerByTheNormalQuantile() {
        // The edge lies where the normal distribution is q = 0.25 / (1 - 10^-2.94): z = -0.6741; tables of the normal
        // distribution give -0.6745 for 0.25.
        Exposure more = Studio.image(4 * Math.pow(10, 0.06), Studio.LIGHT);
        FilmLimits limits = FilmLimits.of(CONDITIONS.withExposures(List.of(more)));
        assertEquals(-0.6745 * more.blurMicrometres(), limits.edgeShiftMicrometres(), 0.01);
    }

    @Test
    void barsJustUnderAndJustOverTheCriticalWidthAreToldApart() {
        // 469.9 um is 23.5 pixels; half of it is judged within a quarter pixel.
        FilmFindings under = inspected(Bits.of(300, 200, rect(100, 60, 22, 90)));
        assertEquals(0, under.openBiteCount());
        FilmFindings over = inspected(Bits.of(300, 200, rect(100, 60, 24, 90)));
        assertEquals(1, over.openBiteCount());
        FilmFindings.OpenBite bite = over.openBites().get(0);
        // 24 pixels and an undercut on either side.
        assertEquals(0.5, bite.widthMillimetres(), 0.0101);
        assertEquals(0.489898, bite.criticalWidthMillimetres(), 1e-6);
        assertEquals(112 * PITCH / 1000, bite.acrossMillimetres(), PITCH / 1000);
    }

    @Test
    void discsJustUnderAndJustOverTheCriticalWidthAreToldApart() {
        for (boolean down : new boolean[] {false, true}) {
            IntPredicate bites = diameter -> {
                Bits bits = down
                        ? Bits.of(200, 260, (x, y) -> Math.hypot(x - 100, y - 150) < diameter / 2.0)
                        : Bits.of(260, 200, (x, y) -> Math.hypot(x - 150.5, y - 100.5) < diameter / 2.0);
                FilmFindings found = inspected(bits);
                found.openBites().forEach(bite -> {
                    assertEquals((down ? 100.5 : 151) * PITCH / 1000, bite.acrossMillimetres(), PITCH / 1000);
                    assertEquals((down ? 150.5 : 101) * PITCH / 1000, bite.downMillimetres(), PITCH / 1000);
                });
                return found.openBiteCount() == 1;
            };
            assertTrue(!bites.test(22), "22 pixels");
            assertTrue(bites.test(25), "25 pixels");
        }
    }

    @Test
    void evenCheckersHaveNoSite() {
        FilmFindings found = inspected(Bits.of(400, 300, (x, y) -> ((x / 8 + y / 8) & 1) == 0));
        assertEquals(0, found.openBiteCount());
        assertEquals(0, found.lostLandCount());
        assertEquals(0, found.shutOpeningCount());
        assertEquals(found.blackSquareMillimetres(), found.clearSquareMillimetres(), 1e-9);
    }

    @Test
    void solidSquareInGrainIsOneSiteOfItsSize() {
        Pixels square = rect(100, 80, 150, 150);
        Bits bits = Bits.of(400, 300, (x, y) -> square.black(x, y) || ((x / 5 + y / 5) & 1) == 0);
        FilmFindings found = inspected(bits);
        assertEquals(1, found.openBiteCount());
        FilmFindings.OpenBite bite = found.openBites().get(0);
        // Discs of the critical width leave the corners: 9 mm2 - (4 - pi) r^2; black checks at the rim add a little.
        double radius = LIMITS.widestBlackMicrometres() / 2000;
        double area = 9 - (4 - Math.PI) * radius * radius;
        assertEquals(area, bite.areaSquareMillimetres(), 0.02 * area);
        assertEquals(175 * PITCH / 1000, bite.acrossMillimetres(), 8 * PITCH / 1000);
        assertEquals(155 * PITCH / 1000, bite.downMillimetres(), 8 * PITCH / 1000);
        assertEquals(3.02, bite.widthMillimetres(), 16 * PITCH / 1000);
    }

    @Test
    void blackPlateIsOneSiteAsWideAsThePlate() {
        FilmFindings found = inspected(Bits.of(640, 480, (x, y) -> true));
        assertEquals(1, found.openBiteCount());
        FilmFindings.OpenBite bite = found.openBites().get(0);
        double radius = LIMITS.widestBlackMicrometres() / 2000;
        double area = found.blackSquareMillimetres() - (4 - Math.PI) * radius * radius;
        assertEquals(area, bite.areaSquareMillimetres(), 0.02);
        // Wide clearings are measured by squares of 8 pixels.
        assertEquals(480 * PITCH / 1000, bite.widthMillimetres(), 16 * PITCH / 1000);
        assertEquals(240 * PITCH / 1000, bite.downMillimetres(), 8 * PITCH / 1000);
    }

    @Test
    void landsNarrowerThanTwoUndercutsAndTheHoldVanish() {
        // 25 um is 1.25 pixels: one pixel is lost, two live.
        Pixels frame = rect(50, 50, 300, 200);
        Bits one = Bits.of(400, 300, (x, y) -> frame.black(x, y) && x % 20 != 3);
        FilmFindings lost = inspected(one);
        assertEquals(15, lost.lostLandCount());
        assertEquals(15 * 200 * PITCH * PITCH / 1e6, lost.lostLandSquareMillimetres(), 0.02);
        assertEquals(1, lost.openBiteCount());
        assertEquals(lost.openBites().get(0).lostLandSquareMillimetres(), lost.lostLandSquareMillimetres(), 0.05);
        Bits two = Bits.of(400, 300, (x, y) -> frame.black(x, y) && x % 20 != 3 && x % 20 != 4);
        FilmFindings held = inspected(two);
        assertEquals(0, held.lostLandCount());
        assertEquals(0, held.openBiteCount());
        assertTrue(held.lostLandShare() < 1e-3, "corners at most: " + held.lostLandShare());
    }

    @Test
    void openingsNarrowerThanTheSmallestStayShut() {
        PlateConditions coarse = new PlateConditions(
                CONDITIONS.exposures(),
                new Resist(30, 30, 0.0133, 1.66, 50, 20, 5),
                null,
                CONDITIONS.wells(),
                CONDITIONS.wipe(),
                CONDITIONS.ink(),
                CONDITIONS.paper());
        FilmLimits limits = FilmLimits.of(coarse);
        for (int width = 2; width <= 4; width++) {
            int bar = width;
            Bits bits = Bits.of(300, 200, (x, y) -> x % 40 >= 10 && x % 40 < 10 + bar && y >= 20 && y < 120);
            FilmFindings found = inspected(bits, new PixelRect(0, 0, 300, 200), limits, 50, 1, 100);
            // 50 um is two and a half pixels.
            assertEquals(width < 3 ? 8 : 0, found.shutOpeningCount(), width + " pixels");
        }
    }

    @Test
    void placesCountFromThePlateAndPixelsOffItCountNothing() {
        Bits bits = Bits.of(500, 400, (x, y) -> Math.hypot(x - 200, y - 250) < 20);
        FilmFindings whole = inspected(bits);
        FilmFindings part = inspected(bits, new PixelRect(40, 60, 300, 300), LIMITS, 17, 2, 90);
        assertEquals(
                whole.openBites().get(0).acrossMillimetres() - 0.8,
                part.openBites().get(0).acrossMillimetres(),
                1e-9);
        assertEquals(
                whole.openBites().get(0).downMillimetres() - 1.2,
                part.openBites().get(0).downMillimetres(),
                1e-9);
        FilmFindings beside = inspected(bits, new PixelRect(300, 300, 100, 100), LIMITS, 17, 2, 90);
        assertEquals(0, beside.openBiteCount());
        assertEquals(0, beside.blackSquareMillimetres());
    }

    /** A wide black of which the plate shows only a rim is as wide as it is, whatever part of it lies on the copper. */
    @Test
    void blackCentredOffThePlateIsStillWiderThanThePadHolds() {
        Bits bits = Bits.of(500, 400, (x, y) -> Math.hypot(x - 200, y - 250) < 20);
        for (int left = 190; left < 225; left++) {
            FilmFindings found = inspected(bits, new PixelRect(left, 60, 250, 300), LIMITS, 17, 2, 90);
            for (FilmFindings.OpenBite bite : found.openBites()) {
                assertTrue(bite.widthMillimetres() >= bite.criticalWidthMillimetres(), left + ": " + bite);
            }
            assertEquals(left < 220 ? 1 : 0, found.openBiteCount() > 0 ? 1 : 0, "plate from " + left);
        }
    }

    /** Grain with faults: clearings, hairlines, specks. */
    static Bits faulty(int width, int height, long seed) {
        Random random = new Random(seed);
        double[] discs = random.doubles(60).toArray();
        boolean[] specks = new boolean[width * height];
        for (int i = 0; i < specks.length; i++) {
            specks[i] = random.nextInt(150) == 0;
        }
        return Bits.of(width, height, (x, y) -> {
            boolean black = ((x / 6 + y / 5) & 1) == 0;
            for (int i = 0; i < discs.length; i += 3) {
                double away = Math.hypot(x - discs[i] * width, y - discs[i + 1] * height);
                if (away < 8 + 26 * discs[i + 2]) {
                    black = i % 2 == 0;
                }
            }
            return black ^ specks[y * width + x];
        });
    }

    @Test
    void bandsThreadsAndSlabsChangeNothing() {
        Bits bits = faulty(700, 611, 5);
        PixelRect plate = new PixelRect(13, 29, 650, 560);
        FilmFindings once = inspected(bits, plate, LIMITS, 611, 1, 1000);
        assertTrue(once.openBiteCount() > 3 && once.lostLandCount() > 100, once.toString());
        int[][] ways = {{1, 1, 7}, {64, 2, 100}, {100, 3, 33}, {611, 2, 512}};
        for (int[] way : ways) {
            assertEquals(once, inspected(bits, plate, LIMITS, way[0], way[1], way[2]));
        }
    }

    @Test
    void turningOrMirroringTheFilmTurnsTheFindings() {
        Bits bits = faulty(600, 500, 9);
        FilmFindings plain = inspected(bits);
        assertTrue(plain.openBiteCount() > 1, plain.toString());
        FilmFindings turned = inspected(bits.turned());
        FilmFindings mirrored = inspected(bits.mirrored());
        for (FilmFindings other : List.of(turned, mirrored)) {
            assertEquals(plain.openBiteCount(), other.openBiteCount());
            assertEquals(plain.openBiteSquareMillimetres(), other.openBiteSquareMillimetres(), 1e-9);
            assertEquals(plain.lostLandCount(), other.lostLandCount());
            assertEquals(plain.lostLandSquareMillimetres(), other.lostLandSquareMillimetres(), 1e-9);
            assertEquals(plain.shutOpeningCount(), other.shutOpeningCount());
            assertEquals(plain.shutSquareMillimetres(), other.shutSquareMillimetres(), 1e-9);
        }
        double width = 600 * PITCH / 1000;
        double height = 500 * PITCH / 1000;
        for (int i = 0; i < plain.openBites().size(); i++) {
            FilmFindings.OpenBite bite = plain.openBites().get(i);
            FilmFindings.OpenBite behind = nearest(mirrored, width - bite.acrossMillimetres(), bite.downMillimetres());
            assertEquals(bite.areaSquareMillimetres(), behind.areaSquareMillimetres(), 1e-9);
            assertEquals(bite.widthMillimetres(), behind.widthMillimetres(), 1e-9);
            // Rows of the turned film are columns of the plain one.
            FilmFindings.OpenBite beside = nearest(turned, height - bite.downMillimetres(), bite.acrossMillimetres());
            assertEquals(bite.areaSquareMillimetres(), beside.areaSquareMillimetres(), 1e-9);
            assertEquals(bite.widthMillimetres(), beside.widthMillimetres(), 1e-9);
        }
    }

    private static FilmFindings.OpenBite nearest(FilmFindings found, double across, double down) {
        return found.openBites().stream()
                .min((a, b) -> Double.compare(
                        Math.hypot(a.acrossMillimetres() - across, a.downMillimetres() - down),
                        Math.hypot(b.acrossMillimetres() - across, b.downMillimetres() - down)))
                .orElseThrow();
    }

    /** The definitions themselves, pixel by pixel. */
    @Test
    void agreesWithTheDefinitionsWrittenOutNaively() {
        Bits bits = faulty(260, 200, 21);
        FilmFindings found = inspected(bits);
        NaiveInspection naive = new NaiveInspection(bits, LIMITS, PITCH);
        assertEquals(naive.siteSizes(), sizes(found));
        assertEquals(naive.lostPixels() * PITCH * PITCH / 1e6, found.lostLandSquareMillimetres(), 1e-9);
        assertEquals(naive.shutPixels() * PITCH * PITCH / 1e6, found.shutSquareMillimetres(), 1e-9);
        assertEquals(naive.widestHalfWidth(), found.openBites().get(0).widthMillimetres() / 2, 1e-6);
    }

    private static List<Long> sizes(FilmFindings found) {
        List<Long> sizes = new ArrayList<>();
        found.openBites().forEach(bite -> sizes.add(Math.round(bite.areaSquareMillimetres() * 1e6 / PITCH / PITCH)));
        sizes.sort(null);
        return sizes;
    }

    @Test
    void groundThatHoldsLeavesNoSiteAndOneTooFineOrTooThinDoes() {
        Bits black = Bits.of(300, 300, rect(100, 100, 100, 100));
        FilmLimits holding = FilmLimits.of(Studio.sprayed(20, new SprayedGround(0.5, 50, 1)));
        assertTrue(holding.groundHolds());
        PixelRect plate = new PixelRect(0, 0, 300, 300);
        assertEquals(0, inspected(black, plate, holding, 50, 1, 100).openBiteCount());
        for (SprayedGround ground : List.of(new SprayedGround(0.5, 22, 1), new SprayedGround(0.05, 50, 1))) {
            FilmLimits failing = FilmLimits.of(Studio.sprayed(20, ground));
            assertFalse(failing.groundHolds());
            assertEquals(1, inspected(black, plate, failing, 50, 1, 100).openBiteCount());
        }
    }
}
