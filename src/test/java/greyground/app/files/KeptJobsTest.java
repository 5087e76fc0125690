package greyground.app.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import greyground.film.job.JobFile;
import greyground.film.job.PlacingFields;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Jobs, a workshop and a film that version 0.2.0 wrote still open, and say what they said then. */
class KeptJobsTest {
    private static final Path KEPT = Path.of("src/test/resources/greyground/app/files/kept");

    @ParameterizedTest
    @ValueSource(strings = {"etched", "halftone", "photogravure", "sprayed", "unetched"})
    void aJobIsWrittenBackByteForByte(String name) throws Exception {
        String kept = Files.readString(KEPT.resolve(name + ".json"));
        assertEquals(kept, JobFile.text(JobFile.read(kept)));
    }

    /** What its command line said: the options of the day. */
    @Test
    void aJobSaysWhatItWasTold() throws Exception {
        Job job = JobFile.read(Files.readString(KEPT.resolve("halftone.json")));
        Map<JobField<?>, String> told = Map.ofEntries(
                Map.entry(FilmFields.TITLE, "Low water"),
                Map.entry(FilmFields.DATE, "2026-01-02"),
                Map.entry(FilmFields.PLATE, "40x30mm"),
                Map.entry(FilmFields.RESOLUTION, "300dpi"),
                Map.entry(FilmFields.RULING, "20lines/cm"),
                Map.entry(FilmFields.ANGLE, "30degrees"),
                Map.entry(FilmFields.DOTS, "line"),
                Map.entry(ArtFields.CROP, "10%,5%,70%,80%"),
                Map.entry(ArtFields.ROTATE, "93.2degrees"),
                Map.entry(PlacingFields.FIT, "whole"),
                Map.entry(PlacingFields.BLEED, "1mm"),
                Map.entry(PlacingFields.BEVEL, "1.5mm"),
                Map.entry(PlacingFields.PAPER_SHRINK, "0.7%,0.4%"),
                Map.entry(PlacingFields.INK_SIDE, "up"),
                Map.entry(PlacingFields.TRANSFERS, "2"),
                Map.entry(PlacingFields.SHEET, "200x160mm"),
                Map.entry(ArtFields.RANGE, "density"));
        told.forEach((field, words) -> assertEquals(words, field.text(job), field.name()));
    }

    @Test
    void aFilmCarriesItsJobAndItsWorkshop() throws Exception {
        Path film = KEPT.resolve("halftone.pdf");
        assertEquals(JobFile.read(Files.readString(KEPT.resolve("halftone.json"))), KeptFiles.job(film));
        assertEquals(values(Workshop.assumed()), values(KeptFiles.workshop(film)));
    }

    @Test
    void aWorkshopOpensAndKeepsWhatIsNotReadAnyMore() throws Exception {
        String kept = Files.readString(KEPT.resolve("workshop.json"));
        Workshop shop = WorkshopFile.read(kept);
        assertEquals(values(Workshop.assumed()), values(shop));
        assertEquals(shop, WorkshopFile.read(WorkshopFile.text(shop)));
    }

    private static Map<String, Double> values(Workshop shop) {
        Map<String, Double> values = new TreeMap<>();
        shop.figures().forEach((path, figure) -> values.put(path, figure.value()));
        return values;
    }
}
