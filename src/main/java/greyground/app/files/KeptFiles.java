package greyground.app.files;

import greyground.chart.TestPlate;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.job.SpotWish;
import greyground.film.job.SpotsFile;
import greyground.film.sheet.ChartFile;
import greyground.ink.InkSet;
import greyground.ink.InksFile;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanJson;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;

/** Opens jobs, workshops and plans, from their own files or from the film PDF that carries them. */
public final class KeptFiles {
    /** A job or workshop is a few kilobytes, one with tens of thousands of strokes some megabytes; far beyond that it is something else. */
    static final int LARGEST_BYTES = 32 << 20;

    private KeptFiles() {}

    public static Job job(Path file) {
        return JobFile.read(text("job", file, Attachment.JOB));
    }

    public static Workshop workshop(Path file) {
        return WorkshopFile.read(text("workshop", file, Attachment.WORKSHOP));
    }

    public static ExposurePlan plan(Path filmPdf) {
        return PlanJson.read(text("plan", filmPdf, Attachment.PLAN));
    }

    public static TestPlate chart(Path filmPdf) {
        if (Files.isRegularFile(filmPdf) && !isPdf(filmPdf)) {
            throw Refusal.use(
                    filmPdf.getFileName() + " is no film PDF: give the test plate's film, as 'wedge' made it");
        }
        return ChartFile.read(text("test plate", filmPdf, Attachment.CHART));
    }

    /** The inks of a set, from their own file or from the set that carries them. */
    public static InkSet inks(Path file) {
        return InksFile.read(text("inks", file, Attachment.INKS));
    }

    public static boolean isPdf(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(5), StandardCharsets.ISO_8859_1).equals("%PDF-");
        } catch (IOException unreadable) {
            return false;
        }
    }

    public static void saveJob(Path file, Job job) throws IOException {
        save("job", file, JobFile.text(job));
    }

    public static void saveWorkshop(Path file, Workshop workshop) throws IOException {
        save("workshop", file, WorkshopFile.text(workshop));
    }

    public static void saveSpots(Path file, SpotWish.Chosen spots) {
        save("spots", file, SpotsFile.text(spots));
    }

    private static void save(String what, Path file, String text) {
        SafeFile.write(what, file, channel -> channel.write(StandardCharsets.UTF_8.encode(text)));
    }

    /**
     * Writes a workshop over the file it came from. If another program has changed that file meanwhile, what it holds is kept beside it
     * first, as if it had been a lesson.
     *
     * @param believed what the file held when it was last read or written here
     * @param day for the kept file's name
     * @return where the other program's workshop is kept, if there was one
     */
    public static Optional<Path> saveWorkshop(Path file, Workshop believed, Workshop workshop, LocalDate day)
            throws IOException {
        if (!Files.exists(file)) {
            saveWorkshop(file, workshop);
            return Optional.empty();
        }
        ShopFile held = ShopFile.open(file);
        if (held.holds(believed) || held.holds(workshop)) {
            held.replaceWith(workshop);
            return Optional.empty();
        }
        return Optional.of(held.teach(believed, workshop, day + "-saved"));
    }

    /** Whether a file is a set of plates. */
    public static boolean isSet(Path file) {
        return isPdf(file) && carried(file, Attachment.SET).isPresent();
    }

    /** A text that a film PDF carries; empty where it has none. */
    public static Optional<String> carried(Path filmPdf, String attachment) {
        try (FilmPdfReader reader = FilmPdfReader.open(filmPdf)) {
            return reader.attachment(attachment).map(bytes -> decoded(attachment, filmPdf, bytes));
        } catch (IOException closing) {
            throw Refusal.failure("cannot read " + filmPdf + ": " + FileFault.words(closing), closing);
        }
    }

    /** A text that a film PDF carries, or the file itself. */
    public static String text(String what, Path file, String attachment) {
        if (!Files.isRegularFile(file)) {
            throw Refusal.failure("there is no " + what + " file " + file + ": check the name");
        }
        if (isPdf(file)) {
            try (FilmPdfReader reader = FilmPdfReader.open(file)) {
                if (reader.attachment(Attachment.SHEET).isPresent()) {
                    throw Refusal.failure(file.getFileName()
                            + " is a sheet of several films: give one of the film PDFs that were gathered on it");
                }
                if (reader.attachment(attachment).isEmpty()
                        && reader.attachment(Attachment.SET).isPresent()) {
                    throw Refusal.failure(file.getFileName() + " is a set of "
                            + reader.films().size()
                            + " plates, and this takes the film of one: the plans of all are on the set's last pages, and"
                            + " 'plates --separations' keeps each plate's picture, of which 'positive' makes its film");
                }
                byte[] bytes = reader.attachment(attachment)
                        .orElseThrow(() -> Refusal.failure(file.getFileName() + " carries no " + what
                                + ": give a film PDF that this program made with one"));
                return decoded(what, file, bytes);
            } catch (IOException closing) {
                throw Refusal.failure("cannot read " + file + ": " + FileFault.words(closing), closing);
            }
        }
        return decoded(what, file, bytes(what, file));
    }

    /** A text that stands in a file of its own. */
    public static String text(String what, Path file) {
        if (!Files.isRegularFile(file)) {
            throw Refusal.failure("there is no " + what + " file " + file + ": check the name");
        }
        return decoded(what, file, bytes(what, file));
    }

    /** All of a file that is no larger than such files are. */
    static byte[] bytes(String what, Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
            if (bytes.length > LARGEST_BYTES) {
                throw Refusal.failure("the " + what + " file " + file + " is larger than " + (LARGEST_BYTES >> 20)
                        + " MiB, which no such file is: choose another file");
            }
            return bytes;
        } catch (IOException unreadable) {
            throw Refusal.failure(
                    "cannot read the " + what + " file " + file + ": " + FileFault.words(unreadable), unreadable);
        }
    }

    static String decoded(String what, Path file, byte[] bytes) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException notText) {
            throw Refusal.failure(what + " file " + file + " is not UTF-8 text: choose another file", notText);
        }
    }
}
