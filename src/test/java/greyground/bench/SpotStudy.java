package greyground.bench;

import greyground.art.spots.Specks;
import greyground.art.spots.Spot;
import greyground.art.spots.SpotSearch;
import greyground.art.spots.SpotsFound;
import greyground.raster.Progress;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** What is found of specks put into pictures, as the table of docs/spots.md has it: {@code SpotStudy PICTURE...}. */
public final class SpotStudy {
    private SpotStudy() {}

    public static void main(String[] pictures) throws Exception {
        for (String picture : pictures) {
            double[][] rows = Specks.rows(Path.of(picture));
            Specks none = Specks.in(rows, 0, 1, 1, 2);
            SpotsFound clean = SpotSearch.in(none.plane(false), 2, Progress.NONE);
            StringBuilder line = new StringBuilder(String.format(
                    Locale.ROOT,
                    "| %s | %d / %d%s |",
                    Path.of(picture).getFileName(),
                    clean.spots().size(),
                    clean.dust().size(),
                    clean.own() ? ", own" : ""));
            for (double[] radii : new double[][] {{1, 3.5}, {1.5, 12.5}}) {
                for (int seed = 3; seed <= 5; seed++) {
                    Specks specks = Specks.in(rows, radii[1] < 5 ? 40 : 36, seed, radii[0], radii[1]);
                    SpotsFound found = SpotSearch.in(specks.plane(true), 2, Progress.NONE);
                    List<Spot> dust = found.dust();
                    line.append(String.format(
                            Locale.ROOT,
                            " %d: %d + %d, %d + %d%s, %.1f to %.1f |",
                            specks.specks().size(),
                            specks.hits(found.spots()),
                            specks.falsehoods(found.spots()),
                            specks.hits(dust),
                            specks.falsehoods(dust),
                            found.own() ? ", own" : "",
                            specks.rms(specks.specked(), dust),
                            specks.rms(specks.healed(dust), dust)));
                }
            }
            System.out.println(line);
        }
    }
}
