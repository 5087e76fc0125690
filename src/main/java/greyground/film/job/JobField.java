package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One setting of a job: what it is called, what it may be, what it means, where it is kept. Immutable; {@link JobFields} lists
 * all.
 *
 * @param <T> of its value
 */
public final class JobField<T> {
    private final String name;
    private final String shape;
    private final String label;
    private final String help;
    private final Kind<T> kind;
    private final List<String> place;
    private final Function<JobDraft, T> get;
    private final BiConsumer<JobDraft, T> set;
    private final Predicate<JobDraft> belongs;
    private final String belongsTo;

    private JobField(
            String name,
            String shape,
            String label,
            String help,
            Kind<T> kind,
            List<String> place,
            Function<JobDraft, T> get,
            BiConsumer<JobDraft, T> set,
            Predicate<JobDraft> belongs,
            String belongsTo) {
        this.name = name;
        this.shape = shape;
        this.label = label;
        this.help = help;
        this.kind = kind;
        this.place = place;
        this.get = get;
        this.set = set;
        this.belongs = belongs;
        this.belongsTo = belongsTo;
    }

    /** A setting that is kept and neither typed nor shown. */
    static <T> JobField<T> of(String name, Kind<T> kind, Function<JobDraft, T> get, BiConsumer<JobDraft, T> set) {
        return new JobField<>(name, "", "", "", kind, List.of(), get, set, draft -> true, "");
    }

    /** The same for a number. */
    static JobField<Double> number(
            String name, Range range, double step, Function<JobDraft, Double> get, BiConsumer<JobDraft, Double> set) {
        return of(name, new Kind.Measured(range, step), get, set);
    }

    /** The same as an option of the command line. */
    JobField<T> typed(String newShape) {
        return new JobField<>(name, newShape, label, help, kind, place, get, set, belongs, belongsTo);
    }

    /** The same with what people read of it; {@code newHelp}'s first sentence stands alone. */
    JobField<T> shown(String newLabel, String newHelp) {
        return new JobField<>(name, shape, newLabel, newHelp, kind, place, get, set, belongs, belongsTo);
    }

    /** The same at a place in the job's file. */
    JobField<T> at(String... path) {
        return new JobField<>(name, shape, label, help, kind, List.of(path), get, set, belongs, belongsTo);
    }

    /** The same for some jobs only; refused for others when {@code newBelongsTo} says which those are. */
    JobField<T> where(Predicate<JobDraft> newBelongs, String newBelongsTo) {
        return new JobField<>(name, shape, label, help, kind, place, get, set, newBelongs, newBelongsTo);
    }

    /** The option's name without dashes, and the window's for programs, such as "bleed". */
    public String name() {
        return name;
    }

    /** Whether it is an option of the command line. */
    public boolean isTyped() {
        return !shape.isEmpty();
    }

    /** What the option takes, such as "LENGTH". */
    public String shape() {
        return shape;
    }

    public String label() {
        return label;
    }

    /** What it does and how to choose it. */
    public String help() {
        return help;
    }

    public Kind<T> kind() {
        return kind;
    }

    /** Its place in the job's file; empty where it has none of its own. */
    List<String> place() {
        return place;
    }

    /** Whether it means anything for a job. */
    public boolean appliesTo(Job job) {
        return belongs.test(new JobDraft(job));
    }

    /** What a job that nobody has settled has. */
    public T usual() {
        return get.apply(new JobDraft());
    }

    /** Its value. */
    public T of(Job job) {
        return get.apply(new JobDraft(job));
    }

    /** The job with another value, or a refusal. */
    public Job with(Job job, T value) {
        JobDraft draft = new JobDraft(job);
        set.accept(draft, value);
        return draft.job();
    }

    /** Its value as a number; empty where the program finds it. */
    public Optional<Double> number(Job job) {
        return kind.number(of(job));
    }

    /** The job with another number. */
    public Job withNumber(Job job, double number) {
        kind.range().ifPresent(range -> range.check(said(), number));
        return with(job, kind.of(number));
    }

    /** Its value as it is typed, to a ten-thousandth. */
    public String text(Job job) {
        return kind.print(of(job));
    }

    /** Reads what is typed. */
    public T parse(String text, Kind.Art art) {
        return kind.parse(said(), text, art);
    }

    /** The job with what is typed instead. */
    public Job told(Job job, String text) {
        return with(job, parse(text, Kind.Art.UNKNOWN));
    }

    private String said() {
        return name.replace('-', ' ');
    }

    T get(JobDraft draft) {
        return get.apply(draft);
    }

    void set(JobDraft draft, T value) {
        set.accept(draft, value);
    }

    boolean belongs(JobDraft draft) {
        return belongs.test(draft);
    }

    /** Takes what is typed. */
    void tell(JobDraft draft, String text, Kind.Art art) {
        T value = parse(text, art.turned(draft.quarterTurns));
        if (!belongsTo.isEmpty() && !belongs(draft)) {
            throw Refusal.use("--" + name + " belongs to " + belongsTo + ", or leave it out");
        }
        set(draft, value);
    }

    /** The value of one job for another, where it means anything there. */
    Job copied(Job from, Job to) {
        return with(to, of(from));
    }
}
