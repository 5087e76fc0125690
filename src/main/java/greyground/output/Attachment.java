package greyground.output;

import greyground.quantity.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * A file that travels inside the film PDF.
 *
 * @param name letters, digits, dots, dashes and underlines, at most 64, for example "job.json"
 * @param mediaType for example "application/json"
 * @param text the file, at most {@value #LARGEST_BYTES} bytes of UTF-8
 * @param description one line for whoever opens the list of attachments
 * @param relationship what it is to the film
 */
public record Attachment(String name, String mediaType, String text, String description, Relationship relationship) {
    /** What the job record holds: from these the film can be made again. */
    public static final String JOB = "job.json";

    /** The workshop's numbers as they stood when the film was made. */
    public static final String WORKSHOP = "workshop.json";

    /** The tone curve that the film was made with. */
    public static final String CURVE = "curve.json";

    /** The exposure and bite plan for programs. */
    public static final String PLAN = "plan.json";

    /** The exposure and bite plan for people. */
    public static final String PLAN_TEXT = "plan.txt";

    /** What lies where on a test plate. */
    public static final String CHART = "chart.json";

    /** Which film lies where on a sheet of several. */
    public static final String SHEET = "sheet.json";

    /** What was done to a plate. */
    public static final String RECORD = "record.json";

    /** The inks of a set of plates. */
    public static final String INKS = "inks.json";

    /** Which plates a set has, and how their pictures were parted. */
    public static final String SET = "set.json";

    /** Nobody's job record is longer; a longer one is not ours. */
    static final int LARGEST_BYTES = 64 << 20;

    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9._-]{1,64}");
    private static final Pattern MEDIA_TYPE = Pattern.compile("[a-z0-9.+-]{1,40}/[a-z0-9.+-]{1,80}");

    /** The relations of ISO 19005-3:2012, annex E (list from memory, accepted by an independent validator). */
    public enum Relationship {
        /** The film is made from it. */
        SOURCE("Source"),
        /** Numbers that the page shows as a picture. */
        DATA("Data"),
        /** The same content in another form. */
        ALTERNATIVE("Alternative");

        private final String pdfName;

        Relationship(String pdfName) {
            this.pdfName = pdfName;
        }

        String pdfName() {
            return pdfName;
        }
    }

    public Attachment {
        if (!NAME.matcher(name).matches()) {
            throw Refusal.use("the attachment name \"" + name
                    + "\" is not allowed: use 1 to 64 letters, digits, dots, dashes and underlines");
        }
        if (!MEDIA_TYPE.matcher(mediaType).matches()) {
            throw Refusal.use("the attachment " + name + " has the media type \"" + mediaType
                    + "\"; it must read like application/json");
        }
        int length = text.getBytes(StandardCharsets.UTF_8).length;
        if (length > LARGEST_BYTES) {
            throw Refusal.use("the attachment " + name + " holds " + length + " bytes; a film PDF carries at most "
                    + LARGEST_BYTES + ": leave it out");
        }
    }
}
