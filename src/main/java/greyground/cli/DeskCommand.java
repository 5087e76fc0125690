package greyground.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Opens the window, which whoever starts the program brings along. */
@Command(
        name = "desk",
        description = {"Opens the window: five stations of one plate, from art to print.", ""},
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground desk harbour.tif",
            "      a new job with this art",
            "  greyground desk harbour.pdf",
            "      the job that this film was made from"
        })
final class DeskCommand implements Callable<Integer> {
    private final CommandLine.Window window;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "art, a job or a film PDF")
    private @Nullable Path file;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    boolean help;

    DeskCommand(CommandLine.Window window) {
        this.window = window;
    }

    @Override
    public Integer call() {
        window.open(Optional.ofNullable(file));
        return CommandLine.done();
    }
}
