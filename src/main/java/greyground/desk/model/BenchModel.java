package greyground.desk.model;

import greyground.app.files.KeptFiles;
import greyground.app.files.NamedFiles;
import greyground.film.job.Job;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What lies on the bench: a job and a workshop with the way back through every change, their files, and what of them is not saved.
 * Knows nothing of the window. One thread uses it.
 */
public final class BenchModel {
    private final Recovery recovery;
    private final List<Runnable> watchers = new ArrayList<>();
    private @Nullable History<BenchState> history;
    private History<Workshop> withoutArt = new History<>(Workshop.assumed());
    private final List<Opened> opened = new ArrayList<>();
    private @Nullable Path jobFile;
    private @Nullable Path workshopFile;
    private @Nullable Job savedJob;
    private Workshop savedWorkshop = Workshop.assumed();

    public BenchModel(Recovery recovery) {
        this.recovery = recovery;
    }

    /** Another workshop took the place of one; going back past that goes back to its file. */
    private record Opened(Workshop before, Origin from, Workshop after, Origin to) {}

    /** Where a workshop came from, and what its file holds. */
    private record Origin(Optional<Path> file, Workshop saved) {}

    /**
     * A change of the workshop's numbers.
     *
     * @param what was changed, as undo names it
     */
    public record WorkshopStep(String what, Workshop before, Workshop after) {}

    /** Hears of every change, after it. */
    public void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    private void changed() {
        List.copyOf(watchers).forEach(Runnable::run);
    }

    /** What lies there; empty before a picture does. */
    public Optional<BenchState> state() {
        return Optional.ofNullable(history).map(History::present);
    }

    /** The workshop, with or without a picture. */
    public Workshop workshop() {
        return state().map(BenchState::workshop).orElseGet(withoutArt::present);
    }

    public Optional<Path> jobFile() {
        return Optional.ofNullable(jobFile);
    }

    public Optional<Path> workshopFile() {
        return Optional.ofNullable(workshopFile);
    }

    /**
     * Puts another picture on the bench; the way back begins anew.
     *
     * @param file of its job, if it comes from one
     */
    public void lay(BenchState state, @Nullable Path file) {
        boolean otherWorkshop = !state.workshop().equals(workshop());
        history = new History<>(state);
        jobFile = file;
        // A job as usual is not yet anybody's work; a job of a file is what the file holds.
        savedJob = state.job();
        // Numbers that were taught before the picture came are unsaved still; those that came with a film are in the
        // film, and no other file is to hold them.
        if (otherWorkshop) {
            workshopFile = null;
            savedWorkshop = state.workshop();
        }
        recovery.clear();
        changed();
    }

    /** Takes away what lies there, as a picture that was not opened to its end. */
    public void clear() {
        if (!workshop().equals(withoutArt.present())) {
            withoutArt.step(workshop(), "opening a picture", "");
        }
        history = null;
        jobFile = null;
        recovery.clear();
        changed();
    }

    /** Takes up work that was left unsaved: it is unsaved still. */
    public void takeUp(BenchState state, Optional<Path> file) {
        if (!state.workshop().equals(savedWorkshop)) {
            // It may have been changed on its way from another file.
            workshopFile = null;
        }
        history = new History<>(state);
        jobFile = file.orElse(null);
        savedJob = null;
        changed();
    }

    /**
     * Changes what lies there.
     *
     * @param what for undo to name
     * @param gesture see {@link History#step}
     */
    public void change(String what, String gesture, UnaryOperator<BenchState> change) {
        History<BenchState> present = history;
        if (present == null) {
            return;
        }
        BenchState next = change.apply(present.present());
        if (!next.equals(present.present())) {
            present.step(next, what, gesture);
            changed();
        }
    }

    /** Tells parts of the job anew. */
    public void tell(String what, UnaryOperator<Job> change) {
        change(what, "", state -> state.with(change));
    }

    /** What was written down at the bench about this plate. */
    public BenchNotes notes() {
        return state().map(state -> BenchNotes.of(state.job())).orElse(BenchNotes.NONE);
    }

    /** Writes something down at the bench; the film stays as it is. */
    public void note(String what, String gesture, UnaryOperator<BenchNotes> change) {
        change(
                what,
                gesture,
                state -> state.with(job -> change.apply(BenchNotes.of(job)).in(job)));
    }

    /** The gesture is over. */
    public void letGo() {
        if (history != null) {
            history.letGo();
        }
    }

    /**
     * Takes a lesson into the workshop, with or without a picture.
     *
     * @param what for undo to name
     * @param kept whether the workshop's file holds it already
     */
    void teach(String what, Workshop taught, boolean kept) {
        if (kept) {
            savedWorkshop = taught;
        }
        use(what, taught);
    }

    private void use(String what, Workshop workshop) {
        if (history == null) {
            withoutArt.step(workshop, what, "");
            changed();
        } else {
            change(what, "", state -> state.in(workshop));
        }
    }

    /** Whether the workshop's file, or the film it came with, holds just this. */
    boolean isSaved(Workshop workshop) {
        return workshop.equals(savedWorkshop);
    }

    private History<?> steps() {
        return history == null ? withoutArt : history;
    }

    public Optional<String> undoes() {
        return steps().undoes();
    }

    public Optional<String> redoes() {
        return steps().redoes();
    }

