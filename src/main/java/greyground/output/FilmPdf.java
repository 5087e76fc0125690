package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Legend;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.TextWidth;
import greyground.output.FilmDocument.Film;
import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import greyground.raster.DeflatedRows;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Writes the film PDF: each film sheet as a page of its true size, then the plan, with the attachments; PDF/A-3b (ISO
 * 19005-3:2012). The film passes straight through to the file. The same document gives the same bytes on any machine.
 */
public final class FilmPdf {
    /** The longest page side a PDF/A-3 file may have, in points (ISO 19005-3:2012, 6.1.13, clause from memory). */
    private static final double LONGEST_SIDE = 14_400;

    private FilmPdf() {}

    /**
     * Writes the whole file and flushes, but leaves {@code out} open.
     *
     * @param threads that make the film's bands, at least 1
     * @param out buffered by the caller or not; it is given large pieces and few small ones
     * @throws IOException if {@code out} fails; half a file may then lie in it
     */
    public static void write(FilmDocument document, OutputStream out, int threads, Progress progress)
            throws IOException {
        for (Film film : document.films()) {
            checkSize(film.sheet());
        }
        PdfObjects objects = new PdfObjects(out);
        int parent = objects.number();
        List<Integer> pictures = new ArrayList<>();
        for (int i = 0; i < document.films().size(); i++) {
            Progress share = progress.share(i, document.films().size());
            pictures.add(picture(document.films().get(i).rows(), objects, threads, share));
        }
        UsedGlyphs glyphs = new UsedGlyphs(TypeFace.load());
        List<PageDrawing> drawings = new ArrayList<>();
        for (Film film : document.films()) {
            drawings.add(filmPage(film.sheet(), glyphs));
        }
        String paper = FilmDocument.paper(document.films().size());
        List<PageDrawing> planPages = new ArrayList<>(PlanPages.set(document.bench(), paper, glyphs));
        for (PlanDocument other : document.others()) {
            planPages.addAll(PlanPages.set(other, paper, glyphs));
        }
        int font = glyphs.isEmpty() ? 0 : glyphs.writeTo(objects);
        List<Integer> pages = new ArrayList<>();
        for (int i = 0; i < drawings.size(); i++) {
            Sheet sheet = document.films().get(i).sheet();
            int content = objects.addDeflated("", drawings.get(i).content());
            pages.add(objects.add(page(
                    parent,
                    filmBoxes(sheet),
                    "/XObject<</Film " + PdfObjects.reference(pictures.get(i)) + ">>",
                    font,
                    content)));
        }
        pages.addAll(paperPages(planPages, parent, font, objects));
        finish(objects, parent, pages, Head.of(document.bench()), document.attachments());
    }

    /** Writes a plan's paper pages alone, and flushes, but leaves {@code out} open. */
    public static void writePlan(PlanDocument document, OutputStream out) throws IOException {
        PdfObjects objects = new PdfObjects(out);
        int parent = objects.number();
        UsedGlyphs glyphs = new UsedGlyphs(TypeFace.load());
        List<PageDrawing> drawings = PlanPages.set(document, "", glyphs);
        int font = glyphs.isEmpty() ? 0 : glyphs.writeTo(objects);
        finish(objects, parent, paperPages(drawings, parent, font, objects), Head.of(document), List.of());
    }

    /** Writes a plate's record as pages for paper that carry its file, and flushes, but leaves {@code out} open. */
    public static void writeRecord(RecordDocument document, Attachment file, OutputStream out) throws IOException {
        PdfObjects objects = new PdfObjects(out);
        int parent = objects.number();
        UsedGlyphs glyphs = new UsedGlyphs(TypeFace.load());
        List<PageDrawing> drawings = RecordPages.set(document, glyphs);
        int font = glyphs.isEmpty() ? 0 : glyphs.writeTo(objects);
        Head head = new Head(document.title(), document.date(), document.program());
        finish(objects, parent, paperPages(drawings, parent, font, objects), head, List.of(file));
    }

    /** What the whole file says of itself. */
    private record Head(String title, LocalDate date, String program) {
        static Head of(PlanDocument document) {
            return new Head(document.title(), document.date(), document.program());
        }
    }

    private static List<Integer> paperPages(List<PageDrawing> drawings, int parent, int font, PdfObjects objects)
            throws IOException {
        String box = "/MediaBox[" + PdfWords.numbers(0, 0, PlanPages.PAGE_WIDTH, PlanPages.PAGE_HEIGHT) + "]";
        List<Integer> pages = new ArrayList<>();
        for (PageDrawing drawing : drawings) {
            int content = objects.addDeflated("", drawing.content());
            pages.add(objects.add(page(parent, box, "", font, content)));
        }
        return pages;
    }

