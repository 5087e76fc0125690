package greyground.scan;

import greyground.chart.Area;
import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.scan.ScanReading.TargetReading;
import greyground.scan.StrayLight.Surroundings;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Finds a test plate on a scan and measures it. */
public final class ChartReader {
    private static final int THREADS = 2;

    /** Left out at each side of a field: its edge is bitten and softened (assumed). */
    private static final double RIM = 600;

    private static final double RIM_SHARE = 0.15;
    private static final double MOST_SPOILED = 0.4;
    private static final double MOST_CLIPPED = 0.02;

    private ChartReader() {}

    /**
     * Finds and measures. The plate is looked for by its codes, or taken where the corners say; each field is read inside its rim as the
     * mean of its light against the paper about the platemark.
     *
     * @param scan linear luminance; any size, turn and resolution from 150 pixels to the inch of print
     * @param expected the plate that should be on it
     * @param choices corners, wedge, stray light and the paper's lightness
     * @throws Refusal in a plain sentence if the scan shows anything but one whole print of that plate
     */
    public static ScanReading read(GreyPlane scan, TestPlate expected, ScanChoices choices, Progress progress) {
        LightMap light = LightMap.of(scan, THREADS, progress.part(0, 0.5));
        PlateSearch.FoundPlate sight = choices.corners().isEmpty()
                ? PlateSearch.byCodes(light, expected)
                : PlateSearch.byHand(light, expected, choices.corners());
        progress.done(0.8);
        List<String> notes = new ArrayList<>(sight.notes());
        Projective place = sight.place();
        double pixelsPerMillimetre = place.scale(expected.recipe().plate()) * 1000;
        Optional<Glare> glare = choices.flareShare().isPresent()
                ? Optional.empty()
                : glare(
                        expected,
                        sight,
                        light,
                        pixelsPerMillimetre,
                        Meters.of(scan, expected, place, choices, StrayLight.none(light), light));
        Optional<Glare> sure = glare.filter(Glare::isSure);
        double share =
                choices.flareShare().orElseGet(() -> sure.map(Glare::share).orElse(0.0));
        StrayLight stray = share == 0
                ? StrayLight.none(light)
                : StrayLight.of(
                        light,
                        share,
                        sure.map(found -> found.surroundings(light, pixelsPerMillimetre))
                                .orElseGet(() ->
                                        Surroundings.square(light, StrayLight.SIDE_MILLIMETRES, pixelsPerMillimetre)));
        Meters meters = Meters.of(scan, expected, place, choices, stray, light);
        FieldMeter meter = meters.meter();
        PaperWhite paper = meters.paper();
        PatchTally tally = new PatchTally();
        List<MeasuredPatch> patches = new ArrayList<>();
        for (int i = 0; i < expected.patches().size(); i++) {
            LevelPatch patch = expected.patches().get(i);
            if (sight.hidden().contains(i)) {
                continue;
            }
            Area inner = inner(patch.area());
            FieldMeter.Reading reading =
                    meter.read(inner.left(), inner.top(), inner.width(), inner.height(), uneven(patch));
            tally.count(reading);
            if (!spoiled(reading)) {
                patches.add(new MeasuredPatch(
                        patch.coverage(),
                        reading.lightness(),
                        patch.area().middleX() / 1000,
                        patch.area().middleY() / 1000,
                        inner.width() / 1000.0 * inner.height() / 1000.0));
            }
        }
        progress.done(0.9);
        List<TargetReading> targets = TargetMeter.read(scan, expected.targets(), place, meter);
        tally.say(notes, paper, expected, choices);
        progress.done(1);
        return new ScanReading(expected, place, patches, targets, paper.squares(), glare, notes);
    }

    /** What turns the scan's signals into tones. */
    private record Meters(PaperWhite paper, FieldMeter meter) {
        static Meters of(
                GreyPlane scan,
                TestPlate plate,
                Projective place,
                ScanChoices choices,
                StrayLight stray,
                LightMap light) {
            PaperWhite paper = PaperWhite.of(plate, place, stray);
            @Nullable
            ReferenceWedge wedge =
                    choices.references().isEmpty() ? null : ReferenceWedge.of(scan, choices.references(), stray);
            return new Meters(
                    paper, new FieldMeter(place, stray, paper, choices.paperLightness(), wedge, light.step()));
        }
    }

