package greyground.cli;

import greyground.app.KeptFiles;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Prints the exposure and bite plan that a film carries. */
@Command(
        name = "plan",
        description = {"Prints the exposure and bite plan that a film PDF carries, as text.", ""},
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground plan harbour.pdf",
            "  greyground plan harbour.pdf --json > plan.json",
        },
        mixinStandardHelpOptions = false)
final class PlanCommand implements Callable<Integer> {
    private final PrintStream out;

    @Parameters(paramLabel = "FILM.pdf", description = "a film made by 'greyground positive'")
    private Path film = Path.of("");

    @Option(names = "--json", description = "print JSON instead of text")
    private boolean json;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    boolean help;

    PlanCommand(PrintStream out) {
        this.out = out;
    }

    @Override
    public Integer call() {
        ExposurePlan plan = KeptFiles.plan(film);
        out.print(json ? PlanJson.text(plan) : PlanText.of(plan));
        return CommandLine.done();
    }
}
