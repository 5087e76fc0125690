package greyground.bench;

import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobPlate;
import greyground.app.recipe.JobWords;
import greyground.film.job.Job;
import greyground.picture.CopperRelief;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateView;
import greyground.plate.PlateWindow;
import greyground.plate.WholePlate;
import greyground.plate.neighbourhood.FilmBits;
import greyground.plate.neighbourhood.NeighbourhoodPlate;
import greyground.plate.neighbourhood.NeighbourhoodSample;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Whole plates read by neighbourhoods against windows of them computed by the engine on the pixels of the response, in L* of 150-dpi cells.
 *
 * <pre>
 * java ... greyground.bench.NeighbourhoodTruth ART LEFT,TOP,SIDE(mm) [OPTION=VALUE ...]
 * </pre>
 */
public final class NeighbourhoodTruth {
    private static final double CELL = 25_400 / 150.0;

    private NeighbourhoodTruth() {}

    public static void main(String[] arguments) throws Exception {
        double[] place = Arrays.stream(arguments[1].split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Map<String, String> given = new HashMap<>();
        for (String word : Arrays.asList(arguments).subList(2, arguments.length)) {
            String[] parts = word.split("=", 2);
            given.put(parts[0], parts.length > 1 ? parts[1] : "");
        }
        System.out.println(String.join(" ", arguments));
        print(Path.of(arguments[0]), place[0], place[1], place[2], given);
    }

    /**
     * Compares a window of a plate.
     *
     * @param left of the window's edge, like the others in millimetres
     * @param words of the job, where they are not as usual
     * @return how far the print is off in L*
     */
    public static Errors print(Path art, double left, double top, double side, Map<String, String> words)
            throws Exception {
        Map<String, String> given = new HashMap<>(Map.of("plate", "210x148mm"));
        given.putAll(words);
        Workshop shop = Workshop.assumed();
        try (ArtSource source = ArtSource.open(art)) {
            Job job = new JobWords(given).job(Optional.empty(), source.source(1), shop, "2026-01-01");
            FilmRecipe recipe = FilmRecipe.of(source, job, shop, Progress.NONE).onOneSheet();
            JobPlate plate = recipe.plate();
            PlateConditions conditions = plate.conditions();
            PlateFilm film = recipe.positive().onPlateInParts();
            int cells = (int) (side * 1000 / CELL);
            int column = (int) (left * 1000 / CELL);
            int row = (int) (top * 1000 / CELL);
            PlateWindow window = new PlateWindow(column * CELL, row * CELL, CELL, cells, cells);
            double micrometres = film.pitchMicrometres();
            PlateWindow whole = new PlateWindow(
                    0, 0, CELL, (int) (film.width() * micrometres / CELL), (int) (film.height() * micrometres / CELL));
            int threads = Crew.allCores();
            long start = System.nanoTime();
            List<PlateMap> truth = new WholePlate(film, null, plate.widestPixelMicrometres())
                    .look(
                            window,
                            List.of(
                                    new WholePlate.Look(conditions, PlateView.printRoot()),
                                    new WholePlate.Look(conditions, PlateView.covered()),
                                    new WholePlate.Look(conditions, CopperRelief.asPrinted())),
                            threads,
                            Progress.NONE);
            double engine = seconds(start);
            start = System.nanoTime();
            NeighbourhoodSample sample = NeighbourhoodSample.of(
                    plate.plate(), List.of(plate.conditions().ink()), plate.patches(), CopperRelief::fromCorners);
            double sampled = seconds(start);
            start = System.nanoTime();
            FilmBits bits = FilmBits.read(
                    film, whole, NeighbourhoodPlate.reachMicrometres(conditions, whole, micrometres), Progress.NONE);
            NeighbourhoodPlate.Seen seen = new NeighbourhoodPlate(bits, whole, sample)
                    .look(List.of(NeighbourhoodPlate.Look.values()), false, threads, Progress.NONE);
            List<PlateMap> read = seen.maps().stream()
                    .map(map -> cut(map, column, row, window))
                    .toList();
            System.out.printf(
                    Locale.ROOT,
                    "    engine %.1f s, sample %.1f s (%d KB), look %.1f s; pixels %d, computed %.3f %%, guessed %.3f %%,"
                            + " wiped %.1f %%%n",
                    engine,
                    sampled,
                    sample.bytes().length / 1024,
                    seconds(start),
                    seen.pixels(),
                    100.0 * seen.computed() / seen.pixels(),
                    100.0 * seen.guessed() / seen.pixels(),
                    100.0 * seen.wiped() / seen.pixels());
            Paper paper = conditions.paper();
            tell("print, L*", lightness(truth.get(0), paper), lightness(read.get(0), paper));
            tell("covered, %", percent(truth.get(1)), percent(read.get(1)));
            tell("relief, %", percent(truth.get(2)), percent(read.get(2)));
            return tell("print, L*", lightness(truth.get(0), paper), lightness(read.get(0), paper));
        }
    }

    private static PlateMap cut(PlateMap whole, int column, int row, PlateWindow window) {
        float[] values = new float[window.area()];
        for (int y = 0; y < window.rows(); y++) {
            int from = (row + y) * whole.window().columns() + column;
            System.arraycopy(whole.values(), from, values, y * window.columns(), window.columns());
        }
        return new PlateMap(window, values);
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) / 1e9;
    }

    private static double[] lightness(PlateMap map, Paper paper) {
        double[] lightness = new double[map.values().length];
        for (int i = 0; i < lightness.length; i++) {
            lightness[i] = Paper.lightness(paper.reflectance(map.values()[i]));
        }
        return lightness;
    }

    private static double[] percent(PlateMap map) {
        double[] percent = new double[map.values().length];
        for (int i = 0; i < percent.length; i++) {
            percent[i] = 100 * map.values()[i];
        }
        return percent;
    }

    /** How far cells are off: on average, root mean square, 99 of 100 and the worst. */
    public record Errors(double bias, double rms, double within, double worst) {}

    private static Errors tell(String what, double[] truth, double[] read) {
        double[] off = new double[truth.length];
        double bias = 0;
        double squares = 0;
        for (int i = 0; i < off.length; i++) {
            double error = read[i] - truth[i];
            bias += error / off.length;
            squares += error * error / off.length;
            off[i] = Math.abs(error);
        }
        Arrays.sort(off);
        Errors errors = new Errors(bias, Math.sqrt(squares), off[(int) (off.length * 0.99)], off[off.length - 1]);
        System.out.println("    " + what + " " + errors);
        return errors;
    }
}
