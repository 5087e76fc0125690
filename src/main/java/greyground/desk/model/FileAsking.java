package greyground.desk.model;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Asks the person for a file, by the system's own window; tests answer at once. */
public interface FileAsking {
    /** Endings of the names of pictures. */
    String PICTURES = "tif tiff png jpg jpeg webp psd bmp pnm pgm ppm";

    /**
     * A file to open.
     *
     * @param title what is asked for
     */
    Optional<Path> open(String title, Kind kind);

    /**
     * A file to write.
     *
     * @param suggested its name
     */
    Optional<Path> save(String title, Kind kind, String suggested);

    /** What the file holds. */
    enum Kind {
        ANY("Pictures, jobs and films", FileAsking.PICTURES + " pdf json"),
        PICTURE("Pictures", FileAsking.PICTURES),
        JOB("Jobs", "json"),
        WORKSHOP("Workshops and films", "json pdf"),
        FILM("Films, as PDF or TIFF", "pdf tif tiff");

        private final String words;
        private final String endings;

        Kind(String words, String endings) {
            this.words = words;
            this.endings = endings;
        }

        public String words() {
            return words;
        }

        /** Patterns of names, such as "*.pdf". */
        public List<String> patterns() {
            return Stream.of(endings.split(" ")).map(each -> "*." + each).toList();
        }
    }
}
