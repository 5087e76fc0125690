package greyground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whoever made a library that the program carries is named, inside the jar and beside the libraries, with the licence's text. */
class NoticesIT {
    private static final Path NOTICES = Path.of("target/classes/META-INF/notices");
    private static final Path LIBRARIES = Path.of("target/lib");

    private static Set<String> named() throws IOException {
        Set<String> named = new TreeSet<>();
        try (Stream<String> lines = Files.lines(NOTICES.resolve("NOTICES.md"))) {
            lines.filter(line -> line.startsWith("| "))
                    .skip(1)
                    .map(line -> line.substring(2, line.indexOf(" |", 2)).replaceAll("\\([^)]*\\)", ""))
                    .forEach(jars -> named.addAll(List.of(jars.strip().split(",\\s*"))));
        }
        return named;
    }

    @Test
    void everyJarIsNamedAndNoOther() throws IOException {
        Pattern version = Pattern.compile("-\\d.*");
        try (Stream<Path> files = Files.list(LIBRARIES)) {
            Set<String> jars = new TreeSet<>();
            files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".jar"))
                    .forEach(name -> jars.add(version.matcher(name).replaceFirst("")));
            assertEquals(jars, named());
        }
    }

    @Test
    void everyLicenceNamedLiesBesideThePage() throws IOException {
        String page = Files.readString(NOTICES.resolve("NOTICES.md"));
        var texts = Pattern.compile("`([\\w.-]+\\.txt)`").matcher(page);
        int found = 0;
        while (texts.find()) {
            assertTrue(Files.size(NOTICES.resolve(texts.group(1))) > 500, texts.group(1));
            assertTrue(Files.exists(LIBRARIES.resolve("notices").resolve(texts.group(1))), texts.group(1));
            found++;
        }
        assertTrue(found >= 3, "licences named: " + found);
        assertTrue(Files.exists(Path.of("target/classes/META-INF/LICENSE")));
        assertTrue(Files.exists(LIBRARIES.resolve("notices/LICENSE")));
    }
}
