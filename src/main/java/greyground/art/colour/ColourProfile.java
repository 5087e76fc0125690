package greyground.art.colour;

import greyground.art.page.Interpretation;
import greyground.art.page.Octets;
import greyground.art.page.Unreadable;
import greyground.tone.Lightness;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * An embedded ICC profile, read as far as luminance needs it (ICC.1:2010 clauses 7 to 10, layout from memory, checked
 * against Little CMS).
 *
 * <p>A profile of curves and colorants gives luminance directly: {@code Y = sum of Yi * fi(sample)}. A profile of
 * look-up tables is left to {@link ProfileGrid}.
 */
final class ColourProfile {
    private static final int HEADER = 128;
    private static final int TAGS_AT_MOST = 200;
    /** How far rounded colorants may sum from 1 (assumed; 0.001 is usual). */
    private static final double ROUNDING = 0.01;

    private final Octets octets;
    private final Map<String, int[]> tags = new HashMap<>();

    private ColourProfile(byte[] bytes) {
        this.octets = new Octets(bytes, true);
    }

    /**
     * Reads a profile's header and tag table.
     *
     * @throws IOException if it isn't a profile, or ends early
     */
    static ColourProfile read(byte[] bytes) throws IOException {
        ColourProfile profile = new ColourProfile(bytes);
        if (bytes.length < HEADER + 4 || !profile.octets.text(36, 4).equals("acsp")) {
            throw new Unreadable("it does not carry the mark of an ICC profile");
        }
        int count = profile.octets.s32(HEADER);
        if (count < 1 || count > TAGS_AT_MOST) {
            throw new Unreadable("it claims " + (count & 0xFFFF_FFFFL) + " tags");
        }
        for (int i = 0; i < count; i++) {
            int at = HEADER + 4 + 12 * i;
            long start = profile.octets.u32(at + 4);
            long length = profile.octets.u32(at + 8);
            if (length < 8 || start + length > bytes.length) {
                throw new Unreadable("a tag lies past its end");
            }
            profile.tags.put(profile.octets.text(at, 4), new int[] {(int) start, (int) length});
        }
        return profile;
    }

    byte[] bytes() {
        return octets.bytes();
    }

    /** The profile's own name, or its colour space where it has none. */
    String description() {
        try {
            int[] tag = tags.get("desc");
            if (tag != null) {
                String name = octets.text(tag[0], 4).equals("mluc") ? unicodeName(tag) : asciiName(tag);
                String clean = name.replaceAll("[\\p{Cntrl}]", " ").strip();
                if (!clean.isEmpty()) {
                    return clean.length() > 80 ? clean.substring(0, 80) : clean;
                }
            }
            return "unnamed " + space().strip() + " profile";
        } catch (IOException unreadable) {
            return "unnamed profile";
        }
    }

    private String asciiName(int[] tag) throws IOException {
        int length = (int) Math.min(octets.u32(tag[0] + 8), tag[1] - 12);
        return octets.text(tag[0] + 12, Math.max(0, length));
    }

    private String unicodeName(int[] tag) throws IOException {
        int length = octets.s32(tag[0] + 20);
        int start = octets.s32(tag[0] + 24);
        if (length < 0 || start < 0 || start > tag[1] - length) {
            return "";
        }
        return new String(octets.bytes(), tag[0] + start, length, StandardCharsets.UTF_16BE);
    }

    /** The device colour space's four letters, such as {@code "RGB "}. */
    String space() throws IOException {
        return octets.text(16, 4);
    }

    private boolean connectsByLab() throws IOException {
        return octets.text(20, 4).equals("Lab ");
    }

    /** The model this profile describes, or null where it describes none that art comes in. */
    Interpretation.@Nullable Model model() throws IOException {
        String deviceClass = octets.text(12, 4);
        if (deviceClass.equals("link") || deviceClass.equals("abst") || deviceClass.equals("nmcl")) {
            return null;
        }
        return switch (space()) {
            case "GRAY" -> Interpretation.Model.GREY;
            case "RGB " -> Interpretation.Model.RGB;
            case "CMYK" -> Interpretation.Model.CMYK;
            default -> null;
        };
    }

    /** Whether colour goes through look-up tables, which then outrank curves. */
    boolean usesTables() {
        return tags.containsKey("A2B0");
    }

    /** Linear luminance of a grey profile: 0..1 coded to 0..1. */
    DoubleUnaryOperator greyResponse() throws IOException {
        DoubleUnaryOperator curve = curve("kTRC");
        return connectsByLab() ? x -> Lightness.toLuminance(100 * curve.applyAsDouble(x)) : curve;
    }

