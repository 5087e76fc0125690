package greyground.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.recipe.FilmSeries;
import greyground.finding.Findings;
import greyground.json.JsonText;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** Where a command answers, as lines to be read or as JSON, and tells meanwhile how far its work is. */
final class Terminal {
    private final PrintStream out;
    private final PrintStream err;

    @Option(names = "--json", description = "print the outcome as JSON")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    boolean help;

    Terminal(PrintStream out, PrintStream err) {
        this.out = out;
        this.err = err;
    }

    /** Work that tells how far it is. */
    @FunctionalInterface
    interface Work<T> {
        T done(TerminalProgress progress) throws IOException;
    }

    /** Works with a line that tells how far, and takes that away again. */
    <T> T watching(Work<T> work) throws IOException {
        TerminalProgress progress = new TerminalProgress(err);
        try {
            return work.done(progress);
        } finally {
            progress.clear();
        }
    }

    /**
     * Answers as was asked for.
     *
     * @param files that were written, by what they are
     */
    void tell(Map<String, Path> files, Findings findings) {
        if (json) {
            ObjectNode tree = JsonText.object();
            files.forEach((what, file) -> tree.put(what, file.toString()));
            tree.setAll(findings.tree());
            out.print(JsonText.print(tree));
        } else {
            files.forEach((what, file) -> out.println(FindingLines.lead(what) + file));
            FindingLines.of(findings).forEach(out::println);
        }
    }

    /** A line for one film of a series as soon as it is made or given up; as JSON all come at the end. */
    void tell(FilmSeries.Made made) {
        if (!json) {
            made.fault()
                    .ifPresentOrElse(
                            fault -> err.println("greyground: " + made.member().art() + ": " + fault),
                            () -> out.println(
                                    FindingLines.lead("film") + made.member().film() + ": "
                                            + made.findings().orElseThrow().line("tones")));
        }
    }

    /** How many films of a series were made, and as JSON what there is to say of each. */
    void tellAll(List<FilmSeries.Made> all, long failed) {
        long done = all.size() - failed;
        if (!json) {
            out.println(FindingLines.lead("made")
                    + done
                    + (done == 1 ? " film" : " films")
                    + (failed == 0 ? "" : "; " + failed + " failed"));
            return;
        }
        ObjectNode tree = JsonText.object();
        ArrayNode films = tree.putArray("films");
        for (FilmSeries.Made made : all) {
            ObjectNode one = films.addObject().put("art", made.member().art().toString());
            made.fault().ifPresent(fault -> one.put("fault", fault));
            made.findings().ifPresent(findings -> {
                one.put("film", made.member().film().toString());
                one.setAll(findings.tree());
            });
        }
        tree.put("made", done).put("failed", failed);
        out.print(JsonText.print(tree));
    }

    /** The same where each is one text. */
    void print(Supplier<String> text, Supplier<String> asJson) {
        out.print(json ? asJson.get() : text.get());
    }
}
