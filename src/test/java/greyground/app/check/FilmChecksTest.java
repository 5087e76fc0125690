package greyground.app.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.output.FilmDocument;
import greyground.plate.Exposure;
import greyground.quantity.FilmPixels;
import greyground.quantity.Resolution;
import greyground.raster.Bands;
import greyground.raster.PackedRows;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.List;
import org.junit.jupiter.api.Test;

class FilmChecksTest {
    /** 50 film pixels to the millimetre. */
    private static final Resolution RESOLUTION = new Resolution(1270);

    /** Black enough and of true size, so that only the dots are at fault. */
    private static final Workshop SHOP =
            Workshop.assumed().with("filmPrinter.blackUvDensity", Figure.assumed(3.5, "invented for this test"));

    private static Job job(String process) {
        return JobFile.read("{\"greyground\": \"job\", \"version\": 1, \"plate\": {\"widthMillimetres\": 40,"
                + " \"heightMillimetres\": 30}, \"resolutionDotsPerInch\": 1270, \"process\": {\"kind\": \"" + process
                + "\"}, \"grain\": {\"kind\": \""
                + (process.equals("photogravure") ? "continuous" : "stochastic") + "\"}}");
    }

    /** A sheet 60 x 50 mm with the plate 10 mm inside, clear but for one black rectangle, in millimetres of plate. */
    private static FilmDocument.Film film(int bits, double left, double top, double width, double height) {
        PixelRect plate = new PixelRect(500, 500, 2000, 1500);
        Sheet sheet = new Sheet(FilmPixels.of(RESOLUTION), 3000, 2500, plate, plate, List.of());
        int fromX = 500 + RESOLUTION.pixels(left);
        int fromY = 500 + RESOLUTION.pixels(top);
        FilmRows rows = new FilmRows() {
            @Override
            public int width() {
                return 3000;
            }

            @Override
            public int height() {
                return 2500;
            }

            @Override
            public int bitsPerSample() {
                return bits;
            }

            @Override
            public Bands.Maker<byte[]> maker() {
                return (first, count) -> {
                    byte[] band = new byte[count * bytesPerRow()];
                    for (int y = first; y < first + count; y++) {
                        if (bits == 1 && y >= fromY && y < fromY + RESOLUTION.pixels(height)) {
                            PackedRows.blacken(
                                    band, (y - first) * bytesPerRow(), fromX, fromX + RESOLUTION.pixels(width));
                        }
                    }
                    return band;
                };
            }
        };
        return new FilmDocument.Film(sheet, rows);
    }

    private static FilmChecks checked(Job job, Workshop shop, FilmDocument.Film... films) throws Exception {
        return FilmChecks.of(job, shop, List.of(films), Progress.NONE);
    }

    @Test
    void aWideBlackIsToldWithItsPlaceOnThePlate() throws Exception {
        FilmChecks checks = checked(job("etched-film"), SHOP, film(1, 20, 10, 1.2, 9));
        assertEquals(1, checks.warnings().size(), checks.warnings().toString());
        PlateWarning wide = checks.warnings().get(0);
        assertEquals("open-bite", wide.kind());
        // 1.2 mm on the film, an undercut of 20 um on either side.
        assertTrue(wide.words().matches("open bite 1\\.2[34] mm wide, where the pad holds 0\\.69 mm"), wide.words());
        assertEquals(10.8, wide.areaSquareMillimetres(), 0.1);
        // Widest anywhere along the bar, whose middle lies 20.6 mm from the left.
        assertEquals(20.6, wide.place().orElseThrow().acrossMillimetres(), 0.041);
        assertEquals(14.5, wide.place().orElseThrow().downMillimetres(), 4);
        assertEquals(
                wide.place().orElseThrow().acrossMillimetres(),
                wide.figures().number("xMillimetres").orElseThrow(),
                1e-6);
    }

    @Test
    void aFilmWithoutFaultsGivesNoWarning() throws Exception {
        assertEquals(
                List.of(),
                checked(job("etched-film"), SHOP, film(1, 20, 10, 0.4, 9)).warnings());
    }

