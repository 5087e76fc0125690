package greyground.art.kind;

import greyground.art.library.MovingPictures;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Exif;
import greyground.art.page.Interpretation;
import greyground.art.page.KeyedRows;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.tone.Primaries;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.zip.InflaterOutputStream;
import org.jspecify.annotations.Nullable;

/** Understands PNG (ISO/IEC 15948): 1 to 16 bits, palette, grey, RGB, alpha, interlaced or not. */
public final class PngFormat implements ArtFormat {
    private static final int CHUNKS_AT_MOST = 10_000;
    /** How near 1/2.2 a stated gamma is how writers spell sRGB, whose curve no power has (common practice; the bound is assumed). */
    private static final double USUAL_GAMMA = 0.005;
    /** A gamma beyond this, or its inverse, says nothing (assumed). */
    private static final double MOST_UNEVEN = 0.1;

    private static final int PROFILE_AT_MOST = 16 << 20;

    @Override
    public String kind() {
        return "PNG";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        Octets head = new Octets(file.read(8, 25), true);
        if (!head.text(4, 4).equals("IHDR")) {
            throw new Unreadable("its first chunk is not a header");
        }
        int width = head.s32(8);
        int height = head.s32(12);
        if (width < 1 || height < 1 || width > SIDE_AT_MOST || height > SIDE_AT_MOST) {
            throw new Unreadable("it claims " + (width & 0xFFFF_FFFFL) + " x " + (height & 0xFFFF_FFFFL)
                    + " pixels; sides of 1 to " + SIDE_AT_MOST + " can be read");
        }
        int bits = head.u8(16);
        int colour = head.u8(17);
        int channels = channels(bits, colour);
        if (head.u8(18) != 0 || head.u8(19) != 0 || head.u8(20) > 1) {
            throw new Unreadable("its packing is of an unknown kind");
        }
        boolean interlaced = head.u8(20) == 1;
        Samples samples = new Samples(width, height, channels, bits == 16 ? 2 : 1, true);
        Chunks chunks = new Chunks();
        chunks.read(file, colour);
        Samples given = chunks.keyed(colour) ? withAlpha(samples) : samples;
        return new Page(
                given,
                chunks.meaning(colour).coded(chunks.coding),
                chunks.profile,
                chunks.exif == null ? 1 : chunks.exif.orientation(),
                chunks.density,
                bits,
                given.bandRows(),
                false,
                interlaced ? samples.bytes() : 0,
                Page.PACKED,
                () -> {
                    SampleRows rows = new PngRows(file, chunks.dataAt, samples, bits, colour == 3, interlaced);
                    return chunks.keyed(colour) ? new KeyedRows(rows, samples, chunks.key(bits)) : rows;
                },
                chunks.frames > 1 ? List.of(MovingPictures.remark(chunks.frames)) : List.of());
    }

    private static Samples withAlpha(Samples samples) {
        return new Samples(
                samples.width(),
                samples.height(),
                samples.channels() + 1,
                samples.bytesPerSample(),
                samples.bigEndian());
    }

    private static int channels(int bits, int colour) throws IOException {
        boolean known = bits == 8
                || (bits == 16 && colour != 3)
                || ((bits == 1 || bits == 2 || bits == 4) && (colour == 0 || colour == 3));
        int channels = switch (colour) {
            case 0, 3 -> 1;
            case 2 -> 3;
            case 4 -> 2;
            case 6 -> 4;
            default -> 0;
        };
        if (!known || channels == 0) {
            throw new Unreadable("it claims " + bits + " bits of colour kind " + colour + ", which PNG does not have");
        }
        return channels;
    }

    /** What stands before the first data chunk. */
    private static final class Chunks {
        private byte @Nullable [] profile;
        private double gamma;
        private Interpretation.Coding coding = Interpretation.Coding.SRGB;
        private double @Nullable [] chromaticities;
        private boolean srgb;
        private @Nullable Octets codes;
        private int frames;
        private PixelDensity density = PixelDensity.NONE;
        private @Nullable Exif exif;
        private byte[] palette = new byte[0];
        private byte[] transparency = new byte[0];
        private long dataAt;

        void read(ArtBytes file, int colour) throws IOException {
            long at = 8;
            for (int i = 0; i < CHUNKS_AT_MOST && dataAt == 0; i++) {
                Octets head = new Octets(file.read(at, 8), true);
                long length = head.u32(0);
                String name = head.text(4, 4);
                if (at + 12 + length > file.size() && !name.equals("IDAT")) {
                    throw new Unreadable(
                            "its " + name.replaceAll("[^ -~]", "?") + " chunk runs past the end of the file");
                }
                switch (name) {
                    case "IDAT" -> dataAt = at;
                    case "IEND" -> throw new Unreadable("it holds no picture data");
                    case "acTL" -> frames = (int) new Octets(file.read(at + 8, 8), true).u32(0);
                    case "PLTE" -> palette = file.read(at + 8, Math.min(length, 768));
                    case "tRNS" -> transparency = file.read(at + 8, Math.min(length, 256));
                    case "iCCP" -> profile = profile == null ? profile(file.read(at + 8, length)) : profile;
                    case "gAMA" -> gamma = new Octets(file.read(at + 8, 4), true).u32(0) / 100_000.0;
                    case "cHRM" -> chromaticities = chromaticities(new Octets(file.read(at + 8, 32), true));
                    case "sRGB" -> srgb = true;
                    case "cICP" -> codes = new Octets(file.read(at + 8, 4), true);
                    case "eXIf" -> exif = exif == null ? Exif.read(file, at + 8) : exif;
                    case "pHYs" -> density = density(new Octets(file.read(at + 8, length), true));
                    default -> {
                        // Nothing in it bears on luminance.
                    }
                }
                at += 12 + length;
            }
            if (dataAt == 0) {
                throw new Unreadable("it holds no picture data");
            }
            if (colour == 3 && palette.length < 3) {
                throw new Unreadable("it has no palette");
            }
            if (density.across() == 0 && exif != null) {
                density = exif.density();
            }
            state(colour);
        }

