package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.setting.FigureWords;
import greyground.film.job.Kind;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TestPlateModelTest {
    @TempDir
    Path folder;

    /** News for the window's thread, which is the test's own. */
    private final LinkedBlockingQueue<Runnable> news = new LinkedBlockingQueue<>();

    private final List<String> said = new ArrayList<>();

    private final BenchModel bench = new BenchModel(new Recovery(new DeskFolder(Path.of("none")), 1));

    private TestPlateModel model() {
        FileAsking none = new FileAsking() {
            @Override
            public Optional<Path> open(String title, Kind kind) {
                return Optional.empty();
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                return Optional.empty();
            }
        };
        return new TestPlateModel(
                new DeskServices(
                        none,
                        new DeskFolder(folder.resolve("state")),
                        1,
                        () -> LocalDate.of(2026, 3, 4),
                        System::nanoTime,
                        java.time.InstantSource.system(),
                        news::add,
                        List::of,
                        () -> {},
                        folder -> {}),
                bench,
                heard());
    }

    private Messages heard() {
        return new Messages() {
            @Override
            public void done(String words, Answer... next) {
                said.add(words);
            }

            @Override
            public void cant(String words, Answer... next) {
                said.add(words);
            }

            @Override
            public void ask(String words, Answer... answers) {
                said.add(words);
            }

            @Override
            public void clear() {
                said.add("");
            }
        };
    }

    private void settle(TestPlateModel model) throws InterruptedException {
        while (model.isWorking()) {
            Runnable next = news.poll(60, TimeUnit.SECONDS);
            assertTrue(next != null, "no news");
            next.run();
        }
    }

    @Test
    void aKindBringsItsUsualPlateUnlessOneWasTold() {
        TestPlateModel model = model();
        assertEquals("150x200mm", model.plate());
        model.choose(TestPlateKind.STRIP);
        assertEquals("150x40mm", model.plate());
        model.plate(" 110x40mm ");
        model.choose(TestPlateKind.FULL);
        assertEquals("110x40mm", model.plate());
    }

    @Test
    void aPlateThatDoesNotDoIsRefusedInOneLine() throws Exception {
        for (String size : List.of("20x30mm", "100x100", "grain")) {
            TestPlateModel model = model();
            model.plate(size);
            model.preview();
            settle(model);
            TestPlateState.Refused refused = assertInstanceOf(TestPlateState.Refused.class, model.state());
            assertFalse(refused.words().contains("\n") || refused.words().contains("unforeseen"), refused.words());
        }
    }

    @Test
    void aScanWithoutAFilmAsksForTheFilm() throws Exception {
        TestPlateModel model = model();
        model.read(folder.resolve("proof.png"));
        assertTrue(assertInstanceOf(TestPlateState.Refused.class, model.state())
                .words()
                .contains("choose the film"));
        Path text = Files.writeString(folder.resolve("notes.pdf"), "%PDF- of a kind");
        model.useFilm(text);
        assertInstanceOf(TestPlateState.Refused.class, model.state());
        assertEquals(Optional.empty(), model.film());
    }

    /** With no picture on the bench there is still a workshop, and a way back. */
    @Test
    void aLessonWithoutAPictureIsUnsavedAndCanBeTakenBack() throws Exception {
        Workshop assumed = bench.workshop();
        Workshop taught =
                assumed.with("bath.etchFactor", Figure.measured(2.6, LocalDate.of(2026, 3, 4), "invented test plate"));
        bench.teach("test plate", taught, false);
        assertTrue(bench.workshopUnsaved());
        assertEquals(Optional.of("test plate"), bench.undoes());
        bench.undo();
        assertEquals(assumed, bench.workshop());
        assertFalse(bench.workshopUnsaved());
        bench.redo();
        assertEquals(taught, bench.workshop());
        bench.lay(
                BenchState.fresh(
                        folder.resolve("leaf.png"),
                        new greyground.app.recipe.SourceArt("leaf.png", "leaf", "", 400, 300),
                        bench.workshop(),
                        "2026-03-04"),
                null);
        assertTrue(bench.workshopUnsaved(), "a picture that is laid down saves nothing");
        assertEquals(taught, bench.workshop());
    }

    @Test
    void aLessonThatTheFileHoldsIsSavedUntilItIsTakenBack() {
        Workshop assumed = bench.workshop();
        Workshop taught =
                assumed.with("bath.etchFactor", Figure.measured(2.6, LocalDate.of(2026, 3, 4), "invented test plate"));
        bench.teach("test plate", taught, true);
        assertFalse(bench.workshopUnsaved());
        bench.undo();
        assertTrue(bench.workshopUnsaved() && bench.isSaved(taught));
    }

    @Test
    void numbersHaveTheNamesOfTheirStations() {
        assertEquals("2.63", FigureWords.of("bath.etchFactor").withUnit(2.6258));
        assertEquals("Etch factor", FigureWords.of("bath.etchFactor").label());
        assertEquals(
                "2.25 \u00b5m/min",
                FigureWords.of("bath.rateMicrometresPerMinute").withUnit(2.25));
        assertEquals("Optical gain", FigureWords.of("ink.yuleNielsenFactor").label());
    }
}
