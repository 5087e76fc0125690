package greyground.picture;

import java.io.IOException;
import java.io.OutputStream;

/** A drawn page that can be handed out as lines or as pixels. */
public interface Diagram {
    /** As SVG. */
    String svg();

    /** As pixels. */
    Picture picture();

    /** As a PDF of one page; the stream stays open. */
    void writePdf(OutputStream out) throws IOException;
}
