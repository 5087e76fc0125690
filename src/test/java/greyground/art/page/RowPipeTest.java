package greyground.art.page;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class RowPipeTest {
    /** The decoder's own reader and the file under it are closed by its thread; the file must not be let go before. */
    @Test
    void aReaderThatIsGivenUpHasGivenBackItsFile() throws IOException {
        AtomicBoolean aborted = new AtomicBoolean();
        AtomicBoolean closed = new AtomicBoolean();
        CountDownLatch begun = new CountDownLatch(1);
        RowPipe pipe = new RowPipe(
                new RowPipe.Source() {
                    @Override
                    public void run(RowSink sink) throws IOException {
                        sink.row(new byte[8], 0, 8);
                        begun.countDown();
                        while (!aborted.get()) {
                            Thread.onSpinWait();
                        }
                        long end = System.nanoTime() + 100_000_000;
                        while (System.nanoTime() < end) {
                            Thread.onSpinWait();
                        }
                        closed.set(true);
                    }

                    @Override
                    public void abort() {
                        aborted.set(true);
                    }
                },
                8,
                20);
        try (pipe) {
            begun.await();
        } catch (InterruptedException never) {
            throw new IOException(never);
        }
        assertTrue(closed.get());
    }
}
