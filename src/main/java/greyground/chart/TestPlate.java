package greyground.chart;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A test plate: what lies where. All places count from the plate's top left as the print reads.
 *
 * @param recipe from which all the rest follows
 * @param patches the coverage wedge
 * @param targets drawn things of known size
 * @param codes by which the plate says which it is
 * @param strips of an exposure test, else none
 * @param legend what the numbered targets are, one line each
 * @param leftOut what this plate was too small for, one sentence each
 */
public record TestPlate(
        Recipe recipe,
        List<LevelPatch> patches,
        List<Target> targets,
        List<CornerCode> codes,
        List<Strip> strips,
        List<String> legend,
        List<String> leftOut) {
    /**
     * One strip of an exposure test, from edge to edge of the plate.
     *
     * @param number from 1, the shortest exposure, at the top
     * @param area what lies uncovered together
     */
    public record Strip(int number, Area area) {}

    public TestPlate {
        patches = List.copyOf(patches);
        targets = List.copyOf(targets);
        codes = List.copyOf(codes);
        strips = List.copyOf(strips);
        legend = List.copyOf(legend);
        leftOut = List.copyOf(leftOut);
    }

    /** Lays a plate out; one whose levels the recipe doesn't hold is refused. */
    public static TestPlate of(Recipe recipe) {
        if (recipe.kind() == Recipe.Kind.CHECK) {
            throw Refusal.use(
                    "a check plate's tones hang on its workshop, so its code alone can't tell them: give the film PDF"
                            + " that it was made with");
        }
        if (recipe.kind() == Recipe.Kind.INKS) {
            throw Refusal.use(
                    "test plates of several inks hang on those inks, so their code alone can't tell them: read their"
                            + " print with the PDF of their films, and add --out INKS.json");
        }
        return recipe.kind() == Recipe.Kind.EXPOSURE ? ExposureStrips.of(recipe) : WedgeGrid.of(recipe);
    }

    /** The plate as it was laid out before there were darks: copper of then is still read. */
    static TestPlate withoutDarks(Recipe recipe) {
        return recipe.kind() == Recipe.Kind.FULL ? WedgeGrid.withoutDarks(recipe) : of(recipe);
    }

    /** The very plate that a code names. */
    public static TestPlate ofCode(String text) {
        CodeText code = CodeText.read(text);
        TestPlate plate = of(code.recipe());
        if (!plate.id().equals(code.id())) {
            plate = withoutDarks(code.recipe());
        }
        if (!plate.id().equals(code.id())) {
            throw Refusal.failure(
                    "the code names the chart " + code.id() + ", which this version of the program would lay"
                            + " out as " + plate.id() + ": read it with the version that made the film");
        }
        return plate;
    }

    /** All codes of the plate that one of them names: where they stand hangs on the recipe alone, whatever the tones are. */
    public static List<CornerCode> codesBeside(CodeText code) {
        Recipe recipe = code.recipe();
        List<Area> places = recipe.kind() == Recipe.Kind.EXPOSURE
                ? of(recipe).codes().stream().map(CornerCode::area).toList()
                : CodePlaces.of(recipe).corners();
        return codes(recipe, places, code.id());
    }

    /** The code that says a text, if any of the plate's does. */
    public Optional<CornerCode> code(String text) {
        return codes.stream().filter(code -> code.text().equals(text)).findFirst();
    }

    /** Five letters and digits that stand for this layout. */
    public String id() {
        return codes.isEmpty()
                ? idOf(patches, targets, List.of())
                : CodeText.read(codes.get(0).text()).id();
    }

    /** What the code of a place says; those of one plate differ in their last digit alone. */
    public String codeText() {
        return new CodeText(recipe, id(), 0).text();
    }

    /** Share of the plate's surface that is black on the film, 0 to 1, to plan the bath with. */
    public double meanCoverage() {
        return plateByCoverage().entrySet().stream()
                .mapToDouble(part -> part.getKey() * part.getValue())
                .sum();
    }

    /** Share of the plate's surface that has each film coverage; the rest is clear film. Targets count by their share of black. */
    public Map<Double, Double> plateByCoverage() {
        Map<Double, Double> surfaces = new TreeMap<>();
        patches.forEach(patch -> surfaces.merge(patch.coverage(), surface(patch.area()), Double::sum));
        targets.forEach(target -> surfaces.merge(share(target), surface(target.area()), Double::sum));
        // A code is masked so that about half its modules are dark (ISO/IEC 18004).
        codes.forEach(code -> surfaces.merge(recipe.codePercent() / 100.0, 0.5 * surface(code.area()), Double::sum));
        double plate = surface(recipe.plate());
        surfaces.replaceAll((coverage, surface) -> surface / plate);
        return surfaces;
    }

    /** How often the rarest level stands on the plate. */
    public int fewestRepeats() {
        return patches.stream()
                .collect(Collectors.groupingBy(LevelPatch::coveragePerMille, Collectors.summingInt(patch -> 1)))
                .values()
                .stream()
                .min(Comparator.naturalOrder())
                .orElse(0);
    }

    static String idOf(List<LevelPatch> patches, List<Target> targets, List<Area> codes) {
        StringBuilder all = new StringBuilder();
        patches.forEach(patch -> all.append(patch.area())
                .append(':')
                .append(patch.coveragePerMille())
                .append('\n'));
        targets.forEach(target -> all.append(spelled(target)).append('\n'));
        codes.forEach(code -> all.append(code).append('\n'));
        return CodeText.idOf(all.toString());
    }

    private static String spelled(Target target) {
        String place = target.area().toString();
        if (target instanceof Target.Dots dots) {
            return "dots " + place + " " + dots.diameter() + " " + dots.pitch();
        }
        if (target instanceof Target.Holes holes) {
            return "holes " + place + " " + holes.diameter() + " " + holes.pitch();
        }
        if (target instanceof Target.Lines lines) {
            return "lines " + place + " " + lines.period() + " " + lines.upright();
        }
        if (target instanceof Target.Numeral numeral) {
            return "numeral " + place + " " + numeral.number();
        }
        if (target instanceof Target.Dark dark) {
            return "dark " + place + " " + dark.coveragePerMille();
        }
        String kind = target instanceof Target.Bar ? "bar " : target instanceof Target.Bare ? "bare " : "star ";
        return kind + place;
    }

    static List<CornerCode> codes(Recipe recipe, List<Area> places, String id) {
        List<CornerCode> codes = new ArrayList<>();
        for (int place = 0; place < places.size(); place++) {
            codes.add(new CornerCode(places.get(place), place, new CodeText(recipe, id, place).text()));
        }
        return codes;
    }

    private static double surface(Area area) {
        return (double) area.width() * area.height();
    }

    private static double share(Target target) {
        if (target instanceof Target.Dots dots) {
            return Math.PI / 4 * dots.diameter() * dots.diameter() / dots.pitch() / dots.pitch();
        }
        if (target instanceof Target.Holes holes) {
            return 1 - Math.PI / 4 * holes.diameter() * holes.diameter() / holes.pitch() / holes.pitch();
        }
        if (target instanceof Target.Dark dark) {
            return dark.coveragePerMille() / 1000.0;
        }
        if (target instanceof Target.Star) {
            return Math.PI / 8;
        }
        return target instanceof Target.Lines || target instanceof Target.Numeral ? 0.5 : 1;
    }
}
