package greyground.output;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The one type face of our pages, Liberation Sans, read straight from its TrueType file (tables after the OpenType
 * specification: cmap format 4, head, hhea, hmtx, maxp). Only what setting a line needs is read: parsing the whole face
 * would cost more than the rest of the file.
 *
 * <p>Licence: SIL Open Font License 1.1, as the face's own name table (entries 13 and 14) and the licence of the library that
 * carries it say; its embedding permission (OS/2 fsType) is 0, unrestricted. The file is not ours and is not in our source.
 *
 * <p>Immutable; any thread may use it.
 */
final class TypeFace {
    /** Where PDFBox's jar keeps the face. */
    private static final String RESOURCE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** The name the face gives itself, name table entry 6. */
    static final String NAME = "LiberationSans";

    private final ByteBuffer face;
    private final Map<String, Table> tables = new HashMap<>();
    private final int unitsPerEm;
    private final int glyphCount;
    private final int metricCount;
    private final int metrics;
    private final int characters;

    private TypeFace(byte[] bytes) {
        face = ByteBuffer.wrap(bytes).asReadOnlyBuffer();
        int count = face.getShort(4);
        for (int i = 0; i < count; i++) {
            int entry = 12 + 16 * i;
            String tag = new String(bytes, entry, 4, StandardCharsets.US_ASCII);
            tables.put(tag, new Table(face.getInt(entry + 8), face.getInt(entry + 12)));
        }
        unitsPerEm = unsigned(table("head").offset() + 18);
        glyphCount = unsigned(table("maxp").offset() + 4);
        metricCount = unsigned(table("hhea").offset() + 34);
        metrics = table("hmtx").offset();
        characters = windowsCharacters();
    }

    /** Where a table of the face lies. */
    record Table(int offset, int length) {}

    /** Reads the face from the library that carries it. */
    static TypeFace load() throws IOException {
        try (InputStream in = TypeFace.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw Refusal.failure("the type face " + RESOURCE
                        + " is missing from the program's libraries: install the program again");
            }
            return new TypeFace(in.readAllBytes());
        }
    }

    /** The glyph of a character, 0 if the face has none. */
    int glyph(int codePoint) {
        if (codePoint > 0xFFFF) {
            return 0;
        }
        int segments = unsigned(characters + 6) / 2;
        int ends = characters + 14;
        int low = 0;
        int high = segments - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (unsigned(ends + 2 * middle) < codePoint) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        int starts = ends + 2 * segments + 2;
        int deltas = starts + 2 * segments;
        int ranges = deltas + 2 * segments;
        int start = unsigned(starts + 2 * low);
        if (codePoint < start || codePoint > unsigned(ends + 2 * low)) {
            return 0;
        }
        int range = unsigned(ranges + 2 * low);
        int delta = unsigned(deltas + 2 * low);
        if (range == 0) {
            return codePoint + delta & 0xFFFF;
        }
        int glyph = unsigned(ranges + 2 * low + range + 2 * (codePoint - start));
        return glyph == 0 ? 0 : glyph + delta & 0xFFFF;
    }

    /** The glyph that stands for a character on our pages: its own, else the question mark's. */
    int drawnGlyph(int codePoint) {
        int shown = Character.isISOControl(codePoint) ? ' ' : codePoint;
        int glyph = glyph(shown);
        return glyph == 0 ? glyph('?') : glyph;
    }

    /** How far a glyph moves the pen, in thousandths of the type size. */
    double advance(int glyph) {
        int row = Math.min(glyph, metricCount - 1);
        return unsigned(metrics + 4 * row) * 1000.0 / unitsPerEm;
    }

    /** The length of a line set at 1 pt, in points. */
    double width(String line) {
        double thousandths = 0;
        for (int i = 0; i < line.length(); ) {
            int point = line.codePointAt(i);
            thousandths += advance(drawnGlyph(point));
            i += Character.charCount(point);
        }
        return thousandths / 1000;
    }

    /** Height of a capital over the type size (OS/2 sCapHeight). */
    double capHeight() {
        return signed(table("OS/2").offset() + 88) / (double) unitsPerEm;
    }

    /** A font measure of the file, in thousandths of the type size. */
    long thousandths(String table, int offset) {
        return Math.round(signed(table(table).offset() + offset) * 1000.0 / unitsPerEm);
    }

    int glyphCount() {
        return glyphCount;
    }

    int metricCount() {
        return metricCount;
    }

    Table table(String tag) {
        Table found = tables.get(tag);
        if (found == null) {
            throw new IllegalStateException("the type face has no table " + tag);
        }
        return found;
    }

    @Nullable
    Table optionalTable(String tag) {
        return tables.get(tag);
    }

    /** Copies part of the file. */
    byte[] bytes(int offset, int length) {
        byte[] copy = new byte[length];
        face.get(offset, copy);
        return copy;
    }

    int unsigned(int offset) {
        return Short.toUnsignedInt(face.getShort(offset));
    }

    private int signed(int offset) {
        return face.getShort(offset);
    }

    /** Where the outline of a glyph starts in the table glyf; the long form of loca, which this face uses. */
    int outline(int glyph) {
        return face.getInt(table("loca").offset() + 4 * glyph);
    }

    private int windowsCharacters() {
        int cmap = table("cmap").offset();
        int count = unsigned(cmap + 2);
        for (int i = 0; i < count; i++) {
            int entry = cmap + 4 + 8 * i;
            int at = cmap + face.getInt(entry + 4);
            if (unsigned(entry) == 3 && unsigned(entry + 2) == 1 && unsigned(at) == 4) {
                return at;
            }
        }
        throw new IllegalStateException("the type face has no Unicode characters");
    }
}
