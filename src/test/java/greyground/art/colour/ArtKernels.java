package greyground.art.colour;

import greyground.art.packing.Lzw;
import greyground.art.packing.LzwPacked;
import greyground.art.packing.Stretch;
import greyground.art.page.ArtBytes;
import greyground.art.page.Samples;
import greyground.tone.Primaries;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.DoubleUnaryOperator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Nanoseconds to the art pixel of turning colour into luminance, and to the byte of unpacking, on one thread, by JMH: see {@code greyground.bench.FilmKernels} for how
 * they are run.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ArtKernels {
    private static final int PIXELS = 1 << 18;

    private final byte[] deep = new byte[PIXELS * 6];
    private final byte[] plain = new byte[PIXELS * 3];
    private final short[] luminance = new short[PIXELS];
    private final Luminance ofDeep = luminance(2);
    private final Luminance ofPlain = luminance(1);

    private static final int SIDE = 2048;

    private final byte[] unpacked = new byte[SIDE * SIDE];
    private LzwPacked packed;
    private ArtBytes file;

    private static Luminance luminance(int bytes) {
        DoubleUnaryOperator square = value -> value * value;
        return new WeightedTables(
                new Samples(PIXELS, 1, 3, bytes, false),
                false,
                new DoubleUnaryOperator[] {square, square, square},
                Primaries.SRGB.luminances());
    }

    /** Noise: the tables' worst case, and nearly that of LZW, whose strings are of two or three bytes as in a deep photograph. */
    @Setup
    public void prepare() throws IOException {
        new Random(5).nextBytes(deep);
        new Random(6).nextBytes(plain);
        Random steps = new Random(7);
        packed = LzwPacked.of(Files.createTempFile("kernel", ".tif"), SIDE, i -> (int) (steps.nextGaussian() * 6));
        file = new ArtBytes(packed.file());
    }

    @TearDown
    public void leave() throws IOException {
        file.close();
        Files.delete(packed.file());
    }

    /** To the unpacked byte. */
    @Benchmark
    @OperationsPerInvocation(SIDE * SIDE)
    public byte[] lzw() throws IOException {
        new Lzw(new Stretch(file, packed.from(), packed.count(), false)).read(unpacked, 0, unpacked.length);
        return unpacked;
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public short[] sixteenBitColour() {
        ofDeep.convert(deep, 0, PIXELS, luminance, 0);
        return luminance;
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public short[] eightBitColour() {
        ofPlain.convert(plain, 0, PIXELS, luminance, 0);
        return luminance;
    }
}
