package greyground.art.webp;

import greyground.art.page.ArtBytes;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;

/** Alpha that a lossy WebP picture stores unpacked (RFC 9649, 2.7.1.2), put in the place of what the library makes of it. */
final class WebpAlpha {
    private WebpAlpha() {}

    /** {@code page} with the alpha whose chunk's data start at {@code at}. */
    static Page added(Page page, ArtBytes file, long at) throws IOException {
        Samples samples = page.samples();
        int width = samples.width();
        if (page.ink().alphaChannel() != 3) {
            throw new Unreadable("its transparency is not where its header says: save it anew");
        }
        int filter = new Octets(file.read(at, 1), false).u8(0) >> 2 & 3;
        if (at + 1 + (long) width * samples.height() > file.size()) {
            throw new Unreadable("it ends before its transparency does: the file is cut short");
        }
        return page.reading(() -> {
            SampleRows rows = page.rows().open();
            byte[] above = new byte[width];
            byte[] row = new byte[width];
            return new SampleRows() {
                @Override
                public void read(int firstRow, int rowCount, byte[] into) throws IOException {
                    rows.read(firstRow, rowCount, into);
                    for (int r = 0; r < rowCount; r++) {
                        int y = firstRow + r;
                        file.readFully(at + 1 + (long) y * width, row, 0, width);
                        unfilter(filter, y, above, row);
                        for (int x = 0; x < width; x++) {
                            into[4 * (r * width + x) + 3] = row[x];
                        }
                        System.arraycopy(row, 0, above, 0, width);
                    }
                }

                @Override
                public void close() throws IOException {
                    rows.close();
                }
            };
        });
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
