package greyground.app.proof;

import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobTones;
import greyground.app.sight.Stage;
import greyground.picture.Picture;
import greyground.plate.Ink;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;
import greyground.plate.PlateWindow;
import greyground.plate.ToneAlignment;
import greyground.plate.WholePlate;
import greyground.plate.neighbourhood.FilmBits;
import greyground.plate.neighbourhood.NeighbourhoodPlate;
import greyground.raster.Crew;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Looks at a window of a plate: grain and halftones on a bitten or bare plate by their neighbourhoods, as finely as the response is
 * computed; whatever is looked at closely, and plates of two exposures or a sprayed ground, through the engine. One thread.
 */
final class PlateLooks {
    /** Of what the engine alone can do, a picture of a whole plate is computed on pixels this many times as wide as a tone of the response. */
    private static final double COARSER = 2;

    /** Half a dot's spacing in a pixel begins to be a tone (assumed). */
    private static final double DOT_SHARE = 0.5;

    private final JobPlate plate;
    private final JobTones tones;
    private final double spacingMicrometres;
    private final PlateFilm positive;
    private final @Nullable PlateFilm screen;
    private NeighbourhoodPlate.@Nullable Seen read;

    PlateLooks(
            JobPlate plate, JobTones tones, double spacingMicrometres, PlateFilm positive, @Nullable PlateFilm screen) {
        this.plate = plate;
        this.tones = tones;
        this.spacingMicrometres = spacingMicrometres;
        this.positive = positive;
        this.screen = screen;
    }

    /**
     * A stage to be shown.
     *
     * @param turned whether as the mirror of the print
     */
    record Shown(Stage stage, boolean turned) {}

    /** What was read last by its neighbourhoods. */
    Optional<NeighbourhoodPlate.Seen> read() {
        return Optional.ofNullable(read);
    }

    /** Whether whole plates of this film are read by their neighbourhoods. */
    boolean haveNeighbourhoods() {
        return screen == null
                && plate.conditions().ground() == null
                && plate.grain().isPresent();
    }

    /** Width of the pixels on which a window is computed. */
    double pixelMicrometres(PlateWindow window) {
        return WholePlate.pixelMicrometres(
                positive.pitchMicrometres(),
                byNeighbourhoods(window) ? plate.widestPixelMicrometres() : widestPixelMicrometres(window));
    }

    private boolean byNeighbourhoods(PlateWindow window) {
        return haveNeighbourhoods()
                && window.cellMicrometres() >= NeighbourhoodPlate.LEAST_PIXELS * positive.pitchMicrometres();
    }

