package greyground.desk.window;

import greyground.app.files.KeptFiles;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.LivePicture;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskServices;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FileAsking;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Messages;
import greyground.desk.model.Messages.Answer;
import greyground.desk.model.RecentFiles;
import greyground.desk.model.Recovery;
import greyground.film.job.Job;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Opening, saving and leaving: asks before anything unsaved would be lost, and says what can't be done. */
final class DeskFiles {
    private static final int MOST_ASKED = 5;
    private static final int LONGEST_NAME = 28;

    private final DeskServices services;
    private final BenchModel model;
    private final LiveDesk live;
    private final Messages messages;
    private final DeskWindow desk;
    private final RecentFiles recent;
    private final Recovery recovery;
    private String wantedDigest = "";
    private @Nullable Path laid;

    DeskFiles(DeskServices services, BenchModel model, LiveDesk live, Recovery recovery, DeskWindow desk) {
        this.services = services;
        this.model = model;
        this.live = live;
        this.messages = desk.messages;
        this.desk = desk;
        this.recent = new RecentFiles(services.folder());
        this.recovery = recovery;
    }

    /** A file has been opened, or made of what lies here: it heads the list of recent ones. */
    private void lay(Path file) {
        recent.add(file);
        laid = file;
    }

    /** Keeps a small picture of what lies here, for the list of recent files. */
    void keepPicture(LivePicture small) {
        Path file = laid;
        if (file != null) {
            recent.keepPicture(file, small);
        }
    }

    Optional<LivePicture> pictureOf(Path file) {
        return recent.picture(file);
    }

    List<Path> recent() {
        return recent.present();
    }

    /** Asks which of the files opened lately to open again. */
    void askRecent() {
        List<Answer> answers = new ArrayList<>();
        for (Path file : recent().stream().limit(MOST_ASKED).toList()) {
            answers.add(new Answer(shortened(String.valueOf(file.getFileName())), () -> open(file)));
        }
        answers.add(new Answer("None of them", () -> {}));
        messages.ask(
                answers.size() == 1 ? "There are no recent files." : "Recent files:", answers.toArray(Answer[]::new));
    }

    private static String shortened(String name) {
        return name.length() <= LONGEST_NAME
                ? name
                : name.substring(0, LONGEST_NAME - 13) + "\u2026" + name.substring(name.length() - 12);
    }

    void attempt(Attempt attempt) {
        try {
            attempt.run();
        } catch (Refusal refused) {
            messages.cant(String.valueOf(refused.getMessage()));
        } catch (Exception unforeseen) {
            messages.cant(DeskWords.fault(unforeseen, "work"));
        }
    }

    interface Attempt {
        void run() throws IOException;
    }

    // ------------------------------------------------------------------ opening

    void askOpen() {
        services.files()
                .open("Open a picture, a job or a film", FileAsking.Kind.ANY)
                .ifPresent(this::open);
    }

    /** Asks what to do about work that is not saved: {@code saved} follows once it is, {@code thrown} where it needn't be. */
    void askToSave(String words, BooleanSupplier save, Runnable saved, Runnable thrown) {
        messages.ask(
                words,
                new Answer("Save first", () -> {
                    if (save.getAsBoolean()) {
                        saved.run();
                    }
                }),
                new Answer("Don't save", thrown),
                new Answer("Stay here", () -> {}));
    }

    /** Opens whatever the file is, once nothing unsaved stands in the way. */
    void open(Path file) {
        if (isWorkshop(file)) {
            desk.shops.open(file);
        } else if (mayLeave("opening " + file.getFileName(), () -> openNow(file))) {
            openNow(file);
        }
    }

    private void openNow(Path file) {
        attempt(() -> {
            if (KeptFiles.isSet(file)) {
                throw Refusal.use(
                        file.getFileName() + " is a set of plates, and the window shows one: 'greyground proof "
                                + file.getFileName() + "' shows their print in colour");
            }
            if (KeptFiles.isPdf(file)) {
                Workshop workshop = KeptFiles.workshop(file);
                findArt(file, KeptFiles.job(file), Optional.of(workshop), null);
            } else if (start(file).stripLeading().startsWith("{")) {
                findArt(file, KeptFiles.job(file), Optional.empty(), file);
            } else {
                String today = services.today().get().toString();
                Workshop workshop = model.workshop();
                read(
                        file,
                        source ->
                                BenchState.fresh(file, source, workshop, today).job(),
                        source -> {
                            wantedDigest = "";
                            BenchState fresh = BenchState.fresh(file, source, model.workshop(), today);
                            model.lay(desk.news.onUsualPlate(fresh), null);
                            lay(file);
                            desk.arrival.ask();
                        });
            }
        });
    }

    /** Reads a picture; only one that could be read takes the place of what lies on the bench. */
    private void read(Path art, Function<SourceArt, Job> job, Consumer<SourceArt> then) {
        live.open(art, source -> job.apply(source).art(), source -> attempt(() -> then.accept(source)), why -> {
            messages.cant(why, new Answer("Open another", this::askOpen));
            desk.news.showAgain();
        });
    }

