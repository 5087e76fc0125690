package greyground.output;

import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.zip.Adler32;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * A PDF file as a row of numbered objects, written straight through: nothing is held back and nothing is written twice, so a
 * film of any size passes in one go and the same content always gives the same bytes (ISO 32000-1:2008, 7.5, clause from
 * memory).
 *
 * <p>Used by one thread. Objects may be numbered before they are written; each number is written once.
 */
final class PdfObjects {
    /** The largest integer a PDF/A reader must hold, 2^31 - 1 (ISO 19005-3:2012, 6.1.13, clause from memory). */
    static final long LARGEST_STREAM = Integer.MAX_VALUE;

    private final Tally out;
    private final List<Long> offsets = new ArrayList<>();

    PdfObjects(OutputStream out) throws IOException {
        this.out = new Tally(out);
        put("%PDF-1.7\n%");
        this.out.write(new byte[] {(byte) 0xE2, (byte) 0xE3, (byte) 0xCF, (byte) 0xD3, '\n'});
    }

    /** Writes content into an object's stream. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Takes the next object number. */
    int number() {
        offsets.add(-1L);
        return offsets.size();
    }

    /** The reference to a numbered object, such as {@code "7 0 R"}. */
    static String reference(int number) {
        return number + " 0 R";
    }

    /** Writes an object that has a number already. */
    void write(int number, String object) throws IOException {
        begin(number);
        put(object + "\nendobj\n");
    }

    /** Numbers and writes an object. */
    int add(String object) throws IOException {
        int number = number();
        write(number, object);
        return number;
    }

    /** Numbers and writes a stream as it is. {@code entries} is the inside of its dictionary without the length. */
    int addStream(String entries, byte[] bytes) throws IOException {
        int number = number();
        begin(number);
        put("<<" + entries + "/Length " + bytes.length + ">>\nstream\n");
        out.write(bytes);
        put("\nendstream\nendobj\n");
        return number;
    }

    /** Numbers and writes a stream that is deflated on the way. */
    int addDeflated(String entries, byte[] bytes) throws IOException {
        return addStream(entries + "/Filter/FlateDecode", deflated(bytes, 6));
    }

    /** Bytes as a zlib stream. */
    static byte[] deflated(byte[] bytes, int level) throws IOException {
        ByteArrayOutputStream small = new ByteArrayOutputStream();
        Deflater deflater = new Deflater(level);
        try (DeflaterOutputStream deflated = new DeflaterOutputStream(small, deflater, 1 << 13)) {
            deflated.write(bytes);
        } finally {
            deflater.end();
        }
        return small.toByteArray();
    }

    /** Numbers and writes a stream whose length is known only once it has passed. */
    int addPassing(String entries, Content content) throws IOException {
        return addPassing(entries, content, LARGEST_STREAM);
    }

    /** The same with another limit than a PDF's. */
    int addPassing(String entries, Content content, long mostBytes) throws IOException {
        int number = number();
        int length = number();
        begin(number);
        put("<<" + entries + "/Length " + reference(length) + ">>\nstream\n");
        long start = out.written;
        content.writeTo(out);
        long bytes = out.written - start;
        if (bytes > mostBytes) {
            throw Refusal.failure("the film's picture takes " + bytes + " bytes; a PDF/A file holds at most "
                    + mostBytes + " for one page: write a TIFF instead, or use a coarser resolution");
        }
        put("\nendstream\nendobj\n");
        write(length, Long.toString(bytes));
        return number;
    }

    /** Writes the table of objects and the end of the file, whose identifier is drawn from all that went before. */
    void finish(int catalog, int information) throws IOException {
        String identifier = out.identifier();
        long table = out.written;
        StringBuilder text = new StringBuilder(offsets.size() * 20 + 300);
        text.append("xref\n0 ").append(offsets.size() + 1).append("\n0000000000 65535 f \n");
        for (int i = 0; i < offsets.size(); i++) {
            long offset = offsets.get(i);
            if (offset < 0) {
                throw new IllegalStateException("object " + (i + 1) + " was numbered and never written");
            }
            String digits = Long.toString(offset);
            text.append("0".repeat(10 - digits.length())).append(digits).append(" 00000 n \n");
        }
        text.append("trailer\n<</Size ").append(offsets.size() + 1);
        text.append("/Root ").append(reference(catalog));
        text.append("/Info ").append(reference(information));
        text.append("/ID[<").append(identifier).append("><").append(identifier).append(">]>>\n");
        text.append("startxref\n").append(table).append("\n%%EOF\n");
        put(text.toString());
        out.flush();
    }

    private void begin(int number) throws IOException {
        if (offsets.get(number - 1) >= 0) {
            throw new IllegalStateException("object " + number + " is written twice");
        }
        offsets.set(number - 1, out.written);
        put(number + " 0 obj\n");
    }

    private void put(String ascii) throws IOException {
        out.write(ascii.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Counts what passes and sums it up three ways, at memory speed, for the file's identifier. */
    private static final class Tally extends OutputStream {
        private final OutputStream out;
        private final CRC32 crc = new CRC32();
        private final CRC32C castagnoli = new CRC32C();
        private final Adler32 adler = new Adler32();
        private final byte[] single = new byte[1];
        private long written;

        Tally(OutputStream out) {
            this.out = out;
        }

        String identifier() {
            HexFormat hex = HexFormat.of().withUpperCase();
            return hex.toHexDigits((int) written)
                    + hex.toHexDigits((int) crc.getValue())
                    + hex.toHexDigits((int) castagnoli.getValue())
                    + hex.toHexDigits((int) adler.getValue());
        }

        @Override
        public void write(int octet) throws IOException {
            single[0] = (byte) octet;
            write(single, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
            crc.update(bytes, from, count);
            castagnoli.update(bytes, from, count);
            adler.update(bytes, from, count);
            written += count;
        }

        @Override
        public void flush() throws IOException {
            out.flush();
        }
    }
}
