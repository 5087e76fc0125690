package greyground.cli;

import greyground.app.files.Program;
import greyground.quantity.Refusal;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Reads the command line and runs what it asks for. Exit status: 0 done, 2 wrong use, 1 failed; a refusal is one line, and no
 * stack trace ever reaches the user.
 */
@Command(
        name = "greyground",
        versionProvider = CommandLine.Version.class,
        description = {
            "Prepares film positives for copper plates, so that their tones survive exposure, ground, bite, wipe and paper.",
            ""
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  greyground positive harbour.tif --plate 200x250mm --out harbour.pdf",
            "      a film for a 200 x 250 mm plate, with marks, wedge and plan",
            "  greyground proof harbour.pdf --out print.png",
            "      the print that this film will give",
            "  greyground plan harbour.pdf",
            "      the exposure and bite plan that the film carries, as text",
            "  greyground wedge --plate 150x200mm --out test.pdf",
            "      a test plate, from which the workshop learns its own tones",
            "  greyground desk harbour.tif",
            "      the window, with every stage of the plate to look at",
            "  greyground read proof.tif --wedge test.pdf --workshop shop.json --accept",
            "      what its scanned proof says, taken into the workshop",
            "",
            "Sizes carry units: mm, cm, in, µm or um. 'greyground COMMAND --help' teaches one command.",
            "Exit status: 0 done, 1 failed, 2 wrong use."
        },
        synopsisSubcommandLabel = "COMMAND")
public final class CommandLine implements Runnable {
    private static final int DONE = 0;
    static final int FAILED = 1;
    private static final int WRONG_USE = 2;

    /** With less Java's own threads die unheard, and whoever waits for them waits for ever (found by trial: 16 to 19 MiB). */
    private static final long LEAST_MEMORY_BYTES = 24L << 20;

    private static final String HELP = "help";

