package greyground.app.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.print.PrintService;
import javax.print.PrintServiceLookup;

/** Finds printers; tests give their own. */
@FunctionalInterface
public interface PrintersAtHand {
    /** The printers there are, the usual one first. May take seconds: printers on a network answer slowly. */
    List<PrinterAtHand> find();

    static PrintersAtHand ofTheSystem() {
        return () -> {
            List<PrintService> services =
                    new ArrayList<>(Arrays.asList(PrintServiceLookup.lookupPrintServices(PrinterAtHand.PAGES, null)));
            Optional.ofNullable(PrintServiceLookup.lookupDefaultPrintService())
                    .filter(services::remove)
                    .ifPresent(usual -> services.add(0, usual));
            return services.stream().map(PrinterAtHand::of).toList();
        };
    }
}