    /** The curve of each RGB channel. */
    DoubleUnaryOperator[] responses() throws IOException {
        DoubleUnaryOperator[] responses = new DoubleUnaryOperator[3];
        String[] names = {"rTRC", "gTRC", "bTRC"};
        for (int c = 0; c < 3; c++) {
            // Equal curves are one object, which whoever builds tables can tell.
            boolean asRed = c > 0 && sameBytes(tag(names[0]), tag(names[c]));
            responses[c] = asRed ? responses[0] : curve(names[c]);
        }
        return responses;
    }

    private boolean sameBytes(int[] a, int[] b) {
        byte[] bytes = octets.bytes();
        return Arrays.equals(bytes, a[0], a[0] + a[1], bytes, b[0], b[0] + b[1]);
    }

    /**
     * What each channel's linear light adds to luminance, in the D50 connection space. Rounding of the colorants is taken out,
     * so that white is white; a white that is meant to lie elsewhere stays there.
     */
    double[] weights() throws IOException {
        double[] weights = {colorantLuminance("rXYZ"), colorantLuminance("gXYZ"), colorantLuminance("bXYZ")};
        double sum = weights[0] + weights[1] + weights[2];
        if (!(sum > 0.05 && sum < 20)) {
            throw new Unreadable("its white has a luminance of " + sum);
        }
        for (int i = 0; Math.abs(sum - 1) < ROUNDING && i < weights.length; i++) {
            weights[i] /= sum;
        }
        return weights;
    }

    /** XYZ under D50 of each channel's linear light, one column a channel. */
    double[][] toXyz() throws IOException {
        double[][] xyz = new double[3][3];
        String[] names = {"rXYZ", "gXYZ", "bXYZ"};
        for (int light = 0; light < 3; light++) {
            int[] tag = tag(names[light]);
            for (int row = 0; row < 3; row++) {
                xyz[row][light] = fixed(tag[0] + 8 + 4 * row);
            }
        }
        return xyz;
    }

    private double colorantLuminance(String name) throws IOException {
        int[] tag = tag(name);
        return fixed(tag[0] + 12);
    }

    private DoubleUnaryOperator curve(String name) throws IOException {
        int[] tag = tag(name);
        return switch (octets.text(tag[0], 4)) {
            case "curv" -> sampledCurve(tag);
            case "para" -> parametricCurve(tag);
            default -> throw new Unreadable("its " + name + " curve is of an unknown type");
        };
    }

    private DoubleUnaryOperator sampledCurve(int[] tag) throws IOException {
        long count = octets.u32(tag[0] + 8);
        if (count == 0) {
            return x -> x;
        }
        if (count > (tag[1] - 12) / 2) {
            throw new Unreadable("a curve lies past its end");
        }
        if (count == 1) {
            double gamma = octets.u16(tag[0] + 12) / 256.0;
            return x -> StrictMath.pow(x, gamma);
        }
        double[] nodes = new double[(int) count];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = octets.u16(tag[0] + 12 + 2 * i) / 65_535.0;
        }
        return x -> {
            double place = x * (nodes.length - 1);
            int below = (int) Math.min(place, nodes.length - 2.0);
            return nodes[below] + (place - below) * (nodes[below + 1] - nodes[below]);
        };
    }

    /** ICC.1:2010 table 65: five shapes of one power curve, rewritten as {@code (ax + b)^g + e} above d, {@code cx + f} below. */
    private DoubleUnaryOperator parametricCurve(int[] tag) throws IOException {
        int shape = octets.u16(tag[0] + 8);
        int[] parameters = {1, 3, 4, 5, 7};
        if (shape >= parameters.length) {
            throw new Unreadable("a curve has the unknown shape " + shape);
        }
        double[] p = new double[7];
        p[1] = 1;
        for (int i = 0; i < parameters[shape]; i++) {
            p[i] = fixed(tag[0] + 12 + 4 * i);
        }
        double g = p[0];
        double a = p[1];
        double b = p[2];
        boolean breaksAtZero = shape == 1 || shape == 2;
        double c = breaksAtZero ? 0 : p[3];
        double d = breaksAtZero ? (a == 0 ? 0 : -b / a) : p[4];
        double e = shape == 2 ? p[3] : p[5];
        double f = shape == 2 ? p[3] : p[6];
        boolean plain = shape == 0;
        return x -> plain || x >= d ? StrictMath.pow(Math.max(0, a * x + b), g) + e : c * x + f;
    }

    private double fixed(int at) throws IOException {
        return octets.s32(at) / 65_536.0;
    }

    private int[] tag(String name) throws IOException {
        int[] tag = tags.get(name);
        if (tag == null) {
            throw new Unreadable("it has no " + name + " tag");
        }
        return tag;
    }
}
