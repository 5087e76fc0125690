package greyground.film.compose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class HugeFilmIT {
    @Test
    void filmPastFourThousandMillionPixelsFitsInHalfAGibibyte() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        HugeFilm.class.getName())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, process.waitFor(), said);
        String[] numbers = said.split(" ");
        long width = Long.parseLong(numbers[0]);
        long height = Long.parseLong(numbers[1]);
        assertTrue(width * height > 1L << 32, said);
        assertEquals((width + 7) / 8 * height, Long.parseLong(numbers[2]), said);
        assertEquals("true", numbers[3], said);
    }
}