    private final PrintStream out;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "show this help")
    boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "show the version")
    boolean version;

    @Spec
    private CommandSpec command = CommandSpec.create();

    private CommandLine(PrintStream out) {
        this.out = out;
    }

    /** Opens the window, and returns when it is closed. */
    @FunctionalInterface
    public interface Window {
        /**
         * Opens it.
         *
         * @param file to begin with
         */
        void open(Optional<Path> file);
    }

    /** Runs one command where there is no window. */
    public static int run(String[] arguments, PrintStream out, PrintStream err) {
        return run(arguments, out, err, file -> {
            throw Refusal.failure("this start of the program has no window: start it by its jar");
        });
    }

    /** Runs one command and returns its exit status: 0 done, 2 wrong use, 1 failed. */
    public static int run(String[] arguments, PrintStream out, PrintStream err, Window window) {
        if (Runtime.getRuntime().maxMemory() < LEAST_MEMORY_BYTES) {
            return outOfMemory(err);
        }
        String first = arguments.length == 0 ? "" : arguments[0];
        try {
            return parser(first, out, err, window).execute(arguments);
        } catch (RuntimeException | Error broken) {
            return failed(broken, err);
        }
    }

    /**
     * Knows every command, or the one that is named alone: looking at a command's options takes a while, and those of the others
     * are of no use then. A word that begins with @ is a word, and not the name of a file of words.
     *
     * @param first the first word of the command line, or an empty one
     */
    static picocli.CommandLine parser(String first, PrintStream out, PrintStream err, Window window) {
        picocli.CommandLine line = new picocli.CommandLine(new CommandLine(out));
        Map<String, Supplier<Object>> commands = commands(out, err, window);
        boolean all = first.equals(HELP) || !commands.containsKey(first);
        commands.forEach((name, command) -> {
            if (all || name.equals(first)) {
                line.addSubcommand(name, command.get());
            }
        });
        return line.registerConverter(Path.class, CommandLine::file)
                .setExpandAtFiles(false)
                .setUsageHelpWidth(100)
                .setColorScheme(picocli.CommandLine.Help.defaultColorScheme(Ansi.OFF))
                .setOut(new PrintWriter(out, true, StandardCharsets.UTF_8))
                .setErr(new PrintWriter(err, true, StandardCharsets.UTF_8))
                .setParameterExceptionHandler((fault, words) -> wrongUse(fault, words, err))
                .setExecutionExceptionHandler((fault, command, parsed) -> failed(fault, err));
    }

    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {Program.words()};
        }
    }

    /** No command at all: show how to begin. */
    @Override
    public void run() {
        command.commandLine().usage(out);
    }

    /** The commands by name, in the order in which the help lists them. */
    private static Map<String, Supplier<Object>> commands(PrintStream out, PrintStream err, Window window) {
        Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
        commands.put(HELP, HelpCommand::new);
        commands.put("positive", () -> new PositiveCommand(out, err));
        commands.put("proof", () -> new ProofCommand(out, err));
        commands.put("plan", () -> new PlanCommand(out, err));
        commands.put("record", () -> new RecordCommand(out, err));
        commands.put("plates", () -> new PlatesCommand(out, err));
        commands.put("gather", () -> new GatherCommand(out, err));
        commands.put("wedge", () -> new WedgeCommand(out, err));
        commands.put("read", () -> new ReadCommand(out, err));
        commands.put("desk", () -> new DeskCommand(window));
        return commands;
    }

    /** A file as it was named; a name that the system's language can't spell would stand for another file. */
    private static Path file(String name) {
        try {
            if (name.indexOf('\uFFFD') >= 0) {
                throw unspelt(name);
            }
            Path path = Path.of(name);
            if (!path.isAbsolute() && !Files.isDirectory(Path.of(""))) {
                throw new TypeConversionException("the folder you are in is gone, or its name has letters that this"
                        + " system's language can't spell: go to another folder, or set the language to one that can, such as"
                        + " LC_ALL=C.UTF-8");
            }
            return path;
        } catch (InvalidPathException odd) {
            throw unspelt(name);
        }
    }

    private static TypeConversionException unspelt(String name) {
        return new TypeConversionException("the file name " + name + " has letters that this system's language can't"
                + " spell: name the file anew, or set the language to one that can, such as LC_ALL=C.UTF-8");
    }

    private static int wrongUse(ParameterException fault, String[] arguments, PrintStream err) {
        err.println("greyground: " + oneLine(wrong(fault, arguments)) + "; see '" + name(fault) + " --help'");
        return WRONG_USE;
    }

    private static String wrong(ParameterException fault, String[] arguments) {
        CommandSpec spec = fault.getCommandLine().getCommandSpec();
        if (fault.getCause() instanceof TypeConversionException unusable) {
            return String.valueOf(unusable.getMessage());
        }
        if (fault instanceof UnmatchedArgumentException unmatched
                && !unmatched.getUnmatched().isEmpty()) {
            return unknown(unmatched.getUnmatched().get(0), fault);
        }
        if (fault instanceof MissingParameterException) {
            for (String word : arguments) {
                if (word.matches("-[^-=]+[^=]*") && spec.findOption(word) == null) {
                    return unknown(word, fault);
                }
            }
        }
        return String.valueOf(fault.getMessage());
    }

    private static String unknown(String word, ParameterException fault) {
        return "\"" + word + "\" is not something " + name(fault) + " knows"
                + (word.startsWith("-") ? "; a file of that name is written ./" + word : "");
    }

    private static String oneLine(String words) {
        return words.replaceAll("\\s*[\\r\\n]+\\s*", " ");
    }

    private static String name(ParameterException fault) {
        return fault.getCommandLine().getCommandSpec().qualifiedName();
    }

    /**
     * Says what ended a thread that nobody was watching, in one line. Too little memory is not said here: whoever waits for that thread's
     * work misses it and says so.
     */
    public static void died(Throwable fault, PrintStream err) {
        if (!isOutOfMemory(fault)) {
            failed(fault, err);
        }
    }

    private static boolean isOutOfMemory(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof OutOfMemoryError) {
                return true;
            }
        }
        return false;
    }

    private static int failed(Throwable fault, PrintStream err) {
        if (fault instanceof Refusal refusal) {
            err.println("greyground: " + refusal.getMessage());
            return refusal.kind() == Refusal.Kind.USE ? WRONG_USE : FAILED;
        }
        if (fault instanceof CancellationException) {
            err.println("greyground: stopped; nothing was written");
            return FAILED;
        }
        if (isOutOfMemory(fault)) {
            return outOfMemory(err);
        }
        err.println(
                "greyground: an unforeseen fault; no file is half written: please report it with the command you gave and"
                        + " with what that prints where GREYGROUND_TRACE=1 is set");
        if (System.getenv("GREYGROUND_TRACE") != null) {
            fault.printStackTrace(err);
        }
        return FAILED;
    }

    private static int outOfMemory(PrintStream err) {
        err.println(
                "greyground: there is not enough memory, "
                        + (Runtime.getRuntime().maxMemory() >> 20)
                        + " MiB, for this film; nothing was written: give Java more (-Xmx1g is plenty), or choose a smaller film");
        return FAILED;
    }

    static int done() {
        return DONE;
    }
}
