package greyground.film.job;

import greyground.quantity.PaperShrink;
import greyground.quantity.Size;

/**
 * What straightened art still covers of its own frame: it keeps its size and turns about its middle, so that four corners of the
 * frame stay blank.
 *
 * @param width art pixels across, after quarter turns
 * @param height art pixels down
 * @param cosine of the angle of straightening
 * @param sine the same, clockwise above 0
 */
public record LevelledArt(double width, double height, double cosine, double sine) {
    /** How far beyond its place a film pixel may look for art, in art pixels: half the width of the cubic that enlarges. */
    private static final double REACH = 2;

    public static LevelledArt of(double width, double height, ArtChoice choice) {
        double radians = StrictMath.toRadians(choice.straightenDegrees());
        return new LevelledArt(width, height, StrictMath.cos(radians), StrictMath.sin(radians));
    }

    /**
     * The largest fragment of the plate's proportion, on the dried print, that neither plate nor bleed shows a blank corner of. Frame
     * and turned art have one middle and so has the largest rectangle within both: were it elsewhere, its mirror image through the
     * middle would fit as well, and so would the one halfway between.
     */
    public ArtChoice.Crop covered(Size plate, Placing placing) {
        if (sine == 0) {
            return ArtChoice.Crop.ALL;
        }
        PaperShrink shrink = placing.shrink();
        double bleed = 2 * placing.bleedMillimetres();
        double across = (plate.widthMillimetres() + bleed) / shrink.filmScaleAcross();
        double down = (plate.heightMillimetres() + bleed) / shrink.filmScaleDown();
        double turn = Math.abs(sine);
        double roomAcross = Math.max(1, width - 2 * REACH);
        double roomDown = Math.max(1, height - 2 * REACH);
        double pixels = Math.min(
                Math.min(roomAcross / across, roomDown / down),
                Math.min(roomAcross / (across * cosine + down * turn), roomDown / (across * turn + down * cosine)));
        double shareAcross = pixels * plate.widthMillimetres() / shrink.filmScaleAcross() / width;
        double shareDown = pixels * plate.heightMillimetres() / shrink.filmScaleDown() / height;
        return new ArtChoice.Crop((1 - shareAcross) / 2, (1 - shareDown) / 2, shareAcross, shareDown);
    }

    /** Whether a corner of the plate lies where straightening left the art blank; art's own edges are no matter. */
    public boolean leavesBlank(ArtChoice.Crop crop, Placing placing, Size plate) {
        ArtScale lies = ArtScale.of(
                width,
                height,
                crop,
                placing.fit(),
                placing.shrink(),
                new ArtScale.Plate(plate.widthMillimetres(), plate.heightMillimetres(), 1, 1));
        for (int corner = 0; corner < 4; corner++) {
            double side = corner % 2 - 0.5;
            double edge = (corner >> 1) - 0.5;
            if (blank(
                    held(lies.artX(side * plate.widthMillimetres()), width),
                    held(lies.artY(edge * plate.heightMillimetres()), height))) {
                return true;
            }
        }
        return false;
    }

    private boolean blank(double x, double y) {
        double fromMiddle = x - width / 2;
        double below = y - height / 2;
        return Math.abs(cosine * fromMiddle + sine * below) > width / 2 + 1e-6
                || Math.abs(cosine * below - sine * fromMiddle) > height / 2 + 1e-6;
    }

    private static double held(double place, double most) {
        return Math.max(0, Math.min(most, place));
    }
}