    /** Stray light as the plate's darks and dark fields show it; nothing where it has no darks. */
    private static Optional<Glare> glare(
            TestPlate plate, PlateSearch.FoundPlate sight, LightMap light, double pixelsPerMillimetre, Meters meters) {
        List<Target.Dark> darks = Glare.darks(plate);
        if (darks.isEmpty()) {
            return Optional.empty();
        }
        List<Surroundings> surroundings = Glare.sides().stream()
                .map(side -> Surroundings.fallingOff(light, side, pixelsPerMillimetre))
                .toList();
        List<Glare.Seen> seen = new ArrayList<>();
        for (Target.Dark dark : darks) {
            seen.add(seen(middle(dark.area()), dark.coveragePerMille(), sight.place(), surroundings, meters));
        }
        for (int i = 0; i < plate.patches().size(); i++) {
            LevelPatch patch = plate.patches().get(i);
            if (!sight.hidden().contains(i) && Glare.isTelling(plate, patch)) {
                seen.add(seen(inner(patch.area()), patch.coveragePerMille(), sight.place(), surroundings, meters));
            }
        }
        return Glare.of(seen);
    }

    private static Glare.Seen seen(
            Area area, int level, Projective place, List<Surroundings> surroundings, Meters meters) {
        FieldMeter.Reading reading = meters.meter().read(area.left(), area.top(), area.width(), area.height(), false);
        double x = area.middleX();
        double y = area.middleY();
        List<Double> about = surroundings.stream()
                .map(mean -> meters.meter().ofPaper(mean.mean(place.x(x, y), place.y(x, y)), x, y))
                .toList();
        return new Glare.Seen(level, Lightness.toLuminance(reading.lightness()), about, x, y);
    }

    /** Of a large dark the middle alone, which is farthest from all light. */
    private static Area middle(Area area) {
        int most = Target.Dark.LARGE / 2;
        if (area.width() < Target.Dark.LARGE) {
            return inner(area);
        }
        return new Area((int) area.middleX() - most / 2, (int) area.middleY() - most / 2, most, most);
    }

    /** Dots that stand alone and lands that are lost here and there make cells uneven (assumed limits). */
    static boolean uneven(LevelPatch patch) {
        return patch.coveragePerMille() <= 75 || patch.coveragePerMille() >= 960;
    }

    private static boolean spoiled(FieldMeter.Reading reading) {
        return reading.leftOut() > MOST_SPOILED;
    }

    /** What of a field is measured, without its rim. */
    public static Area inner(Area area) {
        int rimX = (int) Math.min(area.width() * 0.3, Math.max(RIM, RIM_SHARE * area.width()));
        int rimY = (int) Math.min(area.height() * 0.3, Math.max(RIM, RIM_SHARE * area.height()));
        return new Area(area.left() + rimX, area.top() + rimY, area.width() - 2 * rimX, area.height() - 2 * rimY);
    }

    /** Counts what is wrong with fields, and says it. One reading owns it. */
    private static final class PatchTally {
        private int clipped;
        private int past;
        private int dusty;
        private int spoiled;

        void count(FieldMeter.Reading reading) {
            clipped += reading.clipped() > MOST_CLIPPED ? 1 : 0;
            past += reading.outsideWedge() ? 1 : 0;
            spoiled += spoiled(reading) ? 1 : 0;
            dusty += reading.leftOut() > 0.1 && !spoiled(reading) ? 1 : 0;
        }

        void say(List<String> notes, PaperWhite paper, TestPlate plate, ScanChoices choices) {
            int all = plate.patches().size();
            if (!paper.bare()) {
                notes.add(
                        "the scan shows no bare paper round the plate: the clear fields are taken for paper, so a tint that"
                                + " wiping left on them isn't seen; scan with 10 mm of paper round the plate");
            }
            if (paper.fall() > 0.03) {
                notes.add("the scan's light falls off by " + Math.round(100 * paper.fall())
                        + " % over the plate; it was taken out");
            }
            if (clipped > 0) {
                notes.add(clipped + " of " + all
                        + " fields are clipped at the scan's black or white and can't be trusted:"
                        + " scan again without automatic corrections");
            }
            if (spoiled > 0) {
                notes.add(spoiled + " of " + all + " fields are left out: too much of them is spoiled or uneven");
            }
            if (dusty > 0) {
                notes.add("dust or scratches were passed over in " + dusty + " fields");
            }
            if (past > 0) {
                notes.add(past + " of " + all
                        + " fields lie past the reference wedge's range; their tones are drawn out" + " from its end");
            }
            choices.flareShare()
                    .filter(share -> share > 0)
                    .ifPresent(share -> notes.add("stray light of "
                            + Refusal.plain(Math.rint(1000 * share) / 10) + " % of the mean over "
                            + StrayLight.SIDE_MILLIMETRES + " mm was taken out"));
        }
    }
}
