package greyground.app.teach;

import greyground.fit.FigureChange;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;

/**
 * A workshop that a test plate has taught, with what it was before, so that the lesson can be taken back.
 *
 * @param before the workshop as it was
 * @param after the workshop with the accepted numbers, each measured on its date
 * @param changes that were accepted
 */
public record LearnedWorkshop(Workshop before, Workshop after, List<FigureChange> changes) {
    public LearnedWorkshop {
        changes = List.copyOf(changes);
    }

    /** What a number of the workshop would change to. */
    static FigureChange change(Workshop workshop, String path, double after, double standardError) {
        Figure present = workshop.figure(path);
        return new FigureChange(path, present.value(), present.provenance().words(), after, standardError);
    }

    /**
     * Applies changes.
     *
     * @param accepted each found from this very workshop: a number that has another value by now is refused
     * @param date of the test plate's print
     * @param test in a few words, such as "test plate 12"
     */
    public static LearnedWorkshop of(Workshop workshop, List<FigureChange> accepted, LocalDate date, String test) {
        Workshop taught = workshop;
        for (FigureChange change : accepted) {
            double present = workshop.figure(change.path()).value();
            if (present != change.before()) {
                throw Refusal.use("workshop " + change.path() + " is " + Refusal.plain(present)
                        + " by now; it must be " + Refusal.plain(change.before())
                        + " as it was for the fit: fit the test plate again");
            }
            String how = test + ", standard error " + Refusal.plain(change.standardError());
            taught = taught.with(change.path(), Figure.measured(change.after(), date, how));
        }
        return new LearnedWorkshop(workshop, taught, accepted);
    }
}
