package greyground.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;

class TypeFaceTest {
    private static final String RESOURCE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private static TrueTypeFont wholeFace() throws Exception {
        return new TTFParser().parse(new RandomAccessReadBuffer(TypeFaceTest.class.getResourceAsStream(RESOURCE)));
    }

    /** Outside authority: FontBox's own reading of the face. */
    @Test
    void everyCharacterHasTheGlyphAndTheWidthThatAnotherReaderFinds() throws Exception {
        TypeFace face = TypeFace.load();
        try (TrueTypeFont whole = wholeFace()) {
            CmapLookup characters = whole.getUnicodeCmapLookup();
            int found = 0;
            for (int point = 0; point <= 0xFFFF; point++) {
                int glyph = face.glyph(point);
                assertEquals(characters.getGlyphId(point), glyph, "character " + point);
                assertEquals(whole.getAdvanceWidth(glyph) * 1000.0 / whole.getUnitsPerEm(), face.advance(glyph), 1e-9);
                found += glyph == 0 ? 0 : 1;
            }
            assertTrue(found > 1000, "characters found: " + found);
        }
    }

    /** The face's own name table gives the licence that lets us embed it: entry 13, and entry 14 its address. */
    @Test
    void theFaceSaysItsLicence() throws Exception {
        try (TrueTypeFont whole = wholeFace()) {
            assertEquals(
                    "Licensed under the SIL Open Font License, Version 1.1",
                    whole.getNaming().getName(13, 3, 1, 0x409));
            assertEquals(0, whole.getOS2Windows().getFsType());
        }
    }

    /** Composite letters bring their parts: their outlines in the embedded part are those of the whole face. */
    @Test
    void theEmbeddedPartDrawsTheSameOutlines() throws Exception {
        byte[] pdf = Written.pdf(SampleFilm.document(SampleFilm.film(360, 80, 70, 1)), 1);
        try (PDDocument document = Loader.loadPDF(pdf);
                TrueTypeFont whole = wholeFace()) {
            PDType0Font font = (PDType0Font) document.getPage(0).getResources().getFont(COSName.getPDFName("T"));
            String letters = "INKreadsightwhÜµé°";
            for (int point : letters.codePoints().toArray()) {
                int glyph = whole.getUnicodeCmapLookup().getGlyphId(point);
                var expected = whole.getGlyph().getGlyph(glyph).getPath().getBounds2D();
                assertEquals(
                        letters.isEmpty(), font.getPath(glyph).getBounds2D().isEmpty());
                double scale = 1000.0 / 2048;
                var drawn = font.getDescendantFont().getPath(glyph).getBounds2D();
                assertEquals(expected.getWidth() * scale, drawn.getWidth() * scale, 1e-3, Character.toString(point));
                assertEquals(expected.getHeight(), drawn.getHeight(), 1e-3, Character.toString(point));
            }
        }
    }

    @Test
    void theEmbeddedPartIsSmall() throws Exception {
        UsedGlyphs glyphs = new UsedGlyphs(TypeFace.load());
        glyphs.spell("INK SIDE: reads right when the ink faces you");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        int font = glyphs.writeTo(objects);
        int catalog = objects.add("<</Type/Catalog/T " + PdfObjects.reference(font) + ">>");
        objects.finish(catalog, catalog);
        assertTrue(out.size() < 20_000, "bytes: " + out.size());
        assertTrue(new String(out.toByteArray(), StandardCharsets.ISO_8859_1).contains("+LiberationSans"));
    }
}
