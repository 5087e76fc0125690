package greyground.desk.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Several workshops by name, each with its own numbers, whatever is undone. */
class KeptWorkshopsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 4);

    @TempDir
    Path folder;

    private KeptWorkshops shops;
    private BenchModel model;

    @BeforeEach
    void open() {
        shops = new KeptWorkshops(new DeskFolder(folder));
        model = new BenchModel(new Recovery(new DeskFolder(folder), 1));
    }

    private static Workshop biting(double minutes) {
        return Workshop.assumed().with("bath.biteMinutes", Figure.assumed(minutes, "x"));
    }

    private double bite(String name) {
        return KeptFiles.workshop(shops.file(name)).bath().biteMinutes().value();
    }

    private void set(double minutes, LocalDate day) throws Exception {
        model.returnTo(biting(minutes));
        model.keepWorkshop(shops, day);
    }

    private void make(String name, double minutes) throws Exception {
        model.returnTo(biting(minutes));
        model.saveWorkshop(shops.make(name));
    }

    @Test
    void eachKeepsItselfAndWhatItHeldBeforeTheDay() throws Exception {
        make("Press room", 10);
        assertEquals(List.of("Press room"), shops.names());
        set(11, DAY);
        set(12, DAY);
        set(13, DAY.plusDays(1));
        assertEquals(13, bite("Press room"));
        List<KeptWorkshops.Earlier> earlier = shops.earlier(shops.file("Press room"));
        assertEquals(
                List.of(DAY.plusDays(1), DAY),
                earlier.stream().map(KeptWorkshops.Earlier::day).toList());
        assertEquals(12, shops.held(earlier.get(0)).bath().biteMinutes().value());
        assertEquals(10, shops.held(earlier.get(1)).bath().biteMinutes().value());
        for (int i = 2; i < 40; i++) {
            set(13 + i, DAY.plusDays(i));
        }
        assertTrue(shops.earlier(shops.file("Press room")).size() <= 13);
        assertEquals(List.of("Press room"), shops.names(), "earlier days are no workshops");
    }

    /** Undo leads back from one workshop to another; neither gets the other's numbers. */
    @Test
    void undoingTheChoiceOfAWorkshopDoesNotWriteItsNumbersIntoTheOther() throws Exception {
        make("Old bath", 10);
        make("New bath", 20);
        model.openWorkshop(shops.file("Old bath"));
        set(11, DAY);
        model.openWorkshop(shops.file("New bath"));
        assertEquals(20, model.workshop().bath().biteMinutes().value());
        model.undo();
        model.keepWorkshop(shops, DAY);
        assertEquals(Optional.of("Old bath"), model.workshopFile().flatMap(shops::name));
        model.undo();
        model.keepWorkshop(shops, DAY);
        assertEquals(10, bite("Old bath"));
        assertEquals(20, bite("New bath"));
        model.redo();
        model.redo();
        model.keepWorkshop(shops, DAY);
        assertEquals(Optional.of("New bath"), model.workshopFile().flatMap(shops::name));
        set(21, DAY);
        assertEquals(21, bite("New bath"));
        assertTrue(!model.workshopUnsaved());
    }

    @Test
    void stepsAreTheWorkshopsOwnLatestFirst() throws Exception {
        make("Press room", 10);
        set(12, DAY);
        set(14, DAY);
        List<BenchModel.WorkshopStep> steps = model.workshopSteps();
        assertEquals(12, steps.get(0).before().bath().biteMinutes().value());
        assertEquals(14, steps.get(0).after().bath().biteMinutes().value());
        model.returnTo(steps.get(1).before());
        assertEquals(10, model.workshop().bath().biteMinutes().value());
        model.undo();
        assertEquals(14, model.workshop().bath().biteMinutes().value());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  ", "../up", "a/b", "a\\b", ".hidden", "-x", "CON:", "a.json", "a\nb", "a\0b"})
    void namesThatAreNoneAreRefused(String name) {
        Refusal refused = assertThrows(Refusal.class, () -> shops.make(name));
        assertTrue(String.valueOf(refused.getMessage()).contains(":"));
    }

    @Test
    void namesAreTakenOnceInWhateverCaseAndOtherFilesAreNone() throws Exception {
        make("Werkstatt Süd 2", 9);
        assertThrows(Refusal.class, () -> shops.make("werkstatt SÜD 2"));
        assertThrows(Refusal.class, () -> shops.make("n".repeat(61)));
        Files.writeString(folder.resolve("workshops/.part.json"), "{}");
        Files.writeString(folder.resolve("workshops/read.me"), "");
        assertEquals(List.of("Werkstatt Süd 2"), shops.names());
        assertTrue(shops.name(folder.resolve("x.json")).isEmpty());
    }
}
