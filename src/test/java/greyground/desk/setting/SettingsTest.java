package greyground.desk.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.SourceArt;
import greyground.desk.model.BenchState;
import greyground.desk.model.Turning;
import greyground.desk.model.Viewport;
import greyground.film.job.ArtFields;
import greyground.film.job.FilmFields;
import greyground.film.job.Kind;
import greyground.film.job.PlacingFields;
import greyground.film.job.Told;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SettingsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 4);
    private static final BenchState FRESH = BenchState.fresh(
            Path.of("leaf.png"), new SourceArt("leaf.png", "leaf", "", 400, 300), Workshop.assumed(), "2026-03-04");

    /** Under every process and carrier, so that each setting applies somewhere. */
    private static List<BenchState> states() {
        return List.of(
                FRESH,
                FRESH.with(Told.as("ruling", "40")),
                FRESH.with(Told.as("sheet", "297x420mm")),
                FRESH.with(Told.as("outline", "ellipse")),
                FRESH.with(Told.as("source", "line")),
                FRESH.with(Told.as("process", "photogravure")),
                FRESH.with(Told.as("process", "sprayed-aquatint")),
                FRESH.with(Told.as("process", "unetched-film")));
    }

    @Test
    void everySettingIsNamedOnceAndExplained() {
        Set<String> ids = new HashSet<>();
        Set<String> labels = new HashSet<>();
        for (Setting setting : Settings.ALL) {
            assertTrue(ids.add(setting.id()), setting.id());
            assertTrue(labels.add(setting.station() + setting.label()), setting.label());
            assertTrue(
                    setting.explanation().matches("(?s)[A-Z].{30,}[.]"), setting.id() + ": " + setting.explanation());
            assertTrue(states().stream().anyMatch(setting::applies), setting.id() + " never applies");
        }
    }

    /** Its value, its ends and the next step are all taken, and read back as they were set; past the ends is refused. */
    @Test
    void everyNumberIsTakenOverItsWholeRange() {
        for (Setting setting : Settings.ALL) {
            if (!(setting instanceof Setting.Measure measure)) {
                continue;
            }
            for (BenchState state : states().stream().filter(setting::applies).toList()) {
                double present = measure.value(state).orElse(measure.range().least());
                double next = present + measure.step() <= measure.range().most()
                        ? present + measure.step()
                        : present - measure.step();
                BenchState changed = set(measure, state, next);
                assertEquals(next, measure.value(changed).orElseThrow(), 1e-9, measure.id());
                for (double past : new double[] {
                    measure.range().least() - 1, measure.range().most() + 1
                }) {
                    assertThrows(Refusal.class, () -> measure.with(state, past, TODAY), measure.id());
                }
            }
        }
    }

    /** ISO 216:2007, table 1: A4 is 210 x 297 mm, A3 297 x 420 mm; either side's row takes the name of both. */
    @Test
    void aSheetsNameIsTakenForBothSides() {
        Setting.Measure height = (Setting.Measure) Settings.named("plate-height");
        BenchState plate = height.told(FRESH, " a4 landscape").orElseThrow();
        assertEquals("297x210mm", FilmFields.PLATE.text(plate.job()));
        Setting.Measure width = (Setting.Measure) Settings.named("sheet-width");
        BenchState sheet = width.told(FRESH, "A3").orElseThrow();
        assertEquals("297x420mm", PlacingFields.SHEET.text(sheet.job()));
        assertTrue(width.told(sheet, "300").isEmpty(), "a number is no name");
        assertThrows(Refusal.class, () -> height.told(FRESH, "A10"), "26 x 37 mm is no plate");
    }

    /** Where the program finds a number, an emptied row or its word hands it back. */
    @Test
    void anEmptiedRowIsLeftToTheProgram() {
        for (Setting setting : Settings.ALL) {
            if (setting instanceof Setting.JobNumber number
                    && number.field().kind().instead().equals(Optional.of("automatic"))) {
                for (String typed : List.of("", "automatic")) {
                    BenchState emptied = number.told(states().get(2), typed).orElseThrow();
                    assertTrue(number.value(emptied).isEmpty(), setting.id());
                }
            }
        }
    }

    private static BenchState set(Setting.Measure measure, BenchState state, double value) {
        try {
            return measure.with(state, value, TODAY);
        } catch (Refusal refused) {
            throw new AssertionError(measure.id() + " at " + value, refused);
        }
    }

    @Test
    void aWarningIsMendedByTheNumberItNamesAndByNoneWhereItNamesNone() {
        assertEquals("bite", Settings.mending("bath.biteMinutes").orElseThrow().id());
        assertEquals(
                "sheet-width",
                Settings.mending(PlacingFields.SHEET_WIDTH.name()).orElseThrow().id());
        assertTrue(Settings.mending("").isEmpty());
    }

    @Test
    void aSprayedAquatintsNumbersAreShownOnlyThere() {
        for (String id : List.of("aquatint-land", "aquatint-grain")) {
            for (BenchState state : states()) {
                assertEquals(
                        state.job().process() instanceof PlateProcess.SprayedAquatint,
                        Settings.named(id).applies(state),
                        id + " in " + state.job().process());
            }
        }
    }

    @Test
    void everyWayCanBeChosenAndIsThenTheOneChosen() {
        for (Setting setting : Settings.ALL) {
            if (setting instanceof Setting.Choice<?> choice) {
                everyWay(choice);
            }
        }
    }

    private static <T> void everyWay(Setting.Choice<T> choice) {
        BenchState state = states().stream().filter(choice::applies).findFirst().orElseThrow();
        for (Kind.Way<T> way : choice.ways()) {
            assertEquals(way, choice.chosen(choice.with(state, way)).orElseThrow(), choice.id());
        }
    }

    @Test
    void aShopsNumberIsAssumedUntilItIsMeasuredHere() {
        Setting.ShopNumber bite = (Setting.ShopNumber) Settings.named("bite");
        BenchState set = bite.with(FRESH, 17, TODAY);
        assertTrue(bite.figure(set.workshop()).orElseThrow().isAssumed());
        BenchState measured = bite.known(set, true, TODAY);
        assertEquals(
                "measured 2026-03-04",
                bite.figure(measured.workshop()).orElseThrow().provenance().words());
        assertEquals(17, bite.figure(measured.workshop()).orElseThrow().value());
        BenchState later = bite.with(measured, 18, TODAY.plusDays(1));
        assertFalse(bite.figure(later.workshop()).orElseThrow().isAssumed());
        assertEquals(
                "measured 2026-03-05",
                bite.figure(later.workshop()).orElseThrow().provenance().words());
    }

    /** 25.4 mm are an inch, exactly (international yard and pound agreement of 1959). */
    @Test
    void lengthsAreShownAndTakenInInches() {
        assertEquals("10", Unit.MILLIMETRES.words(254, true));
        assertEquals(254, Unit.MILLIMETRES.metric(10, true), 1e-9);
        assertEquals("in", Unit.MILLIMETRES.symbol(true));
        assertEquals("101.6", Unit.LINES.words(40, true));
    }

    /** A unit that is typed counts for more than the one that is shown. */
    @Test
    void aNumberMayBeTypedWithAnyOfItsUnits() {
        assertEquals(304.8, Unit.MILLIMETRES.parse("plate width", "12in", false), 1e-9);
        assertEquals(304.8, Unit.MILLIMETRES.parse("plate width", "12", true), 1e-9);
        assertEquals(12, Unit.MILLIMETRES.parse("plate width", "12 mm", true), 1e-9);
        assertEquals(180, Unit.MICROMETRES.parse("grain", "0,18mm", false), 1e-9);
        assertEquals(2.5, Unit.MINUTES.parse("bite", "2:30", false), 1e-9);
        assertEquals(0.45, Unit.SHARE.parse("screen black", "45", false), 1e-9);
        assertThrows(Refusal.class, () -> Unit.MILLIMETRES.parse("plate width", "12 furlongs", false));
    }

    @Test
    void fourQuarterTurnsBringTheFragmentBack() {
        BenchState cropped = FRESH.with(Told.as(Map.of("crop", "10%,20%,30%,40%", "rotate", "3")));
        BenchState turned = cropped;
        for (int i = 0; i < 4; i++) {
            turned = turned.with(job -> Turning.quarter(job, true));
        }
        assertEquals(3, ArtFields.ROTATE.of(turned.job()), 1e-9);
        assertEquals(
                cropped.job().art().crop().left(), turned.job().art().crop().left(), 1e-5);
        assertEquals(
                cropped.job().art().crop().height(), turned.job().art().crop().height(), 1e-5);
        BenchState once = cropped.with(job -> Turning.quarter(job, true));
        assertEquals(1 - 0.2 - 0.4, once.job().art().crop().left(), 1e-5);
        assertEquals(0.1, once.job().art().crop().top(), 1e-5);
        assertEquals(3, ArtFields.ROTATE.of(Turning.quarter(once.job(), false)), 1e-9);
    }

    @Test
    void aFragmentDrawnPastTheArtIsHeldWithinIt() {
        BenchState state = FRESH.with(job -> Turning.cropped(job, new Viewport.Area(-50, 100, 200, 900), 400, 300));
        Viewport.Area area = Turning.area(state.job().art().crop(), 400, 300);
        assertEquals(0, area.left(), 1e-3);
        assertEquals(150, area.width(), 1e-2);
        assertEquals(200, area.height(), 1e-2);
    }
}
