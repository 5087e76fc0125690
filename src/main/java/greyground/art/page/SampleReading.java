package greyground.art.page;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Reads one sample out of packed bytes. */
public final class SampleReading {
    private static final VarHandle LITTLE =
            MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

    private SampleReading() {}

    /** The two-byte sample at {@code at}, 0..65 535. */
    public static int two(byte[] bytes, int at, boolean bigEndian) {
        short value = (short) LITTLE.get(bytes, at);
        return (bigEndian ? Short.reverseBytes(value) : value) & 0xFFFF;
    }

    /** The sample at byte {@code at}. */
    public static int one(byte[] bytes, int at, Samples samples) {
        return samples.bytesPerSample() == 1 ? bytes[at] & 0xFF : two(bytes, at, samples.bigEndian());
    }

    public static void put(byte[] bytes, int at, int value, Samples samples) {
        if (samples.bytesPerSample() == 1) {
            bytes[at] = (byte) value;
        } else {
            putTwo(bytes, at, value, samples.bigEndian());
        }
    }

    /** Stores the low sixteen bits of {@code value}. */
    public static void putTwo(byte[] bytes, int at, int value, boolean bigEndian) {
        short stored = (short) value;
        LITTLE.set(bytes, at, bigEndian ? Short.reverseBytes(stored) : stored);
    }
}
