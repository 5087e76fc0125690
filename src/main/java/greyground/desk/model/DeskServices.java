package greyground.desk.model;

import greyground.app.print.PrintersAtHand;
import java.time.LocalDate;
import java.util.concurrent.Executor;
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
 * @param window runs on the window's thread
 * @param printers finds printers
 * @param bell rings when a clock has run out
 */
public record DeskServices(
        FileAsking files,
        DeskFolder folder,
        long process,
        Supplier<LocalDate> today,
        LongSupplier nanoTime,
        Executor window,
        PrintersAtHand printers,
        Runnable bell) {}
