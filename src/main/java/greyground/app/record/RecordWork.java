package greyground.app.record;

import greyground.app.bite.PlannedPlate;
import greyground.app.files.Program;
import greyground.app.files.RecordFile;
import greyground.app.files.SafeFile;
import greyground.finding.Findings;
import greyground.output.Attachment;
import greyground.output.FilmPdf;
import greyground.output.PlanDocument;
import greyground.output.RecordDocument;
import greyground.output.RecordDocument.Part;
import greyground.output.RecordDocument.Row;
import greyground.plan.CardNumber;
import greyground.quantity.Refusal;
import greyground.states.Entry;
import greyground.states.PlateRecord;
import greyground.states.PlateRecord.Placed;
import greyground.states.PlateRecordFile;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Begins a plate's record, adds to it, strikes out, tells it and prints it. */
public final class RecordWork {
    private RecordWork() {}

    /**
     * Writes down what is told, if anything is.
     *
     * @param file of the record; begun where there is none, from a film or a title
     * @param film to begin it from
     */
    public static PlateRecord write(Path file, Optional<Path> film, RecordWords words, LocalDate today)
            throws IOException {
        LocalDate date = words.date(today);
        List<Entry> entries = words.entries();
        Optional<Integer> strike = words.strike();
        boolean begins = !Files.exists(file);
        if (!begins
                && entries.isEmpty()
                && strike.isEmpty()
                && film.isEmpty()
                && words.title().isEmpty()) {
            return RecordFile.read(file);
        }
        return RecordFile.change(file, held -> {
            if (held.isPresent() && (film.isPresent() || words.title().isPresent())) {
                throw Refusal.use(
                        "the record " + file
                                + " is begun already; a film or a title begins a new one: name another file, or leave them out");
            }
            PlateRecord record = held.orElseGet(() -> begun(file, film, words));
            record = strike.isPresent() ? record.struck(strike.get()) : record;
            for (Entry entry : entries) {
                record = record.with(date, entry);
            }
            return record;
        });
    }

    /**
     * Writes down what a question about the bite told: minutes since the last bite on record, the proof, depth and weight.
     *
     * @param film that was asked about, from which the record is begun where there is none
     * @param given the question's words, as {@link greyground.app.bite.BiteWords} takes them
     */
    public static PlateRecord writeAnswered(Path file, Path film, Map<String, String> given, LocalDate today)
            throws IOException {
        return RecordFile.change(file, held -> {
            PlateRecord record = held.orElseGet(() -> begun(file, Optional.of(film), new RecordWords(Map.of())));
            List<Entry> entries =
                    RecordWords.told(given, record.bittenMinutes()).entries();
            if (entries.isEmpty()) {
                throw Refusal.use("--record is given but nothing new that was done to the plate: add --bitten,"
                        + " --proof-density, --proof-depth or --weighed, or leave it out");
            }
            for (Entry entry : entries) {
                record = record.with(today, entry);
            }
            return record;
        });
    }

    private static PlateRecord begun(Path file, Optional<Path> film, RecordWords words) {
        if (film.isEmpty()) {
            String title = words.title()
                    .orElseThrow(() -> Refusal.use("there is no record " + file
                            + " yet: add --film FILM.pdf or --title TEXT to begin it, or check the name"));
            return PlateRecord.begun(title, "", Optional.empty(), List.of());
        }
        PlannedPlate plate = PlannedPlate.ofFilm(film.get());
        PlanDocument pages = plate.pages();
        return PlateRecord.begun(
                words.title().orElse(pages.title()),
                pages.subject(),
                Optional.of(RecordFile.named("film", film.get())),
                plate.plan().card().stream().map(RecordWork::planned).toList());
    }

    private static String planned(CardNumber number) {
        return number.act() + " " + number.value() + (number.conditions().isEmpty() ? "" : ", " + number.conditions());
    }

    /** What the record says. */
    public static Findings findings(PlateRecord record) {
        Findings findings = new Findings();
        findings.say("title", record.title());
        if (!record.plate().isEmpty()) {
            findings.say("plate", record.plate());
        }
        record.film().ifPresent(film -> findings.say("film", film.name()));
        if (!record.planned().isEmpty()) {
            findings.say(
                    "planned",
                    record.planned().stream().map(act -> act.split(",", 2)[0]).collect(Collectors.joining("; ")));
        }
        List<Findings> rows = new ArrayList<>();
        for (Placed placed : record.story()) {
            PlateRecord.Line line = placed.line();
            String words = String.format(
                    Locale.ROOT,
                    "%2d  %s  %s  %s%s",
                    placed.number(),
                    line.date(),
                    placed.state() == 0 ? "       " : "state " + placed.state(),
                    line.entry().words(),
                    line.struck() ? " (struck out)" : "");
            rows.add(new Findings()
                    .say("words", words)
                    .put("number", placed.number())
                    .put("state", placed.state())
                    .put("date", line.date().toString())
                    .put("struckOut", line.struck()));
        }
        findings.rows("entries", rows);
        if (record.bittenMinutes() > 0) {
            findings.say("bitten", Refusal.plain(record.bittenMinutes()) + " min in all", record.bittenMinutes());
        }
        findings.say("edition", record.edition());
        return findings;
    }

    /**
     * Writes the record as pages for paper, which carry its file; whole or not at all.
     *
     * @param today the pages' date where the record has no entry yet
     */
    public static void card(PlateRecord record, LocalDate today, Path pdf) {
        Attachment file = new Attachment(
                Attachment.RECORD,
                "application/json",
                PlateRecordFile.text(record),
                "the plate's record",
                Attachment.Relationship.SOURCE);
        RecordDocument document = document(record, today);
        SafeFile.write(
                "record's pages",
                pdf,
                channel -> FilmPdf.writeRecord(document, file, Channels.newOutputStream(channel)));
    }

    private static RecordDocument document(PlateRecord record, LocalDate today) {
        Map<String, List<Row>> parts = new LinkedHashMap<>();
        List<Row> edition = new ArrayList<>();
        List<Placed> story = record.story().stream()
                .filter(placed -> !placed.line().struck())
                .toList();
        for (Placed placed : story) {
            String state = placed.state() == 0 ? "Before the first bite" : "State " + placed.state();
            List<Row> rows = placed.line().entry() instanceof Entry.Printed
                    ? edition
                    : parts.computeIfAbsent(state, any -> new ArrayList<>());
            rows.add(new Row(
                    placed.line().date().toString(), placed.line().entry().words()));
        }
        if (!edition.isEmpty()) {
            parts.put("Edition", edition);
        }
        List<String> lines = new ArrayList<>();
        if (!record.plate().isEmpty()) {
            lines.add(record.plate());
        }
        record.film().ifPresent(film -> lines.add("Film " + film.name()));
        if (!record.planned().isEmpty()) {
            lines.add("Planned: " + String.join("; ", record.planned()));
        }
        return new RecordDocument(
                record.title(),
                lines,
                story.isEmpty() ? today : story.get(story.size() - 1).line().date(),
                Program.words(),
                parts.entrySet().stream()
                        .map(part -> new Part(part.getKey(), part.getValue()))
                        .toList());
    }
}