    private static void finish(
            PdfObjects objects, int parent, List<Integer> pages, Head document, List<Attachment> attachments)
            throws IOException {
        objects.write(parent, "<</Type/Pages/Count " + pages.size() + "/Kids[" + references(pages) + "]>>");
        int catalog = objects.add(catalog(document, attachments, objects, parent));
        objects.finish(catalog, objects.add(information(document)));
    }

    /** How wide legends become in the face that films are set in. */
    public static TextWidth legendWidth() {
        try {
            TypeFace face = TypeFace.load();
            return (text, capHeightMillimetres) -> face.width(text) / face.capHeight() * capHeightMillimetres;
        } catch (IOException missing) {
            throw Refusal.failure("the program's type face can't be read: install the program again", missing);
        }
    }

    private static void checkSize(Sheet sheet) {
        double widest = LONGEST_SIDE / Lengths.POINTS_PER_INCH * Lengths.MILLIMETRES_PER_INCH;
        for (int pixels : new int[] {sheet.widthPixels(), sheet.heightPixels()}) {
            double millimetres = sheet.resolution().millimetres(pixels);
            Refusal.checkRange("the film sheet's side", millimetres, 2, widest, "mm", "divide the film into sheets");
        }
    }

    private static int picture(FilmRows rows, PdfObjects objects, int threads, Progress progress) throws IOException {
        // DeviceGray counts light. The reader of the file turns the samples over (Decode), so that the bytes stay the
        // film's.
        String entries = "/Type/XObject/Subtype/Image/Width " + rows.width() + "/Height " + rows.height()
                + "/BitsPerComponent " + rows.bitsPerSample()
                + "/ColorSpace/DeviceGray/Decode[1 0]/Interpolate false/Filter/FlateDecode";
        return objects.addPassing(
                entries,
                out -> DeflatedRows.write(rows.height(), rows.bytesPerRow(), rows::maker, threads, out, progress));
    }

    private static PageDrawing filmPage(Sheet sheet, UsedGlyphs glyphs) {
        PageDrawing page = new PageDrawing(points(sheet, sheet.heightPixels()), glyphs);
        page.picture("Film", points(sheet, sheet.widthPixels()));
        double pointsPerMillimetre = Lengths.POINTS_PER_INCH / Lengths.MILLIMETRES_PER_INCH;
        for (Legend legend : sheet.legends()) {
            page.turnedText(
                    legend.leftMillimetres() * pointsPerMillimetre,
                    legend.topMillimetres() * pointsPerMillimetre,
                    legend.capHeightMillimetres()
                            * pointsPerMillimetre
                            / glyphs.face().capHeight(),
                    legend.quarterTurns(),
                    legend.text());
        }
        return page;
    }

    private static String filmBoxes(Sheet sheet) {
        PixelRect whole = new PixelRect(0, 0, sheet.widthPixels(), sheet.heightPixels());
        return "/MediaBox" + box(sheet, whole) + "/CropBox" + box(sheet, whole) + "/BleedBox"
                + box(sheet, around(sheet.image(), sheet.plate())) + "/TrimBox" + box(sheet, sheet.plate());
    }

    /** A bleed box encloses its trim box: where the art falls short of the plate, the plate's own edge stands in. */
    private static PixelRect around(PixelRect image, PixelRect plate) {
        int left = Math.min(image.left(), plate.left());
        int top = Math.min(image.top(), plate.top());
        return new PixelRect(
                left,
                top,
                Math.max(image.right(), plate.right()) - left,
                Math.max(image.bottom(), plate.bottom()) - top);
    }

    private static String box(Sheet sheet, PixelRect rect) {
        return "["
                + PdfWords.numbers(
                        points(sheet, rect.left()),
                        points(sheet, sheet.heightPixels() - rect.bottom()),
                        points(sheet, rect.right()),
                        points(sheet, sheet.heightPixels() - rect.top()))
                + "]";
    }

    private static double points(Sheet sheet, int pixels) {
        return pixels * Lengths.POINTS_PER_INCH / sheet.resolution().dotsPerInch();
    }

    private static String page(int parent, String boxes, String pictures, int font, int content) {
        String fonts = font == 0 ? "" : "/Font<</T " + PdfObjects.reference(font) + ">>";
        return "<</Type/Page/Parent " + PdfObjects.reference(parent) + boxes + "/Resources<<" + fonts + pictures
                + ">>/Contents " + PdfObjects.reference(content) + ">>";
    }

