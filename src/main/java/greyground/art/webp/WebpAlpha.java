package greyground.art.webp;

import greyground.art.page.ArtBytes;
import greyground.art.page.Interpretation;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;

/** Alpha that stands beside a lossy WebP picture (RFC 9649, 2.7.1.2), stored or packed. */
final class WebpAlpha {
    private WebpAlpha() {}

    /** {@code page}, of red, green and blue, with the alpha whose chunk's data are the {@code length} bytes at {@code at}. */
    static Page added(Page page, ArtBytes file, long at, long length) throws IOException {
        Samples colours = page.samples();
        int width = colours.width();
        Samples samples = new Samples(width, colours.height(), 4, 1, true);
        int head = new Octets(file.read(at, 1), false).u8(0);
        int packing = head & 3;
        int filter = head >> 2 & 3;
        if (packing > 1 || colours.channels() != 3) {
            throw new Unreadable("its transparency is not where its header says: save it anew");
        }
        if (packing == 0 && at + 1 + (long) width * samples.height() > file.size()) {
            throw new Unreadable("it ends before its transparency does: the file is cut short");
        }
        Page.Opener rows = () -> {
            SampleRows lights = page.rows().open();
            SampleRows alpha = packing == 0
                    ? stored(file, at + 1, width)
                    : LosslessPicture.rows(file, at + 1, length - 1, colours);
            return new Rows(lights, alpha, packing == 0 ? 1 : 3, filter, width);
        };
        return new Page(
                samples,
                Interpretation.withAlpha(Interpretation.Model.RGB),
                page.profile(),
                page.orientation(),
                page.resolution(),
                page.bits(),
                page.bandRows(),
                false,
                page.wholeBytes() + (packing == 0 ? 0 : LosslessPicture.wholeBytes(colours)),
                page.pixelsPerByteAtMost(),
                rows,
                page.remarks());
    }

    private static SampleRows stored(ArtBytes file, long at, int width) {
        return (firstRow, rowCount, into) ->
                file.readFully(at + (long) firstRow * width, into, 0, Math.multiplyExact(rowCount, width));
    }

    /** Puts colours and alpha together, top to bottom. */
    private static final class Rows implements SampleRows {
        private final SampleRows lights;
        private final SampleRows alpha;
        /** Packed alpha is the green of a picture. */
        private final int alphaStep;

        private final int filter;
        private final byte[] colours;
        private final byte[] found;
        private final byte[] above;
        private final byte[] row;

        Rows(SampleRows lights, SampleRows alpha, int alphaStep, int filter, int width) {
            this.lights = lights;
            this.alpha = alpha;
            this.alphaStep = alphaStep;
            this.filter = filter;
            this.colours = new byte[3 * width];
            this.found = new byte[alphaStep * width];
            this.above = new byte[width];
            this.row = new byte[width];
        }

        @Override
        public void read(int firstRow, int rowCount, byte[] into) throws IOException {
            int width = row.length;
            for (int r = 0; r < rowCount; r++) {
                int y = firstRow + r;
                lights.read(y, 1, colours);
                alpha.read(y, 1, found);
                for (int x = 0; x < width; x++) {
                    row[x] = found[alphaStep * x + alphaStep / 2];
                }
                unfilter(filter, y, above, row);
                for (int x = 0; x < width; x++) {
                    System.arraycopy(colours, 3 * x, into, 4 * (r * width + x), 3);
                    into[4 * (r * width + x) + 3] = row[x];
                }
                System.arraycopy(row, 0, above, 0, width);
            }
        }

        @Override
        public void close() throws IOException {
            try (lights) {
                alpha.close();
            }
        }
    }

    /** Filters 1, 2 and 3: from the left, from above, from both. Edges go by the one neighbour they have. */
    private static void unfilter(int filter, int y, byte[] above, byte[] row) {
        for (int x = 0; filter > 0 && x < row.length; x++) {
            int left = x > 0 ? row[x - 1] & 0xFF : 0;
            int up = y > 0 ? above[x] & 0xFF : 0;
            int guess;
            if (x == 0 || y == 0) {
                guess = x > 0 ? left : up;
            } else if (filter == 3) {
                guess = Math.max(0, Math.min(255, left + up - (above[x - 1] & 0xFF)));
            } else {
                guess = filter == 1 ? left : up;
            }
            row[x] += (byte) guess;
        }
    }
}