    /**
     * Looks.
     *
     * @param asMeasured whether even tones are shown as they were measured, if they were
     * @return for each of the conditions a picture of each stage
     */
    List<List<Picture>> of(
            PlateWindow window,
            List<PlateConditions> conditions,
            List<Shown> stages,
            boolean asMeasured,
            Progress progress)
            throws IOException {
        List<List<PlateMap>> maps = maps(window, conditions, stages, progress);
        Optional<ToneAlignment> measured = measured(window, asMeasured);
        List<List<Picture>> pictures = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            List<Picture> row = new ArrayList<>();
            for (int k = 0; k < stages.size(); k++) {
                Shown shown = stages.get(k);
                PlateMap map = maps.get(i).get(k);
                if (shown.stage() == Stage.PRINT && measured.isPresent()) {
                    map = measured.get().of(map);
                }
                Picture seen = shown.stage().coloured(map, conditions.get(i));
                row.add(shown.turned() ? seen.mirrored() : seen);
            }
            pictures.add(row);
        }
        return pictures;
    }

    /**
     * The print as numbers, R^(1/n) of each cell, in each of some inks; even tones as they were measured, if they were.
     *
     * @param inks the blackest first; they differ from the plate's own in their densities alone
     */
    List<PlateMap> prints(PlateWindow window, List<Ink> inks, Progress progress) throws IOException {
        Optional<ToneAlignment> measured = measured(window, true);
        List<PlateMap> maps = byNeighbourhoods(window)
                ? new NeighbourhoodPlate(
                                bits(window, List.of(plate.conditions()), progress.part(0, 0.2)),
                                window,
                                plate.neighbourhoods(plate.conditions(), inks))
                        .look(List.of(NeighbourhoodPlate.Look.PRINT), false, Crew.allCores(), progress.part(0.2, 1))
                        .maps()
                : computed(window, inks, progress);
        return maps.stream()
                .map(map -> measured.isPresent() ? measured.get().of(map) : map)
                .toList();
    }

    private List<PlateMap> computed(PlateWindow window, List<Ink> inks, Progress progress) throws IOException {
        double widest = widestPixelMicrometres(window);
        List<WholePlate.Look> looks = inks.stream()
                .map(ink -> new WholePlate.Look(plate.conditions(), PlateView.printRoot(ink)))
                .toList();
        List<PlateMap> maps = new ArrayList<>(
                new WholePlate(positive, screen, widest).look(window, looks, Crew.allCores(), progress));
        for (int i = 0; i < maps.size() && widest > plate.widestPixelMicrometres(); i++) {
            PlateConditions printed = plate.conditions().withInk(inks.get(i));
            maps.set(i, ontoResponse(printed, widest).of(maps.get(i)));
        }
        return maps;
    }

    /** The film's bits as far as they decide a window. */
    private FilmBits bits(PlateWindow window, List<PlateConditions> conditions, Progress progress) throws IOException {
        double reach = conditions.stream()
                .mapToDouble(each -> NeighbourhoodPlate.reachMicrometres(each, window, positive.pitchMicrometres()))
                .max()
                .orElse(0);
        return FilmBits.read(positive, window, reach, progress);
    }

    private Optional<ToneAlignment> measured(PlateWindow window, boolean asMeasured) {
        return asMeasured && showsTones(window) ? ontoMeasured() : Optional.empty();
    }

    private List<List<PlateMap>> maps(
            PlateWindow window, List<PlateConditions> conditions, List<Shown> stages, Progress progress)
            throws IOException {
        boolean film = stages.stream().anyMatch(shown -> shown.stage() == Stage.FILM);
        return byNeighbourhoods(window) && !film
                ? read(window, conditions, stages, progress)
                : computed(window, conditions, stages, progress);
    }

    private List<List<PlateMap>> read(
            PlateWindow window, List<PlateConditions> conditions, List<Shown> stages, Progress progress)
            throws IOException {
        FilmBits bits = bits(window, conditions, progress.part(0, 0.2));
        List<NeighbourhoodPlate.Look> looks =
                stages.stream().map(shown -> look(shown.stage())).toList();
        boolean fromRight = stages.stream().anyMatch(Shown::turned);
        List<List<PlateMap>> maps = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            Progress part = progress.part(0.2 + 0.8 * i / conditions.size(), 0.2 + 0.8 * (i + 1) / conditions.size());
            PlateConditions each = conditions.get(i);
            NeighbourhoodPlate.Seen seen = new NeighbourhoodPlate(
                            bits, window, plate.neighbourhoods(each, List.of(each.ink())))
                    .look(looks, fromRight, Crew.allCores(), part);
            maps.add(seen.maps());
            read = seen;
        }
        return maps;
    }

    private static NeighbourhoodPlate.Look look(Stage stage) {
        return switch (stage) {
            case FILM -> throw new IllegalArgumentException("film is looked at by itself");
            case RESIST -> NeighbourhoodPlate.Look.COVERED;
            case COPPER -> NeighbourhoodPlate.Look.RELIEF;
            case PRINT -> NeighbourhoodPlate.Look.PRINT;
        };
    }

    private List<List<PlateMap>> computed(
            PlateWindow window, List<PlateConditions> conditions, List<Shown> stages, Progress progress)
            throws IOException {
        List<WholePlate.Look> looks = new ArrayList<>();
        for (PlateConditions each : conditions) {
            stages.forEach(
                    shown -> looks.add(new WholePlate.Look(each, shown.stage().view(shown.turned()))));
        }
        double widest = widestPixelMicrometres(window);
        List<PlateMap> seen = new WholePlate(positive, screen, widest).look(window, looks, Crew.allCores(), progress);
        List<List<PlateMap>> maps = new ArrayList<>();
        for (int i = 0; i < conditions.size(); i++) {
            List<PlateMap> row = new ArrayList<>(seen.subList(i * stages.size(), (i + 1) * stages.size()));
            for (int k = 0; k < row.size() && widest > plate.widestPixelMicrometres(); k++) {
                if (stages.get(k).stage() == Stage.PRINT) {
                    row.set(k, ontoResponse(conditions.get(i), widest).of(row.get(k)));
                }
            }
            maps.add(row);
        }
        return maps;
    }

    /** As fine as a window's cells deserve. */
    private double widestPixelMicrometres(PlateWindow window) {
        double fine = plate.widestPixelMicrometres();
        return Math.min(COARSER * fine, Math.max(fine, window.cellMicrometres()));
    }

    private ToneAlignment ontoResponse(PlateConditions conditions, double widest) {
        return ToneAlignment.of(plate.plate(conditions, widest), plate.patches(), plate.response(conditions));
    }

    /** What moves even tones as predicted onto those that a test plate printed. */
    Optional<ToneAlignment> ontoMeasured() {
        return tones.measured()
                .map(measured -> ToneAlignment.of(
                        tones.predicted(), measured, plate.conditions().paper()));
    }

    /** Whether a picture's pixels are so wide that they hold tones; closer up they hold single dots, which have none to be moved. */
    private boolean showsTones(PlateWindow window) {
        return window.cellMicrometres() >= DOT_SHARE * spacingMicrometres;
    }
}
