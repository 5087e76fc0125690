package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BenchWorkerTest {
    private final List<String> done = new CopyOnWriteArrayList<>();

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(20, TimeUnit.SECONDS));
        } catch (InterruptedException never) {
            throw new AssertionError(never);
        }
    }

    /** What no code foresees, and a listener that fails in its turn, end neither the thread nor the queue. */
    @Test
    void noFaultEndsTheThread() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> {
            done.add(String.valueOf(failed.getMessage()));
            throw new IllegalStateException("nobody hears this");
        })) {
            for (Throwable fault : List.of(
                    new StackOverflowError("deep"),
                    new NoClassDefFoundError("gone"),
                    new AssertionError("false"),
                    new OutOfMemoryError("full"),
                    new IllegalStateException("odd"))) {
                worker.ask(BenchWorker.Kind.PLATE, watch -> {
                    if (fault instanceof Error error) {
                        throw error;
                    }
                    throw (RuntimeException) fault;
                });
                untilIdle(worker);
            }
            worker.ask(BenchWorker.Kind.PLATE, watch -> done.add("plate"));
            untilIdle(worker);
            assertEquals(List.of("deep", "gone", "false", "full", "odd", "plate"), done);
        }
    }

    @Test
    void closingWaitsForTheLastWork() {
        CountDownLatch begun = new CountDownLatch(1);
        BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()));
        worker.ask(BenchWorker.Kind.CHECK, endless("check", begun));
        await(begun);
        worker.close(watch -> done.add("closed"));
        assertEquals(List.of("closed"), done);
    }

    private static void untilIdle(BenchWorker worker) throws Exception {
        for (int i = 0; i < 2000 && worker.isBusy(); i++) {
            Thread.sleep(10);
        }
        assertTrue(!worker.isBusy());
    }

    /** Runs on until it is no longer wanted, but only the first time. */
    private BenchWorker.Work endless(String name, CountDownLatch begun) {
        return watch -> {
            boolean first = begun.getCount() > 0;
            begun.countDown();
            while (first) {
                Thread.onSpinWait();
                watch.accept(0);
            }
            done.add(name);
        };
    }

    @Test
    void longWorkStopsForWhatIsPressingAndBeginsAgain() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()))) {
            CountDownLatch begun = new CountDownLatch(1);
            worker.ask(BenchWorker.Kind.CHECK, endless("check", begun));
            await(begun);
            worker.ask(BenchWorker.Kind.PICTURE, watch -> done.add("picture"));
            untilIdle(worker);
            assertEquals(List.of("picture", "check"), done);
        }
    }

    @Test
    void aNewPlateEndsWhatWasMadeOfTheOld() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()))) {
            CountDownLatch begun = new CountDownLatch(1);
            worker.ask(BenchWorker.Kind.CHECK, endless("check", begun));
            await(begun);
            worker.ask(BenchWorker.Kind.PLATE, watch -> done.add("plate"));
            untilIdle(worker);
            assertEquals(List.of("plate"), done);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = BenchWorker.Kind.class,
            names = {"PLATE", "MEASURE", "BITES", "FINE_PICTURE", "CHECK"})
    void newerLongWorkOfOneKindStopsTheOlderForGood(BenchWorker.Kind kind) throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()))) {
            CountDownLatch begun = new CountDownLatch(1);
            worker.ask(kind, endless("older", begun));
            await(begun);
            worker.ask(kind, watch -> done.add("newer"));
            untilIdle(worker);
            assertEquals(List.of("newer"), done);
        }
    }

    /** What was near is dropped when one goes afar; the picture from afar must not bring it back. */
    @Test
    void whatWasDroppedDoesNotBeginAgainForWhatIsPressing() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()))) {
            CountDownLatch begun = new CountDownLatch(1);
            worker.ask(BenchWorker.Kind.FINE_PICTURE, endless("near", begun));
            await(begun);
            synchronized (worker) {
                worker.drop(BenchWorker.Kind.FINE_PICTURE);
                worker.ask(BenchWorker.Kind.PICTURE, watch -> done.add("afar"));
            }
            untilIdle(worker);
            assertEquals(List.of("afar"), done);
        }
    }

    @Test
    void onlyTheLatestOfAKindIsDoneAndShortWorkIsLetEnd() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(failed.toString()))) {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch asked = new CountDownLatch(1);
            worker.ask(BenchWorker.Kind.LOUPE, watch -> {
                begun.countDown();
                await(asked);
                watch.accept(0.5);
                done.add("first");
            });
            await(begun);
            for (int i = 0; i < 50; i++) {
                int own = i;
                worker.ask(BenchWorker.Kind.LOUPE, watch -> done.add("loupe " + own));
                worker.ask(BenchWorker.Kind.TONE, watch -> done.add("tone " + own));
            }
            asked.countDown();
            untilIdle(worker);
            assertEquals(List.of("first", "tone 49", "loupe 49"), done);
        }
    }

    @Test
    void aFaultIsToldAndTheThreadWorksOn() throws Exception {
        try (BenchWorker worker = new BenchWorker(failed -> done.add(String.valueOf(failed.getMessage())))) {
            worker.ask(BenchWorker.Kind.PLATE, watch -> {
                throw new IllegalStateException("broken");
            });
            untilIdle(worker);
            worker.ask(BenchWorker.Kind.PLATE, watch -> done.add("plate"));
            untilIdle(worker);
            assertEquals(List.of("broken", "plate"), done);
        }
    }
}
