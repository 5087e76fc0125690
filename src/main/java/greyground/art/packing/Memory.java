package greyground.art.packing;

import java.io.EOFException;

/** Bytes already unpacked, handed out in order. */
public final class Memory implements Unpacker {
    private final byte[] bytes;
    private int at;

    public Memory(byte[] bytes) {
        this.bytes = bytes;
    }

    @Override
    public void read(byte[] into, int offset, int count) throws EOFException {
        if (count > bytes.length - at) {
            throw new EOFException("the picture data end early");
        }
        System.arraycopy(bytes, at, into, offset, count);
        at += count;
    }
}
