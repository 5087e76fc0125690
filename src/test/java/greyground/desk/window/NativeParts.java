package greyground.desk.window;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;

/**
 * Starts JavaFX without a screen. Where the system's own libraries for drawing text are missing, window tests are skipped and the
 * packages named; under CI they fail instead.
 */
final class NativeParts {
    private static final String NEEDED =
            "window tests need the system's text drawing: on Debian install libgtk-3-0, or at least libpangoft2-1.0-0";

    private static Optional<String> missing = Optional.empty();
    private static boolean started;

    private NativeParts() {}

    /** Starts it once; aborts the test where it can't start. */
    static synchronized void start() throws Exception {
        if (!started && missing.isEmpty()) {
            System.setProperty("glass.platform", "Monocle");
            System.setProperty("monocle.platform", "Headless");
            System.setProperty("headless.geometry", "2240x1440-32");
            System.setProperty("prism.order", "sw");
            System.setProperty("prism.text", "t2k");
            System.setProperty("javafx.platform", "Monocle");
            System.setProperty("testfx.robot", "glass");
            System.setProperty("testfx.headless", "true");
            try {
                CountDownLatch up = new CountDownLatch(1);
                Platform.startup(up::countDown);
                Platform.setImplicitExit(false);
                if (up.await(30, TimeUnit.SECONDS)) {
                    started = true;
                } else {
                    missing = Optional.of("JavaFX did not start within 30 s");
                }
            } catch (UnsupportedOperationException
                    | UnsatisfiedLinkError
                    | NoClassDefFoundError
                    | ExceptionInInitializerError absent) {
                missing = Optional.of(String.valueOf(absent.getMessage()));
            }
        }
        if (missing.isPresent()) {
            String words = NEEDED + " (" + missing.get() + ")";
            if ("true".equals(System.getenv("CI"))) {
                fail(words);
            }
            abort(words);
        }
    }
}
