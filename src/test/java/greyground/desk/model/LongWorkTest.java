package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class LongWorkTest {
    private final BlockingQueue<Runnable> news = new LinkedBlockingQueue<>();
    private final List<String> heard = new ArrayList<>();
    private final LongWork work = new LongWork("film", news::add);

    private final LongWork.News<String> listener = new LongWork.News<>(
            done -> heard.add("progress " + done),
            made -> heard.add("done " + made),
            words -> heard.add("failed: " + words),
            () -> heard.add("stopped"));

    private void hear() throws InterruptedException {
        Runnable next = news.poll(60, TimeUnit.SECONDS);
        assertNotNull(next, "no news");
        next.run();
    }

    /** Begins work that waits, does this to it, and lets it go on to its end. */
    private void during(Runnable act, boolean asks) throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        work.start(
                watch -> {
                    begun.countDown();
                    while (goOn.getCount() > 0) {
                        Thread.onSpinWait();
                    }
                    if (asks) {
                        watch.accept(0.5);
                    }
                    return "it";
                },
                listener);
        assertTrue(begun.await(60, TimeUnit.SECONDS));
        act.run();
        goOn.countDown();
    }

    @Test
    void goesOnAndEnds() throws Exception {
        during(() -> {}, true);
        hear();
        assertTrue(work.isRunning());
        hear();
        assertEquals(List.of("progress 0.5", "done it"), heard);
        assertFalse(work.isRunning());
    }

    @Test
    void stoppedWorkRunsUntilItHasEndedAndSaysSo() throws Exception {
        during(work::stop, true);
        assertTrue(work.isRunning());
        hear();
        assertEquals(List.of("stopped"), heard);
        assertFalse(work.isRunning());
    }

    /** Its film is there then, and must not be called unwritten. */
    @Test
    void workThatEndsBeforeItNoticesTheStopIsDone() throws Exception {
        during(work::stop, false);
        hear();
        assertEquals(List.of("done it"), heard);
    }

    @Test
    void forgottenWorkIsNotHeardOfAgain() throws Exception {
        for (boolean asks : new boolean[] {true, false}) {
            during(work::forget, asks);
            assertFalse(work.isRunning());
            hear();
            assertEquals(List.of(), heard);
        }
    }

    @Test
    void newWorkForgetsTheOld() throws Exception {
        during(() -> work.start(watch -> "other", listener), true);
        hear();
        hear();
        assertEquals(List.of("done other"), heard);
        assertFalse(work.isRunning());
    }

    @Test
    void closingWaitsUntilTheWorkHasEnded() throws Exception {
        List<String> ended = new CopyOnWriteArrayList<>();
        CountDownLatch begun = new CountDownLatch(1);
        work.start(
                watch -> {
                    begun.countDown();
                    try {
                        while (true) {
                            watch.accept(0.5);
                        }
                    } finally {
                        ended.add("ended");
                    }
                },
                listener);
        assertTrue(begun.await(60, TimeUnit.SECONDS));
        work.close();
        assertEquals(List.of("ended"), ended);
    }

    @Test
    void everyEndIsHeardOfInOneLine() throws Exception {
        List<Throwable> faults = List.of(
                Refusal.use("the art is \"none\"; it must be a picture"),
                new OutOfMemoryError("heap"),
                new IllegalStateException("a fault\nof two lines"),
                new StackOverflowError());
        for (Throwable fault : faults) {
            work.start(
                    watch -> {
                        if (fault instanceof Error error) {
                            throw error;
                        }
                        throw (RuntimeException) fault;
                    },
                    listener);
            hear();
            assertFalse(work.isRunning());
        }
        assertEquals(
                List.of(
                        "failed: " + faults.get(0).getMessage(),
                        "failed: there is not enough memory for this film: give Java more (-Xmx2g)",
                        "failed: an unforeseen fault; the film is not finished, please report what you did",
                        "failed: an unforeseen fault; the film is not finished, please report what you did"),
                heard);
    }
}
