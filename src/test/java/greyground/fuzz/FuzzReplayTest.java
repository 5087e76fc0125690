package greyground.fuzz;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.art.Art;
import greyground.output.FilmPdfReader;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every seed, and every input that ever broke something, is answered: done, or refused in one line. */
class FuzzReplayTest {
    /** On a busy machine; a hang takes longer. */
    private static final Duration LONGEST = Duration.ofSeconds(30);

    static Stream<String> ways() {
        return Fuzzing.WAYS.keySet().stream();
    }

    private static List<Path> kept(String way, String kind) throws IOException {
        Path folder = Fuzzing.KEPT.resolve(way).resolve(kind);
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("ways")
    void whatIsKeptIsAnswered(String way) throws Exception {
        Method target = Class.forName(Fuzzing.WAYS.get(way).className()).getMethod("fuzzerTestOneInput", byte[].class);
        List<Path> files = new ArrayList<>(kept(way, "seeds"));
        assertTrue(files.size() >= 3, way + " has few seeds");
        files.addAll(kept(way, "found"));
        for (Path file : files) {
            byte[] bytes = Files.readAllBytes(file);
            assertTimeoutPreemptively(LONGEST, () -> target.invoke(null, bytes), file.toString());
        }
    }

    /** Else mutation would only ever knock at the door. */
    @Test
    void seedsAreSound() throws Exception {
        for (Path art : kept("art", "seeds")) {
            assertDoesNotThrow(() -> Art.open(art), art.toString());
        }
        for (Path film : kept("film", "seeds")) {
            try (FilmPdfReader reader = FilmPdfReader.open(film)) {
                reader.readRows(0, 7, (first, count, band) -> {});
            }
            KeptFiles.job(film);
            KeptFiles.workshop(film);
            KeptFiles.plan(film);
        }
    }
}
