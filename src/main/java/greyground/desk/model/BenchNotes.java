package greyground.desk.model;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.bite.LoggedProof;
import greyground.film.job.Job;
import greyground.json.JsonText;
import greyground.json.KeptField;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What was written down at the bench about one plate: words for the plate and for each step, and the proofs of its bite log. Kept in
 * the job, in a field of the desk's own that decides nothing of the film. Immutable.
 *
 * @param plate words for the whole plate, may be empty
 * @param steps words by the step's title, none of them empty
 * @param proofs in order of time
 */
public record BenchNotes(String plate, SortedMap<String, String> steps, List<LoggedProof> proofs) {
    static final String FIELD = "bench";

    static final BenchNotes NONE = new BenchNotes("", new TreeMap<>(), List.of());

    private static final int VERSION = 1;
    private static final int LONGEST = 4000;
    private static final int MOST_PROOFS = 50;

    public BenchNotes {
        TreeMap<String, String> said = new TreeMap<>(steps);
        said.values().removeIf(String::isEmpty);
        steps = java.util.Collections.unmodifiableSortedMap(said);
        proofs = proofs.stream()
                .sorted(Comparator.comparingDouble(LoggedProof::minutes))
                .toList();
        check(plate);
        steps.values().forEach(BenchNotes::check);
        if (proofs.size() > MOST_PROOFS) {
            throw Refusal.use("the bite log has " + proofs.size() + " proofs; it may have at most " + MOST_PROOFS
                    + ": remove some");
        }
        for (int i = 1; i < proofs.size(); i++) {
            if (proofs.get(i).minutes() == proofs.get(i - 1).minutes()) {
                throw Refusal.use(
                        "there is a proof after " + Refusal.plain(proofs.get(i).minutes())
                                + " min already: count every proof's minutes from the first minute in the bath, or remove the"
                                + " other");
            }
        }
    }

    private static void check(String words) {
        if (words.length() > LONGEST) {
            throw Refusal.use(
                    "a note has " + words.length() + " characters; it may have at most " + LONGEST + ": shorten it");
        }
    }

    public BenchNotes withPlate(String words) {
        return new BenchNotes(words.stripTrailing().isEmpty() ? "" : words, steps, proofs);
    }

    public BenchNotes withStep(String step, String words) {
        TreeMap<String, String> other = new TreeMap<>(steps);
        other.put(step, words.stripTrailing().isEmpty() ? "" : words);
        return new BenchNotes(plate, other, proofs);
    }

    public BenchNotes withProof(LoggedProof proof) {
        List<LoggedProof> other = new ArrayList<>(proofs);
        other.add(proof);
        return new BenchNotes(plate, steps, other);
    }

    public BenchNotes withoutProof(LoggedProof proof) {
        return new BenchNotes(
                plate,
                steps,
                proofs.stream().filter(each -> !each.equals(proof)).toList());
    }

    // ------------------------------------------------------------------ in the job

    /** What a job holds; nothing where it holds none, or none that this program can read. */
    public static BenchNotes of(Job job) {
        try {
            return tree(job).map(BenchNotes::read).orElse(NONE);
        } catch (Refusal unreadable) {
            return NONE;
        }
    }

    /** The job with these notes; refused where its own can't be read, since they would be lost. */
    public Job in(Job job) {
        Optional<ObjectNode> present;
        try {
            present = tree(job);
            present.ifPresent(BenchNotes::read);
        } catch (Refusal unreadable) {
            throw Refusal.failure(
                    "the notes in this job were written by another program and are left as they are: use a newer"
                            + " Greyground to change them",
                    unreadable);
        }
        Job bare = without(job);
        if (equals(NONE) && present.map(tree -> tree.size() <= 4).orElse(true)) {
            return bare;
        }
        // What else stands there is written back.
        ObjectNode tree = present.orElseGet(JsonText::object);
        tree.put("version", VERSION);
        tree.put("plate", plate);
        ObjectNode said = tree.putObject("steps");
        steps.forEach(said::put);
        ArrayNode log = tree.putArray("biteLog");
        proofs.forEach(proof -> write(proof, log.addObject()));
        List<KeptField> kept = new ArrayList<>(bare.kept());
        kept.add(new KeptField(List.of(), FIELD, tree.toString()));
        return job.keeping(kept);
    }

    /** The job as if nothing had been written down: what decides the film. */
    public static Job without(Job job) {
        return job.keeping(job.kept().stream().filter(field -> !isOurs(field)).toList());
    }

    private static boolean isOurs(KeptField field) {
        return field.place().isEmpty() && field.name().equals(FIELD);
    }

    private static Optional<ObjectNode> tree(Job job) {
        return job.kept().stream().filter(BenchNotes::isOurs).findFirst().map(field -> {
            if (JsonText.parse("notes", field.json()) instanceof ObjectNode tree) {
                return tree;
            }
            throw Refusal.use("notes are no object");
        });
    }

    private static BenchNotes read(ObjectNode tree) {
        if (tree.path("version").asInt() != VERSION) {
            throw Refusal.use("notes are of another version");
        }
        TreeMap<String, String> steps = new TreeMap<>();
        tree.path("steps")
                .properties()
                .forEach(each -> steps.put(each.getKey(), each.getValue().asText()));
        List<LoggedProof> proofs = new ArrayList<>();
        for (JsonNode each : tree.path("biteLog")) {
            List<LoggedProof.Tone> tones = new ArrayList<>();
            for (JsonNode tone : each.path("tones")) {
                tones.add(new LoggedProof.Tone(
                        tone.path("coveragePercent").asDouble(-1),
                        tone.path("lightness").asDouble(-1)));
            }
            JsonNode depth = each.path("depthMicrometres");
            proofs.add(new LoggedProof(
                    each.path("minutes").asDouble(),
                    depth.isNumber() ? OptionalDouble.of(depth.doubleValue()) : OptionalDouble.empty(),
                    tones));
        }
        return new BenchNotes(tree.path("plate").asText(), steps, proofs);
    }

    private static void write(LoggedProof proof, ObjectNode node) {
        node.set("minutes", JsonText.number(proof.minutes()));
        proof.depthMicrometres().ifPresent(depth -> node.set("depthMicrometres", JsonText.number(depth)));
        if (!proof.tones().isEmpty()) {
            ArrayNode tones = node.putArray("tones");
            for (LoggedProof.Tone tone : proof.tones()) {
                ObjectNode each = tones.addObject();
                each.set("coveragePercent", JsonText.number(tone.coveragePercent()));
                each.set("lightness", JsonText.number(Math.rint(tone.lightness() * 1e4) / 1e4));
            }
        }
    }
}
