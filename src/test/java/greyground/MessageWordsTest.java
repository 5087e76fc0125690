package greyground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What the program says to a person is in a printmaker's words: no class, package or library is named, whether in a sentence of ours or in one
 * that a library wrote.
 */
class MessageWordsTest {
    private static final Path MAIN = Path.of("src/main/java/greyground");

    /** Comments, characters, and as group 1 strings. */
    private static final Pattern TOKEN = Pattern.compile(
            "//.*|/\\*(?s:.*?)\\*/|'(?:[^'\\\\]|\\\\.[0-9a-fA-F]*)'|\"((?:[^\"\\\\\\n]|\\\\.)*)\"|@SuppressWarnings.*");

    /** A sentence: words with spaces between them, and none of a PDF's own. */
    private static final Pattern SENTENCE = Pattern.compile("(?!.*/[A-Z]).* .*");

    private static final Pattern OF_CODE = Pattern.compile(
            "\\b(javax?|org|com|greyground)\\.[a-z]+"
                    + "|\\w(Exception|Error)\\b|\\bExceptions?\\b|\\b[A-Z][a-z]+[A-Z]\\w+\\(?"
                    + "|(?i:\\b(pdfbox|fontbox|imageio|twelvemonkeys|jackson|picocli|javafx|awt|nio|jdk)\\b)|stack trace|\\bnull\\b");

    /** Each with its reason. */
    private static final List<String> ALLOWED = List.of(
            // Names of formats, as their users write them.
            "BigTIFF", "OpenEXR", "PackBits", "PostScript");

    @Test
    void noSentenceNamesAPartOfTheProgram() throws IOException {
        TreeSet<String> found = new TreeSet<>();
        int sentences = 0;
        try (Stream<Path> files = Files.walk(MAIN)) {
            for (Path file :
                    files.filter(each -> each.toString().endsWith(".java")).toList()) {
                List<String> said = TOKEN.matcher(Files.readString(file))
                        .results()
                        .map(token -> String.valueOf(token.group(1)))
                        .filter(SENTENCE.asMatchPredicate())
                        .toList();
                sentences += said.size();
                for (String sentence : said) {
                    OF_CODE.matcher(sentence)
                            .results()
                            .map(MatchResult::group)
                            .filter(word -> !ALLOWED.contains(word))
                            .forEach(word -> found.add(file.getFileName() + ": " + word + " in " + sentence));
                }
            }
        }
        assertTrue(sentences > 1000, "found " + sentences);
        assertEquals(List.of(), List.copyOf(found));
    }
}
