package greyground.desk.model;

import greyground.app.sight.LivePicture;
import greyground.app.teach.ReadOutcome;
import greyground.finding.Findings;
import java.nio.file.Path;
import java.util.Optional;

/** Where the work on a test plate stands. */
public sealed interface TestPlateState {
    /** Nothing is made or read yet. */
    record Start() implements TestPlateState {}

    /**
     * Something takes time.
     *
     * @param what in words
     * @param done 0 to 1
     */
    record Working(String what, double done) implements TestPlateState {}

    /**
     * A test film, to be looked at.
     *
     * @param written where it was written, if it was
     */
    record Film(LivePicture sheet, Findings findings, Optional<Path> written) implements TestPlateState {}

    /**
     * It can't be done.
     *
     * @param what could not be done
     * @param words why, and what to do
     */
    record Refused(String what, String words) implements TestPlateState {}

    /**
     * A proof that was read.
     *
     * @param scan with what was read drawn over it
     * @param tones as they were measured, against what was predicted or stated
     */
    record Read(ReadOutcome outcome, Optional<LivePicture> scan, Optional<LivePicture> tones)
            implements TestPlateState {}

    /** How a lesson stands to the workshop on the bench. */
    enum Standing {
        /** There is none. */
        NONE,
        /** It can be accepted. */
        OFFERED,
        /** It is in the workshop. */
        TAKEN,
        /** The workshop has changed since the proof was read. */
        OVERTAKEN
    }
}
