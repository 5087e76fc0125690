package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.plate.Bath;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.tone.ArtRange;
import greyground.tone.Compensation;
import greyground.tone.PlateResponse;
import greyground.tone.RangeMapping;
import greyground.tone.ToneCurve;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class JobReserveTest {
    private static final Workshop SHOP = Workshop.assumed();

    private static Job job(Map<String, String> words) {
        return Told.as(Map.of("plate", "40x30mm", "resolution", "720dpi", "grain", "300um"))
                .andThen(Told.as(words))
                .apply(JobFields.usual());
    }

    private static JobReserve reserve(Workshop shop, Map<String, String> words) {
        JobPlate plate = JobPlate.of(shop, job(words));
        return JobReserve.of(plate, plate.tones());
    }

    /** h 40 µm, F 2, u 20 µm: a bite of 10 % moves edges by 2 µm, F 0.25 lower by 2.5, dots by 2. */
    @Test
    void straysMoveEdgesByTheirShareOfTheUndercut() {
        JobReserve reserve = reserve(SHOP, Map.of());
        assertEquals(
                List.of(2.0, 2.5, 2.0),
                reserve.strays().stream().map(JobReserve.Stray::micrometres).toList());
        assertTrue(reserve.words().contains("edges stray by 3.8 µm"), reserve.words());
        assertTrue(reserve.share() > 0.01 && reserve.share() < 0.1, reserve.words());
        assertTrue(reserve.cost() > 0 && reserve.cost() < 2, reserve.words());
    }

    @Test
    void whatIsMeasuredNeedsLess() {
        LocalDate day = LocalDate.of(2026, 3, 4);
        Workshop known = SHOP.with("bath.rateMicrometresPerMinute", Figure.measured(2, day, "bite log"))
                .with("bath.etchFactor", Figure.measured(2, day, "test plate"))
                .with("filmPrinter.spotGrowthMicrometres", Figure.measured(4, day, "test film"));
        JobReserve reserve = reserve(known, Map.of());
        assertEquals(
                List.of(1.0, 1.0, 1.0),
                reserve.strays().stream().map(JobReserve.Stray::micrometres).toList());
        assertTrue(reserve.share() < reserve(SHOP, Map.of()).share());
    }

    /** What the reserve is for: a plate that bit a tenth deeper under dots 2 µm wider still darkens up to the limit, at none too great a price. */
    @Test
    void aPlateThatStraysStillDarkensUpToTheLimit() {
        JobPlate plate = JobPlate.of(SHOP, job(Map.of()));
        JobReserve reserve = JobReserve.of(plate, plate.tones());
        Bath bath = (Bath) plate.conditions().wells();
        PlateConditions deeper = JobPlate.of(
                        SHOP.with("filmPrinter.spotGrowthMicrometres", Figure.assumed(6, "wider")), job(Map.of()))
                .conditions()
                .withWells(new Bath(1.1 * bath.depthMicrometres(), bath.etchFactor()));
        VirtualResponse strayed = plate.response(deeper);
        assertTrue(strayed.turningPoint() >= reserve.limit() - 0.01, "it turns past the limit");
        assertTrue(
                strayed.lightness(reserve.limit()) < strayed.lightness(reserve.limit() - 0.03), "and darkens up to it");
    }

    @Test
    void noneIsTheWholeResponseAndANumberIsTaken() {
        PlateResponse response = JobPlate.of(SHOP, job(Map.of())).tones().response();
        JobReserve none = reserve(SHOP, Map.of("reserve", "0"));
        assertSame(response, none.within(response));
        assertEquals(none.turn(), none.limit());
        JobReserve four = reserve(SHOP, Map.of("reserve", "4%"));
        assertEquals(none.turn() - 0.04, four.limit(), 1e-12);
        Compensation curve = Compensation.of("4 %", ArtRange.WHOLE, RangeMapping.DEFAULT, four.within(response));
        assertEquals(four.limit(), (double) curve.curve().coverage(0) / ToneCurve.SOLID, 1e-4);
        assertEquals(none.cost() + response.lightness(four.limit()) - response.lightness(none.limit()), four.cost());
    }

    @Test
    void tooMuchIsRefusedWithWhatThereIs() {
        Workshop fine = SHOP.with("bath.biteMinutes", Figure.assumed(30, "long"))
                .with("filmPrinter.spotGrowthMicrometres", Figure.assumed(30, "wide"));
        Refusal refusal = assertThrows(Refusal.class, () -> reserve(fine, Map.of("grain", "200um", "reserve", "30%")));
        assertTrue(refusal.getMessage().startsWith("reserve is 30 %; "), refusal.getMessage());
        assertThrows(Refusal.class, () -> job(Map.of("reserve", "31%")));
    }
}
