package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.sheet.FilmRows;
import greyground.output.FilmDocument;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Jobs that version 0.2.0 wrote give the bits that 0.2.0 gave: its program was built from its own sources, made these films from
 * testimages/still-life.png, and its TIFFs held the same samples on the whole sheet as those that the digests were taken of.
 */
class KeptFilmIT {
    private static final Path KEPT = Path.of("src/test/resources/greyground/app/files/kept");
    private static final Path ART = Path.of("testimages/still-life.png");

    @ParameterizedTest
    @CsvSource({
        "etched,       f974a48866abe7d9",
        "halftone,     87e8d1234ececb52",
        "photogravure, c1b69a3cab67c7d3 29300d3f5ef9fe1d",
        "sprayed,      f2f74bff88bbe16e",
        "unetched,     66c466bc3f0d58e9"
    })
    void aFilmIsTheSameBits(String name, String digests) throws Exception {
        Job job = JobFile.read(Files.readString(KEPT.resolve(name + ".json")));
        try (ArtSource art = ArtSource.open(ART)) {
            FilmRecipe recipe = FilmRecipe.of(art, job, Workshop.assumed(), Progress.NONE);
            assertEquals(
                    digests, recipe.films().stream().map(KeptFilmIT::digest).collect(Collectors.joining(" ")));
        }
    }

    /** Of the samples on the plate, legends round it left out; the first eight bytes. */
    private static String digest(FilmDocument.Film film) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            FilmRows rows = film.rows();
            PixelRect plate = film.sheet().plate();
            byte[] sheet = rows.maker().make(plate.top(), plate.height());
            for (int y = 0; y < plate.height(); y++) {
                for (int bit = plate.left() * rows.bitsPerSample(); bit < plate.right() * rows.bitsPerSample(); bit++) {
                    int octet = sheet[y * rows.bytesPerRow() + (bit >> 3)];
                    sha.update((byte) (octet >> (7 - (bit & 7)) & 1));
                }
            }
            return HexFormat.of().formatHex(sha.digest(), 0, 8);
        } catch (Exception failed) {
            throw new IllegalStateException(failed);
        }
    }
}
