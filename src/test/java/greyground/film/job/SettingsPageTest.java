package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class SettingsPageTest {
    /** The page that people read is the table that the program works by; {@code SettingsPage docs/settings.md} writes it anew. */
    @Test
    void theDocsShowTheTable() throws Exception {
        assertEquals(SettingsPage.text(), Files.readString(Path.of("docs/settings.md")));
    }
}
