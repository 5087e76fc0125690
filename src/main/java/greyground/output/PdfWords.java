package greyground.output;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.HexFormat;

/** Numbers, strings and dates as PDF and XMP spell them. */
final class PdfWords {
    private static final HexFormat HEX = HexFormat.of().withUpperCase();

    private PdfWords() {}

    static String hex(int number) {
        return HEX.toHexDigits((short) number);
    }

    /**
     * A number with at most six decimals, never in exponent form: 1e-6 pt is a third of a nanometre.
     */
    static String number(double value) {
        return BigDecimal.valueOf(Math.round(value * 1e6), 6)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Numbers with a blank between them. */
    static String numbers(double... values) {
        StringBuilder text = new StringBuilder();
        for (double value : values) {
            text.append(text.isEmpty() ? "" : " ").append(number(value));
        }
        return text.toString();
    }

    /** A text string in UTF-16, as hexadecimal, which needs no escapes. */
    static String text(String words) {
        StringBuilder hex = new StringBuilder("<FEFF");
        hex.append(HEX.formatHex(words.getBytes(StandardCharsets.UTF_16BE)));
        return hex.append('>').toString();
    }

    /** A name; the media type's slash is the one character that needs its escape. */
    static String name(String words) {
        return "/" + words.replace("#", "#23").replace("/", "#2F");
    }

    /** Midnight of a day, UTC, for the document's information. */
    static String date(LocalDate day) {
        return "(D:" + day.toString().replace("-", "") + "000000Z)";
    }

    /** The same moment for XMP. */
    static String xmpDate(LocalDate day) {
        return day + "T00:00:00Z";
    }

    /** One line for XML: what XML 1.0 forbids becomes a blank. */
    static String xml(String words) {
        StringBuilder safe = new StringBuilder();
        words.codePoints().forEach(point -> {
            switch (point) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                default -> {
                    boolean allowed = (point >= 0x20 && point <= 0xD7FF)
                            || (point >= 0xE000 && point <= 0xFFFD)
                            || point >= 0x10000;
                    safe.appendCodePoint(allowed ? point : ' ');
                }
            }
        });
        return safe.toString();
    }
}
