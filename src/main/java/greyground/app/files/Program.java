package greyground.app.files;

/** The program's own name and version, as films record them. */
public final class Program {
    /** Version; the build's own must be the same, which a test checks. */
    public static final String VERSION = "0.2.0";

    private Program() {}

    /** Name and version. */
    public static String words() {
        return "Greyground " + VERSION;
    }
}
