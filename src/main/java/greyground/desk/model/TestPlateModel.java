package greyground.desk.model;

import greyground.app.Greyground;
import greyground.app.chart.WedgeWork;
import greyground.app.files.KeptFiles;
import greyground.app.files.Lesson;
import greyground.app.files.NamedFiles;
import greyground.app.files.ShopFile;
import greyground.app.teach.ReadOutcome;
import greyground.app.teach.ReadWords;
import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A test plate at the desk: its film is made, its proof read, and its lesson taken into the workshop or left. Knows nothing of the window. */
public final class TestPlateModel {
    private static final String LAST_FILM = "test-film";

    private final DeskServices services;
    private final BenchModel bench;
    private final Messages messages;
    private final LongWork work;
    private final List<Runnable> watchers = new ArrayList<>();
    private final Map<String, String> told = new HashMap<>();
    private TestPlateKind kind = TestPlateKind.FULL;
    private String plate = TestPlateKind.FULL.usualPlate();
    private TestPlateState state = new TestPlateState.Start();
    private TestPlateState before = state;
    private @Nullable Path film;
    private @Nullable Path scan;

    public TestPlateModel(DeskServices services, BenchModel bench, Messages messages) {
        this.services = services;
        this.bench = bench;
        this.messages = messages;
        this.work = new LongWork("test plate", services.window());
        services.folder().read(LAST_FILM).ifPresent(this::remembered);
    }

    private void remembered(String name) {
        try {
            Path path = Path.of(name.strip());
            film = KeptFiles.isPdf(path) ? path : null;
        } catch (InvalidPathException spoilt) {
            film = null;
        }
    }

    /** Hears of every change, after it. */
    public void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    private void become(TestPlateState next) {
        state = next;
        List.copyOf(watchers).forEach(Runnable::run);
    }

    public TestPlateState state() {
        return state;
    }

    public TestPlateKind kind() {
        return kind;
    }

    /** The plate's size, in words. */
    public String plate() {
        return plate;
    }

    /** The test film whose proof is read: the one made last, or another that was chosen. */
    public Optional<Path> film() {
        return Optional.ofNullable(film);
    }

    public boolean isWorking() {
        return work.isRunning();
    }

    // ------------------------------------------------------------------ the film

    /** Chooses a kind; a plate of its usual size comes with it. */
    public void choose(TestPlateKind chosen) {
        if (plate.equals(kind.usualPlate())) {
            plate = chosen.usualPlate();
        }
        kind = chosen;
        become(new TestPlateState.Start());
    }

    public void plate(String words) {
        if (!plate.equals(words.strip())) {
            plate = words.strip();
            become(new TestPlateState.Start());
        }
    }

    /** What the film shares with the job on the bench, in words. */
    public String sharedWords() {
        Job job = bench.state().map(BenchState::job).orElseGet(JobFields::usual);
        String whose =
                bench.state().isPresent() ? "As the job on the bench" : "As usual, while no picture is on the bench";
        String tone = FilmFields.RULING.appliesTo(job)
                ? "dots, " + Unit.LINES.words(FilmFields.RULING.of(job), false) + " lines/cm"
                : FilmFields.GRAIN
                        .of(job)
                        .map(spacing -> "grain " + Unit.MICROMETRES.words(spacing, false) + " \u00b5m")
                        .orElse("continuous tone and its screen film");
        return whose + ": " + chosen(FilmFields.PROCESS, job) + ", " + tone + ", "
                + Unit.DOTS.words(FilmFields.RESOLUTION.of(job), false) + " dpi.";
    }

    private static <T> String chosen(JobField<T> field, Job job) {
        return field.kind().ways().stream()
                .filter(way -> field.kind().is(way, field.of(job)))
                .map(Kind.Way::label)
                .findFirst()
                .orElse("");
    }

    private WedgeWork wedge() {
        return Greyground.testPlate(
                Map.of("kind", kind.word(), FilmFields.PLATE.name(), plate),
                bench.state().map(BenchState::job),
                bench.workshop(),
                services.today().get());
    }

    /** Shows the film before it is made. */
    public void preview() {
        begin("The film can't be shown", "Laying out the test film", watch -> {
            WedgeWork.Look look = wedge().look(watch::accept);
            return new TestPlateState.Film(look.sheet(), look.findings(), Optional.empty());
        });
    }

    /** Writes the film; its proof is the one that is read from now on. */
    public void make(Path file) {
        NamedFiles named = bench.named().reads("scan", scan);
        begin("The film can't be made", "Making the test film", watch -> {
            named.writes("film", file, NamedFiles.Content.FILM);
            WedgeWork wedge = wedge();
            WedgeWork.Look look = wedge.look(done -> watch.accept(done / 2));
            wedge.make(file, done -> watch.accept(0.5 + done / 2));
            return new TestPlateState.Film(look.sheet(), look.findings(), Optional.of(file));
        });
    }

    /** Reads proofs of this film from now on. */
    public void useFilm(Path file) {
        try {
            KeptFiles.chart(file);
        } catch (Refusal refused) {
            become(new TestPlateState.Refused("No test film", String.valueOf(refused.getMessage())));
            return;
        }
        remember(file);
        become(new TestPlateState.Start());
    }