    @Test
    void severalFilmsAreToldApart() throws Exception {
        List<PlateWarning> warnings = checked(job("etched-film"), SHOP, film(1, 5, 5, 2, 2), film(1, 25, 20, 1.6, 3))
                .warnings();
        assertEquals(2, warnings.size(), warnings.toString());
        assertTrue(warnings.get(0).words().startsWith("film 1: open bite 2.0"), warnings.toString());
        assertTrue(warnings.get(1).words().startsWith("film 2: open bite 1.6"), warnings.toString());
        assertEquals(25.8, warnings.get(1).place().orElseThrow().acrossMillimetres(), 0.05);
    }

    @Test
    void aThinBlackAndAFilmOfAnotherPrinterAreTold() throws Exception {
        Workshop thin = SHOP.with("filmPrinter.blackUvDensity", Figure.assumed(1.5, "invented for this test"))
                .with("filmPrinter.scaleX", Figure.assumed(0.97, "invented for this test"))
                .with("filmPrinter.scaleY", Figure.assumed(1.002, "invented for this test"));
        FilmChecks checks = checked(job("etched-film"), thin, film(1, 20, 10, 0.4, 9));
        assertEquals(2, checks.warnings().size(), checks.warnings().toString());
        assertTrue(
                checks.warnings().get(0).words().contains("black is 1.50 D"),
                checks.warnings().toString());
        assertTrue(checks.black().missing() > 0);
        // The film was laid out for a printer of true size: 40 mm x 0.97; 1.002 just keeps the common tolerance.
        assertTrue(
                checks.warnings().get(1).words().contains("prints 38.8 x 30.1 mm large on this film printer"),
                checks.warnings().toString());
    }

    @Test
    void aBlackThatHardensIsAWarningAndNotAnEnd() throws Exception {
        Workshop open = SHOP.with("filmPrinter.blackUvDensity", Figure.assumed(0.5, "invented for this test"));
        FilmChecks checks = checked(job("etched-film"), open, film(1, 20, 10, 3, 3));
        assertEquals(List.of(), checks.films());
        assertTrue(
                checks.warnings().stream().anyMatch(warning -> warning.words().contains("behind black film")),
                checks.warnings().toString());
    }

    @Test
    void anOutlineThatIsNotTheJobsIsTold() throws Exception {
        Job larger = JobFile.read(JobFile.text(job("etched-film")).replace("40", "41"));
        FilmChecks checks = checked(larger, SHOP, film(1, 20, 10, 0.4, 9));
        assertEquals(1, checks.warnings().size(), checks.warnings().toString());
        assertTrue(
                checks.warnings().get(0).words().contains("prints 40.0 x 30.0 mm large"),
                checks.warnings().toString());
    }

    @Test
    void anOutlineOffTheFilmIsAWarning() throws Exception {
        FilmDocument.Film film = film(1, 20, 10, 3, 3);
        PixelRect off = new PixelRect(1500, 500, 2000, 1500);
        Sheet sheet = new Sheet(FilmPixels.of(RESOLUTION), 3000, 2500, off, off, List.of());
        FilmChecks checks = checked(job("etched-film"), SHOP, new FilmDocument.Film(sheet, film.rows()));
        assertEquals(List.of(), checks.films());
        assertTrue(
                checks.warnings().get(0).words().contains("not within the film"),
                checks.warnings().toString());
    }

    @Test
    void ofPhotogravureOnlyTheScreenFilmHasDotsToInspect() throws Exception {
        Workshop screen = SHOP.with("exposure.screenSeconds", Figure.assumed(90, "invented for this test"));
        FilmChecks checks = checked(job("photogravure"), screen, film(16, 0, 0, 1, 1), film(1, 5, 5, 2, 2));
        assertEquals(1, checks.films().size(), checks.warnings().toString());
        assertEquals(2, checks.films().get(0).number());
        assertEquals(Exposure.Sheet.SCREEN, checks.films().get(0).through());
        assertEquals(1, checks.films().get(0).findings().openBiteCount());
    }
}
