package greyground.app.recipe;

import greyground.app.files.KeptFiles;
import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.art.spots.Spot;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtFields;
import greyground.film.job.Job;
import greyground.film.job.RetouchFields;
import greyground.film.job.SpotWish;
import greyground.picture.PngFile;
import greyground.picture.SpotRings;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The spots of a job, or those that stand out where it has none of its own, for somebody to choose from. */
public final class SpotSheet {
    private SpotSheet() {}

    /**
     * Writes them; art is closed by it.
     *
     * @param list a file as docs/spots.md has it, in which those taken for dust are accepted
     * @param picture the art as it was read, with each spot ringed and numbered
     */
    public static void write(ArtSource art, Job job, Optional<Path> list, Optional<Path> picture) throws IOException {
        try (art) {
            SpotWish wish = job.art().hand().retouching().spots();
            List<Spot> spots = HealedSpots.of(wish, art, job.art()).spots();
            if (list.isPresent()) {
                KeptFiles.saveSpots(list.get(), new SpotWish.Chosen(spots));
            }
            if (picture.isPresent()) {
                ArtChoice choice = asRead(job).art();
                GreyPlane page = art.turned(choice, Progress.NONE);
                SafeFile.write("spots picture", picture.get(), channel -> {
                    OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
                    PngFile.write(SpotRings.of(page, rings(spots)), "spots, drawn by " + Program.words(), out);
                    out.flush();
                });
            }
        }
    }

    /** With the art as it lies in its file. */
    private static Job asRead(Job job) {
        return ArtFields.ROTATE.with(RetouchFields.SPOTS.with(job, SpotWish.NONE), 0.0);
    }

    private static List<SpotRings.Ring> rings(List<Spot> spots) {
        return IntStream.range(0, spots.size())
                .mapToObj(i -> ring(i + 1, spots.get(i)))
                .toList();
    }

    /** A line is ringed about its middle. */
    private static SpotRings.Ring ring(int number, Spot spot) {
        List<Spot.Place> points = spot.points();
        double left = points.stream().mapToDouble(Spot.Place::across).min().orElseThrow();
        double right = points.stream().mapToDouble(Spot.Place::across).max().orElseThrow();
        double top = points.stream().mapToDouble(Spot.Place::down).min().orElseThrow();
        double bottom = points.stream().mapToDouble(Spot.Place::down).max().orElseThrow();
        double half = Math.max(right - left, bottom - top) / 2;
        return new SpotRings.Ring(
                number, (left + right) / 2, (top + bottom) / 2, half + spot.widthPixels() / 2, spot.accepted());
    }
}
