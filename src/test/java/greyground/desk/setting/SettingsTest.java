package greyground.desk.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.SourceArt;
import greyground.desk.model.BenchState;
import greyground.desk.model.Turning;
import greyground.desk.model.Unit;
import greyground.desk.model.Viewport;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
                FRESH.told(Map.of("ruling", "40")),
                FRESH.told(Map.of("sheet", "297x420mm")),
                FRESH.told(Map.of("process", "photogravure")),
                FRESH.told(Map.of("process", "sprayed-aquatint")),
                FRESH.told(Map.of("process", "unetched-film")));
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
                double present = measure.value(state).orElse(measure.least());
                double next = present + measure.step() <= measure.most()
                        ? present + measure.step()
                        : present - measure.step();
                BenchState changed = set(measure, state, next);
                assertEquals(next, measure.value(changed).orElseThrow(), 1e-9, measure.id());
                for (double past : new double[] {measure.least() - 1, measure.most() + 1}) {
                    assertThrows(Refusal.class, () -> measure.with(state, past, TODAY), measure.id());
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
        assertEquals("sheet-width", Settings.mending("sheet").orElseThrow().id());
        assertTrue(Settings.mending("").isEmpty());
    }

    @Test
    void aSprayedAquatintsNumbersAreShownOnlyThere() {
        for (String id : List.of("aquatint-land", "aquatint-grain")) {
            for (BenchState state : states()) {
                assertEquals(
                        "sprayed-aquatint".equals(state.words().get("process")),
                        Settings.named(id).applies(state),
                        id + " in " + state.words());
            }
        }
    }

    @Test
    void everyWayCanBeChosenAndIsThenTheOneChosen() {
        for (Setting setting : Settings.ALL) {
            if (setting instanceof Setting.Choice choice) {
                BenchState state =
                        states().stream().filter(setting::applies).findFirst().orElseThrow();
                for (Setting.Way way : choice.ways()) {
                    BenchState told = state.told(way.words());
                    assertEquals(way.label(), choice.chosen(told).orElseThrow().label(), choice.id());
                }
            }
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

    @Test
    void fourQuarterTurnsBringTheFragmentBack() {
        BenchState cropped = FRESH.told(Map.of("crop", "10%,20%,30%,40%", "rotate", "3"));
        BenchState turned = cropped;
        for (int i = 0; i < 4; i++) {
            turned = turned.told(Turning.quarter(turned.job().art(), true));
        }
        assertEquals(cropped.words().get("rotate"), turned.words().get("rotate"));
        assertEquals(
                cropped.job().art().crop().left(), turned.job().art().crop().left(), 1e-5);
        assertEquals(
                cropped.job().art().crop().height(), turned.job().art().crop().height(), 1e-5);
        BenchState once = cropped.told(Turning.quarter(cropped.job().art(), true));
        assertEquals(1 - 0.2 - 0.4, once.job().art().crop().left(), 1e-5);
        assertEquals(0.1, once.job().art().crop().top(), 1e-5);
        assertEquals(once.told(Turning.quarter(once.job().art(), false)).words().get("rotate"), "3");
    }

    @Test
    void aFragmentDrawnPastTheArtIsHeldWithinIt() {
        BenchState state = FRESH.told(Turning.cropped(new Viewport.Area(-50, 100, 200, 900), 400, 300));
        Viewport.Area area = Turning.area(state.job().art().crop(), 400, 300);
        assertEquals(0, area.left(), 1e-3);
        assertEquals(150, area.width(), 1e-2);
        assertEquals(200, area.height(), 1e-2);
    }
}
