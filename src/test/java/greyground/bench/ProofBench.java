package greyground.bench;

import com.sun.management.OperatingSystemMXBean;
import greyground.app.proof.ProofWork;
import greyground.app.sight.Stage;
import greyground.plate.PlateWindow;
import greyground.raster.Progress;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Times the print of a whole plate: the arguments are film PDFs. Processor time counts all threads. */
public final class ProofBench {
    private ProofBench() {}

    /** Prints one line for each film. */
    public static void main(String[] films) throws Exception {
        OperatingSystemMXBean machine = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        for (String film : films) {
            try (ProofWork work = ProofWork.ofFilm(Path.of(film), Optional.empty())) {
                PlateWindow whole = work.whole(150);
                long start = System.nanoTime();
                long startBusy = machine.getProcessCpuTime();
                work.pictures(whole, List.of(Stage.PRINT), ProofWork.Held.AS_PRINTED, Progress.NONE);
                double squareCentimetres = work.job().plate().widthMillimetres()
                        * work.job().plate().heightMillimetres()
                        / 100;
                System.out.printf(
                        Locale.ROOT,
                        "%s: %.0f cm2, wall %.1f s, processor %.1f s, %.2f s to the cm2 and core%n",
                        film,
                        squareCentimetres,
                        (System.nanoTime() - start) / 1e9,
                        (machine.getProcessCpuTime() - startBusy) / 1e9,
                        (machine.getProcessCpuTime() - startBusy) / 1e9 / squareCentimetres);
            }
        }
    }
}
