package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One setting of a job: what it is called, what it may be, what it means, where it is kept. {@link JobFields} lists all.
 *
 * @param <T> of its value
 * @param name the option's name without dashes, and the window's for programs, such as "bleed"
 * @param shape what the option takes, such as "LENGTH"; empty where it is no option
 * @param label in the window
 * @param help what it does and how to choose it
 * @param place in the job's file; empty where it has none of its own
 * @param belongs whether it means anything for a job
 * @param belongsTo which jobs those are, where others are refused; else empty
 */
public record JobField<T>(
        String name,
        String shape,
        String label,
        String help,
        Kind<T> kind,
        List<String> place,
        Function<Job, T> get,
        BiFunction<Job, T, Job> set,
        Predicate<Job> belongs,
        String belongsTo) {
    /** The shape of an option that takes a file. */
    static final String FILE = "FILE";

    /** A setting that is kept and neither typed nor shown. */
    static <T> JobField<T> of(String name, Kind<T> kind, Function<Job, T> get, BiFunction<Job, T, Job> set) {
        return new JobField<>(name, "", "", "", kind, List.of(), get, set, job -> true, "");
    }

    /** A setting that is a part of the job, by its path. */
    static <T> JobField<T> part(String name, Kind<T> kind, Function<Job, T> get, String path) {
        return of(name, kind, get, (job, value) -> job.with(path, value));
    }

    /** A number that is one. */
    static JobField<Double> part(String name, Range range, double step, Function<Job, Double> get, String path) {
        return part(name, new Kind.Measured(range, step), get, path);
    }

    /** The same for a number. */
    static JobField<Double> number(
            String name, Range range, double step, Function<Job, Double> get, BiFunction<Job, Double, Job> set) {
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
    JobField<T> where(Predicate<Job> newBelongs, String newBelongsTo) {
        return new JobField<>(name, shape, label, help, kind, place, get, set, newBelongs, newBelongsTo);
    }

    public boolean isTyped() {
        return !shape.isEmpty();
    }

    /** Whether it means anything for a job. */
    public boolean appliesTo(Job job) {
        return belongs.test(job);
    }

    /** What a job that nobody has settled has. */
    public T usual() {
        return get.apply(JobFields.USUAL);
    }

    public T of(Job job) {
        return get.apply(job);
    }

    /** The job with another value, or a refusal. */
    public Job with(Job job, T value) {
        return set.apply(job, value);
    }

    /** Its value as a number; empty where the program finds it. */
    public Optional<Double> number(Job job) {
        return kind.number(of(job));
    }

    public Job withNumber(Job job, double number) {
        kind.range().ifPresent(range -> range.check(said(), number));
        return with(job, kind.of(number));
    }

    /** Its value as it is typed, to a ten-thousandth. */
    public String text(Job job) {
        return kind.print(of(job));
    }

    /** The same, short enough for a row. */
    public String brief(Job job) {
        return kind.brief(of(job));
    }

    /** Whether it takes the name of a file that holds its value. */
    public boolean isFile() {
        return shape.equals(FILE);
    }

    /** Whether what is typed names a file, being neither one of the words it knows nor the file's text itself. */
    public boolean namesFile(String text) {
        return isFile()
                && !kind.words().contains(text.strip())
                && !text.stripLeading().startsWith("{");
    }

    public T parse(String text, Kind.Art art) {
        return kind.parse(said(), text, art);
    }

    public Job told(Job job, String text) {
        return with(job, parse(text, Kind.Art.UNKNOWN));
    }

    private String said() {
        return name.replace('-', ' ');
    }

    Job told(Job job, String text, Kind.Art art) {
        T value = parse(text, art.turned(job.art().quarterTurns()));
        if (!belongsTo.isEmpty() && !belongs.test(job)) {
            throw Refusal.use("--" + name + " belongs to " + belongsTo + ", or leave it out");
        }
        return with(job, value);
    }

    /** The value of one job for another, where it means anything there. */
    Job copied(Job from, Job to) {
        return with(to, of(from));
    }
}
