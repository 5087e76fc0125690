package greyground.art.kind;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Colour that a file states in numbers, gamma and chromaticities, written as an ICC profile (ICC.1:2010: matrix and curves, version 2), so that one
 * way leads from samples to luminance.
 */
final class StatedColour {
    /** White, red, green and blue as x and y: ITU-R BT.709-6, which sRGB shares. */
    static final double[] SRGB = {0.3127, 0.3290, 0.64, 0.33, 0.30, 0.60, 0.15, 0.06};

    /** ICC.1:2010, 7.2.16: the connection space's white. */
    private static final double[] D50 = {0.9642, 1, 0.8249};
    /** The linear Bradford transform: ICC.1:2010, annex E. */
    private static final double[][] BRADFORD = {
        {0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}
    };

    private StatedColour() {}

    /**
     * A profile.
     *
     * @param rgb whether of RGB, else of grey
     * @param gamma samples to this power are light; 0 for the curve of sRGB
     * @param chromaticities x and y of white, red, green and blue
     * @return null if three such lights can't make that white
     */
    static byte @Nullable [] profile(boolean rgb, double gamma, double[] chromaticities, String name) {
        Map<String, byte[]> tags = new LinkedHashMap<>();
        tags.put("desc", description(name));
        tags.put("wtpt", xyz(D50));
        byte[] curve = curve(gamma);
        if (rgb) {
            double[][] colorants = colorants(chromaticities);
            if (colorants.length == 0) {
                return null;
            }
            for (int c = 0; c < 3; c++) {
                String colour = "rgb".substring(c, c + 1);
                tags.put(colour + "XYZ", xyz(colorants[c]));
                tags.put(colour + "TRC", curve);
            }
        } else {
            tags.put("kTRC", curve);
        }
        return bytes(rgb ? "RGB " : "GRAY", tags);
    }

    private static byte[] bytes(String space, Map<String, byte[]> tags) {
        int length = 132 + 12 * tags.size();
        for (byte[] tag : tags.values()) {
            length += (tag.length + 3) / 4 * 4;
        }
        ByteBuffer profile = ByteBuffer.allocate(length);
        profile.putInt(0, length).putInt(8, 0x0210_0000);
        profile.position(12).put(ascii("mntr" + space + "XYZ "));
        profile.position(36).put(ascii("acsp"));
        profile.position(68).put(xyz(D50), 8, 12);
        profile.putInt(128, tags.size());
        int entry = 132;
        int at = 132 + 12 * tags.size();
        for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
            profile.position(entry).put(ascii(tag.getKey())).putInt(at).putInt(tag.getValue().length);
            profile.position(at).put(tag.getValue());
            entry += 12;
            at += (tag.getValue().length + 3) / 4 * 4;
        }
        return profile.array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] description(String name) {
        byte[] body = new byte[4 + name.length() + 1 + 78];
        ByteBuffer.wrap(body).putInt(name.length() + 1).put(ascii(name));
        return tag("desc", 8, body);
    }

    private static byte[] tag(String type, int from, byte[] body) {
        byte[] tag = new byte[Math.max(from + body.length, 16)];
        ByteBuffer.wrap(tag).put(ascii(type)).position(from).put(body);
        return tag;
    }

    private static byte[] fixed(double... values) {
        byte[] numbers = new byte[4 * values.length];
        ByteBuffer buffer = ByteBuffer.wrap(numbers);
        for (double each : values) {
            buffer.putInt((int) Math.round(each * 65_536));
        }
        return numbers;
    }

    private static byte[] xyz(double[] value) {
        return tag("XYZ ", 8, fixed(value));
    }

    /** A parametric curve: x to a power, or of shape 3 that of IEC 61966-2-1. */
    private static byte[] curve(double gamma) {
        byte[] curve =
                tag("para", 12, gamma == 0 ? fixed(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045) : fixed(gamma));
        curve[9] = (byte) (gamma == 0 ? 3 : 0);
        return curve;
    }

    /** The three lights' XYZ under D50, each a row; none if they lie on a line. */
    private static double[][] colorants(double[] xy) {
        double[] white = light(xy[0], xy[1]);
        double[][] lights = {light(xy[2], xy[3]), light(xy[4], xy[5]), light(xy[6], xy[7])};
        double all = determinant(lights[0], lights[1], lights[2]);
        double[] share = {
            determinant(white, lights[1], lights[2]) / all,
            determinant(lights[0], white, lights[2]) / all,
            determinant(lights[0], lights[1], white) / all
        };
        double[] from = cones(white);
        double[] to = cones(D50);
        double[][] adapted = new double[3][];
        for (int c = 0; c < 3; c++) {
            if (!(share[c] > 0 && share[c] < 10)) {
                return new double[0][];
            }
            double[] cone = cones(lights[c]);
            for (int i = 0; i < 3; i++) {
                cone[i] *= share[c] * to[i] / from[i];
            }
            adapted[c] = fromCones(cone);
        }
        return adapted;
    }

    private static double[] light(double x, double y) {
        return new double[] {x / y, 1, (1 - x - y) / y};
    }

    private static double[] cones(double[] xyz) {
        double[] cones = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                cones[i] += BRADFORD[i][j] * xyz[j];
            }
        }
        return cones;
    }

    /** Cramer's rule on the transform's columns. */
    private static double[] fromCones(double[] cones) {
        double[][] columns = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                columns[j][i] = BRADFORD[i][j];
            }
        }
        double all = determinant(columns[0], columns[1], columns[2]);
        return new double[] {
            determinant(cones, columns[1], columns[2]) / all,
            determinant(columns[0], cones, columns[2]) / all,
            determinant(columns[0], columns[1], cones) / all
        };
    }

    private static double determinant(double[] a, double[] b, double[] c) {
        return a[0] * (b[1] * c[2] - b[2] * c[1])
                - b[0] * (a[1] * c[2] - a[2] * c[1])
                + c[0] * (a[1] * b[2] - a[2] * b[1]);
    }
}
