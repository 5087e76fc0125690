package greyground.desk.model;

import greyground.app.files.KeptFiles;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Workshops by name, in the desk's own folder, so that no file need be chosen: one file each, and beside it what it held when each of the last days
 * began.
 */
public final class KeptWorkshops {
    private static final String ENDING = ".json";
    private static final int LONGEST = 60;
    private static final int MOST_DAYS = 12;
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N} _'-]*");

    private final Path folder;

    public KeptWorkshops(DeskFolder desk) {
        this.folder = desk.folder().resolve("workshops");
    }

    /** A workshop as it was when a day began. */
    public record Earlier(LocalDate day, Path file) {}

    public Path folder() {
        return folder;
    }

    /** All names, in alphabetical order without regard to case. */
    public List<String> names() {
        List<String> names = new ArrayList<>();
        for (String file : files(folder)) {
            if (file.endsWith(ENDING) && NAME.matcher(bare(file)).matches()) {
                names.add(bare(file));
            }
        }
        names.sort(String.CASE_INSENSITIVE_ORDER);
        return names;
    }

    private static String bare(String file) {
        return file.substring(0, file.length() - ENDING.length());
    }

    private static List<String> files(Path within) {
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(within)) {
            files.forEach(file -> names.add(String.valueOf(file.getFileName())));
        } catch (IOException notThere) {
            return names;
        }
        return names;
    }

    /** The file of a name, whether or not it is there; refused where it can't be one. */
    public Path file(String name) {
        String words = name.strip();
        if (words.length() > LONGEST || !NAME.matcher(words).matches()) {
            throw Refusal.use("a workshop can't be called \"" + words + "\": give it a name of 1 to " + LONGEST
                    + " letters, digits and spaces, a letter or digit first");
        }
        return folder.resolve(words + ENDING);
    }

    /** The name of a workshop's file; empty where it does not lie here. */
    public Optional<String> name(Path file) {
        return Optional.of(file)
                .filter(each -> folder.equals(each.getParent()))
                .map(each -> bare(String.valueOf(each.getFileName())));
    }

    /** Makes room for a new workshop under a name; refused where one is called so, in whatever case. */
    public Path make(String name) throws IOException {
        Path file = file(name);
        String words = name.strip().toLowerCase(Locale.ROOT);
        if (names().stream().anyMatch(each -> each.toLowerCase(Locale.ROOT).equals(words))) {
            throw Refusal.use(
                    "there is a workshop called \"" + name.strip() + "\": choose it in the list, or give another name");
        }
        Files.createDirectories(folder);
        return file;
    }

    /** Keeps what a workshop's file holds, once a day, before the day's first change of it. */
    void keepEarlier(Path file, Workshop held, LocalDate day) throws IOException {
        Path days = folder.resolve("earlier");
        Path earlier = days.resolve(bare(String.valueOf(file.getFileName())) + " " + day + ENDING);
        if (!Files.exists(earlier)) {
            Files.createDirectories(days);
            KeptFiles.saveWorkshop(earlier, held);
            for (Earlier old : earlier(file).stream().skip(MOST_DAYS).toList()) {
                Files.deleteIfExists(old.file());
            }
        }
    }

    /** The numbers of an earlier day. */
    public Workshop held(Earlier earlier) {
        return KeptFiles.workshop(earlier.file());
    }

    /** What a workshop's file held when days began on which it was changed, latest first. */
    public List<Earlier> earlier(Path file) {
        Path days = folder.resolve("earlier");
        Pattern of = Pattern.compile(
                Pattern.quote(bare(String.valueOf(file.getFileName()))) + " (\\d{4}-\\d\\d-\\d\\d)\\.json");
        List<Earlier> found = new ArrayList<>();
        for (String name : files(days)) {
            Matcher matcher = of.matcher(name);
            if (matcher.matches()) {
                day(matcher.group(1)).ifPresent(day -> found.add(new Earlier(day, days.resolve(name))));
            }
        }
        found.sort(Comparator.comparing(Earlier::day).reversed());
        return found;
    }

    private static Optional<LocalDate> day(String words) {
        try {
            return Optional.of(LocalDate.parse(words));
        } catch (DateTimeException noDay) {
            return Optional.empty();
        }
    }
}