    private static String catalog(Head document, List<Attachment> attached, PdfObjects objects, int pages)
            throws IOException {
        byte[] profile = GreyProfile.bytes();
        int profileNumber = objects.addDeflated("/N 1", profile);
        byte[] metadata = metadata(document).getBytes(StandardCharsets.UTF_8);
        int metadataNumber = objects.addStream("/Type/Metadata/Subtype/XML", metadata);
        return "<</Type/Catalog/Pages " + PdfObjects.reference(pages) + "/Lang(en)/Metadata "
                + PdfObjects.reference(metadataNumber) + "/OutputIntents[<</Type/OutputIntent/S/GTS_PDFA1"
                + "/OutputConditionIdentifier(Custom)/Info(Film grey, gamma 2.2)/DestOutputProfile "
                + PdfObjects.reference(profileNumber) + ">>]/ViewerPreferences<</PrintScaling/None/Duplex/Simplex"
                + "/PickTrayByPDFSize true/DisplayDocTitle true>>" + attachments(attached, document.date(), objects)
                + ">>";
    }

    private static String attachments(List<Attachment> attached, LocalDate day, PdfObjects objects) throws IOException {
        if (attached.isEmpty()) {
            return "";
        }
        List<Attachment> sorted = new ArrayList<>(attached);
        sorted.sort(Comparator.comparing(Attachment::name));
        StringBuilder names = new StringBuilder();
        List<Integer> files = new ArrayList<>();
        String date = PdfWords.date(day);
        for (Attachment attachment : sorted) {
            byte[] bytes = attachment.text().getBytes(StandardCharsets.UTF_8);
            int stream = objects.addDeflated(
                    "/Type/EmbeddedFile/Subtype" + PdfWords.name(attachment.mediaType()) + "/Params<</Size "
                            + bytes.length + "/CreationDate" + date + "/ModDate" + date + ">>",
                    bytes);
            String name = "(" + attachment.name() + ")";
            int file = objects.add("<</Type/Filespec/F" + name + "/UF" + name + "/Desc"
                    + PdfWords.text(attachment.description()) + "/AFRelationship/"
                    + attachment.relationship().pdfName() + "/EF<</F " + PdfObjects.reference(stream) + "/UF "
                    + PdfObjects.reference(stream) + ">>>>");
            files.add(file);
            names.append(name).append(' ').append(PdfObjects.reference(file)).append(' ');
        }
        return "/Names<</EmbeddedFiles<</Names[" + names.toString().strip() + "]>>>>/AF[" + references(files) + "]";
    }

    private static String information(Head document) {
        String program = PdfWords.text(document.program());
        String date = PdfWords.date(document.date());
        return "<</Title" + PdfWords.text(document.title()) + "/Creator" + program + "/Producer" + program
                + "/CreationDate" + date + "/ModDate" + date + ">>";
    }

    /** What the PDF says about itself in XMP (ISO 16684-1), word for word the same as in its information dictionary. */
    private static String metadata(Head document) {
        String program = PdfWords.xml(document.program());
        String date = PdfWords.xmpDate(document.date());
        return """
                <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
                <x:xmpmeta xmlns:x="adobe:ns:meta/">
                <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                <rdf:Description rdf:about=""
                  xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
                  xmlns:dc="http://purl.org/dc/elements/1.1/"
                  xmlns:xmp="http://ns.adobe.com/xap/1.0/"
                  xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
                <pdfaid:part>3</pdfaid:part>
                <pdfaid:conformance>B</pdfaid:conformance>
                <dc:format>application/pdf</dc:format>
                <dc:title><rdf:Alt><rdf:li xml:lang="x-default">"""
                + PdfWords.xml(document.title())
                + "</rdf:li></rdf:Alt></dc:title>\n<xmp:CreatorTool>" + program
                + "</xmp:CreatorTool>\n<xmp:CreateDate>" + date + "</xmp:CreateDate>\n<xmp:ModifyDate>" + date
                + "</xmp:ModifyDate>\n<pdf:Producer>" + program
                + "</pdf:Producer>\n</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n";
    }

    private static String references(List<Integer> numbers) {
        StringBuilder text = new StringBuilder();
        for (int number : numbers) {
            text.append(text.isEmpty() ? "" : " ").append(PdfObjects.reference(number));
        }
        return text.toString();
    }
}
