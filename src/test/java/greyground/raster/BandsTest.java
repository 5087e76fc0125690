package greyground.raster;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BandsTest {
    /** With a taker that dawdles, the makers run ahead as far as they may and no farther; the bound is reached, so it is this one. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 8})
    void noMoreBandsAreMadeThanMayBeInFlight(int mostInFlight) throws IOException {
        AtomicInteger begun = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        List<Integer> taken = new ArrayList<>();
        Bands.<Integer>inOrder(
                60,
                2,
                4,
                mostInFlight,
                () -> (first, count) -> {
                    begun.incrementAndGet();
                    return first;
                },
                (first, count, band) -> {
                    int room = Math.min(30 - taken.size(), mostInFlight);
                    while (begun.get() < taken.size() + room) {
                        Thread.onSpinWait();
                    }
                    most.accumulateAndGet(begun.get() - taken.size(), Math::max);
                    taken.add(band);
                },
                Progress.NONE);
        assertEquals(30, taken.size());
        for (int i = 0; i < taken.size(); i++) {
            assertEquals(2 * i, taken.get(i));
        }
        assertEquals(mostInFlight, most.get());
    }

    /** Whatever the makers read from may be closed as soon as the work is given up. */
    @Test
    void workThatIsGivenUpHasEndedEverywhere() throws InterruptedException {
        AtomicBoolean closed = new AtomicBoolean();
        AtomicBoolean readAfterwards = new AtomicBoolean();
        AtomicInteger atWork = new AtomicInteger();
        CountDownLatch second = new CountDownLatch(1);
        assertThrows(
                CancellationException.class,
                () -> Bands.<Integer>inOrder(
                        100,
                        1,
                        3,
                        () -> (first, count) -> {
                            atWork.incrementAndGet();
                            if (first > 0) {
                                second.countDown();
                                long end = System.nanoTime() + 50_000_000;
                                while (System.nanoTime() < end) {
                                    Thread.onSpinWait();
                                }
                            }
                            readAfterwards.compareAndSet(false, closed.get());
                            atWork.decrementAndGet();
                            return first;
                        },
                        (first, count, band) -> {
                            try {
                                second.await();
                            } catch (InterruptedException never) {
                                throw new IOException(never);
                            }
                            throw new CancellationException("no longer wanted");
                        },
                        Progress.NONE));
        closed.set(true);
        assertEquals(0, atWork.get());
        Thread.sleep(60);
        assertTrue(!readAfterwards.get(), "a band was still being made");
    }

    @Test
    void whatAMakerThrowsIsThrown() {
        IOException broken = new IOException("broken");
        assertEquals(
                broken,
                assertThrows(
                        IOException.class,
                        () -> Bands.<Integer>inOrder(
                                3,
                                1,
                                2,
                                () -> (first, count) -> {
                                    throw broken;
                                },
                                (first, count, band) -> {},
                                Progress.NONE)));
        assertThrows(
                StackOverflowError.class,
                () -> Bands.<Integer>inOrder(
                        3,
                        1,
                        2,
                        () -> (first, count) -> {
                            throw new StackOverflowError();
                        },
                        (first, count, band) -> {},
                        Progress.NONE));
    }
}
