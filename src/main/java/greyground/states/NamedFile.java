package greyground.states;

import greyground.quantity.Refusal;
import java.util.regex.Pattern;

/**
 * A file that a record names, so that whoever has both can tell that they belong together.
 *
 * @param name without its folder, 1 to 255 letters
 * @param bytes its length
 * @param sha256 of its bytes, 64 hexadecimal digits (FIPS 180-4)
 */
public record NamedFile(String name, long bytes, String sha256) {
    private static final Pattern DIGEST = Pattern.compile("[0-9a-f]{64}");
    private static final int LONGEST_NAME = 255;

    public NamedFile {
        if (name.isBlank() || name.length() > LONGEST_NAME) {
            throw Refusal.use("a named file's name has " + name.length() + " letters; it must have 1 to " + LONGEST_NAME
                    + ": correct the record");
        }
        if (bytes < 0 || !DIGEST.matcher(sha256).matches()) {
            throw Refusal.use("the named file " + name + " has " + bytes + " bytes and the digest \"" + sha256
                    + "\"; it must have 0 bytes or more and 64 digits of 0-9 and a-f: correct the record");
        }
    }
}
