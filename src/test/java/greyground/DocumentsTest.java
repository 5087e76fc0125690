package greyground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the documents name is there: classes, rooms, pictures and other documents. */
class DocumentsTest {
    private static final Pattern CLASS = Pattern.compile("`((?:[a-z]+\\.)+)([A-Z]\\w*)");
    private static final Pattern LINK = Pattern.compile("\\]\\((?!https?:)([^)#\\s]+)");

    private static List<Path> documents() throws IOException {
        try (Stream<Path> docs = Files.walk(Path.of("docs"))) {
            return Stream.concat(
                            Stream.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of("testimages/README.md")),
                            docs.filter(file -> file.toString().endsWith(".md")))
                    .toList();
        }
    }

    @Test
    void everyClassTheyNameStands() throws IOException {
        List<String> missing = new ArrayList<>();
        for (Path document : documents()) {
            Matcher named = CLASS.matcher(Files.readString(document));
            while (named.find()) {
                String file = "java/greyground/" + named.group(1).replace('.', '/') + named.group(2) + ".java";
                if (!named.group(1).startsWith("org.")
                        && !Files.exists(Path.of("src/main", file))
                        && !Files.exists(Path.of("src/test", file))) {
                    missing.add(document + " names " + named.group(1) + named.group(2));
                }
            }
        }
        assertEquals(List.of(), missing);
    }

    @Test
    void everyLinkLeadsSomewhere() throws IOException {
        for (Path document : documents()) {
            Matcher link = LINK.matcher(Files.readString(document));
            while (link.find()) {
                Path target = document.resolveSibling(link.group(1)).normalize();
                assertTrue(Files.exists(target), document + " points to " + link.group(1));
            }
        }
    }
}
