package greyground.bench;

import greyground.plate.PlateTiming;

/** Times the virtual plate. {@code taskset -c 0} gives the figures to the pixel and core. */
public final class PlateBench {
    private PlateBench() {}

    /** Runs it. */
    public static void main(String[] arguments) {
        PlateTiming.run();
    }
}
