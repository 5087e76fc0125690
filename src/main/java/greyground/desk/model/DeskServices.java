package greyground.desk.model;

import greyground.app.print.PrintersAtHand;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * What the window takes from outside, so that tests can give their own.
 *
 * @param files asks the person for files
 * @param folder where the desk remembers
 * @param process number of this process
 * @param today the date
 * @param nanoTime for clocks
 * @param time of day, for clocks that outlive the program
 * @param window runs on the window's thread
 * @param printers finds printers
 * @param bell rings when a clock has run out
 * @param showFolder opens a folder in the system's own window of files
 */
public record DeskServices(
        FileAsking files,
        DeskFolder folder,
        long process,
        Supplier<LocalDate> today,
        LongSupplier nanoTime,
        InstantSource time,
        Executor window,
        PrintersAtHand printers,
        Runnable bell,
        Consumer<Path> showFolder) {
    /** The same, but files are asked for otherwise. */
    public DeskServices asking(FileAsking other) {
        return new DeskServices(other, folder, process, today, nanoTime, time, window, printers, bell, showFolder);
    }
}
