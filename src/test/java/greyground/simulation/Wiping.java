package greyground.simulation;

import java.util.Random;

/** Uneven wiping: a slant, a dome and bands of lightness over a plate, about none at its middle. */
record Wiping(double slantX, double slantY, double dome, double bands, double spacing, double phase, double turn) {
    /** Up to about 3 L* in all; every third plate is wiped evenly but for half a unit. */
    static Wiping of(Random random) {
        double size = random.nextInt(3) == 0 ? 0.15 : 0.4 + 0.6 * random.nextDouble();
        return new Wiping(
                size * 1.2 * (2 * random.nextDouble() - 1),
                size * 1.2 * (2 * random.nextDouble() - 1),
                size * 1.5 * (2 * random.nextDouble() - 1),
                size * 0.5 * random.nextDouble(),
                12 + 30 * random.nextDouble(),
                2 * Math.PI * random.nextDouble(),
                Math.PI * random.nextDouble());
    }

    /**
     * Change of L*.
     *
     * @param across place over half the plate's width, -1 to 1
     * @param down likewise
     * @param xMillimetres place for the bands
     */
    double at(double across, double down, double xMillimetres, double yMillimetres) {
        double along = xMillimetres * Math.cos(turn) + yMillimetres * Math.sin(turn);
        return slantX * across
                + slantY * down
                + dome * ((across * across + down * down) / 2 - 1.0 / 3)
                + bands * Math.sin(2 * Math.PI * along / spacing + phase);
    }
}
