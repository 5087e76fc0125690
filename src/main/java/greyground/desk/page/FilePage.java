package greyground.desk.page;

import greyground.desk.look.Controls;
import greyground.desk.model.FileAsking;
import greyground.desk.model.FolderListing;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/**
 * Files of a folder in the window's own colours, for the safelight, since the system's own window of files shines white. Up and Down choose, Enter
 * opens a folder or takes a file, Backspace goes to the folder above.
 */
public final class FilePage extends LaidPage {
    private static final double WIDEST = 860;

    private final Label title = Controls.wrapped("", "heading");
    private final Label here = Controls.wrapped("", "quiet");
    private final ListView<FolderListing.Entry> list = new ListView<>();
    private final TextField name =
            Controls.field("file-name", "Name", "A name in this folder, or a whole path", "wide");
    private final Label fault = Controls.wrapped("", "fault");
    private final ToggleButton all = Controls.toggle("All files", "file-all", "Files of every kind");
    private final Button take = Controls.mainButton("Open", "file-take", "Take this file (Enter)", this::takeTyped);
    private FolderListing listing = FolderListing.roots();
    private FileAsking.Kind kind = FileAsking.Kind.ANY;
    private Consumer<Optional<Path>> answer = path -> {};
    private boolean saves;
    private @Nullable Path replacing;

    /**
     * A page that asks nothing yet.
     *
     * @param close takes the page away
     */
    public FilePage(Runnable close) {
        super("files", close);
        list.setId("file-list");
        list.setAccessibleText("Files");
        list.setAccessibleHelp("Enter opens a folder or takes a file, Backspace goes to the folder above");
        list.setCellFactory(view -> new Line());
        list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        list.setOnMouseClicked(click -> {
            if (click.getClickCount() == 2) {
                takeChosen();
            }
        });
        list.getSelectionModel().selectedItemProperty().addListener((what, was, is) -> {
            if (is != null && !is.isFolder()) {
                name.setText(is.name());
            }
        });
        name.setOnAction(entered -> takeTyped());
        name.textProperty().addListener((what, was, is) -> say(""));
        all.setOnAction(pressed -> go(listing.folder()));
        Button up = Controls.button("Up", "file-up", "The folder above (Backspace)", this::up);
        Button home = Controls.button("Home", "file-home", "Your own folder", () -> go(Optional.of(home())));
        Button leave = Controls.button("Not now", "file-not", "Choose nothing (Escape)", close);
        HBox where = Controls.line(8, up, home, Controls.growing(here), all);
        HBox foot = Controls.line(8, Controls.label("Name"), Controls.growing(name), take, leave);
        VBox card = new VBox(12, title, where, list, fault, foot);
        card.getStyleClass().add("card");
        card.setMaxWidth(WIDEST);
        VBox.setVgrow(list, Priority.ALWAYS);
        VBox.setVgrow(card, Priority.ALWAYS);
        here.setMinWidth(0);
        getChildren().add(card);
        say("");
    }

    /** A line of the list: the name, and at its end the size. */
    private static final class Line extends ListCell<FolderListing.Entry> {
        private final Label name = new Label();
        private final Label size = Controls.label("", "size");
        private final HBox line = Controls.line(16, Controls.growing(name), size);

        Line() {
            name.setMinWidth(0);
            setPrefWidth(0);
        }

        @Override
        protected void updateItem(FolderListing.@Nullable Entry entry, boolean empty) {
            super.updateItem(entry, empty);
            setGraphic(entry == null || empty ? null : line);
            if (entry != null) {
                name.setText(entry.isFolder() ? entry.name() + "/" : entry.name());
                size.setText(entry.size());
                setAccessibleText(entry.name() + ", " + entry.size());
            }
        }
    }

    private static Path home() {
        return Path.of(System.getProperty("user.home", "."));
    }

    /**
     * Asks for a file; the page must be laid afterwards.
     *
     * @param words what is asked for
     * @param suggested a name for a file to write; empty where one is to be opened
     * @param from the folder to begin with
     * @param hears the answer, once: empty where the page was put away
     */
    public void ask(
            String words,
            FileAsking.Kind wanted,
            Optional<String> suggested,
            Path from,
            Consumer<Optional<Path>> hears) {
        kind = wanted;
        saves = suggested.isPresent();
        title.setText(words);
        take.setText(saves ? "Save" : "Open");
        all.setSelected(false);
        name.setText(suggested.orElse(""));
        answer = hears;
        go(Optional.of(Files.isDirectory(from) ? from.toAbsolutePath().normalize() : home()));
    }

    private void go(Optional<Path> folder) {
        listing = folder.map(each -> FolderListing.of(each, all.isSelected() ? null : kind))
                .orElseGet(FolderListing::roots);
        here.setText(folder.map(Path::toString).orElse("All of this system"));
        list.getItems().setAll(listing.entries());
        list.getSelectionModel().selectFirst();
        list.scrollTo(0);
        replacing = null;
        say(listing.trouble());
    }

    private void up() {
        Optional<Path> was = listing.folder();
        go(was.map(Path::getParent));
        was.ifPresent(left -> list.getItems().stream()
                .filter(entry -> entry.path().equals(left))
                .findFirst()
                .ifPresent(entry -> {
                    list.getSelectionModel().select(entry);
                    list.scrollTo(entry);
                }));
        list.requestFocus();
    }

    private void key(KeyEvent key) {
        if (key.getCode() == KeyCode.ENTER) {
            takeChosen();
            key.consume();
        } else if (key.getCode() == KeyCode.BACK_SPACE) {
            up();
            key.consume();
        }
    }

    private void takeChosen() {
        FolderListing.Entry chosen = list.getSelectionModel().getSelectedItem();
        if (chosen != null && chosen.isFolder()) {
            go(Optional.of(chosen.path()));
        } else if (chosen != null) {
            name.setText(chosen.name());
            takeTyped();
        }
    }

    private void takeTyped() {
        Optional<Path> typed = listing.typed(name.getText());
        if (typed.isEmpty()) {
            say("choose a file, or type its name");
        } else if (Files.isDirectory(typed.get())) {
            name.clear();
            go(typed);
            list.requestFocus();
        } else if (!saves && !Files.isRegularFile(typed.get())) {
            say("there is no file " + typed.get() + ": choose one of the list, or correct the name");
        } else if (saves && Files.exists(typed.get()) && !typed.get().equals(replacing)) {
            replacing = typed.get();
            say(typed.get().getFileName() + " is there already: press Save again to replace it");
        } else {
            answer(typed);
        }
    }

    private void answer(Optional<Path> path) {
        Consumer<Optional<Path>> hears = answer;
        answer = none -> {};
        hears.accept(path);
    }

    private void say(String words) {
        fault.setText(words);
        Controls.show(fault, !words.isEmpty());
    }

    @Override
    protected void opened() {
        if (saves) {
            name.requestFocus();
        } else {
            list.requestFocus();
        }
    }

    @Override
    protected void closed() {
        answer(Optional.empty());
    }
}
