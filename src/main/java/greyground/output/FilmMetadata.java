package greyground.output;

/** What the film PDF says about itself in XMP (ISO 16684-1), word for word the same as in its information dictionary. */
final class FilmMetadata {
    private FilmMetadata() {}

    static String of(FilmDocument document) {
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
}
