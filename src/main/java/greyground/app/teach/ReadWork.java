package greyground.app.teach;

import greyground.app.recipe.ArtSource;
import greyground.chart.Recipe;
import greyground.film.job.ArtChoice;
import greyground.fit.MeasuredPatch;
import greyground.fit.SharedErrors;
import greyground.picture.Picture;
import greyground.picture.ScanOverlay;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.Projective;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import greyground.tone.Lightness;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a test plate's proof back and works out what it teaches the workshop; writes nothing until that is accepted. */
public record ReadWork(TestFilm film, Workshop shop, ReadWords words, LocalDate date) {
    private static final double MICROMETRES_PER_INCH = 25_400;

    private static final double DECODED = 0.2;
    private static final double FOUND = 0.5;

    /** Opens what the reading rests on; {@code app.Greyground} says what that is. */
    public static ReadWork of(Path testFilm, Optional<Workshop> shop, ReadWords words, LocalDate today) {
        TestFilm film = TestFilm.of(testFilm);
        // What can be refused is refused before the long work.
        words.flareShare();
        words.biteMinutes();
        words.depth();
        words.corners();
        return new ReadWork(film, shop.orElse(film.workshop()), words, words.date(today));
    }

    /** Refuses a film whose proof teaches a workshop nothing. */
    public void checkTeaches() {
        if (film.check().isPresent()) {
            throw ReadOutcome.judgesOnly();
        }
    }

    /**
     * Reads a scan of the proof.
     *
     * @param scan a picture of any kind that art may be
     * @param reference densities of a reflection wedge on it, if one lies there
     * @param drawn whether what is measured shall be drawn over the scan
     */
    public ReadOutcome scan(Path scan, Optional<Path> reference, boolean drawn, Progress progress) throws IOException {
        ScanChoices choices = new ScanChoices(
                words.corners(),
                reference.map(TypedValues::reference).orElse(List.of()),
                words.flareTold() ? Optional.of(words.flareShare()) : Optional.empty(),
                paperLightness());
        ScanReading reading;
        SharedErrors.ToneScale scale;
        Optional<Picture> overlay;
        List<String> notes;
        try (ArtSource source = ArtSource.open(scan)) {
            GreyPlane plane = source.turned(ArtChoice.WHOLE, progress.part(0, DECODED));
            notes = new ArrayList<>(source.remarks(ArtChoice.WHOLE));
            scale = !choices.references().isEmpty()
                    ? SharedErrors.ToneScale.WEDGE
                    : source.tonesStated() ? SharedErrors.ToneScale.STATED : SharedErrors.ToneScale.UNSTATED;
            reading = ChartReader.read(plane, film.plate(), choices, progress.part(DECODED, FOUND));
            overlay = drawn ? Optional.of(ScanOverlay.of(plane, reading)) : Optional.empty();
        }
        notes.addAll(reading.notes());
        PlateFindings found = new PlateFindings(
                "scan of " + Math.round(pixelsPerInch(reading)) + " pixels per inch"
                        + (choices.references().isEmpty() ? "" : ", reflection wedge beside it"),
                scale,
                reading.patches(),
                Optional.of(reading),
                overlay,
                notes);
        return outcome(found, progress.part(FOUND, 1));
    }

    public ReadOutcome values(Path values, Progress progress) {
        List<MeasuredPatch> patches = TypedValues.fields(values, film.plate());
        PlateFindings found = new PlateFindings(
                "densitometer",
                SharedErrors.ToneScale.DENSITOMETER,
                patches,
                Optional.empty(),
                Optional.empty(),
                List.of());
        return outcome(found, progress);
    }

    private ReadOutcome outcome(PlateFindings found, Progress progress) {
        ReadingTrust trust = ReadingTrust.of(film, shop, words, found);
        if (film.check().isPresent()) {
            return CheckReading.of(film.check().get(), found, trust);
        }
        if (film.plate().recipe().kind() == Recipe.Kind.EXPOSURE) {
            return ExposureLesson.of(film, shop, found, date);
        }
        return PlateReading.of(film, found, trust, PlateLearning.of(film, shop, found, trust, words, date, progress));
    }

    private double paperLightness() {
        return words.paperLightness()
                .orElseGet(() -> Lightness.ofDensity(shop.paper().whiteDensity().value()));
    }

    /** Of print, at the plate's middle on the scan. */
    static double pixelsPerInch(ScanReading reading) {
        Projective place = reading.place();
        double x = reading.plate().recipe().widthMicrometres() / 2.0;
        double y = reading.plate().recipe().heightMicrometres() / 2.0;
        double step = 1000;
        double across = StrictMath.hypot(
                place.x(x + step, y) - place.x(x - step, y), place.y(x + step, y) - place.y(x - step, y));
        return across / (2 * step) * MICROMETRES_PER_INCH;
    }
}
