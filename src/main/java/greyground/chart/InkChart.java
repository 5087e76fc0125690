package greyground.chart;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * Test plates of a set's inks, one for each, that are printed over one another on one sheet. Every plate has the same cells; what is printed in a
 * cell is told by {@link InkPatch}. Cells are dealt by the recipe's seed, so that no ink's tones follow a place of the sheet.
 *
 * @param recipe of all plates; its kind is {@link Recipe.Kind#INKS}
 * @param tones of each plate, in the order of printing
 * @param codePlate which plate carries the codes, from 0: that of the darkest ink, since codes of two plates would never lie on one another
 * @param patches one for each cell that is used, row by row
 * @param codes where they stand
 */
public record InkChart(Recipe recipe, List<PlateTones> tones, int codePlate, List<InkPatch> patches, List<Area> codes) {
    /** Levels of a plate's ramp, besides bare paper and its full tone. */
    public static final int RAMP = 8;

    /** Fields in which all plates print alike. */
    public static final int GREYS = 4;

    private static final int MOST_PLATES = 6;
    private static final int FULL_REPEATS = 3;
    private static final int REPEATS = 2;

    /** A field and the clear film beside it: 8 mm, of which the inner 5 are measured (sheet of patches: own choice, assumed). */
    private static final int SMALLEST_CELL = 8_700;

    private static final int LARGEST_CELL = 14_000;
    private static final int CELL_STEP = 100;
    private static final int GAP = 700;

    /** Fields of one plate's coverage that show edges in any light (assumed). */
    private static final int SEEN = 200;

    /** Fields of no more are of dots that stand alone. */
    private static final int SPARSE = 75;

    /**
     * The coverages of a plate, in tenths of a percent.
     *
     * @param ramp {@value #RAMP} of them, rising, below the full tone
     * @param half a middle tone
     * @param greys {@value #GREYS} of them, rising
     * @param full the darkest tone, past which more black prints paler
     */
    public record PlateTones(List<Integer> ramp, int half, List<Integer> greys, int full) {
        public PlateTones {
            ramp = List.copyOf(ramp);
            greys = List.copyOf(greys);
            boolean rising = rise(ramp, full);
            boolean within = half > 0 && half < full && greys.stream().allMatch(grey -> grey > 0 && grey < full);
            if (ramp.size() != RAMP || greys.size() != GREYS || !rising || !within || full > 1000) {
                throw Refusal.use(
                        "test plates of inks have tones of " + ramp + ", " + half + " and " + greys + " up to " + full
                                + " per mille; they must rise within 0 and that: make the test plates again");
            }
        }
    }

    private static boolean rise(List<Integer> levels, int full) {
        int before = 0;
        for (int level : levels) {
            if (level <= before || level >= full) {
                return false;
            }
            before = level;
        }
        return true;
    }

    public InkChart {
        tones = List.copyOf(tones);
        patches = List.copyOf(patches);
        codes = List.copyOf(codes);
    }

    /** Lays the plates out. */
    public static InkChart of(Recipe recipe, List<PlateTones> tones, int codePlate) {
        Refusal.checkRange("number of test plates", tones.size(), 1, MOST_PLATES, "", "one for each ink");
        Refusal.checkRange("plate with the codes", codePlate, 0, tones.size() - 1.0, "", "make the test plates again");
        CodePlaces places = CodePlaces.of(recipe);
        List<Area> corners = places.corners();
        int quiet = CornerCode.QUIET * corners.get(0).width() / CornerCode.MODULES;
        List<Area> taken =
                corners.stream().map(corner -> corner.grown(quiet - GAP / 2)).toList();
        List<InkPatch> all = wanted(tones);
        List<Area> cells = cells(places.inner(), taken, all.size(), tones.size());
        List<Integer> order =
                Shuffle.shuffled(IntStream.range(0, cells.size()).boxed().toList(), recipe.seed());
        List<Integer> used = order.subList(0, all.size());
        List<InkPatch> patches = new ArrayList<>();
        for (int cell = 0; cell < cells.size(); cell++) {
            int patch = used.indexOf(cell);
            if (patch >= 0) {
                patches.add(all.get(patch).at(cells.get(cell).grown(-GAP / 2)));
            }
        }
        return new InkChart(recipe, tones, codePlate, patches, corners);
    }

    private static List<Area> cells(Area inner, List<Area> taken, int count, int plates) {
        for (int pitch = LARGEST_CELL; pitch >= SMALLEST_CELL; pitch -= CELL_STEP) {
            List<Area> cells = WedgeGrid.grid(inner, pitch, taken);
            if (cells.size() >= count) {
                return cells;
            }
        }
        throw Refusal.use("inside its bevel the plate measures " + inner.width() / 1000.0 + " x "
                + inner.height() / 1000.0 + " mm, too little for the " + count + " fields of " + plates
                + " inks, 8 mm each: use larger plates");
    }

    private static List<InkPatch> wanted(List<PlateTones> tones) {
        Area none = new Area(0, 0, 1, 1);
        int plates = tones.size();
        List<InkPatch> all = new ArrayList<>();
        for (int full = 0; full < 1 << plates; full++) {
            int bits = full;
            repeated(
                    all,
                    FULL_REPEATS,
                    new InkPatch(none, new InkPatch.Full(bits), levels(tones, bits, PlateTones::full)));
        }
        for (int plate = 0; plate < plates; plate++) {
            for (int step = 0; step < RAMP; step++) {
                int at = step;
                repeated(
                        all,
                        REPEATS,
                        new InkPatch(
                                none,
                                new InkPatch.Ramp(plate, step),
                                levels(tones, 1 << plate, one -> one.ramp().get(at))));
            }
        }
        for (int bits = 0; bits < 1 << plates; bits++) {
            if (Integer.bitCount(bits) == 2) {
                repeated(
                        all,
                        REPEATS,
                        new InkPatch(none, new InkPatch.Half(bits), levels(tones, bits, PlateTones::half)));
            }
        }
        for (int step = 0; step < GREYS && plates > 1; step++) {
            int at = step;
            repeated(
                    all,
                    1,
                    new InkPatch(
                            none,
                            new InkPatch.Grey(step),
                            levels(tones, (1 << plates) - 1, one -> one.greys().get(at))));
        }
        return all;
    }

    private static void repeated(List<InkPatch> all, int times, InkPatch patch) {
        for (int i = 0; i < times; i++) {
            all.add(patch);
        }
    }

    private static List<Integer> levels(List<PlateTones> tones, int bits, ToIntFunction<PlateTones> level) {
        return IntStream.range(0, tones.size())
                .mapToObj(plate -> (bits >> plate & 1) == 0 ? 0 : level.applyAsInt(tones.get(plate)))
                .toList();
    }

    /** Five letters and digits that stand for these plates. */
    public String id() {
        StringBuilder all = new StringBuilder();
        patches.forEach(patch -> all.append(patch.area())
                .append(':')
                .append(patch.coveragePerMille())
                .append('\n'));
        codes.forEach(code -> all.append(code).append('\n'));
        return CodeText.idOf(all.append(codePlate).toString());
    }

    /**
     * What one plate's film carries.
     *
     * @param plate from 0, in the order of printing
     */
    public TestPlate plate(int plate) {
        return new TestPlate(
                recipe,
                patches.stream()
                        .map(patch -> new LevelPatch(
                                patch.area(), patch.coveragePerMille().get(plate)))
                        .toList(),
                List.of(),
                plate == codePlate ? TestPlate.codes(recipe, codes, id()) : List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /**
     * The print of all plates, as a scan is searched for it. Its fields' levels say no more than whether a field prints nothing, or shows its edges
     * in any light.
     */
    public TestPlate print() {
        return new TestPlate(
                recipe,
                patches.stream()
                        .map(patch -> new LevelPatch(patch.area(), seen(patch)))
                        .toList(),
                List.of(),
                TestPlate.codes(recipe, codes, id()),
                List.of(),
                List.of(),
                List.of());
    }

    /** A level that says whether a field prints nothing, is of sparse dots, has pale edges or edges that are seen in any light. */
    private int seen(InkPatch patch) {
        int most =
                patch.coveragePerMille().stream().mapToInt(level -> level).max().orElse(0);
        return patch.coveragePerMille().get(codePlate) > SEEN ? 500 : most > SPARSE ? 100 : most > 0 ? SPARSE : 0;
    }
}
