package greyground.picture;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes a picture as PNG (ISO/IEC 15948:2004, its clauses from memory): grey with one sample a pixel where every pixel is neutral, else colour; the
 * coding is stated as sRGB, and the pixel density where the picture has a true size.
 */
public final class PngFile {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final double INCHES_PER_METRE = 1 / 0.0254;

    /** Gamma 1/2.2 times 100 000, which a reader that does not know sRGB falls back to (clause 11.3.3.5). */
    private static final int SRGB_GAMMA = 45_455;

    private PngFile() {}

    /**
     * Writes the picture; the stream stays open.
     *
     * @param words kept in the file as its description
     */
    public static void write(Picture picture, String words, OutputStream out) throws IOException {
        DataOutputStream data = new DataOutputStream(out);
        boolean grey = picture.isGrey();
        data.write(SIGNATURE);
        chunk(data, "IHDR", body -> {
            body.writeInt(picture.width());
            body.writeInt(picture.height());
            body.write(new byte[] {8, (byte) (grey ? 0 : 2), 0, 0, 0});
        });
        // Relative colorimetric: the paper's white is drawn as it is.
        chunk(data, "sRGB", body -> body.write(1));
        chunk(data, "gAMA", body -> body.writeInt(SRGB_GAMMA));
        if (picture.dotsPerInch() > 0) {
            int perMetre = (int) Math.round(picture.dotsPerInch() * INCHES_PER_METRE);
            chunk(data, "pHYs", body -> {
                body.writeInt(perMetre);
                body.writeInt(perMetre);
                body.write(1);
            });
        }
        chunk(data, "iTXt", body -> {
            body.write("Description".getBytes(StandardCharsets.ISO_8859_1));
            body.write(new byte[5]);
            body.write(words.getBytes(StandardCharsets.UTF_8));
        });
        chunk(data, "IDAT", body -> pixels(picture, grey ? 1 : 3, body));
        chunk(data, "IEND", body -> {});
        data.flush();
    }

    private static void pixels(Picture picture, int channels, OutputStream body) throws IOException {
        Deflater deflater = new Deflater(9);
        try (DeflaterOutputStream packed = new DeflaterOutputStream(body, deflater, 1 << 16)) {
            int bytes = picture.width() * channels;
            byte[] above = new byte[bytes];
            byte[] row = new byte[bytes];
            byte[] plain = new byte[bytes + 1];
            byte[] up = new byte[bytes + 1];
            byte[] paeth = new byte[bytes + 1];
            up[0] = 2;
            paeth[0] = 4;
            for (int y = 0; y < picture.height(); y++) {
                for (int x = 0; x < picture.width(); x++) {
                    int from = 3 * (y * picture.width() + x);
                    System.arraycopy(picture.samples(), from, row, x * channels, channels);
                }
                for (int i = 0; i < bytes; i++) {
                    int left = i < channels ? 0 : row[i - channels] & 0xFF;
                    int over = above[i] & 0xFF;
                    int corner = i < channels ? 0 : above[i - channels] & 0xFF;
                    plain[i + 1] = row[i];
                    up[i + 1] = (byte) (row[i] - over);
                    paeth[i + 1] = (byte) (row[i] - nearest(left, over, corner));
                }
                // The least sum of absolute differences packs best, as a rule (clause 12.8).
                byte[] best = weight(up) <= weight(paeth) ? up : paeth;
                packed.write(weight(plain) < weight(best) ? plain : best);
                byte[] spare = above;
                above = row;
                row = spare;
            }
        } finally {
            deflater.end();
        }
    }

    /** The Paeth predictor (clause 9.4). */
    private static int nearest(int left, int over, int corner) {
        int guess = left + over - corner;
        int toLeft = Math.abs(guess - left);
        int toOver = Math.abs(guess - over);
        int toCorner = Math.abs(guess - corner);
        if (toLeft <= toOver && toLeft <= toCorner) {
            return left;
        }
        return toOver <= toCorner ? over : corner;
    }

    private static long weight(byte[] line) {
        long sum = 0;
        for (int i = 1; i < line.length; i++) {
            sum += Math.abs(line[i]);
        }
        return sum;
    }

    /** Writes what belongs into a chunk. */
    private interface Body {
        void fill(DataOutputStream body) throws IOException;
    }

    private static void chunk(DataOutputStream data, String type, Body body) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        body.fill(new DataOutputStream(bytes));
        byte[] named = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(named);
        sum.update(bytes.toByteArray());
        data.writeInt(bytes.size());
        data.write(named);
        bytes.writeTo(data);
        data.writeInt((int) sum.getValue());
    }
}
