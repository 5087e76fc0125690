package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.live.LiveBench;
import greyground.app.live.LivePlate;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.film.job.Job;
import greyground.output.ExternalTool;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The dots under the loupe are those that were printed. Outside authority: poppler takes image and trim box from the film PDF. */
class LoupeOnFilmIT {
    private static final Workshop SHOP = Workshop.assumed();
    private static final double PIXEL_MILLIMETRES = 25.4 / 720;
    private static final int ACROSS = 120;
    private static final int DOWN = 90;

    @TempDir
    Path folder;

    private static Job job(SourceArt art, String words) {
        Map<String, String> given =
                new HashMap<>(Map.of("plate", "60x40mm", "resolution", "720dpi", "white", "100%", "black", "0%"));
        for (String pair : words.split(";", -1)) {
            given.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
        }
        return new JobWords(given).job(Optional.empty(), art, SHOP, "2026-01-01");
    }

    private Path art() throws Exception {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 300 * 200; i++) {
            image.getRaster().setSample(i % 300, i / 300, 0, 60 + (i % 300) / 2);
        }
        Path file = folder.resolve("ramp.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    /** Sheets whose spare room is no whole number of grain tiles, and so would shift a grain that lay on another sheet. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "bleed=3mm",
                "sheet=233x217mm",
                "sheet=233x217mm;ink-side=up",
                "ink-side=up",
                "sheet=241x223mm;ink-side=up;transfers=2;ruling=40",
                "sheet=241x223mm;transfers=2;mend=yes",
                "sheet=170x130mm;tile=yes"
            })
    void theLoupeShowsTheDotsThatArePrinted(String words) throws Exception {
        Path art = art();
        Path pdf = folder.resolve("film.pdf");
        ArtSource source = ArtSource.open(art);
        Job job = job(source.source(1), words);
        PositiveWork.prepare(source, job, SHOP, Optional.of(pdf), Optional.empty(), Progress.NONE);
        // Of tiles, the one on which the whole plate lies.
        String boxes = ExternalTool.run(folder, "pdfinfo", "-box", "-f", "1", "-l", "9", pdf.toString());
        Matcher trim = Pattern.compile("Page +([0-9]+) TrimBox: +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+)")
                .matcher(boxes);
        do {
            assertTrue(trim.find(), boxes);
        } while (points(trim, 4) - points(trim, 2) < 60 / 25.4 * 72 - 0.2
                || points(trim, 5) - points(trim, 3) < 40 / 25.4 * 72 - 0.2);
        String page = trim.group(1);
        ExternalTool.run(folder, "pdfimages", "-png", "-f", page, "-l", page, pdf.toString(), "bits");
        BufferedImage sheet;
        try (var files = Files.list(folder)) {
            List<Path> images = files.filter(
                            file -> file.getFileName().toString().matches("bits.*png"))
                    .sorted()
                    .toList();
            sheet = ImageIO.read(images.get(0).toFile());
        }
        boolean mirrored = job.placing().readingSide().mirrored();
        int left = (int) Math.round(points(trim, 2) * 10);
        int right = (int) Math.round(points(trim, 4) * 10);
        int top = sheet.getHeight() - (int) Math.round(points(trim, 5) * 10);
        int fromLeft = 300;
        int fromTop = 200;
        try (LiveBench bench = LiveBench.open(art)) {
            LivePlate live = bench.plate(job, SHOP, Progress.NONE);
            LivePicture seen = live.close(
                    Stage.FILM,
                    new LiveView(
                            fromLeft * PIXEL_MILLIMETRES, fromTop * PIXEL_MILLIMETRES, PIXEL_MILLIMETRES, ACROSS, DOWN),
                    false,
                    Progress.NONE);
            int black = 0;
            int differing = 0;
            for (int y = 0; y < DOWN; y++) {
                for (int x = 0; x < ACROSS; x++) {
                    int column = mirrored ? right - 1 - fromLeft - x : left + fromLeft + x;
                    boolean printed = (sheet.getRGB(column, top + fromTop + y) & 0xFF) < 128;
                    boolean shown = (seen.pixels()[y * ACROSS + x] & 0xFF) < 128;
                    black += printed ? 1 : 0;
                    differing += printed == shown ? 0 : 1;
                }
            }
            assertTrue(black > ACROSS * DOWN / 10 && black < ACROSS * DOWN * 9 / 10, "no dots to compare: " + black);
            assertEquals(0, differing, "of " + ACROSS * DOWN + " pixels, " + words);
        }
    }

    private static double points(Matcher found, int group) {
        return Double.parseDouble(found.group(group));
    }
}
