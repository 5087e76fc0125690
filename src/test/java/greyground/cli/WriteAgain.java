package greyground.cli;

import greyground.app.files.KeptFiles;
import greyground.film.job.Job;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes the same files again and again until it is killed: arguments FOLDER and EXPORT, SAVE or CALIBRATION. */
final class WriteAgain {
    /** Carries job, workshop and plan, and has no grain to be made first. */
    static final Path FILM = Path.of("src/test/resources/greyground/fuzz/film/seeds/positive.pdf");

    private WriteAgain() {}

    /** What is written. */
    enum Work {
        /** The film of a picture. */
        EXPORT("film.pdf"),
        /** A job and a workshop. */
        SAVE("job.json"),
        /** A workshop taught by readings of a film. */
        CALIBRATION("shop.json");

        private final String file;

        Work(String file) {
            this.file = file;
        }

        String file() {
            return file;
        }
    }

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        Work work = Work.valueOf(arguments[1]);
        Path readings = Files.writeString(folder.resolve("strip.csv"), "coverage,density\n0,0.12\n50,0.4\n100,2.5\n");
        for (int time = 1; ; time++) {
            once(work, folder, readings, time);
        }
    }

    private static void once(Work work, Path folder, Path readings, int time) throws Exception {
        Path file = folder.resolve(work.file());
        switch (work) {
            case EXPORT ->
                Attempt.done(
                        "positive",
                        MalformedArt.SOUND.resolve("grey16.tif"),
                        "--plate",
                        "30x30mm",
                        "--resolution",
                        "300",
                        "--ruling",
                        "30/cm",
                        "--reserve",
                        "0",
                        "--title",
                        "time " + time,
                        "--out",
                        file);
            case SAVE -> {
                Job job = KeptFiles.job(FILM);
                KeptFiles.saveJob(file, job);
                KeptFiles.saveWorkshop(
                        folder.resolve("shop.json"),
                        Workshop.assumed().with("bath.etchFactor", Figure.assumed(1 + time / 1000.0, "test")));
            }
            case CALIBRATION ->
                Attempt.done("read", "--film", readings, "--wedge", FILM, "--workshop", file, "--accept");
        }
    }
}
