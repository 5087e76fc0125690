package greyground.grain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HalftoneScreenTest {
    private static final Resolution FILM = new Resolution(1440);

    /** Rational screens at 1440 dpi, by arithmetic: dpi / sqrt(n^2 + m^2) lines per inch at atan(m / n), n^2 + m^2 pixels. */
    @ParameterizedTest
    @CsvSource({"9, 3, 18.4349, 151.789, 90", "8, 5, 32.0054, 152.640, 89", "7, 7, 45, 145.462, 98"})
    void rationalScreensAreExact(int n, int m, double degrees, double linesPerInch, int cellPixels) {
        Grain.Halftone wanted = new Grain.Halftone(
                new Ruling(1440 / Math.sqrt(n * n + m * m) / 2.54),
                Math.toDegrees(Math.atan2(m, n)),
                Grain.DotShape.ROUND);
        HalftoneGeometry geometry = HalftoneGeometry.fit(wanted, FILM);
        assertEquals(degrees, geometry.angleDegrees(), 1e-4);
        assertEquals(linesPerInch, geometry.linesPerCentimetre() * 2.54, 1e-3);
        assertEquals(0, geometry.angleErrorDegrees(), 1e-9);
        assertEquals(0, geometry.rulingError(), 1e-9);
        double cells = Math.pow(geometry.wavesAcross(), 2) + Math.pow(geometry.wavesDown(), 2);
        assertEquals(cellPixels, geometry.side() * geometry.side() / cells, 1e-9);
    }

    @ParameterizedTest
    @EnumSource(Grain.DotShape.class)
    void anyRulingAndAngleIsNearlyMet(Grain.DotShape shape) {
        for (double ruling : new double[] {33.3, 48, 60, 80, 110}) {
            for (double angle = -90; angle <= 180; angle += 7.3) {
                HalftoneGeometry geometry =
                        HalftoneGeometry.fit(new Grain.Halftone(new Ruling(ruling), angle, shape), FILM);
                assertEquals(angle, geometry.angleDegrees(), 0.1, geometry.toString());
                assertEquals(1, geometry.linesPerCentimetre() / ruling, 0.005, geometry.toString());
                assertTrue(geometry.side() <= 2048, geometry.toString());
            }
        }
    }

    /** Rows at angle a carry their wave at right angles: the strongest line of the spectrum tells both, measured on the bits. */
    @ParameterizedTest
    @CsvSource({"30", "-20", "75"})
    void linesRunAtTheAngleAsked(double angle) {
        HalftoneScreen screen = HalftoneScreen.of(new Grain.Halftone(new Ruling(40), angle, Grain.DotShape.LINE), FILM);
        double pitch = 250 / FILM.pitchMicrometres();
        double x = Math.cos(Math.toRadians(angle));
        double y = -Math.sin(Math.toRadians(angle));
        int along = 0;
        int across = 0;
        for (int i = 0; i < 2000; i++) {
            int startX = 37 * i % screen.tile().width();
            int startY = 101 * i % screen.tile().height();
            boolean here = black(screen, startX, startY, 0.5);
            along += here == black(screen, startX + x * 3 * pitch, startY + y * 3 * pitch, 0.5) ? 1 : 0;
            across += here == black(screen, startX + y * pitch / 2, startY - x * pitch / 2, 0.5) ? 1 : 0;
        }
        assertTrue(along > 1700, "alike along the line: " + along);
        assertTrue(across < 300, "alike half a line away: " + across);
    }

    /** A checkerboard at half; as many round dots below as round holes above (mirror symmetry of cos u + cos v). */
    @Test
    void roundDotsTurnIntoRoundHoles() {
        HalftoneScreen screen = HalftoneScreen.of(new Grain.Halftone(new Ruling(48), 45, Grain.DotShape.ROUND), FILM);
        int side = screen.tile().width();
        double cells = Math.pow(screen.geometry().wavesAcross(), 2)
                + Math.pow(screen.geometry().wavesDown(), 2);
        assertEquals(cells, GrainQuality.clusters(GrainQuality.bits(screen.tile(), 0.2), side).length);
        assertEquals(
                cells, GrainQuality.clusters(GrainQuality.inverse(GrainQuality.bits(screen.tile(), 0.8)), side).length);
        // A round dot of area A has second moments A^2 / (4 pi) about each axis; a square of the same area 4.7 % more.
        assertEquals(1 / (4 * Math.PI), moment(screen, 0.2), 0.02 / (4 * Math.PI));
    }

    /** Every cell holds its share of each tone to within a pixel: no bands where a ruling nearly fits the film's pixels. */
    @ParameterizedTest
    @CsvSource({"50, 45", "48, 45", "60, 15", "72.5, -30", "33.3, 0"})
    void eachCellHoldsItsShareOfEveryTone(double ruling, double angle) {
        for (Grain.DotShape shape : Grain.DotShape.values()) {
            HalftoneScreen screen = HalftoneScreen.of(new Grain.Halftone(new Ruling(ruling), angle, shape), FILM);
            ScreenCells cells = new ScreenCells(screen.geometry());
            int side = screen.tile().width();
            double expected = (double) side * side / cells.count();
            for (double coverage : new double[] {0.02, 0.1, 0.35, 0.5, 0.8, 0.97}) {
                int[] black = new int[cells.count()];
                int[] size = new int[cells.count()];
                for (int place = 0; place < side * side; place++) {
                    int cell = cells.cell(place % side, place / side);
                    size[cell]++;
                    black[cell] += black(screen, place % side, place / side, coverage) ? 1 : 0;
                }
                for (int cell = 0; cell < black.length; cell++) {
                    assertEquals(coverage * size[cell], black[cell], 1.01, shape + " at " + coverage);
                    assertEquals(expected, size[cell], 2 * Math.sqrt(2 * expected), "cells are of one size");
                }
            }
        }
    }

    private static boolean black(HalftoneScreen screen, double x, double y, double coverage) {
        return coverage * 65_535 > screen.tile().threshold((int) Math.round(x), (int) Math.round(y));
    }

    /** Mean square distance of the black from its nearest dot centre along one axis, over black area for each dot. */
    private static double moment(HalftoneScreen screen, double coverage) {
        HalftoneGeometry geometry = screen.geometry();
        int side = geometry.side();
        double cell = (double) side * side / (Math.pow(geometry.wavesAcross(), 2) + Math.pow(geometry.wavesDown(), 2));
        double sum = 0;
        long count = 0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                if (black(screen, x, y, coverage)) {
                    double u = (double) (geometry.wavesAcross() * x + geometry.wavesDown() * y) / side;
                    double v = (double) (geometry.wavesDown() * x - geometry.wavesAcross() * y) / side;
                    sum += Math.pow(u - Math.rint(u), 2) + Math.pow(v - Math.rint(v), 2);
                    count++;
                }
            }
        }
        return sum / count * cell / 2 / (coverage * cell);
    }

    @Test
    void refusesAScreenFinerThanTheFilm() {
        Refusal refusal = assertThrows(
                Refusal.class,
                () -> HalftoneGeometry.fit(new Grain.Halftone(new Ruling(300), 45, Grain.DotShape.ROUND), FILM));
        assertTrue(refusal.getMessage().contains("188 lines/cm"), refusal.getMessage());
    }
}
