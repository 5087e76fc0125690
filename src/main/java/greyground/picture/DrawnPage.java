package greyground.picture;

import java.io.IOException;
import java.io.OutputStream;

/** A diagram that can be had as SVG, as pixels and as a PDF. */
public interface DrawnPage {
    /** As SVG. */
    String svg();

    /** As pixels. */
    Picture picture();

    /** As a PDF of one page; the stream stays open. */
    void writePdf(OutputStream out) throws IOException;
}
