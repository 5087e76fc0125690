package greyground.app.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.FigureChange;
import greyground.fit.FitParameter;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LearnedWorkshopTest {
    private static final LocalDate DATE = LocalDate.of(2026, 3, 4);
    private static final Workshop SHOP = Workshop.assumed();

    private static FigureChange change(String path, double after) {
        double before = SHOP.figures().get(path).value();
        return new FigureChange(path, before, SHOP.figure(path).provenance().words(), after, 0.25);
    }

    @Test
    void onlyAcceptedNumbersChangeAndTheOldWorkshopIsKept() {
        List<FigureChange> accepted = List.of(change("bath.etchFactor", 1.5), change("wipe.padRadiusMillimetres", 2.4));
        LearnedWorkshop learned = LearnedWorkshop.of(SHOP, accepted, DATE, "test plate");
        assertSame(SHOP, learned.before());
        for (Map.Entry<String, Figure> one : SHOP.figures().entrySet()) {
            Figure now = learned.after().figures().get(one.getKey());
            if (accepted.stream().noneMatch(each -> each.path().equals(one.getKey()))) {
                assertEquals(one.getValue(), now);
            }
        }
        assertEquals(
                Figure.measured(1.5, DATE, "test plate, standard error 0.25"),
                learned.after().bath().etchFactor());
        assertEquals(accepted, learned.changes());
    }

    @Test
    void acceptingNothingChangesNothing() {
        assertEquals(
                SHOP, LearnedWorkshop.of(SHOP, List.of(), DATE, "test plate").after());
    }

    @Test
    void aWorkshopThatChangedMeanwhileIsRefused() {
        Workshop later = SHOP.with("bath.etchFactor", Figure.assumed(3, "someone's guess"));
        List<FigureChange> accepted = List.of(change("bath.etchFactor", 1.5));
        Refusal refusal = assertThrows(Refusal.class, () -> LearnedWorkshop.of(later, accepted, DATE, "test plate"));
        assertTrue(refusal.getMessage().contains("fit the test plate again"));
    }

    @Test
    void anUnknownNumberIsRefused() {
        List<FigureChange> unknown = List.of(new FigureChange("bath.colour", 1, "assumed", 2, 1));
        assertThrows(Refusal.class, () -> LearnedWorkshop.of(SHOP, unknown, DATE, "test plate"));
    }

    /** Both ends of every number a fit may give are taken by the workshop under the path that the fit names. */
    @Test
    void everyFittedNumberHasAPlaceInTheWorkshop() {
        for (FitParameter number : FitParameter.values()) {
            for (double value :
                    new double[] {number.allowed().least(), number.allowed().most()}) {
                LearnedWorkshop learned =
                        LearnedWorkshop.of(SHOP, List.of(change(number.path(), value)), DATE, "test plate");
                assertEquals(value, learned.after().figures().get(number.path()).value());
            }
        }
    }
}
