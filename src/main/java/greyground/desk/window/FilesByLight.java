package greyground.desk.window;

import greyground.desk.model.FileAsking;
import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Platform;

/** Asks for files by the system's own window in daylight, and on a page of ours under the safelight, where that window would shine white. */
final class FilesByLight implements FileAsking {
    private final DeskWindow desk;
    private final FileAsking system;
    private boolean asking;
    private Optional<Path> chosen = Optional.empty();
    private Optional<Path> folder = Optional.empty();

    FilesByLight(DeskWindow desk, FileAsking system) {
        this.desk = desk;
        this.system = system;
    }

    @Override
    public Optional<Path> open(String title, Kind kind) {
        return desk.isSafe() ? ask(title, kind, Optional.empty()) : system.open(title, kind);
    }

    @Override
    public Optional<Path> save(String title, Kind kind, String suggested) {
        return desk.isSafe() ? ask(title, kind, Optional.of(suggested)) : system.save(title, kind, suggested);
    }

    /** Lays the page and waits for its answer while the window goes on. */
    private Optional<Path> ask(String title, Kind kind, Optional<String> suggested) {
        if (asking || !Platform.canStartNestedEventLoop()) {
            return Optional.empty();
        }
        asking = true;
        Object key = new Object();
        chosen = Optional.empty();
        desk.filePage.ask(title, kind, suggested, folder.orElseGet(this::nearby), path -> {
            chosen = path;
            Platform.exitNestedEventLoop(key, key);
        });
        desk.lay(desk.filePage);
        Platform.enterNestedEventLoop(key);
        asking = false;
        Optional<Path> path = chosen;
        path.map(Path::getParent).ifPresent(parent -> folder = Optional.of(parent));
        if (desk.pages.isOpen(desk.filePage)) {
            desk.putAway();
        }
        return path;
    }

    /** Where the picture lies, or what was opened last, or nowhere. */
    private Path nearby() {
        return desk.model
                .state()
                .map(state -> state.art())
                .or(() -> desk.files.recent().stream().findFirst())
                .map(file -> file.toAbsolutePath().getParent())
                .orElseGet(() -> Path.of(System.getProperty("user.home", ".")));
    }
}
