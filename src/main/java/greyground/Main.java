package greyground;

import greyground.cli.CommandLine;

/** Starts Greyground. */
public final class Main {
    private Main() {}

    /**
     * Runs the command line and leaves with its exit status.
     *
     * @param arguments the words after the program's name
     */
    public static void main(String[] arguments) {
        System.exit(CommandLine.run(arguments, System.out, System.err));
    }
}
