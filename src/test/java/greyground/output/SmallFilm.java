package greyground.output;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Map;

/** A film PDF of a few pixels and whatever attachments, without plan and typefaces: what a reader looks at, and little else. */
public final class SmallFilm {
    private static final int WIDTH = 32;
    private static final int HEIGHT = 24;

    private SmallFilm() {}

    /**
     * The file, of 32 x 24 pixels at 72 dpi.
     *
     * @param attachments content by name
     * @param packed whether streams are deflated; plain ones are open to mutation
     * @param further objects that the catalog names, such as {@code /OpenAction<<...>>}
     */
    public static byte[] pdf(Map<String, byte[]> attachments, boolean packed, String further) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        byte[] rows = new byte[WIDTH / 8 * HEIGHT];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = (byte) (i * 37);
        }
        int film = stream(
                objects,
                "/Type/XObject/Subtype/Image/Width " + WIDTH + "/Height " + HEIGHT
                        + "/BitsPerComponent 1/ColorSpace/DeviceGray/Decode[1 0]",
                rows,
                packed);
        int pages = objects.number();
        int page = objects.add("<</Type/Page/Parent " + PdfObjects.reference(pages) + "/MediaBox[0 0 " + WIDTH + " "
                + HEIGHT + "]/TrimBox[4 4 28 20]/BleedBox[2 2 30 22]/Resources<</XObject<</Film "
                + PdfObjects.reference(film) + ">>>>>>");
        objects.write(pages, "<</Type/Pages/Count 1/Kids[" + PdfObjects.reference(page) + "]>>");
        StringBuilder files = new StringBuilder();
        for (Map.Entry<String, byte[]> each : attachments.entrySet()) {
            int stream = stream(objects, "/Type/EmbeddedFile", each.getValue(), packed);
            files.append("<</Type/Filespec/F(")
                    .append(each.getKey())
                    .append(")/UF(")
                    .append(each.getKey())
                    .append(")/EF<</F ")
                    .append(PdfObjects.reference(stream))
                    .append(">>>>");
        }
        int catalog = objects.add(
                "<</Type/Catalog/Pages " + PdfObjects.reference(pages) + "/AF[" + files + "]" + further + ">>");
        objects.finish(catalog, objects.add("<<>>"));
        return out.toByteArray();
    }

    private static int stream(PdfObjects objects, String entries, byte[] bytes, boolean packed) throws IOException {
        return packed ? objects.addDeflated(entries, bytes) : objects.addStream(entries, bytes);
    }
}
