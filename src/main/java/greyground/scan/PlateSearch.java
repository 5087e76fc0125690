package greyground.scan;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import greyground.quantity.Refusal;
import greyground.scan.CodeSearch.Found;
import greyground.scan.Projective.Pair;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Finds a plate on a scan: one code that reads tells where the others must be; codes and then the fields' edges place it. One search, one
 * thread.
 */
final class PlateSearch {
    /** Reductions tried, coarse first: cheap, and grain is softened. */
    private static final int[] REDUCTIONS = {24, 16, 12, 8, 6, 4, 3, 2, 1};

    /** Distances of values tried between those, where nothing is found. */
    private static final double[] REDRAWN = {0.7, 0.5};

    private static final double MOST_REDRAWN = 16_000_000;

    private static final double FINDER_FIRST = 3.5;
    private static final double FINDER_LAST = CornerCode.MODULES - 3.5;

    /** A code this much like its pattern is taken as seen; what lies by chance beside it reaches some 0.2 (measured). */
    private static final double LIKE = 0.4;

    /** Values to a module past which no finer map is searched. */
    private static final double MOST_MODULE = 8;

    /**
     * A plate found.
     *
     * @param place its map
     * @param hidden fields, by their number in the layout, of which no edge is seen though most others' are
     * @param notes what a person should know of the finding
     */
    record FoundPlate(Projective place, Set<Integer> hidden, List<String> notes) {
        FoundPlate {
            hidden = Set.copyOf(hidden);
            notes = List.copyOf(notes);
        }
    }

    private final LightMap light;
    private final TestPlate plate;
    private final ScanWords words;
    private final Registering codesFit;
    private final LightMap coarse;
    private final List<Pattern> patterns;

    private PlateSearch(LightMap light, TestPlate plate, ScanWords words, double modulePixels) {
        this.light = light;
        this.plate = plate;
        this.words = words;
        int reduction = (int) Math.max(1, modulePixels / light.step() / 4);
        this.coarse = light.reduced(reduction).roots();
        this.codesFit = new Registering(coarse, plate.recipe().plate());
        this.patterns = plate.codes().stream().map(Pattern::of).toList();
    }

    /** Finds it by its codes. */
    static FoundPlate byCodes(LightMap light, TestPlate plate) {
        ScanWords words = new ScanWords(plate);
        List<Found> found = codes(light);
        if (found.isEmpty()) {
            throw words.noCode(light);
        }
        words.checkOneChart(found);
        PlateSearch search = new PlateSearch(light, plate, words, found.get(0).modulePixels());
        List<Integer> seen = new ArrayList<>();
        Projective place = search.placed(found, seen);
        words.checkCoarseness(place);
        words.checkWhole(place, light);
        search.checkAlone(place);
        return search.refined(place, seen, false);
    }