    private void remember(Path file) {
        film = file.toAbsolutePath();
        services.folder().keep("name of the test film", LAST_FILM, String.valueOf(film));
    }

    // ------------------------------------------------------------------ the proof

    /** Tells of the proof: depth, paper, bite, as {@link ReadWords} reads them; empty words take it back. */
    public void tell(String what, String words) {
        if (words.isBlank()) {
            told.remove(what);
        } else {
            told.put(what, words.strip());
        }
    }

    public String told(String what) {
        return told.getOrDefault(what, "");
    }

    /** Reads a proof of the film. */
    public void read(Path picture) {
        Path testFilm = film;
        scan = picture;
        if (testFilm == null) {
            become(new TestPlateState.Refused(
                    "No test film",
                    "which test plate is it? choose the film that it was made with, then the scan again"));
            return;
        }
        Workshop shop = bench.workshop();
        ReadWords words = new ReadWords(told);
        begin("The scan was not read", "Reading " + picture.getFileName(), watch -> {
            ReadOutcome outcome = Greyground.reading(
                            testFilm, Optional.of(shop), words, services.today().get())
                    .scan(picture, Optional.empty(), true, watch::accept);
            return new TestPlateState.Read(outcome, outcome.scan(), outcome.tones());
        });
    }

    /** Reads the last scan once more, such as after the workshop has changed. */
    public void readAgain() {
        Path picture = scan;
        if (picture != null) {
            read(picture);
        }
    }

    private void begin(String refused, String what, LongWork.Work<TestPlateState> task) {
        before = state instanceof TestPlateState.Working ? before : state;
        messages.clear();
        become(new TestPlateState.Working(what, 0));
        work.start(
                task,
                new LongWork.News<>(
                        done -> become(new TestPlateState.Working(what, done)),
                        this::finished,
                        words -> become(new TestPlateState.Refused(refused, words)),
                        () -> become(before)));
    }

    private void finished(TestPlateState made) {
        if (made instanceof TestPlateState.Film shown && shown.written().isPresent()) {
            remember(shown.written().get());
            messages.done("test film written: " + shown.written().get().getFileName() + "; print it at 100 %");
        }
        become(made);
    }

    /** Stops what takes time; all is as it was before. */
    public void stop() {
        if (work.isRunning()) {
            work.forget();
            become(before);
            messages.done("stopped; nothing was changed");
        }
    }

    /** Leaves what is shown. */
    public void leave() {
        become(new TestPlateState.Start());
    }

    // ------------------------------------------------------------------ the lesson

    private Optional<Lesson> lesson() {
        return state instanceof TestPlateState.Read read ? read.outcome().lesson() : Optional.empty();
    }

    /** How the lesson that was read stands to the workshop. */
    public TestPlateState.Standing standing() {
        Workshop shop = bench.workshop();
        return lesson().map(lesson -> lesson.after().equals(shop)
                        ? TestPlateState.Standing.TAKEN
                        : lesson.before().equals(shop)
                                ? TestPlateState.Standing.OFFERED
                                : TestPlateState.Standing.OVERTAKEN)
                .orElse(TestPlateState.Standing.NONE);
    }

    /** Whether the workshop's file holds the lesson. */
    public boolean isKept() {
        return bench.workshopFile().isPresent()
                && lesson().map(lesson -> bench.isSaved(lesson.after())).orElse(false);
    }

    /**
     * Takes the lesson into the workshop. Where that is a file and has nothing unsaved, the file learns it too and what it held is kept
     * beside it; else the lesson is unsaved like any other change.
     */
    public void accept() {
        Optional<Lesson> lesson = lesson();
        if (lesson.isEmpty() || standing() != TestPlateState.Standing.OFFERED) {
            return;
        }
        Lesson taught = lesson.get();
        String words = "the workshop has learned this; Save workshop keeps it in a file";
        boolean kept = false;
        boolean failed = false;
        Optional<Path> file = bench.workshopFile().filter(any -> !bench.workshopUnsaved());
        if (file.isPresent()) {
            try {
                ShopFile shop = Greyground.workshop(file.get());
                if (!shop.workshop().map(WorkshopFile::text).equals(Optional.of(WorkshopFile.text(taught.before())))) {
                    messages.cant(
                            file.get().getFileName() + " was changed by someone else meanwhile and is left as it is:"
                                    + " open that workshop again and read the scan again");
                    return;
                }
                Path old = shop.teach(taught);
                kept = true;
                words = file.get().getFileName() + " has learned this; what it held is kept as " + old.getFileName();
            } catch (Exception unwritable) {
                failed = true;
                words = "learned in this window only: " + DeskWords.fault(unwritable, "workshop's file");
            }
        }
        bench.teach("test plate " + taught.name(), taught.after(), kept);
        if (failed) {
            messages.cant(words);
        } else {
            messages.done(words);
        }
        become(state);
    }

    public void close() {
        work.close();
    }
}
