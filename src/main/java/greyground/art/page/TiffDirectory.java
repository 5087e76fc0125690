package greyground.art.page;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One directory of a TIFF file (TIFF 6.0 section 2; BigTIFF's wider offsets likewise), also the form in which EXIF lies.
 * Values are fetched when asked for and never beyond the file's end.
 */
public final class TiffDirectory {
    private static final int ENTRIES_AT_MOST = 4096;
    private static final int DIRECTORIES_AT_MOST = 10_000;
    /** Assumed: a camera hangs up to four there, a picture in ever smaller copies a dozen. */
    private static final int HANGING_AT_MOST = 16;

    private static final long VALUES_AT_MOST = 1 << 24;
    private static final int[] BYTES_OF_TYPE = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

    private record Entry(int type, long count, long at) {}

    private final ArtBytes file;
    private final long base;
    private final boolean bigEndian;
    private final boolean wide;
    private final Map<Integer, Entry> entries = new HashMap<>();

    private TiffDirectory(ArtBytes file, long base, boolean bigEndian, boolean wide) {
        this.file = file;
        this.base = base;
        this.bigEndian = bigEndian;
        this.wide = wide;
    }

    /**
     * All directories of the TIFF structure that starts at {@code base}, first to last.
     *
     * @param most how many are wanted at the most
     * @throws IOException if it is no TIFF structure, or a directory can't be read
     */
    public static List<TiffDirectory> all(ArtBytes file, long base, int most) throws IOException {
        byte[] head = file.read(base, 8);
        boolean bigEndian = head[0] == 'M';
        Octets octets = new Octets(head, bigEndian);
        boolean wide = octets.u16(2) == 43;
        long next = wide ? new Octets(file.read(base + 8, 8), bigEndian).s64(0) : octets.u32(4);
        List<TiffDirectory> all = new ArrayList<>();
        Set<Long> seen = new HashSet<>();
        // Directories that run in a ring end where it closes.
        while (next != 0 && all.size() < Math.min(most, DIRECTORIES_AT_MOST) && seen.add(next)) {
            TiffDirectory directory = new TiffDirectory(file, base, bigEndian, wide);
            next = directory.readEntries(base + next);
            all.add(directory);
        }
        return all;
    }

    /** The first few directories that hang from this one by tag 330; damaged ones are left out. */
    public List<TiffDirectory> hanging() throws IOException {
        List<TiffDirectory> hanging = new ArrayList<>();
        for (long at : numbers(330)) {
            TiffDirectory directory = new TiffDirectory(file, base, bigEndian, wide);
            try {
                directory.readEntries(base + at);
                hanging.add(directory);
            } catch (IOException damaged) {
                // Nothing in it is needed.
            }
            if (hanging.size() == HANGING_AT_MOST) {
                break;
            }
        }
        return hanging;
    }

    private long readEntries(long at) throws IOException {
        int countBytes = wide ? 8 : 2;
        int entryBytes = wide ? 20 : 12;
        Octets counter = new Octets(file.read(at, countBytes), bigEndian);
        long count = wide ? counter.s64(0) : counter.u16(0);
        if (count < 1 || count > ENTRIES_AT_MOST) {
            throw new Unreadable("a directory claims " + count + " entries");
        }
        Octets table = new Octets(file.read(at + countBytes, count * entryBytes), bigEndian);
        for (int i = 0; i < count; i++) {
            int place = i * entryBytes;
            int type = table.u16(place + 2);
            long values = wide ? table.s64(place + 4) : table.u32(place + 4);
            if (type >= BYTES_OF_TYPE.length || BYTES_OF_TYPE[type] == 0 || values < 0) {
                continue;
            }
            int inline = place + (wide ? 12 : 8);
            boolean fits = values <= (wide ? 8 : 4) / BYTES_OF_TYPE[type];
            long where = fits ? at + countBytes + inline : base + (wide ? table.s64(inline) : table.u32(inline));
            entries.put(table.u16(place), new Entry(type, values, where));
        }
        long end = at + countBytes + count * entryBytes;
        byte[] link = new byte[wide ? 8 : 4];
        if (file.read(end, link, 0, link.length) < link.length) {
            return 0;
        }
        Octets next = new Octets(link, bigEndian);
        return wide ? next.s64(0) : next.u32(0);
    }

    public boolean bigEndian() {
        return bigEndian;
    }

    public boolean has(int tag) {
        return entries.containsKey(tag);
    }

    /** The first value of a whole-number tag, or {@code otherwise} where it is absent. */
    public long number(int tag, long otherwise) throws IOException {
        long[] numbers = numbers(tag);
        return numbers.length == 0 ? otherwise : numbers[0];
    }

    /** All values of a whole-number tag; none where it is absent or not whole numbers. */
    public long[] numbers(int tag) throws IOException {
        Entry entry = entries.get(tag);
        if (entry == null) {
            return new long[0];
        }
        Octets octets = octets(entry);
        long[] numbers = new long[(int) entry.count];
        for (int i = 0; i < numbers.length; i++) {
            switch (BYTES_OF_TYPE[entry.type]) {
                case 1 -> numbers[i] = octets.u8(i);
                case 2 -> numbers[i] = octets.u16(2 * i);
                case 4 -> numbers[i] = octets.u32(4 * i);
                default -> {
                    if (entry.type == 5 || entry.type == 10 || entry.type == 12) {
                        return new long[0];
                    }
                    numbers[i] = octets.s64(8 * i);
                }
            }
        }
        return numbers;
    }

    /** The first value of a tag of unsigned fractions, or 0. */
    double fraction(int tag) throws IOException {
        Entry entry = entries.get(tag);
        if (entry == null || entry.type != 5 || entry.count < 1) {
            return 0;
        }
        Octets octets = new Octets(file.read(entry.at, 8), bigEndian);
        return octets.u32(4) == 0 ? 0 : (double) octets.u32(0) / octets.u32(4);
    }

    /** A tag's bytes as they lie; none where it is absent. */
    public byte[] bytes(int tag) throws IOException {
        Entry entry = entries.get(tag);
        return entry == null ? new byte[0] : octets(entry).bytes();
    }

    private Octets octets(Entry entry) throws IOException {
        if (entry.count > VALUES_AT_MOST) {
            throw new Unreadable("a tag claims " + entry.count + " values");
        }
        return new Octets(file.read(entry.at, entry.count * BYTES_OF_TYPE[entry.type]), bigEndian);
    }

    /** TIFF tag 274, 1 where absent or out of range. */
    public int orientation() throws IOException {
        long orientation = number(274, 1);
        return orientation >= 1 && orientation <= 8 ? (int) orientation : 1;
    }

    /** TIFF tags 282, 283, 296. */
    public PixelDensity density() throws IOException {
        double across = fraction(282);
        double down = has(283) ? fraction(283) : across;
        return switch ((int) number(296, 2)) {
            case 2 -> PixelDensity.perInch(across, down);
            case 3 -> PixelDensity.perCentimetre(across, down);
            default -> PixelDensity.NONE;
        };
    }
}
