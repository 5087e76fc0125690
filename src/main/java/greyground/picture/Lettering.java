package greyground.picture;

import greyground.quantity.Refusal;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * Sets words as outlines in the face that our films are set in, Liberation Sans, from the library that carries it: pictures
 * do not depend on the fonts of the machine. One thread.
 */
final class Lettering {
    /** Where PDFBox's jar keeps the face. */
    static final String RESOURCE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    /** Stroke that makes a line of type heavier, over its size; chosen by eye. */
    static final double HEAVIER = 0.034;

    private final TrueTypeFont face;
    private final CmapLookup characters;
    private final double unitsPerEm;

    private Lettering(TrueTypeFont face) throws IOException {
        this.face = face;
        this.characters = face.getUnicodeCmapLookup();
        this.unitsPerEm = face.getUnitsPerEm();
    }

    static Lettering load() {
        try (InputStream in = open()) {
            return new Lettering(new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes())));
        } catch (IOException unreadable) {
            throw Refusal.failure("the program's type face can't be read: install the program again", unreadable);
        }
    }

    /** The face's file; whoever opens it closes it. */
    static InputStream open() {
        InputStream in = Lettering.class.getResourceAsStream(RESOURCE);
        if (in == null) {
            throw Refusal.failure("the type face " + RESOURCE
                    + " is missing from the program's libraries: install the program again");
        }
        return in;
    }

    /** Height of a capital over the size. */
    double capHeight() {
        try {
            return face.getOS2Windows().getCapHeight() / unitsPerEm;
        } catch (IOException unreadable) {
            throw Refusal.failure("the program's type face can't be read: install the program again", unreadable);
        }
    }

    /** Length of a line set at a size. */
    double width(String line, double size) {
        double units = 0;
        try {
            for (int i = 0; i < line.length(); i++) {
                units += face.getAdvanceWidth(characters.getGlyphId(line.charAt(i)));
            }
        } catch (IOException unreadable) {
            throw Refusal.failure("the program's type face can't be read: install the program again", unreadable);
        }
        return units * size / unitsPerEm;
    }

    /** Breaks words into lines no longer than a width; a single word that is longer stays whole. */
    List<String> lines(String words, double size, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.strip().split("\\s+", -1)) {
            if (!line.isEmpty() && width(line + " " + word, size) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Outlines of a line whose baseline starts at (0, 0), y downwards. */
    Path2D outline(String line, double size) {
        Path2D words = new Path2D.Double(Path2D.WIND_NON_ZERO);
        double scale = size / unitsPerEm;
        double at = 0;
        try {
            for (int i = 0; i < line.length(); i++) {
                int glyph = characters.getGlyphId(line.charAt(i));
                var data = face.getGlyph().getGlyph(glyph);
                if (data != null) {
                    GeneralPath path = data.getPath();
                    words.append(path.getPathIterator(new AffineTransform(scale, 0, 0, -scale, at * scale, 0)), false);
                }
                at += face.getAdvanceWidth(glyph);
            }
        } catch (IOException unreadable) {
            throw Refusal.failure("the program's type face can't be read: install the program again", unreadable);
        }
        return words;
    }
}
