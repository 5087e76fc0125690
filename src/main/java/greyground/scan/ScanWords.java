package greyground.scan;

import greyground.chart.Area;
import greyground.chart.CodeText;
import greyground.chart.LevelPatch;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.quantity.Refusal;
import greyground.scan.CodeSearch.Found;
import greyground.scan.PlateSearch.FoundPlate;
import greyground.scan.Projective.Pair;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/** Judges what was found on a scan, and says what is wrong with it in words. */
final class ScanWords {
    /** A module of 0.5 mm is then 3 pixels wide; coarser scans leave codes unread by chance (measured). */
    private static final double LEAST_PIXELS_PER_INCH = 150;

    private static final double BLANK = 8;
    private static final double SEEN = 0.3;
    private static final double LEAST_CODE = 0.35;

    // Fields of these coverages, per mille, print edges in any shop (assumed).
    private static final int LEAST_GREY = 200;
    private static final int MOST_GREY = 960;

    /** Share of edges seen from which one that isn't says something. */
    private static final double MOST_SEEN = 0.8;

    private static final double MICROMETRES_PER_INCH = 25_400;

    private final TestPlate plate;

    ScanWords(TestPlate plate) {
        this.plate = plate;
    }

    /** Nothing of ours: says whether the page is empty or shows something else. */
    Refusal noCode(LightMap light) {
        int factor = Math.max(1, Math.max(light.width(), light.height()) / 300);
        LightMap small = light.reduced(factor);
        double[] tones = new double[small.width() * small.height()];
        for (int i = 0; i < tones.length; i++) {
            tones[i] = Lightness.ofLuminance(small.value(i % small.width(), i / small.width()));
        }
        Arrays.sort(tones);
        double range = tones[(int) (tones.length * 0.99)] - tones[(int) (tones.length * 0.01)];
        if (range < BLANK) {
            return Refusal.failure(
                    "the scan is blank: its tones differ by only " + Refusal.plain(Math.rint(range * 10) / 10)
                            + " L*; scan the proof of chart " + plate.id() + " face down on the glass");
        }
        return Refusal.failure(
                "the scan shows no test plate: there is something on it, but none of a test plate's codes can"
                        + " be read; scan the whole proof of chart " + plate.id()
                        + ", sharp, at 300 ppi or more, or give the"
                        + " plate's four corners by hand");
    }

    /** Only codes of the expected plate, each once and where the others want it. */
    void checkOneChart(List<Found> found) {
        List<Found> others =
                found.stream().filter(one -> plate.code(one.text()).isEmpty()).toList();
        if (!others.isEmpty()) {
            CodeText other = CodeText.read(others.get(0).text());
            throw others.size() == found.size() ? wrongChart(other) : twoCharts(other);
        }
        for (int i = 0; i < found.size(); i++) {
            for (int k = i + 1; k < found.size(); k++) {
                if (!agree(found.get(i), found.get(k))) {
                    throw twoCharts(CodeText.read(found.get(k).text()));
                }
            }
        }
    }

    /** Whether the vector between two codes is as one of them predicts, within a fifth of it: a second print lies elsewhere. */
    private boolean agree(Found one, Found other) {
        Area to = area(other.text());
        double[] predicted = one.predicted(area(one.text()), to.middleX(), to.middleY());
        double away = StrictMath.hypot(predicted[0] - other.middleX(), predicted[1] - other.middleY());
        double distance = StrictMath.hypot(one.middleX() - other.middleX(), one.middleY() - other.middleY());
        return away < 0.2 * distance + 3 * one.modulePixels();
    }

    private Area area(String text) {
        return plate.code(text).orElseThrow().area();
    }

    private Refusal wrongChart(CodeText other) {
        return Refusal.failure("the scan shows another chart, " + named(other.recipe(), other.id()) + "; chart "
                + named(plate.recipe(), plate.id()) + " is expected: scan its proof, or name the film of the proof that"
                + " was scanned");
    }

    private Refusal twoCharts(CodeText other) {
        return Refusal.failure("the scan shows two charts: beside " + plate.id() + " lies "
                + (other.id().equals(plate.id()) ? "a second print of it" : named(other.recipe(), other.id()))
                + "; scan one proof at a time");
    }

    private static String named(Recipe recipe, String id) {
        return id + " (" + recipe.kind().word() + ", " + Refusal.plain(recipe.widthMicrometres() / 1000.0) + " x "
                + Refusal.plain(recipe.heightMicrometres() / 1000.0) + " mm)";
    }

    /** No code beside those of this plate. */
    void checkNoOther(List<Found> found, Projective place) {
        for (Found one : found) {
            if (plate.code(one.text()).isEmpty()) {
                throw twoCharts(CodeText.read(one.text()));
            }
            Area area = area(one.text());
            double x = place.x(area.middleX(), area.middleY());
            double y = place.y(area.middleX(), area.middleY());
            if (StrictMath.hypot(x - one.middleX(), y - one.middleY()) > 8 * one.modulePixels()) {
                throw twoCharts(CodeText.read(one.text()));
            }
        }
    }

    void checkCoarseness(Projective place) {
        double pixels = pixelsPerInch(place);
        if (pixels < LEAST_PIXELS_PER_INCH) {
            throw Refusal.failure("the scan has " + Math.round(pixels) + " pixels to the inch of print; it needs "
                    + Math.round(LEAST_PIXELS_PER_INCH) + " or more: scan at 300 to 600 ppi");
        }
    }

    private double pixelsPerInch(Projective place) {
        return MICROMETRES_PER_INCH * place.scale(plate.recipe().plate());
    }

