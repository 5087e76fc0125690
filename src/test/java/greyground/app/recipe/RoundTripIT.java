package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.film.sheet.FilmRows;
import greyground.grain.Grain;
import greyground.output.FilmDocument;
import greyground.plate.FilmPatch;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualPlate;
import greyground.plate.edge.Rim;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.RangeMapping;
import greyground.tone.Srgb;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Uniform art through the whole chain and back: the film's own bits, taken from the middle of the plate and bitten on a grid
 * twice as fine as the one the curve was found on, print with the lightness that was wished.
 */
class RoundTripIT {
    /** The project's own aim for every tone on the usable interval, in L*. */
    private static final double AIM = 1.5;

    private static final int[] CODES = {0, 30, 70, 110, 150, 190, 220, 238, 250};
    private static final double PIECE_MICROMETRES = 2600;
    private static final double MARGIN_MICROMETRES = 450;

    @TempDir
    Path folder;

    static Stream<Arguments> plates() {
        return Stream.of(
                Arguments.of(new PlateProcess.EtchedFilm(), new Grain.Stochastic(180, 1)),
                Arguments.of(new PlateProcess.EtchedFilm(), new Grain.Stochastic(250, 4)),
                Arguments.of(
                        new PlateProcess.EtchedFilm(), new Grain.Halftone(new Ruling(50), 45, Grain.DotShape.ROUND)),
                Arguments.of(PlateProcess.SprayedAquatint.usual(), new Grain.Stochastic(250, 1)),
                Arguments.of(PlateProcess.Photogravure.usual(), new Grain.Continuous(16)),
                Arguments.of(new PlateProcess.Photogravure(0.6, 160), new Grain.Continuous(16)),
                Arguments.of(new PlateProcess.UnetchedFilm(), new Grain.Stochastic(180, 1)));
    }

    /** Every plate with every grey. */
    static List<Arguments> greys() {
        return plates().flatMap(plate ->
                        IntStream.of(CODES).mapToObj(code -> Arguments.of(plate.get()[0], plate.get()[1], code)))
                .toList();
    }

    static List<Arguments> some() {
        return Sweep.of(greys());
    }

    private Job job(PlateProcess process, Grain grain) {
        return new Job(
                "",
                "",
                new Size(40, 40),
                process,
                new Resolution(1440),
                grain,
                ArtChoice.WHOLE.settled(1, 0),
                Placing.USUAL,
                RangeMapping.DEFAULT,
                false,
                Optional.of(0.0),
                List.of());
    }

    private static double wish(int code, FilmRecipe films) {
        return RangeMapping.named("lightness")
                .onto(new ArtRange(1, 0), films.compensation().print())
                .applyAsDouble(Srgb.decode(code / 255.0));
    }

    private static boolean attained(double wish, FilmRecipe films) {
        return wish <= films.compensation().lightestLightness()
                && wish >= films.compensation().darkestLightness();
    }

    @ParameterizedTest
    @MethodSource("some")
    void uniformArtPrintsAsWished(PlateProcess process, Grain grain, int code) throws Exception {
        Workshop workshop = Workshop.assumed();
        try (ArtSource art = ArtSource.open(uniform(code))) {
            FilmRecipe films = FilmRecipe.of(art, job(process, grain), workshop, Progress.NONE);
            double wish = wish(code, films);
            if (attained(wish, films)) {
                assertEquals(wish, printed(workshop, films), AIM, "grey " + code);
            }
        }
    }

    /** Else a plate that attains nothing would print as wished. */
    @ParameterizedTest
    @MethodSource("plates")
    void mostGreysAreAttained(PlateProcess process, Grain grain) throws Exception {
        try (ArtSource art = ArtSource.open(uniform(110))) {
            FilmRecipe films = FilmRecipe.of(art, job(process, grain), Workshop.assumed(), Progress.NONE);
            long attained = IntStream.of(CODES)
                    .filter(code -> attained(wish(code, films), films))
                    .count();
            assertTrue(attained >= 6, "only " + attained + " tones are attained");
        }
    }

    private Path uniform(int code) throws Exception {
        BufferedImage image = new BufferedImage(64, 64, BufferedImage.TYPE_BYTE_GRAY);
        int[] row = new int[64 * 64];
        Arrays.fill(row, code);
        image.getRaster().setSamples(0, 0, 64, 64, 0, row);
        Path file = folder.resolve("grey" + code + ".png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static double printed(Workshop workshop, FilmRecipe films) throws Exception {
        JobPlate plate = JobPlate.of(workshop, films.job());
        double pixel = plate.widestPixelMicrometres() / 2;
        FilmPatch positive = middle(films.films().get(0), workshop);
        FilmPatch screen = films.films().size() > 1 ? middle(films.films().get(1), workshop) : null;
        return new VirtualPlate(plate.conditions(), screen, pixel)
                .terms(0, positive)
                .lightness();
    }

    /** A piece of film from the middle of the plate. */
    private static FilmPatch middle(FilmDocument.Film film, Workshop workshop) throws Exception {
        Resolution resolution = film.sheet().resolution();
        PixelRect plate = film.sheet().plate();
        double pitch = resolution.pitchMicrometres();
        int margin = (int) Math.ceil(MARGIN_MICROMETRES / pitch);
        int side = (int) Math.ceil(PIECE_MICROMETRES / pitch) + 2 * margin;
        int left = plate.left() + (plate.width() - side) / 2;
        int top = plate.top() + (plate.height() - side) / 2;
        FilmRows rows = film.rows();
        byte[] band = rows.maker().make(top, side);
        double placeLeft = (left - plate.left()) * pitch;
        double placeTop = (top - plate.top()) * pitch;
        if (rows.bitsPerSample() == 16) {
            int at = 2 * left;
            double share = ((band[at] & 0xFF) << 8 | band[at + 1] & 0xFF) / 65_535.0;
            double clear = workshop.filmPrinter().clearUvDensity().value();
            double black = workshop.filmPrinter().blackUvDensity().value();
            return FilmPatch.uniform(clear + share * (black - clear));
        }
        int bytesPerRow = (side + 7) / 8;
        byte[] packed = new byte[bytesPerRow * side];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int from = left + x;
                if ((band[y * rows.bytesPerRow() + (from >> 3)] & (0x80 >> (from & 7))) != 0) {
                    packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        FilmPatch patch = FilmPatch.cutting(side, side, pitch, placeLeft, placeTop, packed);
        assertEquals(Rim.BOUNDED, patch.rim());
        return patch.tapered(margin);
    }
}
