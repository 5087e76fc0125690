package greyground.desk.model;

import java.nio.file.Path;
import java.util.Optional;

/** Asks the person for a file, by the system's own window; tests answer at once. */
public interface FileAsking {
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
    @SuppressWarnings("ImmutableEnumChecker") // the lists are made by List.of
    enum Kind {
        ANY(
                "Pictures, jobs and films",
                "*.tif",
                "*.tiff",
                "*.png",
                "*.jpg",
                "*.jpeg",
                "*.webp",
                "*.psd",
                "*.bmp",
                "*.pnm",
                "*.pgm",
                "*.ppm",
                "*.pdf",
                "*.json"),
        PICTURE(
                "Pictures",
                "*.tif",
                "*.tiff",
                "*.png",
                "*.jpg",
                "*.jpeg",
                "*.webp",
                "*.psd",
                "*.bmp",
                "*.pnm",
                "*.pgm",
                "*.ppm"),
        JOB("Jobs", "*.json"),
        WORKSHOP("Workshops and films", "*.json", "*.pdf"),
        FILM("Films, as PDF or TIFF", "*.pdf", "*.tif", "*.tiff");

        private final String words;
        private final java.util.List<String> endings;

        Kind(String words, String... endings) {
            this.words = words;
            this.endings = java.util.List.of(endings);
        }

        public String words() {
            return words;
        }

        public java.util.List<String> endings() {
            return endings;
        }
    }
}
