package greyground.app.teach;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.Lesson;
import greyground.app.sight.LivePicture;
import greyground.picture.Picture;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A check plate's proof, read: it judges the workshop and never changes it.
 *
 * @param found how it was read
 * @param outcome tone by tone
 */
record CheckReading(PlateFindings found, CheckOutcome outcome) implements ReadOutcome {
    @Override
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("read    " + found.how());
        lines.addAll(outcome.lines());
        found.notes().forEach(note -> lines.add("note    " + note));
        return lines;
    }

    @Override
    public ReadReport report() {
        return new ReadReport(
                outcome.title(),
                found.how(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.of(ReadReport.Check.of(outcome.result())),
                overlay().map(LivePicture::of),
                found.notes());
    }

    @Override
    public Optional<Lesson> lesson() {
        return Optional.empty();
    }

    @Override
    public void describe(ObjectNode tree) {
        tree.put("how", found.how());
        tree.put("kind", "check");
        outcome.describe(tree);
        found.notes().forEach(tree.putArray("notes")::add);
    }

    @Override
    public void draw(String what, Path file) throws Exception {
        outcome.writePlot(file);
    }

    @Override
    public Optional<Picture> overlay() {
        return found.overlay();
    }

    @Override
    public boolean teaches() {
        return false;
    }

    @Override
    public Path accept() {
        throw refused();
    }

    static Refusal refused() {
        return Refusal.use(
                "a check plate judges the workshop and teaches it nothing: leave out --accept, and read a full or"
                        + " strip test plate to teach it");
    }
}
