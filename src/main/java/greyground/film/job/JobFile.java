package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import java.util.List;

/**
 * The job as a plain JSON file, units in the names of its fields, always in the same order; the same job gives the same bytes.
 * Unknown fields are kept and written back. {@link JobFields} says what stands where.
 */
public final class JobFile {
    /** The newest format that this program writes and reads. */
    public static final int VERSION = 1;

    private static final String KIND = "job";

    private JobFile() {}

    public static String text(Job job) {
        return JsonText.print(tree(job));
    }

    public static ObjectNode tree(Job job) {
        ObjectNode file = JsonText.file(KIND, VERSION);
        JobFields.ALL.forEach(field -> write(field, job, file));
        job.kept().forEach(field -> field.into(file));
        return file;
    }

    private static <T> void write(JobField<T> field, Job job, ObjectNode file) {
        List<String> place = field.place();
        // Touches at rest are left out: a job from before them is written back as it was.
        boolean touch = HandFields.LISTED.contains(field)
                || LineFields.LISTED.contains(field)
                || RetouchFields.LISTED.contains(field)
                || OutlineFields.LISTED.contains(field);
        boolean untold = touch && field.of(job).equals(field.usual());
        if (!place.isEmpty() && !untold) {
            ObjectNode in = place.size() == 1 ? file : file.withObjectProperty(place.get(0));
            field.kind().write(in, place.get(place.size() - 1), field.of(job));
        }
    }

    /** Reads a job from the text of its file; a missing field takes its usual value, except the plate, which must be there. */
    public static Job read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "correct the job file");
        Job job = JobFields.USUAL;
        for (JobField<?> field : JobFields.ALL) {
            job = read(field, job, file);
        }
        return job.keeping(file.unknown());
    }

    private static <T> Job read(JobField<T> field, Job job, JsonFields file) {
        List<String> place = field.place();
        if (place.isEmpty()) {
            return job;
        }
        JsonFields in = place.size() == 1 ? file : file.section(place.get(0));
        return field.with(job, field.kind().read(in, place.get(place.size() - 1), field.of(job)));
    }
}
