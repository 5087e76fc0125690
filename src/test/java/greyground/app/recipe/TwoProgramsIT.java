package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.TeachAgain;
import greyground.workshop.WorkshopFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Programs that teach one workshop file at the same time: every lesson that was taken is there, or kept beside it. */
class TwoProgramsIT {
    private static final int PROGRAMS = 3;
    private static final int LESSONS = 12;

    @TempDir
    Path folder;

    @Test
    void noLessonIsLost() throws Exception {
        Path shop = folder.resolve("shop.json");
        List<Process> programs = new ArrayList<>();
        for (int i = 0; i < PROGRAMS; i++) {
            programs.add(new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            TeachAgain.class.getName(),
                            shop.toString(),
                            Integer.toString(1000 * i),
                            Integer.toString(LESSONS))
                    .redirectErrorStream(true)
                    .start());
        }
        TreeSet<String> taken = new TreeSet<>();
        for (Process program : programs) {
            String said = new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals(0, program.waitFor(), said);
            said.lines().forEach(taken::add);
        }
        assertEquals(PROGRAMS * LESSONS, taken.size());
        TreeSet<String> found = new TreeSet<>();
        int files = 0;
        try (Stream<Path> all = Files.list(folder)) {
            for (Path file : all.toList()) {
                assertTrue(
                        String.valueOf(file.getFileName()).matches("shop(\\.before-\\d+-.*)?\\.json"), file.toString());
                files++;
                found.add(Double.toString(WorkshopFile.read(Files.readString(file))
                        .bath()
                        .etchFactor()
                        .value()));
            }
        }
        assertEquals(PROGRAMS * LESSONS + 1, files, "each lesson keeps what was there before it");
        taken.removeAll(found);
        assertEquals(new TreeSet<String>(), taken, "lessons that are nowhere");
    }
}
