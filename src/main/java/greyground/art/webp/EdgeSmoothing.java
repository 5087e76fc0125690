package greyground.art.webp;

import greyground.art.page.ArtBytes;
import greyground.art.page.Unreadable;
import java.io.IOException;

/**
 * How strongly a lossy WebP picture wants the edges of its blocks smoothed (RFC 6386, 9.3, 9.6 and 15), read from the head of its data. The
 * library smooths none where a picture has no segments, and elsewhere leaves the last three rows and columns of each block of 16 as they
 * were, so that more than a little of it can't be decoded right.
 */
final class EdgeSmoothing {
    // The mean of 0 to 63 over a picture's blocks with which some 400 pictures of every quality and option strayed less
    // than 0.002 of luminance
    // on average from libwebp's decoding: where nothing is smoothed, and where something is.
    private static final int NOT_SMOOTHED = 3;
    private static final int SMOOTHED = 16;

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
        // How many of 255 blocks go left in the tree of four segments, and then left again on either side.
        int[] left = {255, 255, 255};
        for (int i = 0; map && i < 3; i++) {
            left[i] = flag() ? number(8) : 255;
        }
        // Which of two filters.
        flag();
        int level = number(6);
        number(3);
        boolean added = flag();
        int addition = added && flag() ? optional(6)[0] + Math.max(0, optional(6)[0]) : 0;
        double ofSegments =
                mean(left[0], mean(left[1], strengths[0], strengths[1]), mean(left[2], strengths[2], strengths[3]));
        boolean known = !segments || (added ? ofSegments == 0 : absolute);
        double strength = segments && !added ? ofSegments : level + addition;
        int most = segments || added ? SMOOTHED : NOT_SMOOTHED;
        if (level > 0 && (!known || strength > most)) {
            throw new Unreadable("it is a lossy WebP picture of low quality, whose blocks' edges are to be smoothed by "
                    + Math.round(strength) + " of 63, which can't be done right here; at most " + most
                    + " can be read: save it as PNG or TIFF, or as lossless WebP");
        }
    }

    private static double mean(int left, double ofLeft, double ofRight) {
        return (left * ofLeft + (255 - left) * ofRight) / 255;
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
