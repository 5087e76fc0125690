package greyground.plate.inspect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class HugeInspectionIT {
    /** The film is 600 MB of bits; what is kept of it is a few slabs and a square in eight pixels or more. */
    @Test
    void filmPastFourThousandMillionPixelsIsInspectedInHalfAGibibyte() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        HugeInspection.class.getName())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, process.waitFor(), said);
        String[] words = said.split(" ");
        assertEquals("5", words[0], said);
        // Squares of 6 mm with an undercut of 20 um on either side; the bar of 2 mm is the narrowest.
        String[] places = Arrays.copyOfRange(words, 1, words.length);
        double[][] wanted = {{123, 103}, {523, 103}, {123, 403}, {523, 403}};
        for (double[] place : wanted) {
            long near = Arrays.stream(places)
                    .map(text -> text.split(","))
                    .filter(site -> Math.abs(Double.parseDouble(site[0]) - place[0]) < 0.5
                            && Math.abs(Double.parseDouble(site[1]) - place[1]) < 0.5
                            && Math.abs(Double.parseDouble(site[2]) - 6.04) < 0.6)
                    .count();
            assertEquals(1, near, Arrays.toString(place) + " in " + said);
        }
        String[] bar = places[4].split(",");
        assertEquals(300, Double.parseDouble(bar[1]), 0.3, said);
        assertEquals(2.04, Double.parseDouble(bar[2]), 0.3, said);
    }
}
