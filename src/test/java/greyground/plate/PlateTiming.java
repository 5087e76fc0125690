package greyground.plate;

import com.sun.management.OperatingSystemMXBean;
import greyground.plate.edge.*;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * Times the plate's parts on this machine; run by {@code greyground.bench.PlateBench}, which may see only what is public.
 * Processor time counts all threads, so it is the cost to the pixel and core even on a busy machine.
 */
public final class PlateTiming {
    private static final int SIDE = 4000;
    private static final int ROUNDS = 7;

    private static final OperatingSystemMXBean MACHINE =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private PlateTiming() {}

    /** Prints one line for each part. */
    public static void run() {
        Grid grid = new Grid(SIDE, SIDE, 4.5, Rim.WRAPPED);
        Random random = new Random(3);
        float[] noise = new float[grid.area()];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) random.nextGaussian();
        }
        float[] smooth = Softening.gaussian(noise, grid, 30);
        boolean[] grain = new boolean[noise.length];
        float[] dose = new float[noise.length];
        boolean[] sparse = new boolean[noise.length];
        for (int i = 0; i < grain.length; i++) {
            grain[i] = smooth[i] > 0;
            sparse[i] = noise[i] > 4.5;
            dose[i] = (float) Math.exp(smooth[i]);
        }
        float[] well = new float[noise.length];
        for (int i = 0; i < well.length; i++) {
            well[i] = grain[i] ? 40 : 0;
        }
        timeScipy(grain);
        time("distance, grain", () -> Distance.squaredPixels(grain, true, grid));
        time("distance, sparse", () -> Distance.squaredPixels(sparse, true, grid));
        time("edge distance, grain", () -> EdgeDistance.micrometres(grain, false, new DoseEdge(dose, 1), grid));
        time("wipe", () -> Studio.WIPE.ink(well, grid));
        time("blur 8 um", () -> Softening.gaussian(well, grid, 8));
        time("ink on paper", () -> Studio.INK.onPaper(well, grid));
        NoiseGrain film = new NoiseGrain(1440, 180, 2.6, 7);
        VirtualPlate plate = new VirtualPlate(Studio.etched(40, 2));
        for (int round = 0; round < 5; round++) {
            long start = System.nanoTime();
            long startBusy = MACHINE.getProcessCpuTime();
            VirtualResponse.of(plate, film);
            System.out.printf(
                    Locale.ROOT,
                    "response, 33 coverages: wall %d ms, processor %d ms%n",
                    (System.nanoTime() - start) / 1_000_000,
                    (MACHINE.getProcessCpuTime() - startBusy) / 1_000_000);
        }
    }

    /** SciPy's exact transform of the same bitmap, timed inside its own process; it uses one core. */
    private static void timeScipy(boolean[] grain) {
        String script = "import sys,time,numpy as np\n"
                + "from scipy.ndimage import distance_transform_edt as edt\n"
                + "m=np.frombuffer(sys.stdin.buffer.read(),dtype=np.uint8).reshape(" + SIDE + "," + SIDE + ")==0\n"
                + "t=[]\n"
                + "for k in range(3):\n s=time.process_time(); edt(m); t.append(time.process_time()-s)\n"
                + "print('%.1f'%(sorted(t)[1]*1e9/m.size))\n";
        byte[] bytes = new byte[grain.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (grain[i] ? 1 : 0);
        }
        try {
            Process python = new ProcessBuilder("python3", "-c", script).start();
            try (OutputStream in = python.getOutputStream()) {
                in.write(bytes);
            }
            String answer = new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            System.out.println("SciPy's distance, grain: processor " + answer.strip() + " ns/pixel (median of 3)");
        } catch (IOException absent) {
            System.out.println("SciPy is not here");
        }
    }

    private static void time(String what, Runnable work) {
        double[] wall = new double[ROUNDS];
        double[] busy = new double[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            long startBusy = MACHINE.getProcessCpuTime();
            work.run();
            wall[round] = (double) (System.nanoTime() - start) / SIDE / SIDE;
            busy[round] = (double) (MACHINE.getProcessCpuTime() - startBusy) / SIDE / SIDE;
        }
        Arrays.sort(wall);
        Arrays.sort(busy);
        System.out.printf(
                Locale.ROOT,
                "%-22s wall %.1f, processor %.1f ns/pixel (medians of %d), best processor %.1f%n",
                what,
                wall[ROUNDS / 2],
                busy[ROUNDS / 2],
                ROUNDS,
                busy[0]);
    }
}
