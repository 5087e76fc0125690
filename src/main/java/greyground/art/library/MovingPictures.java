package greyground.art.library;

/** Words for files of several frames, of which the first is taken. */
public final class MovingPictures {
    public static final String PART =
            "it is a moving picture whose first frame covers only a part of it: save one picture of it as PNG";

    private MovingPictures() {}

    /** {@code frames} may be 0 where their number is not known. */
    public static String remark(int frames) {
        return "it is a moving picture" + (frames > 0 ? " of " + frames + " frames" : "") + ": the first is taken";
    }
}
