package greyground.cli;

import java.io.PrintStream;

/** Reads the command line and runs what it asks for. */
public final class CommandLine {
    private CommandLine() {}

    /** Runs one command and returns its exit status: 0 done, 2 wrong use, 1 failed. */
    public static int run(String[] arguments, PrintStream out, PrintStream err) {
        out.println("greyground");
        return 0;
    }
}
