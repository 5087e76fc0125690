package greyground.art.webp;

import java.util.Arrays;

/** Undoes what a lossless WebP picture's writer did to its pixels before packing them (RFC 9649, 4). Pixels are 0xAARRGGBB. */
final class LosslessTransforms {
    private static final int BLACK = 0xFF00_0000;
    private static final int ALPHA_GREEN = 0xFF00_FF00;
    private static final int RED_BLUE = 0x00FF_00FF;

    private LosslessTransforms() {}

    /** 4.1: what was left of each pixel beside what its neighbours predict, in the way that its block's green says. */
    static void addPredicted(int[] pixels, int width, int[] modes, int blockBits) {
        int blocksAcross = LosslessPixels.blocks(width, blockBits);
        for (int at = 0; at < pixels.length; at++) {
            int x = at % width;
            int predicted;
            if (at < width) {
                predicted = at == 0 ? BLACK : pixels[at - 1];
            } else if (x == 0) {
                predicted = pixels[at - width];
            } else {
                int mode = (modes[((at / width) >> blockBits) * blocksAcross + (x >> blockBits)] >> 8) & 15;
                predicted = predicted(mode, pixels, at, at - width);
            }
            pixels[at] = sum(pixels[at], predicted);
        }
    }

    /** Right of a row's last pixel stands, for the row above, this row's first. */
    private static int predicted(int mode, int[] pixels, int at, int above) {
        int left = pixels[at - 1];
        int top = pixels[above];
        int topLeft = pixels[above - 1];
        int topRight = pixels[above + 1];
        return switch (mode) {
            case 1 -> left;
            case 2 -> top;
            case 3 -> topRight;
            case 4 -> topLeft;
            case 5 -> mean(mean(left, topRight), top);
            case 6 -> mean(left, topLeft);
            case 7 -> mean(left, top);
            case 8 -> mean(topLeft, top);
            case 9 -> mean(top, topRight);
            case 10 -> mean(mean(left, topLeft), mean(top, topRight));
            case 11 -> nearer(left, top, topLeft);
            case 12 -> each(left, top, topLeft, (l, t, c) -> l + t - c);
            case 13 -> each(mean(left, top), topLeft, 0, (m, c, none) -> m + (m - c) / 2);
            default -> BLACK;
        };
    }

    private static int sum(int a, int b) {
        return (((a & ALPHA_GREEN) + (b & ALPHA_GREEN)) & ALPHA_GREEN) | (((a & RED_BLUE) + (b & RED_BLUE)) & RED_BLUE);
    }

    private static int mean(int a, int b) {
        return (((a ^ b) >>> 1) & 0x7F7F_7F7F) + (a & b);
    }

    /** Whichever of left and top is nearer to left + top - topLeft; top if neither. */
    private static int nearer(int left, int top, int topLeft) {
        int ofLeft = 0;
        int ofTop = 0;
        for (int shift = 0; shift < 32; shift += 8) {
            ofLeft += Math.abs(((top >> shift) & 255) - ((topLeft >> shift) & 255));
            ofTop += Math.abs(((left >> shift) & 255) - ((topLeft >> shift) & 255));
        }
        return ofLeft < ofTop ? left : top;
    }

    private interface Channel {
        int of(int a, int b, int c);
    }

    private static int each(int a, int b, int c, Channel channel) {
        int all = 0;
        for (int shift = 0; shift < 32; shift += 8) {
            int value = channel.of((a >> shift) & 255, (b >> shift) & 255, (c >> shift) & 255);
            all |= Math.max(0, Math.min(255, value)) << shift;
        }
        return all;
    }

    /** 4.2: the shares of green and red that were taken out of red and blue. */
    static void addShares(int[] pixels, int width, int[] shares, int blockBits) {
        int blocksAcross = LosslessPixels.blocks(width, blockBits);
        for (int at = 0; at < pixels.length; at++) {
            int share = shares[((at / width) >> blockBits) * blocksAcross + ((at % width) >> blockBits)];
            int pixel = pixels[at];
            byte green = (byte) (pixel >> 8);
            int red = (pixel >> 16) + part((byte) share, green);
            int blue = pixel + part((byte) (share >> 8), green) + part((byte) (share >> 16), (byte) red);
            pixels[at] = (pixel & ALPHA_GREEN) | (red & 255) << 16 | (blue & 255);
        }
    }

    private static int part(byte share, byte of) {
        return (share * of) >> 5;
    }

    /** 4.3: green, which was taken out of red and blue. */
    static void addGreen(int[] pixels) {
        for (int at = 0; at < pixels.length; at++) {
            int green = (pixels[at] >> 8) & 255;
            pixels[at] = sum(pixels[at], green << 16 | green);
        }
    }

    /** 4.4: a palette each of whose entries was told as its distance from the one before. */
    static void addUp(int[] palette) {
        for (int i = 1; i < palette.length; i++) {
            palette[i] = sum(palette[i], palette[i - 1]);
        }
    }

    /** 4.4: how many halvings pack the numbers of a palette's entries into one pixel's green. */
    static int halvings(int entries) {
        return entries <= 2 ? 3 : entries <= 4 ? 2 : entries <= 16 ? 1 : 0;
    }

    /** 4.4: {@code height} rows of {@code width} colours out of their numbers; one past the palette is clear black. */
    static int[] coloured(int[] packed, int width, int height, int[] palette, int halvings) {
        int packedWidth = LosslessPixels.blocks(width, halvings);
        int bits = 8 >> halvings;
        int mask = (1 << halvings) - 1;
        int[] colours = Arrays.copyOf(palette, 256);
        int[] pixels = new int[width * height];
        for (int y = 0, at = 0; y < height; y++) {
            for (int x = 0; x < width; x++, at++) {
                int green = (packed[y * packedWidth + (x >> halvings)] >> 8) & 255;
                pixels[at] = colours[(green >> ((x & mask) * bits)) & ((1 << bits) - 1)];
            }
        }
        return pixels;
    }
}
