package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.app.files.KeptFiles;
import greyground.cli.WriteAgain.Work;
import greyground.output.ExternalTool;
import greyground.output.FilmPdfReader;
import greyground.workshop.WorkshopFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Killed at once, without a chance to tidy up, at seeded moments: what stands under a file's name is always whole. */
class KilledAtMomentsIT {
    private static final int AT_ONCE = 2;

    /** Two of three are killed within so many milliseconds of a write's beginning, the others at any time. */
    private static final int WHILE_WRITING = 12;

    private static final int ANY_TIME = 300;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"EXPORT, 14", "SAVE, 18", "CALIBRATION, 18"})
    void whatStandsThereIsWhole(Work work, int moments) throws Exception {
        ExecutorService killers = Executors.newFixedThreadPool(AT_ONCE);
        List<Future<Integer>> kills = Sweep.rounds(moments).stream()
                .map(moment -> killers.submit(() -> killed(work, moment)))
                .toList();
        int caught = 0;
        for (Future<Integer> kill : kills) {
            caught += kill.get();
        }
        killers.shutdown();
        assertTrue(caught > 0 || kills.size() < moments, "none was killed while it wrote");
    }

    /** Kills one program; returns 1 if it was caught writing. */
    private int killed(Work work, int moment) throws Exception {
        Path own = Files.createDirectory(folder.resolve(work + "-" + moment));
        OwnProcess process =
                OwnProcess.start(own, List.of("-XX:TieredStopAtLevel=1", "-Xmx256m"), WriteAgain.class, own, work);
        Path file = own.resolve(work.file());
        while (process.process().isAlive() && !Files.exists(file)) {
            Thread.sleep(2);
        }
        Random random = new Random(moment);
        boolean atWriting = moment % 3 != 0;
        while (atWriting && process.process().isAlive() && hidden(own).isEmpty()) {
            Thread.onSpinWait();
        }
        Thread.sleep(random.nextInt(atWriting ? WHILE_WRITING : ANY_TIME));
        assertTrue(process.process().isAlive(), process::said);
        process.process().destroyForcibly().waitFor();
        int caught = Attempt.unfinished(own).isEmpty() ? 0 : 1;
        checkWhole(work, own);
        nextStart(work, own);
        assertEquals(List.of(), hidden(own), "the next start clears what the killed program left");
        checkWhole(work, own);
        return caught;
    }

    private static void checkWhole(Work work, Path own) throws Exception {
        switch (work) {
            case EXPORT -> {
                ExternalTool.run(own, "qpdf", "--check", work.file());
                try (FilmPdfReader film = FilmPdfReader.open(own.resolve(work.file()))) {
                    film.readRows(0, 64, (first, count, rows) -> {});
                }
            }
            case SAVE -> {
                assertEquals(KeptFiles.job(WriteAgain.FILM), KeptFiles.job(own.resolve(work.file())));
                if (Files.exists(own.resolve("shop.json"))) {
                    KeptFiles.workshop(own.resolve("shop.json"));
                }
            }
            case CALIBRATION -> {
                try (Stream<Path> files = Files.list(own)) {
                    for (Path each : files.filter(one -> one.toString().endsWith(".json"))
                            .toList()) {
                        WorkshopFile.read(Files.readString(each));
                    }
                }
            }
        }
    }

    private static void nextStart(Work work, Path own) throws Exception {
        switch (work) {
            case EXPORT, SAVE -> KeptFiles.saveJob(own.resolve("job.json"), KeptFiles.job(WriteAgain.FILM));
            case CALIBRATION -> Attempt.done("read", "--take-back", "--workshop", own.resolve(work.file()));
        }
    }

    private static List<String> hidden(Path own) throws IOException {
        try (Stream<Path> files = Files.list(own)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.startsWith("."))
                    .toList();
        }
    }
}
