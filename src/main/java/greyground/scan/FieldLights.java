package greyground.scan;

import greyground.chart.Area;
import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a print's fields send back in one light, where the plate lies is known already.
 *
 * @param paper of the bare sheet, as the scan has it: 1 is the scan's white
 * @param shares of the paper's light, one for each field in the layout's order; empty where too much of it is spoiled
 * @param clipped how many fields the scan's black or white cuts off
 */
public record FieldLights(double paper, List<Optional<Double>> shares, int clipped) {
    private static final int THREADS = 2;
    private static final double MOST_SPOILED = 0.4;
    private static final double MOST_CLIPPED = 0.02;

    public FieldLights {
        shares = List.copyOf(shares);
    }

    /**
     * Measures.
     *
     * @param light the scan in one light
     * @param flareShare as {@link ScanChoices} tells
     */
    public static FieldLights of(
            GreyPlane light, TestPlate plate, Projective place, double flareShare, Progress progress) {
        LightMap map = LightMap.of(light, THREADS, progress);
        StrayLight stray = flareShare == 0
                ? StrayLight.none(map)
                : StrayLight.of(
                        map,
                        flareShare,
                        StrayLight.Surroundings.square(
                                map,
                                StrayLight.SIDE_MILLIMETRES,
                                place.scale(plate.recipe().plate()) * 1000));
        PaperWhite paper = PaperWhite.of(plate, place, stray);
        FieldMeter meter = new FieldMeter(place, stray, paper, 100, null, map.step());
        List<Optional<Double>> shares = new ArrayList<>();
        int clipped = 0;
        for (LevelPatch patch : plate.patches()) {
            Area inner = ChartReader.inner(patch.area());
            FieldMeter.Reading reading =
                    meter.read(inner.left(), inner.top(), inner.width(), inner.height(), ChartReader.uneven(patch));
            clipped += reading.clipped() > MOST_CLIPPED ? 1 : 0;
            shares.add(
                    reading.leftOut() > MOST_SPOILED
                            ? Optional.empty()
                            : Optional.of(Lightness.toLuminance(reading.lightness())));
        }
        return new FieldLights(paper.mean(), shares, clipped);
    }
}
