package greyground.desk.window;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.function.Predicate;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.stage.Window;

/**
 * The real program with a hand on it, in a process of its own. {@code work ART} sets a grain of 155 um, starts the plan's first clock and then waits to be killed;
 * {@code again} starts it without a file, says what it asks, takes the work up and says the grain and the clock that it finds.
 */
final class KilledDesk {
    private KilledDesk() {}

    public static void main(String[] arguments) throws Exception {
        boolean again = arguments[0].equals("again");
        Thread hand = new Thread(() -> {
            try {
                if (again) {
                    takeUp();
                } else {
                    work();
                }
            } catch (Exception failed) {
                System.out.println("failed: " + failed);
                Runtime.getRuntime().halt(3);
            }
        });
        hand.setDaemon(true);
        hand.start();
        DeskStart.open(again ? Optional.empty() : Optional.of(Path.of(arguments[1])));
        System.exit(0);
    }

    private static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        for (int i = 0; i < 600; i++) {
            try {
                Platform.runLater(task);
                return task.get();
            } catch (IllegalStateException notYetThere) {
                Thread.sleep(50);
            }
        }
        throw new IllegalStateException("no window came up");
    }

    private static Parent root() {
        List<Window> windows = Window.getWindows();
        return windows.isEmpty() || windows.get(0).getScene() == null
                ? null
                : windows.get(0).getScene().getRoot();
    }

    /** Waits for a node that can be used. */
    private static Node waitFor(String what, Predicate<Node> wanted) throws Exception {
        for (int i = 0; i < 1200; i++) {
            Node found = onScreen(() -> {
                Parent root = root();
                Node node = root == null ? null : root.lookup(what);
                return node != null && wanted.test(node) ? node : null;
            });
            if (found != null) {
                return found;
            }
            Thread.sleep(50);
        }
        throw new IllegalStateException("waited in vain for " + what);
    }

    private static void press(String what) throws Exception {
        ButtonBase button = (ButtonBase) waitFor(what, node -> !node.isDisabled());
        onScreen(() -> {
            button.fire();
            return null;
        });
    }

    private static void work() throws Exception {
        press("#station-film");
        TextField field = (TextField)
                waitFor("#setting-grain", node -> !((TextField) node).getText().isEmpty());
        onScreen(() -> {
            field.requestFocus();
            field.setText("155");
            field.fireEvent(new javafx.event.ActionEvent());
            return null;
        });
        press("#plan-view");
        Label time = (Label) waitFor("#plan-card .clock", node -> true);
        String planned = onScreen(time::getText);
        press("#plan-card #start-clock");
        System.out.println("changed " + onScreen(field::getText) + " and started " + planned);
        System.out.flush();
        Thread.sleep(600_000);
    }

    private static void takeUp() throws Exception {
        Node question = waitFor("#question", node -> true);
        System.out.println("asks: " + onScreen(() -> ((Label) question.lookup(".label")).getText()));
        ButtonBase first = (ButtonBase) onScreen(() -> question.lookup(".button"));
        System.out.println("offers: " + first.getText());
        onScreen(() -> {
            first.fire();
            return null;
        });
        press("#station-film");
        TextField field = (TextField)
                waitFor("#setting-grain", node -> !((TextField) node).getText().isEmpty());
        System.out.println("found " + onScreen(field::getText));
        ButtonBase clock = (ButtonBase) waitFor("#strip-clock-0", node -> true);
        System.out.println("clock " + onScreen(clock::getText));
        System.out.flush();
        Runtime.getRuntime().halt(0);
    }
}
