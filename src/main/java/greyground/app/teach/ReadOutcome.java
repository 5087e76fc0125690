package greyground.app.teach;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.Lesson;
import greyground.picture.Picture;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What a proof said, in words and as JSON, and the way to take it into the workshop. */
public sealed interface ReadOutcome permits LessonOutcome, CheckReading, ExposureLesson, FilmPrinterOutcome {
    /** Lines for a terminal, each led by one word. */
    List<String> lines();

    /** Adds the outcome to a JSON object. */
    void describe(ObjectNode tree);

    /**
     * Draws it.
     *
     * @param what the trade's name of the file
     * @param file replaced whole or not at all
     */
    void draw(String what, Path file) throws Exception;

    /** The scan with what was measured drawn over it; empty where that wasn't asked for, or nothing was scanned. */
    default Optional<Picture> overlay() {
        return Optional.empty();
    }

    /** Whether there is anything to accept: a check plate only judges. */
    default boolean teaches() {
        return true;
    }

    /** In parts, for a window. */
    ReadReport report();

    /** What it would make of the workshop; empty where there is nothing to accept. */
    Optional<Lesson> lesson();

    /**
     * Takes the lesson into the workshop file, keeping what that held.
     *
     * @return where the old workshop is kept
     */
    Path accept() throws Exception;
}
