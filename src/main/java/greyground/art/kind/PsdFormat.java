package greyground.art.kind;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Exif;
import greyground.art.page.Interpretation;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.tone.Primaries;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Understands the flattened picture of layered PSD and PSB files (layout from memory of its public description): 1, 8, 16 and
 * 32 bits; two-level, grey, palette, RGB, CMYK, duotone as grey, L*a*b*. Channels lie one after another, stored or run-packed.
 */
public final class PsdFormat implements ArtFormat {
    private static final int CHANNELS_AT_MOST = 56;
    /** Assumed: writers leave some fifty. */
    private static final int RESOURCES_AT_MOST = 10_000;

    private static final int NAMES_AT_MOST = 256 * CHANNELS_AT_MOST;
    private static final List<String> PROCESS_INKS = List.of("cyan", "magenta", "yellow", "black");

    private static final Interpretation.Coding LINEAR = new Interpretation.Coding(1, Primaries.SRGB);
    private static final String LINEAR_REMARK =
            "its 32-bit samples carry no colour profile: they are taken as linear light, 1 white, of the colours of sRGB;"
                    + " if the picture comes out too pale, save it with a profile";

    @Override
    public String kind() {
        return "PSD";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        Octets head = new Octets(file.read(0, 26), true);
        boolean large = head.u16(4) == 2;
        int channels = head.u16(12);
        int height = head.s32(14);
        int width = head.s32(18);
        int bits = head.u16(22);
        int mode = head.u16(24);
        if (width < 1 || height < 1 || width > SIDE_AT_MOST || height > SIDE_AT_MOST) {
            throw new Unreadable("it claims " + (width & 0xFFFF_FFFFL) + " x " + (height & 0xFFFF_FFFFL)
                    + " pixels; sides of 1 to " + SIDE_AT_MOST + " can be read");
        }
        if (channels < 1 || channels > CHANNELS_AT_MOST || (bits != 1 && bits != 8 && bits != 16 && bits != 32)) {
            throw new Unreadable("it has " + channels + " channels of " + bits
                    + " bits; 1, 8, 16 and 32 bits can be read: save it with 8 or 16 bits");
        }
        long coloursAt = 26;
        long colours = new Octets(file.read(coloursAt, 4), true).u32(0);
        long resourcesAt = coloursAt + 4 + colours;
        long resources = new Octets(file.read(resourcesAt, 4), true).u32(0);
        long layersAt = resourcesAt + 4 + resources;
        int lengthBytes = large ? 8 : 4;
        Octets layers = new Octets(file.read(layersAt, lengthBytes), true);
        long layerBytes = large ? layers.s64(0) : layers.u32(0);
        long dataAt = layersAt + lengthBytes + layerBytes;
        if (layerBytes < 0 || dataAt < 0 || dataAt + 2 > file.size()) {
            throw new Unreadable("it ends before its flattened picture: the file is cut short");
        }
        Resources found = Resources.read(file, resourcesAt + 4, resources);
        Interpretation.Model model = model(mode, channels, found.inks);
        boolean light = model == Interpretation.Model.GREY || model == Interpretation.Model.RGB;
        if (bits == 32 && !light && (found.profile == null || model != Interpretation.Model.CMYK)) {
            throw new Unreadable(
                    "it has 32-bit samples that are neither grey nor RGB, which do not say how bright their"
                            + " white is: save it with 16 bits, or as TIFF or PNG");
        }
        // By the format's convention, from memory: fractions without a profile are light itself.
        boolean linear = bits == 32 && found.profile == null;
        boolean alpha =
                channels > model.channels() && transparent(file, layersAt + lengthBytes, layerBytes, lengthBytes);
        int used = model.channels() + (alpha ? 1 : 0);
        Interpretation meaning = new Interpretation(
                model,
                mode == 0 || model == Interpretation.Model.CMYK,
                alpha ? Interpretation.Alpha.OVER_WHITE : Interpretation.Alpha.STRAIGHT,
                alpha ? model.channels() : -1,
                model == Interpretation.Model.PALETTE ? palette(file, coloursAt + 4, colours, found.clear) : null,
                linear ? LINEAR : Interpretation.Coding.SRGB);
        Samples samples = new Samples(width, height, used, bits > 8 ? 2 : 1, true);
        PsdChannels stored = PsdChannels.locate(file, dataAt, samples, channels, bits, large);
        return new Page(
                samples,
                meaning,
                found.profile,
                found.exif == null ? 1 : found.exif.orientation(),
                found.density,
                bits,
                samples.bandRows(),
                true,
                0,
                Page.PACKED,
                () -> model == Interpretation.Model.LAB ? signed(stored.reader(), samples) : stored.reader(),
                linear ? List.of(LINEAR_REMARK) : List.of());
    }

