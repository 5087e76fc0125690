package greyground.app.files;

import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A workshop file on disk, as it stood when it was opened, and the lessons it was taught.
 *
 * <p>Before a lesson changes {@code shop.json}, what it held is kept beside it as {@code shop.before-N-DATE-CHART.json}, N counting the
 * lessons from 1. Taking the last lesson back puts the kept file of the highest N in its place again, and keeps what that replaces as
 * {@code shop.taken-back-N-DATE-CHART.json}. No kept file is ever written over.
 */
public final class ShopFile {
    private static final String WHAT = "workshop";
    private static final int MOST_KEPT = 10_000;

    private final Path file;
    private final byte @Nullable [] bytes;

    private ShopFile(Path file, byte @Nullable [] bytes) {
        this.file = file;
        this.bytes = bytes;
    }

    /** Notes what a workshop file holds now; it may be a file that does not exist yet. */
    public static ShopFile open(Path file) {
        if (KeptFiles.isPdf(file)) {
            throw Refusal.use(
                    "the workshop " + file + " is a film PDF, which never changes: name a workshop file, such as"
                            + " shop.json; one that does not exist yet is made");
        }
        SafeFile.checkWritable(WHAT, file);
        return new ShopFile(file, Files.exists(file) ? KeptFiles.bytes(WHAT, file) : null);
    }

    /** The workshop in it; empty if there is no file yet. */
    public Optional<Workshop> workshop() {
        return bytes == null ? Optional.empty() : Optional.of(WorkshopFile.read(KeptFiles.decoded(WHAT, file, bytes)));
    }

    /** Writes what a lesson made of the workshop, having kept what was there; tells where that is kept. */
    public Path teach(Lesson lesson) throws IOException {
        return teach(lesson.before(), lesson.after(), lesson.name());
    }

    /** Whether it holds just this workshop, however it is written. */
    boolean holds(Workshop workshop) {
        try {
            return workshop().filter(workshop::equals).isPresent();
        } catch (Refusal unreadable) {
            return false;
        }
    }

    /** Writes a workshop in the place of the one that was opened, keeping nothing. */
    void replaceWith(Workshop workshop) throws IOException {
        OneAtATime.change(WHAT, file, () -> {
            replace(text(workshop));
            return file;
        });
    }

    /**
     * Writes a taught workshop, having kept what was there.
     *
     * @param before what is kept where there was no file: the workshop that the lesson began from
     * @param after the taught workshop
     * @param lesson date and chart, such as "2026-11-25-PEGEO"
     * @return where the old one is kept
     */
    public Path teach(Workshop before, Workshop after, String lesson) throws IOException {
        return OneAtATime.change(WHAT, file, () -> {
            checkUnchanged();
            byte[] old = bytes != null ? bytes : text(before);
            Path kept = keep("before", next(), lesson, old);
            try {
                replace(text(after));
            } catch (Exception | Error failed) {
                // The lesson did not take place.
                Files.deleteIfExists(kept);
                throw failed;
            }
            return kept;
        });
    }

    /** Puts new bytes in the place of those it was opened with, and of no others. */
    private void replace(byte[] now) throws IOException {
        checkUnchanged();
        SafeFile.Body body = channel -> channel.write(ByteBuffer.wrap(now));
        if (bytes != null) {
            SafeFile.write(WHAT, file, body);
        } else if (!SafeFile.writeNew(WHAT, file, body)) {
            throw changed();
        }
    }

    private void checkUnchanged() {
        byte[] now = Files.exists(file) ? KeptFiles.bytes(WHAT, file) : null;
        if (!Arrays.equals(now, bytes)) {
            throw changed();
        }
    }

    private Refusal changed() {
        return Refusal.failure("the workshop " + file
                + " was changed by someone else meanwhile; it is left as it is: read the test plate again");
    }

    public record TakenBack(Path restored, Path replaced) {}

    public TakenBack takeBack() throws IOException {
        if (bytes == null) {
            throw Refusal.failure("there is no workshop file " + file + ": check the name");
        }
        byte[] held = bytes;
        return OneAtATime.change(WHAT, file, () -> takeBack(held));
    }

    private TakenBack takeBack(byte[] held) throws IOException {
        Kept last = last();
        while (last != null && Arrays.equals(KeptFiles.bytes(WHAT, last.path()), held)) {
            // Already restored; only its removal was cut short.
            Files.delete(last.path());
            last = last();
        }
        if (last == null) {
            throw Refusal.failure("no lesson of " + file + " can be taken back: beside it lies no kept file named "
                    + name("before", 1, "DATE-CHART").replace("-1-", "-N-"));
        }
        byte[] kept = KeptFiles.bytes(WHAT, last.path());
        // A kept file that isn't whole must not take the place of one that is.
        WorkshopFile.read(KeptFiles.decoded(WHAT, last.path(), kept));
        checkUnchanged();
        Path replaced = keep("taken-back", last.number(), last.lesson(), held);
        replace(kept);
        Files.delete(last.path());
        return new TakenBack(last.path(), replaced);
    }

    private record Kept(Path path, int number, String lesson) {}

    /** The kept file of the highest number that holds anything. */
    private @Nullable Kept last() throws IOException {
        Pattern pattern = Pattern.compile(Pattern.quote(stem()) + "\\.before-(\\d{1,5})-(.+)\\.json");
        Kept last = null;
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder())) {
            for (Path each : files) {
                Matcher matcher = pattern.matcher(String.valueOf(each.getFileName()));
                if (matcher.matches() && each.toFile().length() > 0) {
                    int number = Integer.parseInt(matcher.group(1));
                    last = last == null || number > last.number() ? new Kept(each, number, matcher.group(2)) : last;
                }
            }
        }
        return last;
    }

    private int next() throws IOException {
        Kept last = last();
        return last == null ? 1 : last.number() + 1;
    }

    /** Keeps bytes under a name that is free. */
    private Path keep(String word, int number, String lesson, byte[] held) throws IOException {
        for (int copy = 1; copy < MOST_KEPT; copy++) {
            Path path = folder().resolve(name(word, number, copy == 1 ? lesson : lesson + "-" + copy));
            if (SafeFile.writeNew("kept workshop", path, channel -> channel.write(ByteBuffer.wrap(held)))) {
                return path;
            }
        }
        throw Refusal.failure("beside " + file + " lie too many kept files: move them elsewhere");
    }

    private String name(String word, int number, String lesson) {
        return stem() + "." + word + "-" + number + "-" + lesson + ".json";
    }

    private String stem() {
        return String.valueOf(file.getFileName()).replaceFirst("(?i)\\.json$", "");
    }

    private Path folder() {
        Path parent = file.toAbsolutePath().getParent();
        return parent == null ? file.toAbsolutePath() : parent;
    }

    private static byte[] text(Workshop workshop) {
        return WorkshopFile.text(workshop).getBytes(StandardCharsets.UTF_8);
    }
}
