package greyground.app.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.grain.Grain;
import greyground.quantity.Ruling;
import greyground.raster.Progress;
import greyground.simulation.HiddenWorkshop;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class AssumedFiguresTest {
    private static final Workshop SHOP = Workshop.assumed();

    private static List<String> said(Workshop shop, Job job) {
        return AssumedFigures.of(shop, job, Progress.NONE).stream()
                .map(PlateWarning::words)
                .toList();
    }

    /** Asked by itself, at the 33 coverages of a response, the plate tells the same to the L* (0.3 lies between two of them). */
    @Test
    void theBiteMovesTheToneAsFarAsTheResponsesAtEitherEndLieApart() {
        for (Grain grain :
                List.of(new Grain.Stochastic(260, 1), new Grain.Halftone(new Ruling(40), 45, Grain.DotShape.ROUND))) {
            Job job = HiddenWorkshop.job(grain, 720);
            double apart = Math.abs(middle(job, 10) - middle(job, 30));
            String first = said(SHOP, job).get(0);
            assertTrue(first.contains("bite of 20 min is only assumed, and between 10 and 30 min"), first);
            double told = Double.parseDouble(first.replaceAll(".*moves a middle tone by ([0-9]+) L.*", "$1"));
            assertEquals(apart, told, 1.0, first);
        }
    }

    private static double middle(Job job, double minutes) {
        Workshop shop = SHOP.with("bath.biteMinutes", Figure.assumed(minutes, "this test"));
        return JobPlate.of(shop, job).response().lightness(0.3);
    }

    @Test
    void whatIsMeasuredIsNotTold() {
        Job job = HiddenWorkshop.job(new Grain.Stochastic(260, 1), 720);
        List<String> before = said(SHOP, job);
        assertEquals(3, before.size());
        Workshop known =
                SHOP.with("bath.biteMinutes", Figure.measured(20, java.time.LocalDate.of(2026, 3, 4), "this test"));
        List<String> after = said(known, job);
        assertTrue(after.stream().noneMatch(each -> each.contains("bite of")), after.toString());
        assertEquals(before.get(1), after.get(0), String.format(Locale.ROOT, "%s", after));
    }
}