    /** All that is measured must lie on the scan. */
    void checkWhole(Projective place, LightMap light) {
        List<Area> areas = new ArrayList<>();
        plate.patches().forEach(patch -> areas.add(patch.area()));
        plate.targets().forEach(target -> areas.add(target.area()));
        double x = 0;
        double y = 0;
        int outside = 0;
        for (Area area : areas) {
            if (!within(area, place, light)) {
                outside++;
                x += area.middleX() / plate.recipe().widthMicrometres() - 0.5;
                y += area.middleY() / plate.recipe().heightMicrometres() - 0.5;
            }
        }
        if (outside > 0) {
            boolean sideways = Math.abs(x) >= Math.abs(y);
            String side = sideways ? (x < 0 ? "left" : "right") : y < 0 ? "top" : "bottom";
            throw Refusal.failure("only part of the chart is on the scan: " + outside + " of its " + areas.size()
                    + " fields and targets lie past the scan's edge, at the print's " + side
                    + "; scan the whole proof with some paper round it");
        }
    }

    private static boolean within(Area area, Projective place, LightMap light) {
        double width = light.width() * light.step();
        double height = light.height() * light.step();
        for (int i = 0; i < 4; i++) {
            double x = place.x(i % 2 == 0 ? area.left() : area.right(), i < 2 ? area.top() : area.bottom());
            double y = place.y(i % 2 == 0 ? area.left() : area.right(), i < 2 ? area.top() : area.bottom());
            if (!(x >= -1 && y >= -1 && x <= width + 1 && y <= height + 1)) {
                return false;
            }
        }
        return true;
    }

    /** Corners given by hand must make a plate: no two the same, none inside the other three. */
    void checkCorners(Projective place, List<Pair> corners) {
        int turns = 0;
        for (int i = 0; i < 4; i++) {
            Pair a = corners.get(i);
            Pair b = corners.get((i + 1) % 4);
            Pair c = corners.get((i + 2) % 4);
            double turn = (b.scanX() - a.scanX()) * (c.scanY() - b.scanY())
                    - (b.scanY() - a.scanY()) * (c.scanX() - b.scanX());
            turns += turn > 0 ? 1 : turn < 0 ? -1 : 0;
        }
        if (Math.abs(turns) != 4) {
            throw Refusal.use("the four corners given by hand don't go round a plate: give them clockwise as the print"
                    + " reads, from its top left");
        }
    }

    /** Whether enough of the plate is seen, which fields are not, and notes about it. */
    FoundPlate checked(Projective place, List<Registering.Fit> codes, List<Registering.Fit> sides, boolean byHand) {
        int toSee = 0;
        int seen = 0;
        List<Double> away = new ArrayList<>();
        Set<Integer> hidden = new TreeSet<>();
        for (int i = 0; i < plate.patches().size(); i++) {
            LevelPatch patch = plate.patches().get(i);
            int ofFour = 0;
            for (Registering.Fit fit : sides.subList(4 * i, 4 * i + 4)) {
                if (fit.likeness() > SEEN) {
                    ofFour++;
                    away.add(Math.max(Math.abs(fit.moveX()), Math.abs(fit.moveY())));
                }
            }
            if (patch.coveragePerMille() >= LEAST_GREY && patch.coveragePerMille() <= MOST_GREY) {
                toSee += 4;
                seen += ofFour;
                if (ofFour < 2) {
                    hidden.add(i);
                }
            }
        }
        if (toSee > 0 && seen < 0.5 * toSee) {
            throw Refusal.failure("the print is damaged or covered beyond reading: only " + seen + " of " + toSee
                    + " edges of its grey fields are seen where they should be; uncover the proof, or pull another");
        }
        if (seen < MOST_SEEN * toSee) {
            // On a pale or coarse scan edges are lost by chance.
            hidden.clear();
        }
        List<String> notes = new ArrayList<>();
        if (!hidden.isEmpty()) {
            notes.add(hidden.size() + " of " + plate.patches().size()
                    + " fields show no edge where they should be and are left out: covered, torn or not printed");
        }
        if (byHand) {
            notes.add("the corners given by hand were moved onto the print's codes and fields");
        }
        if (place.mirrored()) {
            notes.add(
                    "the scan shows the print mirrored: from behind, an offset, or the copper itself; it was read all the"
                            + " same");
        }
        long turned = Math.round(turnedDegrees(place));
        if (Math.abs(turned) >= 135) {
            notes.add("the print lies upside down on the scan; it was read as it should hang");
        } else if (Math.abs(turned) >= 3) {
            notes.add("the print lies turned by " + Math.abs(turned) + " degrees "
                    + (turned > 0 ? "clockwise" : "anticlockwise"));
        }
        long missing =
                codes.stream().filter(code -> code.likeness() < LEAST_CODE).count();
        if (missing > 0) {
            notes.add(missing + " of " + codes.size() + " codes can't be made out; the plate was placed by the rest");
        }
        away.sort(null);
        if (!away.isEmpty() && away.get(away.size() * 3 / 4) > 250) {
            notes.add(String.format(
                    Locale.ROOT,
                    "fields lie up to %.1f mm from where a flat print has them: the paper is cockled or the scan bent",
                    away.get(away.size() * 9 / 10) / 1000));
        }
        notes.add("read at " + Math.round(pixelsPerInch(place)) + " pixels to the inch of print");
        return new FoundPlate(place, hidden, notes);
    }

    /** How far the print lies turned, clockwise, -180 to 180; a mirrored one as if turned over sideways first. */
    private double turnedDegrees(Projective place) {
        double x = plate.recipe().plate().middleX();
        double y = plate.recipe().plate().middleY();
        double downX = place.x(x, y + 1000) - place.x(x, y - 1000);
        double downY = place.y(x, y + 1000) - place.y(x, y - 1000);
        return StrictMath.toDegrees(StrictMath.atan2(-downX, downY));
    }
}
