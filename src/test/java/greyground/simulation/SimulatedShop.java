package greyground.simulation;

import greyground.app.recipe.JobPlate;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.film.compose.GrainPatches;
import greyground.film.sheet.ChartFile;
import greyground.grain.Grain;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A test plate bitten, printed and scanned in a workshop of hidden numbers. The same seed gives the same case.
 *
 * @param seed of the case
 * @param shop whose plate it is
 * @param grain of its film
 * @param chart the test plate as it was ordered
 * @param tones what the shop prints
 * @param scanner how the print is scanned
 */
record SimulatedShop(long seed, HiddenWorkshop shop, Grain grain, TestPlate chart, ShopTones tones, Scanner scanner) {
    static final double DOTS_PER_INCH = 1440;
    private static final double PITCH = 25_400 / DOTS_PER_INCH;
    private static final double WIDEST_CELL = 50;

    private static final List<Grain> GRAINS = List.of(
            new Grain.Stochastic(180, 1),
            new Grain.Stochastic(120, 1),
            new Grain.Stochastic(150, 2),
            new Grain.Stochastic(220, 3),
            new Grain.Stochastic(260, 1),
            new Grain.Halftone(new Ruling(50), 45, Grain.DotShape.ROUND),
            new Grain.Halftone(new Ruling(60), 30, Grain.DotShape.ROUND));

    private static final Map<String, ShopTones> KNOWN = new ConcurrentHashMap<>();

    /** How one print came out of the scanner. */
    record Case(SimulatedShop shop, PaintedPrint print, SimulatedScan scan) {}

    /**
     * A case for reading: any grain, size and scanner, in one of {@code shops} workshops.
     *
     * @param shops so many that their tones need not be computed for every case
     */
    static SimulatedShop of(long seed, int shops) {
        Random random = new Random(seed * 7_919 + 5);
        int which = (int) Math.floorMod(seed, (long) shops);
        Grain grain = GRAINS.get(which % GRAINS.size());
        double[][] sizes = {{60, 80}, {80, 60}, {80, 100}, {100, 120}, {120, 150}, {150, 200}};
        boolean strip = random.nextInt(4) == 0;
        double[] size = strip
                ? random.nextBoolean() ? new double[] {100, 30} : new double[] {150, 40}
                : sizes[random.nextInt(sizes.length)];
        double surface = size[0] * size[1];
        double[] usual = {200, 300, 300, 300, 400, 400, 600};
        double ppi = usual[random.nextInt(usual.length)];
        if (surface < 6100 && random.nextInt(12) == 0) {
            ppi = 1200;
        } else if (surface > 13_000) {
            ppi = Math.min(ppi, 300);
        }
        return of(seed, which, grain, strip ? Recipe.Kind.STRIP : Recipe.Kind.FULL, size, Scanner.of(ppi, random));
    }

    /** A case of one's own choosing. */
    static SimulatedShop of(long seed, long workshop, Grain grain, Recipe.Kind kind, double[] size, Scanner scanner) {
        HiddenWorkshop shop = HiddenWorkshop.of(workshop);
        ShopTones tones = KNOWN.computeIfAbsent(workshop + " " + grain, key -> {
            JobPlate plate = shop.plate(grain, DOTS_PER_INCH);
            return new ShopTones(shop.truth(), plate);
        });
        Recipe recipe = Recipe.of(
                kind,
                new Size(size[0], size[1]),
                2,
                (int) Math.floorMod(seed, 1000L),
                75,
                GrainPatches.spacingMicrometres(grain));
        return new SimulatedShop(seed, shop, grain, TestPlate.of(recipe), tones, scanner);
    }

    /** Same size and kind from another seed: every field stands elsewhere. */
    TestPlate anotherChart() {
        Recipe recipe = chart.recipe();
        return TestPlate.of(new Recipe(
                recipe.kind(),
                recipe.widthMicrometres(),
                recipe.heightMicrometres(),
                recipe.bevelMicrometres(),
                recipe.seed() + 1,
                recipe.codePercent(),
                recipe.codeModuleMicrometres()));
    }

    /** Prints and scans. */
    Case made() throws Exception {
        Random random = new Random(seed * 104_729 + 11);
        double cell = Math.min(WIDEST_CELL, 0.55 * 25_400 / scanner.pixelsPerInch());
        PaintedPrint print = PaintedPrint.of(ChartFile.text(chart), tones, Wiping.of(random), random, cell, PITCH);
        return new Case(this, print, scanner.scan(print, random));
    }
}
