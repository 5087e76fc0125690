package greyground.app.recipe;

import greyground.art.line.InkAndPaper;
import greyground.art.line.Strokes;
import greyground.quantity.Refusal;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.Histogram;
import greyground.raster.PixelRect;
import greyground.tone.ArtRange;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is known of art as a drawing.
 *
 * @param tones its ink and its paper, as grey codes
 * @param strokes of it
 */
record LineArt(InkAndPaper tones, Strokes strokes) {
    /** Looks through a page. */
    static LineArt of(GreyPlane page) throws IOException {
        InkAndPaper tones =
                InkAndPaper.of(Histogram.of(page, new PixelRect(0, 0, page.width(), page.height()), Crew.allCores()));
        double span = tones.paper() - tones.ink();
        return new LineArt(tones, Strokes.in(page, (int) (tones.ink() + span / 2), span));
    }

    /** Its ends: the middle of its ink and of its paper; empty where it is no drawing. */
    Optional<ArtRange> range() {
        return tones.apart() && !strokes.tonal() && tones.paper() - tones.ink() > 0.01 * GreyPlane.WHITE
                ? Optional.of(new ArtRange(tones.paper() / GreyPlane.WHITE, tones.ink() / GreyPlane.WHITE))
                : Optional.empty();
    }

    /** What the printmaker should hear of it; {@code forced} where the threshold is given. */
    List<String> remarks(boolean forced) {
        List<String> remarks = new ArrayList<>();
        if (range().isEmpty()) {
            String tones = "the art is no line art: "
                    + (strokes.tonal()
                            ? "from its ink to its paper it takes about "
                                    + Refusal.plain(Math.rint(strokes.edgePixels())) + " pixels (at most 12)"
                            : "tones between its ink and its paper make up "
                                    + Refusal.plain(Math.rint(100 * (1 - tones().separation())))
                                    + " % of how its greys differ (at most 30 %)");
            remarks.add(
                    forced
                            ? tones + ", and the given threshold drops them"
                            : tones + ", so it keeps its tones: --threshold 50% makes strokes of it all the same");
        }
        if (strokes.coarse()) {
            remarks.add("the art's strokes are about " + Refusal.plain(Math.rint(10 * strokes.median()) / 10)
                    + " pixels wide, too few to say where their edges run (at least "
                    + Refusal.plain(Strokes.FEWEST_PIXELS) + "): scan it finer");
        } else if (strokes.soft()) {
            remarks.add("the art's edges are about " + Refusal.plain(Math.rint(10 * strokes.edgePixels()) / 10)
                    + " pixels wide on strokes of about " + Refusal.plain(Math.rint(10 * strokes.median()) / 10)
                    + ": fine strokes may break or run together, so scan it sharper, or try another --threshold");
        }
        return remarks;
    }
}