    private static String start(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(400), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            return "";
        }
    }

    private static boolean isWorkshop(Path file) {
        String start = start(file);
        return start.stripLeading().startsWith("{") && start.matches("(?s).*\"greyground\"\\s*:\\s*\"workshop\".*");
    }

    /** A job names its picture, which is looked for beside it, then asked for. */
    private void findArt(Path file, Job job, Optional<Workshop> workshop, @Nullable Path jobFile) {
        String name = job.art().fileName();
        Path beside = file.resolveSibling(name.isEmpty() ? "." : name);
        Optional<Path> known = model.state()
                .map(BenchState::art)
                .filter(art -> !name.isEmpty() && name.equals(String.valueOf(art.getFileName())));
        if (!name.isEmpty() && Files.isRegularFile(beside)) {
            layJob(beside, file, job, workshop, jobFile);
        } else if (known.isPresent()) {
            layJob(known.get(), file, job, workshop, jobFile);
        } else {
            askPicture(
                    file.getFileName() + " was made from " + (name.isEmpty() ? "a picture" : name)
                            + ", which is not beside it.",
                    name,
                    "Leave it unopened",
                    art -> layJob(art, file, job, workshop, jobFile));
        }
    }

    private void askPicture(String words, String name, String otherwise, Consumer<Path> found) {
        messages.ask(
                words,
                new Answer(
                        "Find the picture",
                        () -> services.files()
                                .open("Find the picture " + name, FileAsking.Kind.PICTURE)
                                .ifPresent(found)),
                new Answer(otherwise, () -> {}));
    }

    private void layJob(Path art, Path file, Job job, Optional<Workshop> workshop, @Nullable Path jobFile) {
        read(art, source -> job, source -> {
            wantedDigest = job.art().sha256();
            BenchState fresh = new BenchState(art, source, job, workshop.orElse(model.workshop()));
            model.lay(fresh.under(job), jobFile);
            lay(file);
        });
    }

    /** Says so when the picture is not the one that a job was made for. */
    void compare(Job settled) {
        if (!wantedDigest.isEmpty() && !wantedDigest.equals(settled.art().sha256())) {
            messages.cant(
                    "this is not the picture that the job was made from, though it has its name: look before you print");
        }
        wantedDigest = "";
    }

    // ------------------------------------------------------------------ saving

    boolean saveJob() {
        return model.jobFile().map(this::saveTo).orElseGet(this::saveJobAs);
    }

    boolean saveJobAs() {
        if (model.state().isEmpty()) {
            return false;
        }
        return services.files()
                .save("Save the job", FileAsking.Kind.JOB, suggested(".json"))
                .map(this::saveTo)
                .orElse(false);
    }

    private boolean saveTo(Path file) {
        attempt(() -> {
            model.saveJob(file);
            lay(file);
            messages.done("job saved: " + file.getFileName());
        });
        return !model.jobUnsaved();
    }

    /** A film has been made of what lies here. */
    void made(Path film) {
        recent.add(film);
    }

    /** A name for a new file: the title's own letters. */
    String suggested(String ending) {
        String title = model.state().map(state -> state.job().title()).orElse("");
        String name =
                title.strip().replaceAll("[\\\\/:*?\"<>|\\p{Cntrl}]+", " ").strip();
        return (name.isEmpty() ? "plate" : name) + ending;
    }

    String title() {
        return model.state()
                .map(state -> state.art().getFileName()
                        + model.jobFile()
                                .map(file -> ", job " + file.getFileName())
                                .orElse("")
                        + (model.jobUnsaved() ? " \u2013 not saved" : ""))
                .orElse("Greyground");
    }

    String longTitle() {
        return model.state().map(state -> state.art().toString()).orElse("Nothing is on the bench");
    }

    // ------------------------------------------------------------------ leaving

    /**
     * Whether what lies here may be left now. If something is unsaved, the person is asked and {@code then} follows the answer.
     *
     * @param doing what would lose it
     */
    boolean mayLeave(String doing, Runnable then) {
        desk.shops.keep();
        if (!model.unsaved()) {
            model.leave();
            return true;
        }
        String what = model.jobUnsaved()
                ? model.workshopUnsaved() ? "Job and workshop are" : "The job is"
                : "The workshop is";
        askToSave(
                what + " not saved; " + doing + " loses the changes.",
                () -> (!model.jobUnsaved() || saveJob()) && (!model.workshopUnsaved() || desk.shops.save()),
                then,
                () -> {
                    model.leave();
                    then.run();
                });
        return false;
    }

    /** Offers what a killed program left; of what can't be read, says where it lies. */
    void offerLeftWork() {
        recovery.layAside().stream()
                .findFirst()
                .ifPresent(file -> messages.cant("unsaved work was left but can't be read: it lies in " + file
                        + ", delete it or look into it with a text editor"));
        recovery.left().stream()
                .findFirst()
                .ifPresent(left -> messages.ask(
                        "Unsaved work on " + left.art().getFileName() + " was left when the program last ended.",
                        new Answer("Recover", () -> takeUp(left)),
                        new Answer("Throw away", () -> recovery.forget(left))));
    }

    private void takeUp(Recovery.Left left) {
        if (Files.isRegularFile(left.art())) {
            takeUp(left, left.art());
            return;
        }
        askPicture(
                "The picture " + left.art().getFileName() + " is no longer in "
                        + left.art().getParent() + "; the work needs it.",
                String.valueOf(left.art().getFileName()),
                "Not now",
                found -> takeUp(left, found));
    }

    private void takeUp(Recovery.Left left, Path art) {
        read(art, source -> left.state(art, source).job(), source -> {
            model.takeUp(left.state(art, source), left.jobFile());
            recovery.forget(left);
        });
    }
}
