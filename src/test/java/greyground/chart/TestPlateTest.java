package greyground.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.chart.Recipe.Kind;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TestPlateTest {
    static List<Recipe> recipes() {
        List<Recipe> recipes = new ArrayList<>();
        int seed = 0;
        for (Size size : List.of(
                new Size(60, 80),
                new Size(80, 60),
                new Size(70, 93.5),
                new Size(100, 100),
                new Size(150, 200),
                new Size(203.2, 254),
                new Size(400, 300),
                new Size(600, 600))) {
            for (double bevel : new double[] {0, 2, 3}) {
                recipes.add(Recipe.of(Kind.FULL, size, bevel, seed++, 75, 180));
                recipes.add(Recipe.of(Kind.EXPOSURE, size, bevel, 7 * seed, 60, 180));
            }
        }
        for (double spacing : new double[] {310, 400, 600}) {
            recipes.add(Recipe.of(Kind.FULL, new Size(150, 200), 2, 4, 70, spacing));
            recipes.add(Recipe.of(Kind.EXPOSURE, new Size(150, 200), 2, 4, 70, spacing));
        }
        for (Size size : List.of(new Size(100, 30), new Size(30, 100), new Size(150, 40), new Size(300, 50))) {
            recipes.add(Recipe.of(Kind.STRIP, size, 2, Recipe.MOST_SEED - seed, 95, 180));
        }
        return recipes;
    }

    static List<Recipe> someRecipes() {
        return Sweep.of(recipes());
    }

    static List<Recipe> wedges() {
        return Sweep.of(recipes().stream()
                .filter(recipe -> recipe.kind() != Kind.EXPOSURE)
                .toList());
    }

    private static boolean holds(Area outer, Area inner) {
        return inner.left() >= outer.left()
                && inner.top() >= outer.top()
                && inner.left() + inner.width() <= outer.left() + outer.width()
                && inner.top() + inner.height() <= outer.top() + outer.height();
    }

    private static List<Area> areas(TestPlate plate) {
        List<Area> areas = new ArrayList<>();
        plate.patches().forEach(patch -> areas.add(patch.area()));
        plate.targets().forEach(target -> areas.add(target.area()));
        plate.codes()
                .forEach(code -> areas.add(
                        code.area().grown(CornerCode.QUIET * code.area().width() / CornerCode.MODULES)));
        return areas;
    }

    @ParameterizedTest
    @MethodSource("someRecipes")
    void noTwoAreasOverlapAndAllLieInsideTheBevel(Recipe recipe) {
        List<Area> areas = areas(TestPlate.of(recipe));
        Area inside = recipe.plate().grown(-recipe.bevelMicrometres());
        for (int i = 0; i < areas.size(); i++) {
            assertTrue(holds(inside, areas.get(i)), areas.get(i) + " leaves " + inside);
            for (int j = 0; j < i; j++) {
                assertFalse(areas.get(i).meets(areas.get(j)), areas.get(i) + " meets " + areas.get(j));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("wedges")
    void everyLevelStandsThreeTimesOrMore(Recipe recipe) {
        TestPlate plate = TestPlate.of(recipe);
        Map<Integer, Integer> times = new HashMap<>();
        plate.patches().forEach(patch -> times.merge(patch.coveragePerMille(), 1, Integer::sum));
        assertTrue(times.size() >= 21, times.size() + " levels");
        assertTrue(times.values().stream().allMatch(count -> count >= 3), times::toString);
        assertEquals(
                plate.fewestRepeats(),
                times.values().stream().mapToInt(i -> i).min().orElseThrow());
    }

    @Test
    void levelsLieCloserAtBothEndsThanInTheMiddle() {
        List<Integer> levels = Levels.WEDGE;
        int last = levels.size() - 1;
        int middle = last / 2;
        int wide = levels.get(middle + 1) - levels.get(middle);
        assertTrue(levels.get(1) - levels.get(0) <= wide / 4);
        assertTrue(levels.get(last) - levels.get(last - 1) <= wide / 4);
        assertEquals(0, levels.get(0));
        assertEquals(1000, levels.get(last));
    }

    /**
     * Of n patches dealt without regard to place, the correlation with x or y has standard deviation 1/sqrt(n - 1) (mathematics, from
     * memory); no deal may pass two of them, and over many seeds the mean must vanish.
     */
    @Test
    void coverageFollowsNeitherXNorY() {
        for (Kind kind : List.of(Kind.FULL, Kind.STRIP)) {
            double[] sum = new double[2];
            List<Integer> rounds = Sweep.rounds(60);
            int seeds = rounds.size();
            int count = 0;
            for (int seed : rounds) {
                Size size = kind == Kind.FULL ? new Size(60, 80) : new Size(150, 40);
                TestPlate plate = TestPlate.of(Recipe.of(kind, size, 2, seed, 75, 180));
                count = plate.patches().size();
                double[] follows = {correlation(plate, true), correlation(plate, false)};
                for (int axis = 0; axis < 2; axis++) {
                    assertTrue(Math.abs(follows[axis]) < 2 / Math.sqrt(count - 1), seed + ": " + follows[axis]);
                    sum[axis] += follows[axis];
                }
            }
            assertTrue(Math.abs(sum[0] / seeds) < 3 / Math.sqrt((double) seeds * count), "x " + sum[0] / seeds);
            assertTrue(Math.abs(sum[1] / seeds) < 3 / Math.sqrt((double) seeds * count), "y " + sum[1] / seeds);
        }
    }

    /** Pearson's correlation, straight from its definition. */
    private static double correlation(TestPlate plate, boolean across) {
        int n = plate.patches().size();
        double x = 0;
        double c = 0;
        double xx = 0;
        double cc = 0;
        double xc = 0;
        for (LevelPatch patch : plate.patches()) {
            double place = across ? patch.area().left() : patch.area().top();
            x += place;
            c += patch.coverage();
            xx += place * place;
            cc += patch.coverage() * patch.coverage();
            xc += place * patch.coverage();
        }
        return (n * xc - x * c) / Math.sqrt((n * xx - x * x) * (n * cc - c * c));
    }

    @ParameterizedTest
    @MethodSource("wedges")
    void repeatsOfALevelLieFarApart(Recipe recipe) {
        TestPlate plate = TestPlate.of(recipe);
        int longer = Math.max(recipe.widthMicrometres(), recipe.heightMicrometres());
        for (int level : Levels.WEDGE) {
            List<Area> places = plate.patches().stream()
                    .filter(patch -> patch.coveragePerMille() == level)
                    .map(LevelPatch::area)
                    .toList();
            int across = places.stream().mapToInt(Area::left).max().orElseThrow()
                    - places.stream().mapToInt(Area::left).min().orElseThrow();
            int down = places.stream().mapToInt(Area::top).max().orElseThrow()
                    - places.stream().mapToInt(Area::top).min().orElseThrow();
            assertTrue(Math.hypot(across, down) > longer / 5.0, level + " of " + recipe);
        }
    }

    @ParameterizedTest
    @MethodSource("someRecipes")
    void aCodesTextAloneGivesTheVerySameLayout(Recipe recipe) {
        TestPlate plate = TestPlate.of(recipe);
        for (CornerCode code : plate.codes()) {
            assertEquals(CodeText.LENGTH, code.text().length());
            assertTrue(CodeText.isOurs(code.text()));
            assertEquals(plate, TestPlate.ofCode(code.text()));
            assertEquals(code.place(), CodeText.read(code.text()).place());
        }
    }

    /** A chart that version 0.2.0 printed: were its fields dealt otherwise, its prints would teach nonsense. */
    @Test
    void aPrintedChartKeepsItsFields() {
        TestPlate plate = TestPlate.ofCode("GG1S0255S00N5C1JK0001214GGQ70");
        assertEquals("4GGQ7", plate.id());
        assertEquals(106, plate.patches().size());
        assertEquals(
                List.of(900, 1000, 950, 980, 250, 10, 150, 50, 600, 750, 0, 925),
                plate.patches().stream()
                        .limit(12)
                        .map(LevelPatch::coveragePerMille)
                        .toList());
        assertEquals(3350, plate.patches().get(0).area().left());
        assertEquals(3350, plate.patches().get(0).area().top());
        assertEquals(48_306, plate.patches().get(11).area().left());
    }

    /** The same of a full plate, which had no darks then. */
    @Test
    void aPrintedFullChartKeepsItsPlaces() {
        String code = "GG1F037QO04ABK1JK00014VPEGEO0";
        TestPlate plate = TestPlate.ofCode(code);
        assertEquals("PEGEO", plate.id());
        assertEquals(159, plate.patches().size());
        assertTrue(plate.code(code).isPresent());
        TestPlate now = TestPlate.of(CodeText.read(code).recipe());
        assertNotEquals(plate.id(), now.id());
        assertTrue(now.targets().stream().anyMatch(Target.Dark.class::isInstance));
        assertEquals(now, TestPlate.ofCode(now.codeText()));
        assertEquals(
                plate.codes().stream().map(CornerCode::area).toList(),
                now.codes().stream().map(CornerCode::area).toList());
    }

    @Test
    void anotherSeedOrSizeIsAnotherChart() {
        HashSet<String> ids = new HashSet<>();
        List<Recipe> recipes = recipes();
        recipes.forEach(recipe -> ids.add(TestPlate.of(recipe).id()));
        assertEquals(recipes.size(), ids.size());
        Recipe recipe = recipes.get(0);
        Recipe reseeded = new Recipe(
                recipe.kind(),
                recipe.widthMicrometres(),
                recipe.heightMicrometres(),
                recipe.bevelMicrometres(),
                99,
                75,
                500);
        assertNotEquals(TestPlate.of(recipe).id(), TestPlate.of(reseeded).id());
    }

    @Test
    void aCodeWhoseLayoutThisProgramDoesNotMakeIsRefused() {
        String text = TestPlate.of(recipes().get(0)).codeText();
        String other = text.substring(0, 23) + (text.charAt(23) == 'A' ? 'B' : 'A') + text.substring(24);
        Refusal refusal = assertThrows(Refusal.class, () -> TestPlate.ofCode(other));
        assertTrue(refusal.getMessage().contains(other.substring(23, 28)), refusal.getMessage());
        for (String wrong :
                List.of("", "HELLO", text + "0", text.toLowerCase(java.util.Locale.ROOT), "GG1X" + text.substring(4))) {
            assertFalse(CodeText.isOurs(wrong));
            assertThrows(Refusal.class, () -> TestPlate.ofCode(wrong));
        }
    }

    @Test
    void aSmallPlateSaysWhatIsLeftOutAndALargeOneLeavesOutNothing() {
        TestPlate small = TestPlate.of(Recipe.of(Kind.FULL, new Size(60, 80), 2, 1, 75, 180));
        assertEquals(2, small.leftOut().size());
        assertTrue(
                small.leftOut().get(0).contains("second bar gauge")
                        && small.leftOut().get(1).contains("darks"),
                small.leftOut()::toString);
        assertEquals(
                List.of(),
                TestPlate.of(Recipe.of(Kind.FULL, new Size(150, 200), 2, 1, 75, 180))
                        .leftOut());
        TestPlate broadBevel = TestPlate.of(Recipe.of(Kind.FULL, new Size(60, 80), 3, 1, 75, 180));
        assertTrue(broadBevel.leftOut().size() > 1, broadBevel.leftOut()::toString);
        assertTrue(TestPlate.of(Recipe.of(Kind.EXPOSURE, new Size(60, 80), 2, 1, 75, 180))
                        .leftOut()
                        .size()
                > 1);
    }

    /** What a plate left out is not on it, and what it did not leave out is. */
    @ParameterizedTest
    @MethodSource("someRecipes")
    void everyTargetIsOnThePlateOrSaidToBeLeftOut(Recipe recipe) {
        TestPlate plate = TestPlate.of(recipe);
        if (recipe.kind() != Kind.FULL) {
            return;
        }
        String out = plate.leftOut().toString();
        assertEquals(
                out.contains("the bar gauge"),
                plate.targets().stream().noneMatch(t -> t instanceof Target.Bar b && b.upright()));
        assertEquals(
                out.contains("second bar gauge"),
                plate.targets().stream().noneMatch(t -> t instanceof Target.Bar b && !b.upright()));
        assertEquals(out.contains("bare strip"), plate.targets().stream().noneMatch(Target.Bare.class::isInstance));
        assertEquals(out.contains("dots and holes"), plate.targets().stream().noneMatch(Target.Dots.class::isInstance));
        assertEquals(out.contains("line pairs"), plate.targets().stream().noneMatch(Target.Lines.class::isInstance));
        assertEquals(out.contains("darks"), plate.targets().stream().noneMatch(Target.Dark.class::isInstance));
        assertEquals(
                5,
                plate.targets().stream().filter(Target.Star.class::isInstance).count());
    }

    @Test
    void targetsCoverTheSizesThatMatter() {
        assertEquals(50, Target.Bar.WIDTHS.get(0));
        assertEquals(3000, Target.Bar.WIDTHS.get(Target.Bar.WIDTHS.size() - 1));
        assertEquals(10, Target.Dots.DIAMETERS.get(0));
        assertEquals(200, Target.Dots.DIAMETERS.get(Target.Dots.DIAMETERS.size() - 1));
    }

    @Test
    void refusalsAreOneLineWithValueAndRange() {
        List<Runnable> wrong = List.of(
                () -> Recipe.of(Kind.FULL, new Size(50, 80), 2, 1, 75, 180),
                () -> Recipe.of(Kind.FULL, new Size(60, 700), 2, 1, 75, 180),
                () -> Recipe.of(Kind.STRIP, new Size(90, 30), 2, 1, 75, 180),
                () -> Recipe.of(Kind.FULL, new Size(60, 80), 7, 1, 75, 180),
                () -> Recipe.of(Kind.FULL, new Size(60, 80), 2, -1, 75, 180),
                () -> Recipe.of(Kind.FULL, new Size(60, 80), 2, 1, 99, 180),
                () -> TestPlate.of(Recipe.of(Kind.STRIP, new Size(100, 30), 6, 1, 75, 180)),
                () -> new Recipe(Kind.FULL, 60_000, 80_000, 2000, 1, 75, 550),
                () -> TestPlate.of(Recipe.of(Kind.FULL, new Size(60, 80), 2, 1, 75, 900)),
                () -> TestPlate.of(Recipe.of(Kind.EXPOSURE, new Size(60, 80), 2, 1, 75, 900)),
                () -> Kind.named("ramp"));
        for (Runnable each : wrong) {
            Refusal refusal = assertThrows(Refusal.class, each::run);
            assertFalse(refusal.getMessage().contains("\n"));
            assertTrue(refusal.getMessage().contains(":"), refusal.getMessage());
            assertEquals(Refusal.Kind.USE, refusal.kind());
        }
    }
}
