package greyground.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;

/** What a proof said, in words and as JSON, and the way to take it into the workshop. */
public sealed interface ReadOutcome permits LessonOutcome, CheckReading, FilmPrinterOutcome {
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

    /**
     * Takes the lesson into the workshop file, keeping what that held.
     *
     * @return where the old workshop is kept
     */
    Path accept() throws Exception;
}
