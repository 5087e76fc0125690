package greyground.app.teach;

import greyground.app.files.Lesson;
import greyground.app.sight.LivePicture;
import greyground.finding.Findings;
import greyground.fit.FigureChange;
import greyground.fit.FittedFigure;
import greyground.picture.DrawnPage;
import greyground.picture.Picture;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;

/**
 * What a reading says, and what it would make of the workshop; nothing is changed until that is accepted.
 *
 * @param title what was read, such as "check plate PEGEO, 48 fields"
 * @param findings in the order in which they are to be read
 * @param diagram a wedge's tones, or a check plate's misses
 * @param overlay the scan with what was measured drawn over it; empty where that wasn't asked for, or nothing was scanned
 * @param lesson for the workshop; empty where there is nothing to accept
 */
public record ReadOutcome(
        String title,
        Findings findings,
        Optional<DrawnPage> diagram,
        Optional<Picture> overlay,
        Optional<Lesson> lesson) {
    /** What a check plate's reading is never asked for. */
    static Refusal judgesOnly() {
        return Refusal.use(
                "a check plate judges the workshop and teaches it nothing: leave out --accept, and read a full or"
                        + " strip test plate to teach it");
    }

    public Optional<LivePicture> scan() {
        return overlay.map(LivePicture::of);
    }

    /** The diagram for a window. */
    public Optional<LivePicture> tones() {
        return diagram.map(DrawnPage::picture).map(LivePicture::of);
    }

    /** The lesson, refused where there is none. */
    public Lesson accepted() {
        return lesson.orElseThrow(
                () -> Refusal.failure(title + " gives nothing to accept, so the workshop is as it was:"
                        + " look at the developed resist with a loupe"));
    }

    /** Numbers that change, each with its 95 % interval: the fit's own where there is one, which need not lie evenly about the value. */
    static List<Findings> changes(List<FigureChange> changes, List<FittedFigure> fitted) {
        return changes.stream()
                .map(change -> {
                    Optional<FittedFigure.Determined> fit = fitted.stream()
                            .filter(each -> each.parameter().path().equals(change.path()))
                            .filter(FittedFigure.Determined.class::isInstance)
                            .map(FittedFigure.Determined.class::cast)
                            .findFirst();
                    return new Findings()
                            .put("path", change.path())
                            .put("before", change.before())
                            .put("known", change.beforeProvenance())
                            .put("after", change.after())
                            .put("standardError", change.standardError())
                            .put("low", fit.map(FittedFigure.Determined::low).orElse(change.after() - change.half95()))
                            .put(
                                    "high",
                                    fit.map(FittedFigure.Determined::high).orElse(change.after() + change.half95()))
                            .say("words", change.words());
                })
                .toList();
    }
}
