package greyground.plate;

import greyground.plate.edge.*;
import java.util.Random;
import java.util.concurrent.TimeUnit;
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
import org.openjdk.jmh.annotations.Warmup;

/**
 * Nanoseconds to the plate pixel of each loop that a virtual plate runs through, on one thread, by JMH: see {@code
 * greyground.bench.FilmKernels} for how they are run.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class PlateKernels {
    private static final int SIDE = 1500;
    private static final int PIXELS = SIDE * SIDE;

    private final Grid grid = new Grid(SIDE, SIDE, 4.5, Rim.WRAPPED);
    private final boolean[] grain = new boolean[PIXELS];
    private final float[] dose = new float[PIXELS];
    private final float[] well = new float[PIXELS];

    /** Noise softened to dots of about 180 um, half of them black. */
    @Setup
    public void prepare() {
        Random random = new Random(3);
        float[] noise = new float[PIXELS];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        float[] smooth = Softening.gaussian(noise, grid, 30);
        for (int i = 0; i < PIXELS; i++) {
            grain[i] = smooth[i] > 0;
            dose[i] = (float) Math.exp(smooth[i]);
            well[i] = grain[i] ? 40 : 0;
        }
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public Object distance() {
        return Distance.squaredPixels(grain, true, grid);
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public Object edgeDistance() {
        return EdgeDistance.micrometres(grain, false, new DoseEdge(dose, 1), grid);
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public Object wipe() {
        return Studio.WIPE.ink(well, grid);
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public Object blur() {
        return Softening.gaussian(well, grid, 8);
    }

    @Benchmark
    @OperationsPerInvocation(PIXELS)
    public Object inkOnPaper() {
        return Studio.INK.onPaper(well, grid);
    }
}
