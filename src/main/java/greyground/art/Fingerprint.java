package greyground.art;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4) of a file. */
final class Fingerprint {
    private Fingerprint() {}

    static String of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] piece = new byte[1 << 18];
            for (int got = in.read(piece); got > 0; got = in.read(piece)) {
                digest.update(piece, 0, got);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException missing) {
            throw new Unreadable("this Java platform has no SHA-256", missing);
        }
    }
}
