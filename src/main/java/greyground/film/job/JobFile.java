package greyground.film.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.json.KeptField;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The job as a plain JSON file, units in the names of its fields, always in the same order; the same job gives the same bytes.
 * Unknown fields are kept and written back. {@link JobFields} says what stands where.
 */
public final class JobFile {
    /** The newest format that this program writes and reads. */
    public static final int VERSION = 1;

    private static final String KIND = "job";

    private JobFile() {}

    /** The job as the text of its file. */
    public static String text(Job job) {
        return JsonText.print(tree(job));
    }

    /** The job as a tree, in the file's order. */
    public static ObjectNode tree(Job job) {
        ObjectNode file = JsonText.object();
        file.put("greyground", KIND);
        file.put("version", VERSION);
        JobDraft draft = new JobDraft(job);
        JobFields.ALL.forEach(field -> write(field, draft, file));
        for (KeptField kept : job.kept()) {
            holder(file, kept.place()).set(kept.name(), JsonText.parse("kept field " + kept.name(), kept.json()));
        }
        return file;
    }

    private static <T> void write(JobField<T> field, JobDraft draft, ObjectNode file) {
        List<String> place = field.place();
        if (!place.isEmpty()) {
            int last = place.size() - 1;
            field.kind().write(holder(file, place.subList(0, last)), place.get(last), field.get(draft));
        }
    }

    private static ObjectNode holder(ObjectNode file, List<String> place) {
        ObjectNode holder = file;
        for (String name : place) {
            holder = holder.get(name) instanceof ObjectNode inner ? inner : holder.putObject(name);
        }
        return holder;
    }

    /** Reads a job from the text of its file; a missing field takes its usual value, except the plate, which must be there. */
    public static Job read(String text) {
        JsonFields file = new JsonFields(KIND, List.of(), JsonText.read(KIND, VERSION, text));
        file.integer("version", 1, 1, VERSION);
        file.word("greyground", KIND);
        Map<String, JsonFields> sections = new HashMap<>();
        JobDraft draft = new JobDraft();
        JobFields.ALL.forEach(field -> read(field, draft, file, sections));
        draft.kept = file.unknown();
        return draft.job();
    }

    private static <T> void read(JobField<T> field, JobDraft draft, JsonFields file, Map<String, JsonFields> sections) {
        List<String> place = field.place();
        if (!place.isEmpty()) {
            JsonFields in = place.size() == 1 ? file : sections.computeIfAbsent(place.get(0), file::section);
            field.set(draft, field.kind().read(in, place.get(place.size() - 1), field.get(draft)));
        }
    }
}
