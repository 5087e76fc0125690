package greyground.app.files;

import greyground.output.Attachment;
import greyground.quantity.Refusal;
import greyground.states.NamedFile;
import greyground.states.PlateRecord;
import greyground.states.PlateRecordFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Function;

/** Plate records on disk. */
public final class RecordFile {
    private static final String WHAT = "plate record";
    private static final int READ_BYTES = 1 << 16;

    private RecordFile() {}

    /** A record from its own file, or from the pages that carry it. */
    public static PlateRecord read(Path file) {
        return PlateRecordFile.read(KeptFiles.text(WHAT, file, Attachment.RECORD));
    }

    /**
     * Changes a record, or begins it, while no other program does.
     *
     * @param change is given what the file holds, nothing where there is none yet; where it refuses, the file stays as it is
     * @return what the file holds now
     */
    public static PlateRecord change(Path file, Function<Optional<PlateRecord>, PlateRecord> change)
            throws IOException {
        if (KeptFiles.isPdf(file)) {
            throw Refusal.use("the record " + file
                    + " is a PDF, which never changes: name its JSON file, or save the one it carries");
        }
        SafeFile.checkWritable(WHAT, file);
        return OneAtATime.change(WHAT, file, () -> {
            boolean there = Files.exists(file);
            PlateRecord changed = change.apply(there ? Optional.of(read(file)) : Optional.empty());
            byte[] text = PlateRecordFile.text(changed).getBytes(StandardCharsets.UTF_8);
            SafeFile.write(WHAT, file, channel -> channel.write(ByteBuffer.wrap(text)));
            return changed;
        });
    }

    /** A file's name, length and digest, so that a record can name it. */
    public static NamedFile named(String what, Path file) {
        if (!Files.isRegularFile(file)) {
            throw Refusal.failure("there is no " + what + " " + file + ": check the name");
        }
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] some = new byte[READ_BYTES];
            long bytes = 0;
            for (int count = in.read(some); count >= 0; count = in.read(some)) {
                digest.update(some, 0, count);
                bytes += count;
            }
            String name = String.valueOf(file.getFileName());
            return new NamedFile(name, bytes, HexFormat.of().formatHex(digest.digest()));
        } catch (IOException unreadable) {
            throw Refusal.failure(
                    "cannot read the " + what + " " + file + ": " + FileFault.words(unreadable), unreadable);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
