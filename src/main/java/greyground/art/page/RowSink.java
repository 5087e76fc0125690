package greyground.art.page;

import java.io.IOException;

/** Takes rows of unpacked samples from a decoder that can't be asked for them. */
@FunctionalInterface
public interface RowSink {
    /** Takes the next row; its bytes are used up when this returns. */
    void row(byte[] bytes, int offset, int count) throws IOException;
}
