package greyground.desk.setting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.SourceArt;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.Recovery;
import greyground.desk.model.Station;
import greyground.film.job.Told;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every setting of every station, under every process and carrier: changed, taken back, done again. */
class UndoEverySettingTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 4);

    @TempDir
    Path folder;

    private final BenchState fresh = BenchState.fresh(
            Path.of("leaf.png"), new SourceArt("leaf.png", "leaf", "", 400, 300), Workshop.assumed(), "2026-03-04");

    @Test
    void everySettingIsTakenBackAndDoneAgain() {
        Set<String> changed = new HashSet<>();
        for (Map<String, String> kind : List.of(
                Map.<String, String>of(),
                Map.of("ruling", "40"),
                Map.of("sheet", "297x420mm"),
                Map.of("outline", "ellipse"),
                Map.of("source", "line"),
                Map.of("process", "photogravure"),
                Map.of("process", "sprayed-aquatint"),
                Map.of("process", "unetched-film"))) {
            BenchModel model = new BenchModel(new Recovery(new DeskFolder(folder), 1));
            model.lay(fresh.with(Told.as(kind)), null);
            for (Station station : Station.values()) {
                for (Setting setting : Settings.at(station, model.state().orElseThrow())) {
                    for (UnaryOperator<BenchState> change :
                            changes(setting, model.state().orElseThrow())) {
                        takeBack(model, setting, change);
                        changed.add(setting.id());
                    }
                }
            }
        }
        Set<String> all = new HashSet<>();
        Settings.ALL.forEach(setting -> all.add(setting.id()));
        assertEquals(all, changed, "settings that were never changed");
    }

    private static void takeBack(BenchModel model, Setting setting, UnaryOperator<BenchState> change) {
        BenchState before = model.state().orElseThrow();
        model.change(setting.label(), "", change);
        BenchState after = model.state().orElseThrow();
        assertNotEquals(before, after, setting.id() + " changed nothing");
        assertEquals(setting.label(), model.undoes().orElse(""));
        assertTrue(model.unsaved(), setting.id());
        model.undo();
        assertEquals(before, model.state().orElseThrow(), setting.id() + " was not taken back whole");
        assertEquals(setting.label(), model.redoes().orElse(""));
        model.redo();
        assertEquals(after, model.state().orElseThrow(), setting.id() + " was not done again");
        model.undo();
    }

    private List<UnaryOperator<BenchState>> changes(Setting setting, BenchState state) {
        if (setting instanceof Setting.Measure measure) {
            double present = measure.value(state).orElse(measure.range().least());
            double next = present + measure.step() <= measure.range().most()
                    ? present + measure.step()
                    : present - measure.step();
            UnaryOperator<BenchState> value = each -> measure.with(each, next, TODAY);
            return measure instanceof Setting.ShopNumber shop
                    ? List.of(value, each -> shop.known(each, true, TODAY))
                    : List.of(value);
        }
        if (setting instanceof Setting.Choice<?> choice) {
            return others(choice, state);
        }
        Setting.Text text = (Setting.Text) setting;
        String words = switch (text.id()) {
            case "tones" -> "30:38";
            case "touches" -> touches();
            case "spots" -> "found";
            case "outline", "plate-shape" -> "cut:8mm";
            case "outline-tear" -> "0.7mm";
            case "threshold" -> "45%";
            default -> "another " + text.value(state);
        };
        return List.of(each -> text.with(each, words));
    }

    /** A file of one touch. */
    private String touches() {
        String stroke = "{\"shape\": \"stroke\", \"burnish\": 6, \"widthMillimetres\": 8, \"featherMillimetres\": 4,"
                + " \"pointsMillimetres\": [[30, 41], [45, 43]]}";
        try {
            Path file = folder.resolve("touches.json");
            Files.writeString(file, "{\"greyground\": \"touches\", \"version\": 1, \"touches\": [" + stroke + "]}");
            return file.toString();
        } catch (IOException unwritten) {
            throw new UncheckedIOException(unwritten);
        }
    }

    private static <T> List<UnaryOperator<BenchState>> others(Setting.Choice<T> choice, BenchState state) {
        return choice.ways().stream()
                .filter(way -> !choice.chosen(state).equals(Optional.of(way)))
                .<UnaryOperator<BenchState>>map(way -> each -> choice.with(each, way))
                .toList();
    }
}