        /** Which statement of colour stands: PNG specification, 3rd edition, 4.3: codes, profile, sRGB, then gamma and chromaticities. */
        private void state(int colour) throws IOException {
            if (codes != null) {
                boolean known = codes.u8(0) == 1 && codes.u8(1) == 13 && codes.u8(3) == 1;
                if (!known) {
                    throw new Unreadable("it states its colours by the codes " + codes.u8(0) + ", " + codes.u8(1)
                            + "; 1, 13 (sRGB) can be read: save it with a colour profile");
                }
                profile = null;
            } else if (profile == null && !srgb) {
                coding = coding(colour);
            }
        }

        private Interpretation.Coding coding(int colour) {
            boolean told = gamma > MOST_UNEVEN && gamma < 1 / MOST_UNEVEN && Math.abs(gamma - 1 / 2.2) >= USUAL_GAMMA;
            double exponent = told ? 1 / gamma : 0;
            double[] xy = chromaticities;
            if (xy == null || colour == 0 || colour == 4) {
                return new Interpretation.Coding(exponent, Primaries.SRGB);
            }
            try {
                Primaries lights = new Primaries(xy[2], xy[3], xy[4], xy[5], xy[6], xy[7], xy[0], xy[1]);
                double least = DoubleStream.of(lights.luminances()).min().orElseThrow();
                return least > 0 ? new Interpretation.Coding(exponent, lights) : Interpretation.Coding.SRGB;
            } catch (IllegalArgumentException noWhite) {
                return Interpretation.Coding.SRGB;
            }
        }

        private static double[] chromaticities(Octets octets) throws IOException {
            double[] all = new double[8];
            for (int i = 0; i < all.length; i++) {
                all[i] = octets.u32(4 * i) / 100_000.0;
            }
            return all;
        }

        private static PixelDensity density(Octets octets) throws IOException {
            boolean metres = octets.u8(8) == 1;
            return metres
                    ? PixelDensity.perCentimetre(octets.u32(0) / 100.0, octets.u32(4) / 100.0)
                    : PixelDensity.NONE;
        }

        private static byte[] profile(byte[] chunk) {
            int name = 0;
            while (name < chunk.length && chunk[name] != 0) {
                name++;
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (InflaterOutputStream inflate = new InflaterOutputStream(bytes)) {
                // Fed in pieces, so that a profile which swells without end is dropped early.
                for (int at = name + 2; at < chunk.length && bytes.size() < PROFILE_AT_MOST; at += 1024) {
                    inflate.write(chunk, at, Math.min(1024, chunk.length - at));
                }
            } catch (IOException damaged) {
                return new byte[1];
            }
            return bytes.toByteArray();
        }

        boolean keyed(int colour) {
            return (colour == 0 && transparency.length >= 2) || (colour == 2 && transparency.length >= 6);
        }

        /** The one colour that is transparent, as samples of the delivered size. */
        byte[] key(int bits) {
            byte[] key = new byte[transparency.length >= 6 ? bits == 16 ? 6 : 3 : bits == 16 ? 2 : 1];
            for (int i = 0; i < key.length; i++) {
                if (bits == 16) {
                    key[i] = transparency[i];
                } else {
                    int value = transparency[2 * i + 1] & 0xFF;
                    key[i] = (byte) (bits < 8 ? value * (255 / ((1 << bits) - 1)) : value);
                }
            }
            return key;
        }

        Interpretation meaning(int colour) {
            return switch (colour) {
                case 0 ->
                    keyed(colour)
                            ? Interpretation.withAlpha(Interpretation.Model.GREY)
                            : Interpretation.plain(Interpretation.Model.GREY);
                case 2 ->
                    keyed(colour)
                            ? Interpretation.withAlpha(Interpretation.Model.RGB)
                            : Interpretation.plain(Interpretation.Model.RGB);
                case 4 -> Interpretation.withAlpha(Interpretation.Model.GREY);
                case 6 -> Interpretation.withAlpha(Interpretation.Model.RGB);
                default -> Interpretation.palette(entries());
            };
        }

        private float[][] entries() {
            float[][] entries = new float[palette.length / 3][];
            for (int i = 0; i < entries.length; i++) {
                float alpha = i < transparency.length ? (transparency[i] & 0xFF) / 255f : 1;
                entries[i] = new float[] {
                    (palette[3 * i] & 0xFF) / 255f,
                    (palette[3 * i + 1] & 0xFF) / 255f,
                    (palette[3 * i + 2] & 0xFF) / 255f,
                    alpha
                };
            }
            return entries;
        }
    }
}
