package greyground;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * How much of a long sweep is run: a tenth in {@code mvn verify}, all of it in {@code mvn -P long verify}, as {@code .ci/run} does.
 *
 * <p>The tenth is drawn with a fixed seed, one of every ten cases that follow each other, so that it is the same on every machine and
 * reaches all kinds of a list in order.
 */
public final class Sweep {
    private static final int ONE_IN = 10;
    private static final boolean WHOLE = Boolean.getBoolean("sweep.whole");

    private Sweep() {}

    /** The cases to run, in their order; at least one. */
    public static <T> List<T> of(List<T> all) {
        if (WHOLE) {
            return all;
        }
        Random random = new Random(all.size());
        List<T> some = new ArrayList<>();
        for (int first = 0; first < all.size(); first += ONE_IN) {
            some.add(all.get(first + random.nextInt(Math.min(ONE_IN, all.size() - first))));
        }
        return some;
    }

    /** Whether all of every sweep is run. */
    public static boolean isWhole() {
        return WHOLE;
    }

    /** Of rounds that are numbered from 0, and seeded by their numbers, those to run. */
    public static List<Integer> rounds(int all) {
        return of(IntStream.range(0, all).boxed().toList());
    }

    /** What tells another Java to run as much as this one. */
    public static String option() {
        return "-Dsweep.whole=" + WHOLE;
    }
}
