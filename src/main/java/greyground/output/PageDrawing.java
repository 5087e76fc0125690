package greyground.output;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Draws one page: lengths in points from the page's top left corner, down and to the right, in black or grey. One thread.
 */
final class PageDrawing {
    /** A circle as four Bezier curves: handle over radius, 4/3 (sqrt 2 - 1). */
    private static final double HANDLE = 4.0 / 3 * (Math.sqrt(2) - 1);

    /** Stroke that makes a line of type heavier, over its size; chosen by eye. */
    private static final double HEAVIER = 0.028;

    /**
     * 35 nanometres. A picture that ends exactly on a pixel's edge is taken by some renderers to touch the next pixel, and
     * stretched by one; so close to the edge it falls on its own pixels, at any resolution a film printer has.
     */
    private static final double INSET = 1e-4;

    private static final Pattern WHITE = Pattern.compile("\\s+");

    private final double height;
    private final UsedGlyphs glyphs;
    private final StringBuilder marks = new StringBuilder();

    PageDrawing(double heightPoints, UsedGlyphs glyphs) {
        this.height = heightPoints;
        this.glyphs = glyphs;
    }

    /** Lays the film's picture on the whole page, short of its edges by {@link #INSET}. */
    void picture(String name, double width) {
        add("q " + PdfWords.numbers(width - 2 * INSET, 0, 0, height - 2 * INSET, INSET, INSET) + " cm /" + name
                + " Do Q");
    }

    /** Sets a line, {@code x} at its start, {@code y} at its baseline. */
    void text(double x, double y, double size, double grey, String line) {
        set(x, y, size, grey, 0, false, line);
    }

    /** Sets a heavier line. */
    void heavyText(double x, double y, double size, double grey, String line) {
        set(x, y, size, grey, 0, true, line);
    }

    /** Sets a line that ends at {@code x}. */
    void textEndingAt(double x, double y, double size, double grey, String line) {
        set(x - width(line, size), y, size, grey, 0, false, line);
    }

    /** Sets a line turned clockwise about its start. */
    void turnedText(double x, double y, double size, int quarterTurns, String line) {
        set(x, y, size, 0, quarterTurns, false, line);
    }

    /** The length of a line, in points. */
    double width(String line, double size) {
        return glyphs.face().width(line) * size;
    }

    void line(double x1, double y1, double x2, double y2, double weight, double grey) {
        add(stroke(weight, grey) + point(x1, y1) + " m " + point(x2, y2) + " l S");
    }

    void frame(double x, double y, double width, double heightOfFrame, double weight, double grey) {
        add(stroke(weight, grey) + PdfWords.numbers(x, height - y - heightOfFrame, width, heightOfFrame) + " re S");
    }

    void path(double[] xs, double[] ys, double weight, double grey) {
        StringBuilder path = new StringBuilder("1 j ").append(stroke(weight, grey));
        for (int i = 0; i < xs.length; i++) {
            path.append(point(xs[i], ys[i])).append(i == 0 ? " m " : " l ");
        }
        add(path.append("S 0 j").toString());
    }

    void triangle(double x, double y, double side, double weight) {
        double rise = side * Math.sqrt(3) / 2;
        add("1 j " + stroke(weight, 0) + point(x, y) + " m " + point(x + side, y) + " l "
                + point(x + side / 2, y - rise) + " l s 0 j");
    }

    void openCircle(double x, double y, double radius, double weight) {
        add(stroke(weight, 0) + circle(x, y, radius) + " s");
    }

    void dot(double x, double y, double radius) {
        add("0 g " + circle(x, y, radius) + " f");
    }

    /** A triangle with an exclamation mark, its lower left corner at a place. */
    void warningSign(double x, double y, double side) {
        triangle(x, y, side, 1);
        heavyText(x + side / 2 - 0.85, y - 1.6, side * 0.58, 0, "!");
    }

    /** Open for what the shop has yet to measure, filled for what it has; nothing for what follows from those. */
    void known(double x, double middle, double scale, String provenance) {
        if (provenance.contains("assumed")) {
            openCircle(x + 3 * scale, middle, 2.6 * scale, 0.9 * scale);
        } else if (provenance.startsWith("measured")) {
            dot(x + 3 * scale, middle, 3 * scale);
        }
    }

    /** Sets lines one below the other, the first with its baseline at {@code top}; returns where a further one would stand. */
    double column(double x, double top, double row, double size, double grey, List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            text(x, top + i * row, size, grey, lines.get(i));
        }
        return top + lines.size() * row;
    }

    byte[] content() {
        return marks.toString().getBytes(StandardCharsets.US_ASCII);
    }

    /** Breaks words into lines no longer than {@code width} points; a word that is too long is cut. */
    List<String> lines(String words, double size, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        double blank = width(" ", size);
        double filled = 0;
        for (String word : WHITE.split(words.trim(), -1)) {
            String rest = word;
            double length = width(rest, size);
            if (!line.isEmpty() && filled + blank + length > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (length > width && rest.codePointCount(0, rest.length()) > 1) {
                int cut = rest.offsetByCodePoints(rest.length(), -1);
                while (rest.codePointCount(0, cut) > 1 && width(rest.substring(0, cut), size) > width) {
                    cut = rest.offsetByCodePoints(cut, -1);
                }
                lines.add(rest.substring(0, cut));
                rest = rest.substring(cut);
                length = width(rest, size);
            }
            filled = line.isEmpty() ? length : filled + blank + length;
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        if (!line.isEmpty()) {
            lines.add(line.toString());
        }
        return lines;
    }

    private void set(double x, double y, double size, double grey, int quarterTurns, boolean heavy, String line) {
        if (line.isBlank()) {
            return;
        }
        String weight = heavy ? "2 Tr " + PdfWords.number(grey) + " G " + PdfWords.number(size * HEAVIER) + " w " : "";
        String turn = switch (Math.floorMod(quarterTurns, 4)) {
            case 1 -> "0 -1 1 0 ";
            case 2 -> "-1 0 0 -1 ";
            case 3 -> "0 1 -1 0 ";
            default -> "1 0 0 1 ";
        };
        add("BT /T " + PdfWords.number(size) + " Tf " + PdfWords.number(grey) + " g " + weight + turn + point(x, y)
                + " Tm " + glyphs.spell(line) + " Tj ET" + (heavy ? " 0 Tr" : ""));
    }

    private String circle(double x, double y, double r) {
        double k = r * HANDLE;
        return point(x + r, y) + " m " + curve(x + r, y - k, x + k, y - r, x, y - r)
                + curve(x - k, y - r, x - r, y - k, x - r, y) + curve(x - r, y + k, x - k, y + r, x, y + r)
                + curve(x + k, y + r, x + r, y + k, x + r, y);
    }

    private String curve(double x1, double y1, double x2, double y2, double x3, double y3) {
        return point(x1, y1) + " " + point(x2, y2) + " " + point(x3, y3) + " c ";
    }

    private String point(double x, double y) {
        return PdfWords.numbers(x, height - y);
    }

    private static String stroke(double weight, double grey) {
        return PdfWords.number(weight) + " w " + PdfWords.number(grey) + " G ";
    }

    private void add(String mark) {
        marks.append(mark).append('\n');
    }
}
