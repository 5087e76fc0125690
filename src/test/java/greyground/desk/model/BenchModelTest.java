package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.app.recipe.SourceArt;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import greyground.film.job.Told;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchModelTest {
    /** No process has this number: Linux gives none above 4 194 304 (PID_MAX_LIMIT, linux/threads.h). */
    private static final long GONE = 9_999_999_999L;

    @TempDir
    Path folder;

    private DeskFolder desk() {
        return new DeskFolder(folder.resolve("state"));
    }

    private BenchState fresh() {
        return BenchState.fresh(
                folder.resolve("leaf.png"),
                new SourceArt("leaf.png", "leaf", "", 400, 300),
                Workshop.assumed(),
                "2026-03-04");
    }

    private BenchModel model(long process) {
        BenchModel model = new BenchModel(new Recovery(desk(), process));
        model.lay(fresh(), null);
        return model;
    }

    @Test
    void whatIsChangedIsUnsavedUntilItIsSavedOrTakenBack() throws Exception {
        BenchModel model = model(GONE);
        assertFalse(model.unsaved());
        model.tell("grain", Told.as(Map.of("grain", "150um")));
        assertTrue(model.jobUnsaved() && !model.workshopUnsaved());
        model.undo();
        assertFalse(model.unsaved());
        model.redo();
        Path file = folder.resolve("leaf.json");
        model.saveJob(file);
        assertFalse(model.unsaved());
        assertEquals(model.state().orElseThrow().job(), KeptFiles.job(file));
        model.undo();
        assertTrue(model.jobUnsaved(), "the file now holds what was taken back");
    }

    @Test
    void theWorkshopIsSavedByItself() throws Exception {
        BenchModel model = model(GONE);
        Setting.ShopNumber bite = (Setting.ShopNumber) Settings.named("bite");
        model.change("bite", "", state -> bite.with(state, 12, LocalDate.of(2026, 3, 4)));
        assertTrue(model.workshopUnsaved() && !model.jobUnsaved());
        Path file = folder.resolve("shop.json");
        model.saveWorkshop(file);
        assertFalse(model.unsaved());
        assertEquals(model.workshop(), KeptFiles.workshop(file));
    }

    @Test
    void whatAnotherProgramTaughtTheWorkshopMeanwhileIsKept() throws Exception {
        BenchModel model = model(GONE);
        Setting.ShopNumber bite = (Setting.ShopNumber) Settings.named("bite");
        model.change("bite", "", state -> bite.with(state, 12, LocalDate.of(2026, 3, 4)));
        Path file = folder.resolve("shop.json");
        assertEquals(Optional.empty(), model.saveWorkshop(file));
        model.change("bite", "", state -> bite.with(state, 13, LocalDate.of(2026, 3, 4)));
        assertEquals(Optional.empty(), model.saveWorkshop(file), "nobody else was there");
        Workshop theirs = Workshop.assumed().with("bath.etchFactor", Figure.assumed(3, "their test plate"));
        KeptFiles.saveWorkshop(file, theirs);
        model.change("bite", "", state -> bite.with(state, 14, LocalDate.of(2026, 3, 4)));
        Path kept = model.saveWorkshop(file).orElseThrow();
        assertEquals(theirs, KeptFiles.workshop(kept));
        assertEquals(model.workshop(), KeptFiles.workshop(file));
        assertFalse(model.workshopUnsaved());
    }

    @Test
    void nothingIsSavedOverWhatLiesThere() throws Exception {
        BenchModel model = model(GONE);
        Path art = Files.writeString(folder.resolve("leaf.png"), "art");
        Path job = folder.resolve("leaf.json");
        Path shop = folder.resolve("shop.json");
        model.saveJob(job);
        model.saveWorkshop(shop);
        Path second = Files.createLink(folder.resolve("second.pdf"), art);
        List<byte[]> before = List.of(Files.readAllBytes(art), Files.readAllBytes(job), Files.readAllBytes(shop));
        for (Path own : List.of(art, job, shop, second)) {
            Refusal refused = assertThrows(
                    Refusal.class,
                    () -> FilmExport.make(model.named(), model.state().orElseThrow(), own, done -> {}));
            assertTrue(refused.getMessage().contains("would replace"), refused.getMessage());
        }
        assertThrows(Refusal.class, () -> model.saveJob(art));
        assertThrows(Refusal.class, () -> model.saveJob(shop));
        assertThrows(Refusal.class, () -> model.saveWorkshop(job));
        assertArrayEquals(before.get(0), Files.readAllBytes(art));
        assertArrayEquals(before.get(1), Files.readAllBytes(job));
        assertArrayEquals(before.get(2), Files.readAllBytes(shop));
    }

    @Test
    void workOfAKilledDeskIsFoundAndTakenUpUnsaved() {
        BenchModel killed = model(GONE);
        killed.tell("grain", Told.as(Map.of("grain", "150um", "plate", "100x80mm")));
        killed.autosaving().run();
        Recovery next = new Recovery(desk(), ProcessHandle.current().pid());
        List<Recovery.Left> left = next.left();
        assertEquals(1, left.size());
        BenchState state = killed.state().orElseThrow();
        assertEquals(state, left.get(0).state(left.get(0).art(), state.source()));
        BenchModel again = new BenchModel(next);
        again.takeUp(state, left.get(0).jobFile());
        assertTrue(again.unsaved());
        next.forget(left.get(0));
        assertEquals(List.of(), next.left());
    }

    @Test
    void workOfADeskThatStillRunsIsLeftAlone() {
        BenchModel running = model(ProcessHandle.current().pid());
        running.tell("grain", Told.as(Map.of("grain", "150um")));
        running.autosaving().run();
        assertEquals(List.of(), new Recovery(desk(), GONE).left());
    }

    @Test
    void savedWorkLeavesNothingToRecoverEvenIfItWasBeingKept() throws Exception {
        BenchModel model = model(GONE);
        model.tell("grain", Told.as(Map.of("grain", "150um")));
        Runnable late = model.autosaving();
        model.saveJob(folder.resolve("leaf.json"));
        late.run();
        assertEquals(List.of(), new Recovery(desk(), 1).left());
    }

    @Test
    void workThatWasTakenBackLeavesNothingToRecover() {
        BenchModel model = model(GONE);
        model.tell("grain", Told.as(Map.of("grain", "150um")));
        model.autosaving().run();
        model.undo();
        model.autosaving().run();
        assertEquals(List.of(), new Recovery(desk(), 1).left());
    }

    @Test
    void aSpoiltRecoveryFileIsPassedOver() throws Exception {
        Files.createDirectories(desk().folder());
        Files.writeString(desk().folder().resolve("unsaved-" + GONE + ".json"), "{\"greyground\": \"desk's");
        assertEquals(List.of(), new Recovery(desk(), 1).left());
    }

    @Test
    void recentFilesAreKeptLatestFirstAndOnlyWhileTheyAreThere() throws Exception {
        RecentFiles recent = new RecentFiles(desk());
        for (String name : new String[] {"a.png", "b.png", "a.png"}) {
            Files.write(folder.resolve(name), new byte[1]);
            recent.add(folder.resolve(name));
        }
        List<Path> wanted = List.of(folder.resolve("a.png"), folder.resolve("b.png"));
        assertEquals(wanted, new RecentFiles(desk()).present());
        Files.delete(folder.resolve("a.png"));
        assertEquals(wanted.subList(1, 2), new RecentFiles(desk()).present());
    }

    @Test
    void aDeskWithoutAFolderStillWorks() throws Exception {
        Path file = folder.resolve("in-the-way");
        Files.writeString(file, "");
        DeskFolder broken = new DeskFolder(file);
        RecentFiles recent = new RecentFiles(broken);
        recent.add(file);
        assertEquals(List.of(file), recent.present());
        assertEquals(Optional.empty(), broken.read("recent.json"));
        assertEquals(List.of(), new Recovery(broken, 1).left());
    }
}
