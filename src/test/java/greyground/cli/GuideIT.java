package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every command that the guide prints with art of this repository does what the guide says: each line of the answer beneath it is
 * among what is printed, in that order. Dates are the day's own; a line "..." stands for lines left out. A block that names a file is that
 * file, made before anything is run.
 */
class GuideIT {
    /** In the order in which they are read, since later pages use the films of earlier ones; a short run follows the first alone. */
    private static final List<String> PAGES =
            Sweep.isWhole() ? List.of("guide", "teach", "more", "hand", "plates", "record") : List.of("guide");

    private static final Pattern FENCE = Pattern.compile("(?ms)^```(\\w*)(?: ([a-z-]+\\.[a-z]+))?\\n(.*?)^```$");
    private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
    private static final Pattern FILE = Pattern.compile("[a-z-]+\\.(pdf|png|tif|json|svg|csv)");

    @TempDir
    static Path folder;

    @TestFactory
    Stream<DynamicTest> commandsAnswerAsPrinted() throws Exception {
        List<DynamicTest> tests = new ArrayList<>();
        for (String page : PAGES) {
            List<String> commands = List.of();
            Matcher fences = FENCE.matcher(Files.readString(Path.of("docs", page + ".md")));
            while (fences.find()) {
                String text = fences.group(3);
                if (fences.group(2) != null) {
                    Files.writeString(folder.resolve(fences.group(2)), text);
                    continue;
                }
                if (fences.group(1).equals("sh")) {
                    commands.forEach(command -> tests.add(test(command, "")));
                    commands = text.lines()
                            .filter(line -> line.startsWith("greyground "))
                            .toList();
                } else if (!commands.isEmpty() && fences.group(1).isEmpty()) {
                    String all = String.join("\n", commands);
                    tests.add(test(all, text));
                    commands = List.of();
                }
            }
            commands.forEach(command -> tests.add(test(command, "")));
        }
        assertTrue(tests.size() >= 3 * PAGES.size(), "the guide prints commands");
        return tests.stream();
    }

    private static DynamicTest test(String commands, String answer) {
        return DynamicTest.dynamicTest(commands, () -> {
            StringBuilder said = new StringBuilder();
            for (String command : commands.split("\n")) {
                Attempt attempt = Attempt.of((Object[]) words(command));
                said.append(attempt.out()).append(attempt.err());
            }
            String printed = plain(said.toString().replace(folder + "/", ""));
            int from = 0;
            for (String line : answer.lines().map(GuideIT::plain).toList()) {
                if (line.isBlank() || line.strip().equals("...")) {
                    continue;
                }
                int at = printed.indexOf(line, from);
                assertTrue(at >= 0, () -> "not said, or not in this place: " + line + "\nin\n" + printed);
                from = at + line.length();
            }
        });
    }

    private static String plain(String text) {
        return DATE.matcher(text).replaceAll("DATE").replace("²", "2");
    }

    /** The words after the program's name, with its files in the test's folder. */
    private static String[] words(String command) {
        Matcher matcher = WORD.matcher(command.substring("greyground ".length()));
        List<String> words = new ArrayList<>();
        while (matcher.find()) {
            String word = matcher.group(1) != null ? matcher.group(1) : matcher.group(2);
            words.add(FILE.matcher(word).matches() ? folder.resolve(word).toString() : word);
        }
        return words.toArray(String[]::new);
    }
}
