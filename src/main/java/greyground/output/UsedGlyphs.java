package greyground.output;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.CRC32;

/**
 * The glyphs that our pages use, and the part of the type face that draws them. Glyphs keep the numbers they have in the
 * whole face, so the embedded part is the face with every other outline left empty (composite glyphs bring their parts
 * along). One document owns it; one thread fills it.
 */
final class UsedGlyphs {
    private static final int ARGUMENTS_ARE_WORDS = 0x0001;
    private static final int ONE_SCALE = 0x0008;
    private static final int MORE_PARTS = 0x0020;
    private static final int TWO_SCALES = 0x0040;
    private static final int TWO_BY_TWO = 0x0080;

    /** Tables that a CIDFontType2 program needs, in the order of their tags; hinting tables where the face has them. */
    private static final List<String> KEPT =
            List.of("cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep");

    /** Thickness of an upright stroke in thousandths, judged by eye; only a viewer that lacks the face would use it. */
    private static final int STEM = 80;

    private final TypeFace face;
    private final TreeMap<Integer, Integer> characterOfGlyph = new TreeMap<>();

    UsedGlyphs(TypeFace face) {
        this.face = face;
    }

    TypeFace face() {
        return face;
    }

    /** Spells a line as hexadecimal glyph numbers and remembers them. */
    String spell(String line) {
        StringBuilder hex = new StringBuilder(4 * line.length() + 2).append('<');
        line.codePoints().forEach(point -> {
            int glyph = face.drawnGlyph(point);
            int shown = face.glyph(point) == glyph ? point : Character.isISOControl(point) ? ' ' : '?';
            characterOfGlyph.merge(glyph, shown, Math::min);
            hex.append(PdfWords.hex(glyph));
        });
        return hex.append('>').toString();
    }

    boolean isEmpty() {
        return characterOfGlyph.isEmpty();
    }

    /** Writes the font and returns its object number. */
    int writeTo(PdfObjects objects) throws IOException {
        byte[] program = program();
        int file = objects.addDeflated("/Length1 " + program.length, program);
        String name = "/" + tag() + "+" + TypeFace.NAME;
        String descriptor = "<</Type/FontDescriptor/FontName" + name + "/Flags 4/FontBBox["
                + face.thousandths("head", 36) + " " + face.thousandths("head", 38) + " " + face.thousandths("head", 40)
                + " " + face.thousandths("head", 42) + "]/ItalicAngle 0/Ascent " + face.thousandths("hhea", 4)
                + "/Descent " + face.thousandths("hhea", 6) + "/CapHeight " + face.thousandths("OS/2", 88)
                + "/StemV " + STEM + "/FontFile2 " + PdfObjects.reference(file) + ">>";
        int described = objects.add(descriptor);
        int descendant = objects.add("<</Type/Font/Subtype/CIDFontType2/BaseFont" + name
                + "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>/CIDToGIDMap/Identity/FontDescriptor "
                + PdfObjects.reference(described) + "/DW 1000/W[" + widths() + "]>>");
        int meaning = objects.addDeflated("", meaning().getBytes(StandardCharsets.US_ASCII));
        return objects.add("<</Type/Font/Subtype/Type0/BaseFont" + name + "/Encoding/Identity-H/DescendantFonts["
                + PdfObjects.reference(descendant) + "]/ToUnicode " + PdfObjects.reference(meaning) + ">>");
    }

