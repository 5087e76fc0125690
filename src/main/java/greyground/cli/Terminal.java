package greyground.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
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
        T done(TerminalProgress progress) throws Exception;
    }

    /** Works with a line that tells how far, and takes that away again. */
    <T> T watching(Work<T> work) throws Exception {
        TerminalProgress progress = new TerminalProgress(err);
        try {
            return work.done(progress);
        } finally {
            progress.clear();
        }
    }

    /** Answers as was asked for. */
    void tell(Supplier<List<String>> lines, Consumer<ObjectNode> described) {
        if (json) {
            ObjectNode tree = JsonText.object();
            described.accept(tree);
            out.print(JsonText.print(tree));
        } else {
            lines.get().forEach(out::println);
        }
    }

    /** The same where each is one text. */
    void print(Supplier<String> text, Supplier<String> asJson) {
        out.print(json ? asJson.get() : text.get());
    }

    /** A line for each file that was written. */
    static List<String> named(Map<String, Path> files) {
        return files.entrySet().stream()
                .map(file -> String.format(Locale.ROOT, "%-8s%s", file.getKey(), file.getValue()))
                .toList();
    }
}
