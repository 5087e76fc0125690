package greyground.desk.page;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the program carries: the page of notices that lies in its jar, and the version of each library as the file's name says it. */
final class CarriedParts {
    private static final String NOTICES = "/META-INF/notices/";
    private static final Pattern JAR = Pattern.compile("(.+?)-(\\d[\\w.]*)(-[a-z]+)?\\.jar");

    private CarriedParts() {}

    /**
     * A line of the page of notices.
     *
     * @param jars named as their files are, without versions
     * @param by whom they are
     * @param licence as the page names it
     * @param text name of the file that holds the licence's text
     */
    record Part(List<String> jars, String by, String licence, String text) {}

    /** All parts, in the order of the page. */
    static List<Part> all() {
        List<Part> parts = new ArrayList<>();
        Pattern line = Pattern.compile("(?m)^\\| (.+?) \\| (.+?) \\| (.*?)`([\\w.-]+)` \\|$");
        Matcher lines = line.matcher(notice("NOTICES.md"));
        while (lines.find()) {
            List<String> jars =
                    List.of(lines.group(1).replaceAll("\\([^)]*\\)", "").strip().split(",\\s*"));
            String file = lines.group(4);
            String licence = lines.group(3).replace(":", "").strip();
            parts.add(new Part(
                    jars,
                    lines.group(2),
                    licence.isEmpty() ? file.replace(".txt", "").replace('-', ' ') : licence,
                    file));
        }
        return parts;
    }

    /** The paragraphs of the page beside its table, as plain words. */
    static List<String> words() {
        return notice("NOTICES.md")
                .lines()
                .reduce("", (page, line) -> page + (line.isBlank() ? "\n" : line + " "))
                .lines()
                .map(String::strip)
                .filter(each -> !each.isEmpty() && !each.startsWith("|") && !each.startsWith("#"))
                .map(each -> each.replace("`", ""))
                .toList();
    }

    /** The text of a licence, or the page itself, by its file's name. */
    static String notice(String name) {
        try (InputStream in =
                CarriedParts.class.getResourceAsStream((name.equals("LICENSE") ? "/META-INF/" : NOTICES) + name)) {
            if (in == null) {
                throw new IllegalStateException("the build left out " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    /** The version of each library that the program was started with, by its name. */
    static Map<String, String> versions() {
        Map<String, String> versions = new TreeMap<>();
        Pattern.compile(Pattern.quote(File.pathSeparator))
                .splitAsStream(System.getProperty("java.class.path", ""))
                .forEach(entry -> {
                    name(entry, versions);
                    if (entry.endsWith(".jar")) {
                        carried(entry).forEach(each -> name(each, versions));
                    }
                });
        return versions;
    }

    private static void name(String file, Map<String, String> versions) {
        Matcher jar = JAR.matcher(file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1));
        if (jar.matches()) {
            versions.put(jar.group(1), jar.group(2));
        }
    }

    /** Jars that a jar names as its own class path. */
    private static List<String> carried(String jar) {
        try (JarFile file = new JarFile(Path.of(jar).toFile())) {
            String named = file.getManifest() == null
                    ? null
                    : file.getManifest().getMainAttributes().getValue(Attributes.Name.CLASS_PATH);
            return named == null ? List.of() : List.of(named.split(" "));
        } catch (IOException unreadable) {
            return List.of();
        }
    }
}