    /** Six letters drawn from the glyphs themselves, as a subset's name must begin. */
    private String tag() {
        CRC32 sum = new CRC32();
        characterOfGlyph.keySet().forEach(glyph -> {
            sum.update(glyph >> 8);
            sum.update(glyph);
        });
        long rest = sum.getValue();
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < 6; i++) {
            letters.append((char) ('A' + rest % 26));
            rest /= 26;
        }
        return letters.toString();
    }

    private String widths() {
        StringBuilder text = new StringBuilder();
        characterOfGlyph
                .keySet()
                .forEach(glyph -> text.append(glyph)
                        .append('[')
                        .append(PdfWords.number(face.advance(glyph)))
                        .append(']'));
        return text.toString();
    }

    /** The character of each glyph, for whoever searches or copies the text. */
    private String meaning() {
        StringBuilder text = new StringBuilder("""
                /CIDInit /ProcSet findresource begin
                12 dict begin
                begincmap
                /CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
                /CMapName /Adobe-Identity-UCS def
                /CMapType 2 def
                1 begincodespacerange
                <0000> <FFFF>
                endcodespacerange
                """);
        List<Map.Entry<Integer, Integer>> all = new ArrayList<>(characterOfGlyph.entrySet());
        // A block holds at most 100 entries.
        for (int from = 0; from < all.size(); from += 100) {
            List<Map.Entry<Integer, Integer>> block = all.subList(from, Math.min(all.size(), from + 100));
            text.append(block.size()).append(" beginbfchar\n");
            for (Map.Entry<Integer, Integer> entry : block) {
                text.append("<" + PdfWords.hex(entry.getKey()) + "> <" + PdfWords.hex(entry.getValue()) + ">\n");
            }
            text.append("endbfchar\n");
        }
        return text.append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
                .toString();
    }

    /** The embedded part of the face. */
    private byte[] program() {
        Set<Integer> drawn = withParts();
        ByteArrayOutputStream outlines = new ByteArrayOutputStream();
        ByteBuffer starts = ByteBuffer.allocate(4 * (face.glyphCount() + 1));
        ByteBuffer metrics = ByteBuffer.wrap(table("hmtx"));
        int outlineTable = face.table("glyf").offset();
        for (int glyph = 0; glyph < face.glyphCount(); glyph++) {
            starts.putInt(outlines.size());
            if (drawn.contains(glyph)) {
                int from = face.outline(glyph);
                outlines.writeBytes(face.bytes(outlineTable + from, face.outline(glyph + 1) - from));
            } else if (glyph < face.metricCount()) {
                metrics.putInt(4 * glyph, 0);
            }
        }
        starts.putInt(outlines.size());
        TreeMap<String, byte[]> tables = new TreeMap<>();
        for (String tag : KEPT) {
            if (face.optionalTable(tag) != null) {
                tables.put(tag, table(tag));
            }
        }
        tables.put("glyf", outlines.toByteArray());
        tables.put("loca", starts.array());
        tables.put("hmtx", metrics.array());
        return assembled(tables);
    }

    private byte[] table(String tag) {
        TypeFace.Table table = face.table(tag);
        return face.bytes(table.offset(), table.length());
    }

    private Set<Integer> withParts() {
        TreeSet<Integer> drawn = new TreeSet<>();
        List<Integer> waiting = new ArrayList<>(characterOfGlyph.keySet());
        waiting.add(0);
        while (!waiting.isEmpty()) {
            int glyph = waiting.remove(waiting.size() - 1);
            if (drawn.add(glyph)) {
                addParts(glyph, waiting);
            }
        }
        return drawn;
    }

    private void addParts(int glyph, List<Integer> waiting) {
        int from = face.outline(glyph);
        int at = face.table("glyf").offset() + from;
        if (face.outline(glyph + 1) == from || (short) face.unsigned(at) >= 0) {
            return;
        }
        at += 10;
        int flags;
        do {
            flags = face.unsigned(at);
            waiting.add(face.unsigned(at + 2));
            at += (flags & ARGUMENTS_ARE_WORDS) != 0 ? 8 : 6;
            if ((flags & ONE_SCALE) != 0) {
                at += 2;
            } else if ((flags & TWO_SCALES) != 0) {
                at += 4;
            } else if ((flags & TWO_BY_TWO) != 0) {
                at += 8;
            }
        } while ((flags & MORE_PARTS) != 0);
    }

    private static byte[] assembled(Map<String, byte[]> tables) {
        int size = 12 + 16 * tables.size();
        for (byte[] table : tables.values()) {
            size += (table.length + 3) & ~3;
        }
        ByteBuffer file = ByteBuffer.allocate(size);
        int power = Integer.highestOneBit(tables.size());
        file.putInt(0x00010000).putShort((short) tables.size()).putShort((short) (16 * power));
        file.putShort((short) Integer.numberOfTrailingZeros(power));
        file.putShort((short) (16 * (tables.size() - power)));
        int at = 12 + 16 * tables.size();
        for (Map.Entry<String, byte[]> table : tables.entrySet()) {
            byte[] bytes = table.getValue();
            file.put(table.getKey().getBytes(StandardCharsets.US_ASCII));
            file.putInt(sum(bytes)).putInt(at).putInt(bytes.length);
            file.put(at, bytes);
            at += (bytes.length + 3) & ~3;
        }
        return file.array();
    }

    /** A table's checksum: its big-endian words added up, the last one padded with zeros. */
    private static int sum(byte[] bytes) {
        int sum = 0;
        for (int i = 0; i < bytes.length; i++) {
            sum += (bytes[i] & 0xFF) << (8 * (3 - i % 4));
        }
        return sum;
    }
}
