package greyground.art.webp;

import greyground.art.page.ArtBytes;
import java.io.IOException;

/**
 * How strongly a lossy WebP picture wants the edges of its blocks smoothed (RFC 6386, 9.3, 9.6 and 15), read from the head of its data. The
 * library smooths none where a picture has no segments, and elsewhere leaves the last three rows and columns of each block of 16 as they
 * were, so that more than a little of it can't be decoded right.
 */
final class EdgeSmoothing {
    // The strongest of 0 to 63 with which 419 pictures of every quality and option, 128 of them its makers' own,
    // strayed less than 0.002 of
    // luminance on average from libwebp's decoding: where nothing is smoothed, where each block adds to the strength,
    // and with segments.
    private static final int NOT_SMOOTHED = 3;
    private static final int ADDED_TO = 20;
    private static final int BY_SEGMENT = 28;

    private final byte[] packed;
    private int next;
    private int value;
    private int range = 255;
    private int shifts;

    private EdgeSmoothing(byte[] packed) {
        this.packed = packed;
        this.value = octet() << 8 | octet();
    }

    /** Refuses the lossy picture whose data, the VP8 chunk's, start at {@code at}. */
    static void check(ArtBytes file, long at) throws IOException {
        // After ten bytes of size come the first hundred of what is packed, more than the head can take.
        byte[] head = new byte[100];
        file.read(at + 10, head, 0, head.length);
        new EdgeSmoothing(head).check();
    }

    private void check() throws IOException {
        // The colours' kind and their clamping, which have one meaning each.
        number(2);
        boolean segments = flag();
        boolean map = segments && flag();
        boolean absolute = false;
        int[] strengths = new int[4];
        if (segments && flag()) {
            absolute = flag();
            optional(7);
            strengths = optional(6);
        }
        for (int i = 0; map && i < 3; i++) {
            number(flag() ? 8 : 0);
        }
        // Which of two filters.
        flag();
        int level = number(6);
        number(3);
        boolean added = flag();
        int[] additions = added && flag() ? optional(6) : new int[4];
        int ofBlocks = added ? Math.max(0, optional(6)[0]) : 0;
        int strongest = Math.max(Math.max(strengths[0], strengths[1]), Math.max(strengths[2], strengths[3]));
        boolean known = !segments || (added ? strongest == 0 : absolute);
        int strength = segments && !added ? strongest : level + additions[0] + ofBlocks;
        int most = added ? ADDED_TO : segments ? BY_SEGMENT : NOT_SMOOTHED;
        if (level > 0 && (!known || strength > most)) {
            throw new IOException(
                    "it is a lossy WebP picture of low quality, whose blocks' edges are to be smoothed by "
                            + Math.min(63, strength) + " of 63, which can't be done right here; at most " + most
                            + " can be read: save it as PNG or TIFF, or as lossless WebP");
        }
    }

    /** Four numbers, each of so many bits and a sign, or 0 where it isn't there. */
    private int[] optional(int bits) {
        int[] numbers = new int[4];
        for (int i = 0; i < 4; i++) {
            if (flag()) {
                int size = number(bits);
                numbers[i] = flag() ? -size : size;
            }
        }
        return numbers;
    }

    private int number(int bits) {
        int number = 0;
        for (int i = 0; i < bits; i++) {
            number = 2 * number + (flag() ? 1 : 0);
        }
        return number;
    }

    /** A flag that is as likely to be set as not: RFC 6386, 7.3. */
    private boolean flag() {
        int split = 1 + (range - 1) / 2;
        boolean set = value >= split << 8;
        range = set ? range - split : split;
        value -= set ? split << 8 : 0;
        for (; range < 128; range *= 2) {
            value *= 2;
            if (++shifts % 8 == 0) {
                value |= octet();
            }
        }
        return set;
    }

    private int octet() {
        return next < packed.length ? packed[next++] & 0xFF : 0;
    }
}