    /** Here a* and b* count from their lowest value; signed, as everywhere else, their highest bit is the other way round. */
    private static SampleRows signed(SampleRows stored, Samples samples) {
        int size = samples.bytesPerSample();
        int step = size * samples.channels();
        return (firstRow, rowCount, into) -> {
            stored.read(firstRow, rowCount, into);
            int end = rowCount * samples.width() * step;
            for (int pixel = 0; pixel < end; pixel += step) {
                into[pixel + size] ^= (byte) 0x80;
                into[pixel + 2 * size] ^= (byte) 0x80;
            }
        };
    }

    private static Interpretation.Model model(int mode, int channels, List<String> inks) throws IOException {
        Interpretation.Model model = switch (mode == 7 ? one(channels, inks) : mode) {
            case 0, 1, 8 -> Interpretation.Model.GREY;
            case 2 -> Interpretation.Model.PALETTE;
            case 3 -> Interpretation.Model.RGB;
            case 4 -> Interpretation.Model.CMYK;
            case 9 -> Interpretation.Model.LAB;
            case 7 ->
                throw new Unreadable("it is multichannel, with inks other than cyan, magenta, yellow and black:"
                        + " save it as grey, RGB or CMYK, or as TIFF or PNG");
            default -> throw new Unreadable("its colour mode " + mode + " can't be read: save it as grey, RGB or CMYK");
        };
        if (channels < model.channels()) {
            throw new Unreadable("it claims " + model + " but has " + channels + " channels");
        }
        return model;
    }

    /** Many inks that are one ink, or those of CMYK by their names, are what they are; the mode of others stays 7. */
    private static int one(int channels, List<String> inks) {
        boolean process = channels == 4 && inks.equals(PROCESS_INKS);
        return channels == 1 ? 1 : process ? 4 : 7;
    }

    /** A negative count of layers says that the first extra channel is the flattened picture's transparency. */
    private static boolean transparent(ArtBytes file, long at, long bytes, int lengthBytes) throws IOException {
        if (bytes < lengthBytes + 2) {
            return false;
        }
        return (short) new Octets(file.read(at + lengthBytes, 2), true).u16(0) < 0;
    }

    private static float[][] palette(ArtBytes file, long at, long bytes, int clear) throws IOException {
        if (bytes < 768) {
            throw new Unreadable("it has no palette");
        }
        byte[] map = file.read(at, 768);
        float[][] palette = new float[256][];
        for (int i = 0; i < palette.length; i++) {
            palette[i] = new float[] {octet(map[i]), octet(map[256 + i]), octet(map[512 + i]), i == clear ? 0 : 1};
        }
        return palette;
    }

    private static float octet(byte octet) {
        return (octet & 0xFF) / 255f;
    }

    /** Image resources that bear on luminance and size. */
    private static final class Resources {
        private byte @Nullable [] profile;
        private PixelDensity density = PixelDensity.NONE;
        private @Nullable Exif exif;
        /** Which entry of the palette is clear, or -1. */
        private int clear = -1;

        private List<String> inks = List.of();

        static Resources read(ArtBytes file, long from, long count) throws IOException {
            Resources found = new Resources();
            long at = from;
            long end = Math.min(from + count, file.size());
            for (int i = 0; i < RESOURCES_AT_MOST && at + 12 <= end; i++) {
                Octets head = new Octets(file.read(at, 7), true);
                if (!head.text(0, 4).equals("8BIM")) {
                    break;
                }
                int id = head.u16(4);
                long dataAt = at + 6 + (head.u8(6) + 2) / 2 * 2L;
                long length = new Octets(file.read(dataAt, 4), true).u32(0);
                dataAt += 4;
                if (id == 0x03ED && length >= 12) {
                    Octets size = new Octets(file.read(dataAt, 12), true);
                    found.density = PixelDensity.perInch(size.u32(0) / 65_536.0, size.u32(8) / 65_536.0);
                } else if (id == 0x040F && found.profile == null) {
                    found.profile = file.read(dataAt, length);
                } else if (id == 0x03EE) {
                    found.inks = names(file.read(dataAt, Math.min(length, NAMES_AT_MOST)));
                } else if (id == 0x0417 && length >= 2) {
                    found.clear = (short) new Octets(file.read(dataAt, 2), true).u16(0);
                } else if (id == 0x0422 && found.exif == null) {
                    found.exif = Exif.read(file, dataAt);
                }
                at = dataAt + (length + 1) / 2 * 2;
            }
            return found;
        }

        /** Names of the channels, each after a byte of its length. */
        private static List<String> names(byte[] bytes) throws IOException {
            Octets all = new Octets(bytes, true);
            List<String> names = new ArrayList<>();
            for (int at = 0; at < bytes.length && at + all.u8(at) < bytes.length; at += 1 + all.u8(at)) {
                names.add(all.text(at + 1, all.u8(at)).toLowerCase(Locale.ROOT));
            }
            return List.copyOf(names);
        }
    }
}
