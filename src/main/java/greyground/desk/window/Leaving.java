package greyground.desk.window;

import greyground.desk.look.Question;
import java.util.List;

/** Whether the window may close: not while a film is made or printed, nor with unsaved work, unless the person says so. */
final class Leaving {
    private final DeskFrame frame;
    private final DeskFiles files;
    private final ExportBar export;
    private final PrintingStrip printing;

    Leaving(DeskFrame frame, DeskFiles files, ExportBar export, PrintingStrip printing) {
        this.frame = frame;
        this.files = files;
        this.export = export;
        this.printing = printing;
    }

    /** Whether the window may close now; if not, the person is asked, and {@code close} follows the answer. */
    boolean mayClose(Runnable close) {
        if (export.isWorking()) {
            askToStop("A film is being made; closing stops it, and nothing of it is written.", export::stop, close);
            return false;
        }
        if (printing.isWorking()) {
            askToStop("A film is being printed; closing stops it.", printing::leave, close);
            return false;
        }
        return files.mayLeave("closing", close);
    }

    private void askToStop(String words, Runnable stop, Runnable close) {
        frame.ask(
                words,
                List.of(
                        new Question.Answer("Stop and close", () -> {
                            stop.run();
                            if (files.mayLeave("closing", close)) {
                                close.run();
                            }
                        }),
                        new Question.Answer("Wait for it", () -> {})));
    }
}
