package greyground.app.files;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShopFileTest {
    private static final String LESSON = "2026-11-25-PEGEO";
    private static final String BY_HAND =
            "{ \"greyground\": \"workshop\", \"version\": 1, \"name\": \"bench\", \"cat\": 7 }";

    @TempDir
    Path folder;

    private Path shop;

    @BeforeEach
    void name() {
        shop = folder.resolve("shop.json");
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private Path teach(double etchFactor, String lesson) throws Exception {
        ShopFile file = ShopFile.open(shop);
        Workshop before = file.workshop().orElseGet(Workshop::assumed);
        return file.teach(before, before.with("bath.etchFactor", Figure.assumed(etchFactor, "test")), lesson);
    }

    @Test
    void lessonKeepsWhatTheFileHeldAndTakingItBackGivesTheVeryBytes() throws Exception {
        Files.writeString(shop, BY_HAND);
        Path kept = teach(3, LESSON);
        byte[] taught = Files.readAllBytes(shop);
        assertEquals("shop.before-1-2026-11-25-PEGEO.json", kept.getFileName().toString());
        assertEquals(BY_HAND, Files.readString(kept));
        Workshop now = WorkshopFile.read(Files.readString(shop));
        assertEquals(3, now.bath().etchFactor().value());
        assertTrue(Files.readString(shop).contains("\"cat\": 7"), "a remark by hand is lost");
        ShopFile.TakenBack back = ShopFile.open(shop).takeBack();
        assertEquals(BY_HAND, Files.readString(shop));
        assertArrayEquals(taught, Files.readAllBytes(back.replaced()));
        assertEquals(List.of("shop.json", "shop.taken-back-1-2026-11-25-PEGEO.json"), names());
    }

    @Test
    void lessonsAreTakenBackOneByOneLastFirst() throws Exception {
        Files.writeString(shop, BY_HAND);
        teach(3, LESSON);
        byte[] first = Files.readAllBytes(shop);
        teach(4, LESSON);
        teach(5, "2026-12-01-ABCDE");
        ShopFile.open(shop).takeBack();
        ShopFile.open(shop).takeBack();
        assertArrayEquals(first, Files.readAllBytes(shop));
        ShopFile.open(shop).takeBack();
        assertEquals(BY_HAND, Files.readString(shop));
        Refusal none = assertThrows(Refusal.class, () -> ShopFile.open(shop).takeBack());
        assertTrue(none.getMessage().contains("shop.before-N-DATE-CHART.json"), none.getMessage());
        // Taught and taken back again, nothing that was kept is written over.
        teach(3, LESSON);
        ShopFile.open(shop).takeBack();
        assertEquals(
                List.of(
                        "shop.json",
                        "shop.taken-back-1-2026-11-25-PEGEO-2.json",
                        "shop.taken-back-1-2026-11-25-PEGEO.json",
                        "shop.taken-back-2-2026-11-25-PEGEO.json",
                        "shop.taken-back-3-2026-12-01-ABCDE.json"),
                names());
    }

    @Test
    void fileThatDoesNotExistYetIsMadeAndCanBeTakenBackToWhatItBeganFrom() throws Exception {
        teach(3, LESSON);
        ShopFile.open(shop).takeBack();
        assertEquals(WorkshopFile.text(Workshop.assumed()), Files.readString(shop));
    }

    @Test
    void fileThatSomebodyChangedMeanwhileIsLeftAlone() throws Exception {
        Files.writeString(shop, BY_HAND);
        ShopFile opened = ShopFile.open(shop);
        String changed = BY_HAND.replace("bench", "north bench");
        Files.writeString(shop, changed);
        Workshop after = Workshop.assumed().with("bath.etchFactor", Figure.assumed(3, "test"));
        Refusal refusal = assertThrows(Refusal.class, () -> opened.teach(Workshop.assumed(), after, LESSON));
        assertTrue(refusal.getMessage().contains("changed by someone else"), refusal.getMessage());
        assertEquals(changed, Files.readString(shop));
        assertEquals(List.of("shop.json"), names());
        Files.delete(shop);
        assertThrows(Refusal.class, () -> opened.teach(Workshop.assumed(), after, LESSON));
        assertFalse(Files.exists(shop));
        ShopFile absent = ShopFile.open(shop);
        Files.writeString(shop, BY_HAND);
        assertThrows(Refusal.class, () -> absent.teach(Workshop.assumed(), after, LESSON));
        assertEquals(BY_HAND, Files.readString(shop));
    }

    @Test
    void keptFileThatIsNotWholeNeverTakesThePlaceOfOneThatIs() throws Exception {
        Files.writeString(shop, BY_HAND);
        Path kept = teach(3, LESSON);
        byte[] taught = Files.readAllBytes(shop);
        Files.writeString(kept, BY_HAND.substring(0, 40));
        Refusal refusal = assertThrows(Refusal.class, () -> ShopFile.open(shop).takeBack());
        assertTrue(refusal.getMessage().contains("not JSON"), refusal.getMessage());
        assertArrayEquals(taught, Files.readAllBytes(shop));
        assertEquals(List.of("shop.before-1-2026-11-25-PEGEO.json", "shop.json"), names());
        // A name taken by a program that was killed at once holds nothing to go back to.
        Files.writeString(kept, "");
        assertThrows(Refusal.class, () -> ShopFile.open(shop).takeBack());
    }

    @Test
    void takingBackThatWasCutShortIsFinishedByTheNext() throws Exception {
        Files.writeString(shop, BY_HAND);
        teach(3, LESSON);
        byte[] first = Files.readAllBytes(shop);
        Path second = teach(4, LESSON);
        // As if killed after the kept file had been put in place and before it was removed.
        Files.write(shop, Files.readAllBytes(second));
        assertArrayEquals(first, Files.readAllBytes(shop));
        ShopFile.open(shop).takeBack();
        assertEquals(BY_HAND, Files.readString(shop));
    }

    @Test
    void filmPdfIsNoWorkshopToTeach() throws Exception {
        Path film = folder.resolve("film.pdf");
        Files.writeString(film, "%PDF-1.7");
        assertThrows(Refusal.class, () -> ShopFile.open(film));
    }
}
