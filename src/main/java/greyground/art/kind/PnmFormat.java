package greyground.art.kind;

import greyground.art.packing.Unpacker;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Ink;
import greyground.art.page.PackedBits;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.SampleReading;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import java.io.EOFException;
import java.io.IOException;
import java.util.List;

/** Understands the portable anymap kinds P1 to P6: black and white, grey and RGB, as text or as bytes. */
public final class PnmFormat implements ArtFormat {
    @Override
    public String kind() {
        return "PNM";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        Words words = new Words(file, 0);
        int type = words.octet() == 'P' ? words.octet() - '0' : 0;
        int width = words.number(SIDE_AT_MOST, "width");
        int height = words.number(SIDE_AT_MOST, "height");
        boolean twoLevel = type == 1 || type == 4;
        int most = twoLevel ? 1 : words.number(65_535, "largest value");
        if (width < 1 || height < 1 || most < 1) {
            throw new IOException("it claims " + width + " x " + height + " pixels of 0 to " + most);
        }
        int channels = type == 3 || type == 6 ? 3 : 1;
        Samples samples = new Samples(width, height, channels, most > 255 ? 2 : 1, true);
        Ink ink = Ink.plain(channels == 3 ? Ink.Model.RGB : Ink.Model.GREY);
        boolean text = type <= 3;
        long dataAt = words.at();
        long packedRow = type == 4 ? (width + 7) / 8 : samples.bytesPerRow();
        long least = text ? Math.multiplyExact((long) width * height, channels) : packedRow * height;
        if (file.size() - dataAt < least) {
            throw new IOException("it claims " + width + " x " + height + " pixels, for which at least " + least
                    + " bytes are needed, but has " + Math.max(0, file.size() - dataAt) + ": the file is cut short");
        }
        return new Page(
                samples,
                twoLevel ? ink.inverse() : ink,
                null,
                1,
                PixelDensity.NONE,
                twoLevel ? 1 : most > 255 ? 16 : 8,
                (int) Math.max(1, Math.min(height, (1 << 20) / samples.bytesPerRow())),
                !text,
                0,
                Page.PACKED,
                () -> text
                        ? new TextRows(new Words(file, dataAt), samples, most, type == 1)
                        : new StoredRows(file, dataAt, packedRow, samples, most));
    }

    /** Rows stored as bytes. */
    private record StoredRows(ArtBytes file, long dataAt, long packedRow, Samples samples, int most)
            implements SampleRows {
        @Override
        public void read(int firstRow, int rowCount, byte[] into) throws IOException {
            long at = dataAt + packedRow * firstRow;
            if (most == 1 && packedRow < samples.bytesPerRow()) {
                byte[] packed = file.read(at, packedRow * rowCount);
                for (int r = 0; r < rowCount; r++) {
                    PackedBits.spread(packed, (int) packedRow * r, 1, into, samples.width() * r, samples.width(), true);
                }
                return;
            }
            int count = Math.toIntExact(packedRow * rowCount);
            file.readFully(at, into, 0, count);
            if (most != samples.most()) {
                for (int i = 0; i < count; i += samples.bytesPerSample()) {
                    SampleReading.put(into, i, scaled(SampleReading.one(into, i, samples), most, samples), samples);
                }
            }
        }
    }

    /** Rows written out as decimal numbers, read from the top down. */
    private record TextRows(Words words, Samples samples, int most, boolean digits) implements SampleRows {
        @Override
        public void read(int firstRow, int rowCount, byte[] into) throws IOException {
            int count = Math.toIntExact(samples.bytesPerRow() * rowCount);
            for (int i = 0; i < count; i += samples.bytesPerSample()) {
                int value = digits ? words.digit() : words.number(most, "sample");
                SampleReading.put(into, i, scaled(value, most, samples), samples);
            }
        }
    }

    private static int scaled(int value, int most, Samples samples) {
        return most == samples.most()
                ? value
                : (int) (((long) Math.min(value, most) * samples.most() + most / 2) / most);
    }

    /** Reads words parted by white space, with comments left out. */
    private static final class Words {
        private final Unpacker.Run run;
        private long at;

        Words(ArtBytes file, long at) {
            this.at = at;
            this.run = new Unpacker.Run(file, at, file.size(), false);
        }

        /** Where the byte after the last one read lies. */
        long at() {
            return at;
        }

        int octet() throws IOException {
            int octet = run.next();
            if (octet < 0) {
                throw new EOFException("the picture data end early");
            }
            at++;
            return octet;
        }

        int digit() throws IOException {
            int octet = firstOfWord();
            if (octet != '0' && octet != '1') {
                throw new IOException("the picture data are damaged");
            }
            return octet - '0';
        }

        /** The next number, and the one white space after it. */
        int number(int most, String what) throws IOException {
            int octet = firstOfWord();
            long number = 0;
            while (octet >= '0' && octet <= '9') {
                number = number * 10 + octet - '0';
                if (number > most) {
                    throw new IOException(
                            "its " + what + " is " + number + " or more; at most " + most + " can be read");
                }
                octet = run.next();
                at++;
            }
            if (octet >= 0 && !Character.isWhitespace(octet)) {
                throw new IOException("its " + what + " is not a number");
            }
            return (int) number;
        }

        private int firstOfWord() throws IOException {
            int octet = octet();
            while (Character.isWhitespace(octet) || octet == '#') {
                if (octet == '#') {
                    while (octet != '\n' && octet != '\r') {
                        octet = octet();
                    }
                }
                octet = octet();
            }
            return octet;
        }
    }
}
