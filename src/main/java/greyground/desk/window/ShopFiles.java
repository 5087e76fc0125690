package greyground.desk.window;

import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.desk.model.KeptWorkshops;
import greyground.desk.model.Messages;
import java.nio.file.Path;
import java.util.Optional;

/** Workshops as files: those that keep themselves under a name, and those that the person chooses and saves. */
final class ShopFiles {
    private static final String WORKSHOP = "workshop";

    private final DeskServices services;
    private final BenchModel model;
    private final DeskFiles files;
    private final Messages messages;
    private final DeskWindow desk;
    private final KeptWorkshops workshops;

    ShopFiles(DeskServices services, BenchModel model, DeskFiles files, DeskWindow desk) {
        this.services = services;
        this.model = model;
        this.files = files;
        this.messages = desk.messages;
        this.desk = desk;
        this.workshops = new KeptWorkshops(services.folder());
    }

    void ask() {
        services.files()
                .open("Use the numbers of a workshop", FileAsking.Kind.WORKSHOP)
                .ifPresent(this::open);
    }

    /** Uses another workshop, once nothing unsaved of this one stands in the way. */
    void open(Path file) {
        keep();
        Runnable then = () -> files.attempt(() -> {
            model.openWorkshop(file);
            desk.habits.keep(WORKSHOP, workshops.name(file).orElse(""));
        });
        if (model.workshopUnsaved()) {
            String words = "The workshop is not saved; " + file.getFileName() + " would take its place.";
            files.askToSave(words, this::save, then, then);
        } else {
            then.run();
        }
    }

    KeptWorkshops byName() {
        return workshops;
    }

    /** Begins with the workshop that was used by name at last. */
    void begin() {
        String name = desk.habits.word(WORKSHOP);
        if (workshops.names().contains(name)) {
            files.attempt(() -> model.beginWith(workshops.file(name)));
        }
    }

    /** Uses the workshop of a name. */
    void use(String name) {
        files.attempt(() -> open(workshops.file(name)));
    }

    /** Keeps the workshop's numbers under a name, from now on by itself. */
    void name(String name) {
        files.attempt(() -> {
            Path file = workshops.make(name);
            model.saveWorkshop(file);
            desk.habits.keep(WORKSHOP, name.strip());
            messages.done(
                    "the workshop is called " + name.strip() + " now, and is kept by itself in " + file.getParent());
        });
    }

    /** Writes the workshop if it keeps itself and has changed. */
    void keep() {
        files.attempt(() -> model.keepWorkshop(workshops, services.today().get())
                .ifPresent(other -> messages.done(
                        "another window had changed this workshop: its numbers are kept as " + other.getFileName())));
    }

    boolean save() {
        Optional<Path> file = model.workshopFile();
        if (file.isEmpty()) {
            file = services.files().save("Save the workshop", FileAsking.Kind.WORKSHOP, "workshop.json");
        }
        file.ifPresent(each -> files.attempt(() -> {
            Optional<Path> kept = model.saveWorkshop(each);
            messages.done("workshop saved: " + each.getFileName()
                    + kept.map(other ->
                                    "; another program had changed it: its numbers are kept as " + other.getFileName())
                            .orElse(""));
        }));
        return !model.workshopUnsaved();
    }
}
