package greyground.app.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.chart.WedgeWork;
import greyground.app.files.KeptFiles;
import greyground.app.files.ShopFile;
import greyground.app.kept.GrainStore;
import greyground.film.compose.GrainPatches;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.plan.ExposureTimes;
import greyground.plate.FilmPatch;
import greyground.plate.PrintedTint;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A film of an invented shop, and what its printed strip and rulers say of the printer. */
class FilmPrinterWorkIT {
    private static final double HIDDEN_CLEAR = 0.14;
    private static final double HIDDEN_BLACK = 2.2;
    private static final double HIDDEN_GROWTH = 9;

    @TempDir
    private static Path folder;

    private static Path film = Path.of("");
    private static Workshop shop = Workshop.assumed();

    @BeforeAll
    static void makeFilm() throws Exception {
        shop = Workshop.assumed().with("filmPrinter.scaleX", Figure.assumed(1.004, "invented for this test"));
        film = folder.resolve("film.pdf");
        WedgeWork.of(
                        Map.of("kind", "strip", "plate", "110x35mm", "resolution", "600"),
                        Optional.empty(),
                        shop,
                        "2026-03-31")
                .make(film, Progress.NONE);
    }

    /** The strip's lower row as a densitometer reads it on the film of a printer that secretly grows its dots by 9 um. */
    private static String readings(String column) {
        Job job = KeptFiles.job(film);
        GrainPatches patches =
                GrainPatches.of(job.grain(), GrainStore.positive(job).orElseThrow(), FilmPixels.of(job.resolution()));
        Random random = new Random(5);
        StringBuilder csv = new StringBuilder("# the strip's lower row\ncoverage," + column + "\n");
        for (int step = 0; step <= 10; step++) {
            FilmPatch patch = patches.at(step / 10.0);
            double share = step == 0 || step == 10 ? step / 10.0 : PrintedTint.covered(patch, HIDDEN_GROWTH, 3);
            double light = share * Math.pow(10, -HIDDEN_BLACK) + (1 - share) * Math.pow(10, -HIDDEN_CLEAR);
            double density = -Math.log10(light) + 0.01 * random.nextGaussian();
            csv.append(String.format(Locale.ROOT, "%d,%.2f%n", step * 10, density));
        }
        return csv.toString();
    }

    private static FilmPrinterWork work() throws Exception {
        Path file = folder.resolve("shop.json");
        Files.writeString(file, WorkshopFile.text(shop));
        return FilmPrinterWork.of(film, ShopFile.open(file).workshop(), LocalDate.of(2026, 4, 1));
    }

    private static Findings change(ReadOutcome outcome, String path) {
        return outcome.findings().rows("changes").stream()
                .filter(each -> each.text("path").equals(path))
                .findFirst()
                .orElseThrow();
    }

    private static double after(ReadOutcome outcome, String path) {
        return change(outcome, path).number("after").orElseThrow();
    }

    @Test
    void densitiesAndRulersTeachThePrinter() throws Exception {
        Path csv = folder.resolve("readings.csv");
        Files.writeString(csv, readings("density"));
        ReadOutcome outcome = work().read(Optional.of(csv), Optional.of(100.2), Optional.of(99.8));
        double growth = after(outcome, "filmPrinter.spotGrowthMicrometres");
        double error = change(outcome, "filmPrinter.spotGrowthMicrometres")
                .number("standardError")
                .orElseThrow();
        assertEquals(HIDDEN_GROWTH, growth, 1.96 * error);
        assertTrue(error < 1.5, "standard error " + error);
        assertEquals(HIDDEN_CLEAR, after(outcome, "filmPrinter.clearUvDensity"), 0.03);
        assertEquals(HIDDEN_BLACK, after(outcome, "filmPrinter.blackUvDensity"), 0.04);
        // The film was drawn for 1.004 already and is still 0.2 % too large.
        assertEquals(1.004 * 1.002, after(outcome, "filmPrinter.scaleX"), 1e-4);
        assertEquals(0.998, after(outcome, "filmPrinter.scaleY"), 1e-4);
        for (Findings field : outcome.findings().rows("fields")) {
            double tint = field.number("coveragePercent").orElseThrow();
            // Dots grow in print, and what is clear or solid stays.
            assertTrue(field.number("inkCoversPercent").orElseThrow() >= tint - 0.01, "" + tint);
        }
        Path kept = ShopFile.open(folder.resolve("shop.json")).teach(outcome.accepted());
        Workshop taught = KeptFiles.workshop(folder.resolve("shop.json"));
        assertFalse(taught.figures().get("filmPrinter.scaleX").isAssumed());
        assertEquals(growth, taught.filmPrinter().spotGrowthMicrometres().value());
        // The exposures were found through this very film: knowing its density better changes no second of them.
        assertEquals(
                ExposureTimes.of(shop).togetherSeconds(),
                ExposureTimes.of(taught).togetherSeconds(),
                1e-9);
        assertEquals(shop, KeptFiles.workshop(kept));
        ShopFile.open(folder.resolve("shop.json")).takeBack();
        assertEquals(shop, KeptFiles.workshop(folder.resolve("shop.json")));
    }

    @Test
    void visualDensitiesLeaveTheUltravioletOnesAlone() throws Exception {
        Path csv = folder.resolve("visual.csv");
        Files.writeString(csv, readings("visual"));
        ReadOutcome outcome = work().read(Optional.of(csv), Optional.empty(), Optional.empty());
        assertEquals(
                List.of("filmPrinter.spotGrowthMicrometres"),
                outcome.findings().rows("changes").stream()
                        .map(each -> each.text("path"))
                        .toList());
        List<String> notes = outcome.findings().words("notes");
        assertTrue(notes.get(0).contains("visual"), notes.toString());
    }

    @Test
    void badReadingsAreRefusedInOneLine() throws Exception {
        FilmPrinterWork work = work();
        assertThrows(Refusal.class, () -> work.read(Optional.empty(), Optional.empty(), Optional.empty()));
        for (String text : List.of(
                "coverage,density\n",
                "coverage,density\n0,0.1,3\n",
                "coverage,density\n0,x\n",
                "cover,density\n0,0.1\n",
                "coverage,density,step\n0,0.1,1\n",
                "coverage,step\n0,0.5\n100,15\n",
                "coverage,density\n0,0.1\n50,0.4\n")) {
            Path csv = folder.resolve("bad.csv");
            Files.writeString(csv, text);
            Refusal refusal = assertThrows(
                    Refusal.class, () -> work.read(Optional.of(csv), Optional.empty(), Optional.empty()), text);
            assertFalse(String.valueOf(refusal.getMessage()).contains("\n"));
        }
    }
}