    /** Takes the corners a person gave, and mends them where the scan shows how. */
    static FoundPlate byHand(LightMap light, TestPlate plate, List<Double> corners) {
        ScanWords words = new ScanWords(plate);
        if (corners.size() != 8) {
            throw Refusal.use(
                    "the plate's corners are given as " + corners.size()
                            + " numbers; they must be 8: x and y of the top left, top right, bottom right and bottom left corner");
        }
        Area whole = plate.recipe().plate();
        int[] x = {0, whole.width(), whole.width(), 0};
        int[] y = {0, 0, whole.height(), whole.height()};
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            pairs.add(new Pair(x[i], y[i], corners.get(2 * i), corners.get(2 * i + 1)));
        }
        Projective place = Projective.through(pairs, true);
        words.checkCorners(place, pairs);
        words.checkCoarseness(place);
        words.checkWhole(place, light);
        double module = plate.recipe().codeModuleMicrometres() * place.scale(whole);
        PlateSearch search = new PlateSearch(light, plate, words, module);
        List<Integer> seen = new ArrayList<>();
        Projective mended = search.withOtherCodes(place, seen, 2500);
        if (seen.isEmpty()) {
            return new FoundPlate(
                    place,
                    Set.of(),
                    List.of(
                            "the plate's codes were not recognised at the corners given by hand; the corners are used as"
                                    + " given"));
        }
        return search.refined(mended, seen, true);
    }

    /** Codes on a whole scan: coarse maps first; then without softening, and between the sizes, where none was found. */
    private static List<Found> codes(LightMap light) {
        for (boolean soft : new boolean[] {true, false}) {
            for (int reduction : REDUCTIONS) {
                if (Math.min(light.width(), light.height()) / reduction >= 60) {
                    List<Found> found =
                            CodeSearch.codes(light.reduced(reduction).roots(), soft, middle -> false);
                    if (!found.isEmpty()) {
                        return withFiner(light, found, reduction);
                    }
                }
            }
        }
        for (double share : REDRAWN) {
            for (int reduction : new int[] {2, 1}) {
                LightMap reduced = light.reduced(reduction);
                if (reduced.width() / share * reduced.height() / share < MOST_REDRAWN) {
                    List<Found> found = CodeSearch.codes(reduced.redrawn(share).roots(), true, middle -> false);
                    if (!found.isEmpty()) {
                        return found;
                    }
                }
            }
        }
        return List.of();
    }

    /** A map in which some codes read may be too coarse for others: looks where those must be on finer ones, too. */
    private static List<Found> withFiner(LightMap light, List<Found> first, int reduction) {
        List<Found> all = new ArrayList<>(first);
        for (int finer : REDUCTIONS) {
            if (finer < reduction && all.size() < 4 && all.get(0).modulePixels() / light.step() / finer < MOST_MODULE) {
                double reach = 30 * all.get(0).modulePixels();
                List<double[]> likely = CodeSearch.likely(all);
                CodeSearch.codes(
                                light.reduced(finer).roots(),
                                true,
                                middle -> likely.stream()
                                        .noneMatch(place -> StrictMath.hypot(place[0] - middle[0], place[1] - middle[1])
                                                < place[2] + reach))
                        .stream()
                        .filter(one -> all.stream().noneMatch(one::sameAs))
                        .forEach(all::add);
            }
        }
        return all;
    }

    private Projective placed(List<Found> found, List<Integer> seen) {
        List<Pair> pairs = new ArrayList<>();
        for (Found one : found) {
            CornerCode code = plate.code(one.text()).orElseThrow();
            seen.add(plate.codes().indexOf(code));
            double module = (double) code.area().width() / CornerCode.MODULES;
            double[] x = {FINDER_FIRST, FINDER_LAST, FINDER_FIRST};
            double[] y = {FINDER_FIRST, FINDER_FIRST, FINDER_LAST};
            for (int i = 0; i < 3; i++) {
                pairs.add(new Pair(
                        code.area().left() + x[i] * module,
                        code.area().top() + y[i] * module,
                        one.corners().get(2 * i),
                        one.corners().get(2 * i + 1)));
            }
        }
        Projective place = Projective.through(pairs, seen.size() > 2);
        place = codesFit.fitted(place, seen.stream().map(patterns::get).toList(), seen.size() > 1, 20);
        return withOtherCodes(place, seen, 800);
    }

    /** Looks for the codes not seen yet, the nearest first, and moves the map with each. */
    private Projective withOtherCodes(Projective start, List<Integer> seen, double leastReach) {
        Projective place = start;
        List<Integer> open = new ArrayList<>();
        for (int i = 0; i < patterns.size(); i++) {
            if (!seen.contains(i)) {
                open.add(i);
            }
        }
        while (!open.isEmpty()) {
            int next = open.stream()
                    .min(Comparator.comparingDouble(i -> distance(i, seen)))
                    .orElseThrow();
            open.remove(Integer.valueOf(next));
            double reach = leastReach + (seen.isEmpty() ? 0 : 0.03 * distance(next, seen));
            double[] moved = search(place, next, reach);
            if (moved[2] > LIKE) {
                List<Pair> pairs = new ArrayList<>();
                for (int i : seen) {
                    pairs.addAll(corners(place, i, 0, 0));
                }
                pairs.addAll(corners(place, next, moved[0], moved[1]));
                seen.add(next);
                if (seen.size() > 1 || leastReach < 1000) {
                    place = Projective.through(pairs, seen.size() > 2);
                } else {
                    place = place.after(Projective.scaled(1, moved[0], moved[1]));
                }
                place = codesFit.fitted(place, seen.stream().map(patterns::get).toList(), seen.size() > 1, 12);
            }
        }
        return place;
    }

    private List<Pair> corners(Projective place, int code, double movedX, double movedY) {
        Area area = plate.codes().get(code).area();
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double x = i % 2 == 0 ? area.left() : area.right();
            double y = i < 2 ? area.top() : area.bottom();
            pairs.add(new Pair(x, y, place.x(x + movedX, y + movedY), place.y(x + movedX, y + movedY)));
        }
        return pairs;
    }

    /** The shift at which a code is most like its pattern, and how alike. */
    private double[] search(Projective place, int code, double reach) {
        Pattern pattern = patterns.get(code);
        double step = plate.recipe().codeModuleMicrometres() / 2.0;
        double[] best = {0, 0, -1};
        int steps = (int) Math.ceil(reach / step);
        for (int j = -steps; j <= steps; j++) {
            for (int i = -steps; i <= steps; i++) {
                double like = pattern.likeness(coarse, place, i * step, j * step, 7);
                if (like > best[2]) {
                    best = new double[] {i * step, j * step, like};
                }
            }
        }
        return best;
    }

    private double distance(int code, List<Integer> seen) {
        Area area = plate.codes().get(code).area();
        return seen.stream()
                .mapToDouble(other -> {
                    Area from = plate.codes().get(other).area();
                    return StrictMath.hypot(area.left() - from.left(), area.top() - from.top());
                })
                .min()
                .orElse(0);
    }

    /** Looks for codes outside of the plate. */
    private void checkAlone(Projective place) {
        Area whole = plate.recipe().plate();
        double module = plate.recipe().codeModuleMicrometres() * place.scale(whole);
        int reduction = (int) Math.max(1, Math.rint(module / light.step() / 4));
        Projective back = place.inverse();
        LightMap roots = light.reduced(reduction).roots();
        words.checkNoOther(
                CodeSearch.codes(
                        roots, true, middle -> whole.holds(back.x(middle[0], middle[1]), back.y(middle[0], middle[1]))),
                place);
    }

    /** Lays codes and fields' edges on the scan, from the codes that were seen outwards, and moves the map as it goes. */
    private FoundPlate refined(Projective start, List<Integer> seen, boolean byHand) {
        Area whole = plate.recipe().plate();
        // An edge's pattern is 0.12 mm soft: values of about 0.1 mm lose nothing of it.
        int reduction = (int) Math.max(1, 100 * start.scale(whole) / light.step());
        Registering fit = new Registering(light.reduced(reduction).roots(), whole);
        List<LevelPatch> open = new ArrayList<>(plate.patches());
        List<Integer> openCodes = new ArrayList<>();
        Reached reached = new Reached();
        List<Pattern> laid = new ArrayList<>();
        for (int code = 0; code < patterns.size(); code++) {
            if (seen.contains(code)) {
                laid.add(patterns.get(code));
                reached.add(plate.codes().get(code).area());
            } else {
                openCodes.add(code);
            }
        }
        Projective place = start;
        while (!open.isEmpty()) {
            double reach = seen.size() > 2 ? Double.MAX_VALUE : Math.max(8_000, reached.smaller() * 0.5);
            List<LevelPatch> near = open.stream()
                    .filter(patch -> reached.distance(patch.area()) <= reach)
                    .toList();
            if (near.isEmpty()) {
                near = List.of(open.stream()
                        .min(Comparator.comparingDouble(patch -> reached.distance(patch.area())))
                        .orElseThrow());
            }
            open.removeAll(near);
            near.forEach(patch -> {
                laid.addAll(Pattern.edges(patch.area()));
                reached.add(patch.area());
            });
            for (int code : List.copyOf(openCodes)) {
                if (reached.distance(plate.codes().get(code).area()) <= 0) {
                    laid.add(patterns.get(code));
                    openCodes.remove(Integer.valueOf(code));
                }
            }
            boolean enough = seen.size() > 1 || open.isEmpty() || reached.covers(whole, 0.5);
            place = fit.fitted(place, laid, enough, open.isEmpty() ? 12 : 5);
        }
        List<Registering.Fit> codes = fit.fits(place, patterns);
        List<Pattern> edges = plate.patches().stream()
                .flatMap(patch -> Pattern.edges(patch.area()).stream())
                .toList();
        return words.checked(place, codes, fit.fits(place, edges), byHand);
    }

    /** The part of the plate that has been laid on the scan so far. */
    private static final class Reached {
        private double left = Double.MAX_VALUE;
        private double top = Double.MAX_VALUE;
        private double right = -Double.MAX_VALUE;
        private double bottom = -Double.MAX_VALUE;

        void add(Area area) {
            left = Math.min(left, area.left());
            top = Math.min(top, area.top());
            right = Math.max(right, area.right());
            bottom = Math.max(bottom, area.bottom());
        }

        double smaller() {
            return Math.min(right - left, bottom - top);
        }

        boolean covers(Area plate, double share) {
            return right - left > share * plate.width() && bottom - top > share * plate.height();
        }

        double distance(Area area) {
            double x = Math.max(0, Math.max(left - area.right(), area.left() - right));
            double y = Math.max(0, Math.max(top - area.bottom(), area.top() - bottom));
            return Math.max(x, y);
        }
    }
}
