package greyground;

import greyground.cli.CommandLine;
import greyground.desk.window.DeskStart;

/** Starts Greyground: a command, or the window. */
public final class Main {
    private Main() {}

    /**
     * Runs the command line and leaves with its exit status; started by a double click, it opens the window.
     *
     * @param arguments the words after the program's name
     */
    // Newer Javas give a console even without a terminal; the help is then printed where nobody looks, as before.
    @SuppressWarnings("SystemConsoleNull")
    public static void main(String[] arguments) {
        Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> CommandLine.died(fault, System.err));
        boolean clicked = arguments.length == 0 && System.console() == null && DeskStart.hasScreen();
        String[] words = clicked ? new String[] {"desk"} : arguments;
        System.exit(CommandLine.run(words, System.out, System.err, DeskStart::open));
    }
}