    public void undo() {
        go(() -> steps().undo());
    }

    public void redo() {
        go(() -> steps().redo());
    }

    private void go(BooleanSupplier step) {
        Workshop was = workshop();
        if (step.getAsBoolean()) {
            Workshop is = workshop();
            for (Opened each : opened) {
                if (each.after().equals(was) && each.before().equals(is)) {
                    comesFrom(each.from());
                } else if (each.before().equals(was) && each.after().equals(is)) {
                    comesFrom(each.to());
                }
            }
            changed();
        }
    }

    private void comesFrom(Origin origin) {
        workshopFile = origin.file().orElse(null);
        savedWorkshop = origin.saved();
    }

    /** Changes of the workshop's numbers that undoing would take back, latest first. */
    public List<WorkshopStep> workshopSteps() {
        History<BenchState> present = history;
        Stream<WorkshopStep> steps = present == null
                ? withoutArt.taken().stream().map(step -> new WorkshopStep(step.what(), step.before(), step.after()))
                : present.taken().stream()
                        .map(step -> new WorkshopStep(
                                step.what(),
                                step.before().workshop(),
                                step.after().workshop()));
        return steps.filter(step -> !step.before().equals(step.after())).toList();
    }

    /** Goes back to numbers that the workshop had, as a step of its own. */
    public void returnTo(Workshop earlier) {
        use("earlier numbers", earlier);
    }

    /** Whether the job is other than its file, or than it was laid down. */
    public boolean jobUnsaved() {
        return state().filter(state -> !state.job().equals(savedJob)).isPresent();
    }

    /** Whether the workshop is other than its file. */
    public boolean workshopUnsaved() {
        return !workshop().equals(savedWorkshop);
    }

    /** Whether closing now would lose anything. */
    public boolean unsaved() {
        return jobUnsaved() || workshopUnsaved();
    }

    private NamedFiles art() {
        return new NamedFiles().reads("art", state().map(BenchState::art).orElse(null));
    }

    /** The files of what lies there, as read. */
    public NamedFiles named() {
        return art().reads("job", jobFile).reads("workshop", workshopFile);
    }

    /** Writes the job; its file from now on. */
    public void saveJob(Path file) throws IOException {
        Job job = state().orElseThrow().job();
        art().reads("workshop", workshopFile).writes("job", file, NamedFiles.Content.KEPT);
        KeptFiles.saveJob(file, job);
        jobFile = file;
        savedJob = job;
        saved();
    }

    /** Writes the workshop; its file from now on. Returns where another program's change of that file is kept, if there was one. */
    public Optional<Path> saveWorkshop(Path file) throws IOException {
        Workshop workshop = workshop();
        art().reads("job", jobFile).writes("workshop", file, NamedFiles.Content.KEPT);
        Optional<Path> kept = Optional.empty();
        if (file.equals(workshopFile)) {
            kept = KeptFiles.saveWorkshop(file, savedWorkshop, workshop, LocalDate.now(ZoneId.systemDefault()));
        } else {
            KeptFiles.saveWorkshop(file, workshop);
        }
        workshopFile = file;
        savedWorkshop = workshop;
        saved();
        return kept;
    }

    /**
     * Writes the workshop where it has a name and keeps itself; what its file held before the day's first change is kept, too.
     *
     * @return where another program's change of that file is kept, if there was one
     */
    public Optional<Path> keepWorkshop(KeptWorkshops named, LocalDate day) throws IOException {
        Path file = workshopFile;
        if (file == null || named.name(file).isEmpty() || !workshopUnsaved()) {
            return Optional.empty();
        }
        named.keepEarlier(file, savedWorkshop, day);
        return saveWorkshop(file);
    }

    private void saved() {
        if (!unsaved()) {
            recovery.clear();
        }
        changed();
    }

    /** Uses the workshop of a file. */
    public void openWorkshop(Path file) {
        Workshop workshop = KeptFiles.workshop(file);
        Origin from = new Origin(workshopFile(), savedWorkshop);
        Origin to = new Origin(KeptFiles.isPdf(file) ? Optional.empty() : Optional.of(file), workshop);
        if (!workshop.equals(workshop())) {
            opened.add(new Opened(workshop(), from, workshop, to));
        }
        comesFrom(to);
        use("workshop opened", workshop);
        if (!from.equals(to)) {
            changed();
        }
    }

    /** Begins with the workshop of a file: there is no way back before it. */
    public void beginWith(Path file) {
        Workshop workshop = KeptFiles.workshop(file);
        withoutArt = new History<>(workshop);
        comesFrom(new Origin(Optional.of(file), workshop));
        changed();
    }

    /** What keeps unsaved work safe from a crash: to be run on any thread, some moments after a change. */
    public Runnable autosaving() {
        Optional<BenchState> state = state();
        Optional<Path> file = jobFile();
        int asOf = recovery.cleared();
        if (!unsaved() || state.isEmpty()) {
            // What was kept may have been taken back since.
            return recovery::clear;
        }
        return () -> recovery.keep(state.get(), file, asOf);
    }

    /** Says what to do where unsaved work is not safe from a crash; else empty. */
    public String trouble() {
        return recovery.trouble();
    }

    /** The unsaved work is let go on purpose, or everything is saved. */
    public void leave() {
        recovery.clear();
    }
}
