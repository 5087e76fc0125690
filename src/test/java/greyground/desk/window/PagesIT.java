package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.Program;
import greyground.desk.model.Place;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** What the program is made with, and the quiet line that leads to the workshop's numbers. */
class PagesIT extends AtTheDesk {
    private List<String> words() throws Exception {
        return onScreen(() -> DeskHand.seen(hand.root()).stream()
                .filter(Labeled.class::isInstance)
                .map(node -> ((Labeled) node).getText())
                .toList());
    }

    /** Every jar of the class path that the page of notices names is there with its version, and every licence opens. */
    @Test
    void aboutNamesEveryLibraryWithItsVersionAndOpensEveryLicence() throws Exception {
        hand.press("show-about");
        String all = String.join("\n", words());
        assertTrue(all.contains(Program.words()), all);
        for (String jar : System.getProperty("java.class.path").split(java.io.File.pathSeparator)) {
            String name = Path.of(jar).getFileName().toString();
            if (name.matches("(pdfbox|picocli|jackson-core|xz|javafx-base)-\\d.*[.]jar")) {
                String library = name.replaceAll("-\\d.*", "");
                String version = name.replaceAll("^.*?-(\\d[\\w.]*?)(-linux)?[.]jar$", "$1");
                assertTrue(all.contains(library) && all.contains(version), name + " in " + all);
            }
        }
        try (Stream<Path> texts = Files.list(Path.of("src/main/resources/META-INF/notices"))) {
            for (Path text :
                    texts.filter(each -> each.toString().endsWith(".txt")).toList()) {
                String whole = Files.readString(text);
                int opened = 0;
                for (int row = 0; row < 11; row++) {
                    hand.press("licence-" + row);
                    opened += hand.words("licence-text").equals(whole) ? 1 : 0;
                }
                assertTrue(opened > 0, text.toString());
            }
        }
        hand.key(KeyCode.ESCAPE);
        assertFalse(onScreen(() -> hand.desk().pages.isOpen()));
    }

    @Test
    void aQuietLineSaysHowManyNumbersAreAssumedAndLeadsToThem() throws Exception {
        long assumed = onScreen(() -> hand.desk().model.workshop().figures().values().stream()
                .filter(greyground.workshop.Figure::isAssumed)
                .count());
        assertTrue(assumed > 0);
        assertEquals(assumed + " assumed", hand.words("assumed"));
        hand.press("workshop-view");
        assertEquals(Place.WORKSHOP, onScreen(() -> hand.desk().place()));
        act(() -> hand.desk().lay(hand.desk().about));
        hand.key(KeyCode.F1);
        assertTrue(onScreen(() -> hand.desk().pages.isOpen(hand.desk().keys)), "one page takes the other's place");
        hand.key(KeyCode.F1);
        assertEquals(Place.WORKSHOP, onScreen(() -> hand.desk().place()), "and what was seen comes back");
        assertTrue(onScreen(() -> hand.desk().workshop.isVisible()));
    }

    // ------------------------------------------------------------------ wishes

    @Test
    void wishesHoldForGood() throws Exception {
        hand.press("show-preferences");
        hand.press("wish-inches");
        hand.press("wish-dark");
        hand.type("wish-plate", "7 furlongs");
        assertTrue(onScreen(() -> hand.root().lookup("#preferences .fault").isVisible()));
        hand.type("wish-plate", "120x90mm");
        double before = onScreen(() -> hand.desk().wishes.pixelsPerInch());
        double line = onScreen(
                () -> hand.find("wish-line", javafx.scene.layout.Region.class).getWidth());
        assertEquals(100 / 25.4 * before, line, 1);
        // The line measures 80 mm only: there are more pixels to the inch than the screen says.
        hand.type("wish-measured", "80");
        assertEquals(before / 0.8, onScreen(() -> hand.desk().wishes.pixelsPerInch()), 1e-9);
        for (String wrong : new String[] {"0", "-3", "1e9", "x", ""}) {
            hand.type("wish-measured", wrong);
            assertEquals(before / 0.8, onScreen(() -> hand.desk().wishes.pixelsPerInch()), 1e-9, wrong);
        }
        try (DeskHand again = new DeskHand(folder.resolve("state"))) {
            again.openArt(Path.of("testimages/still-life.png"));
            again.rest();
            assertEquals(120, again.state().job().plate().widthMillimetres(), "on its side as the picture is");
            assertEquals(90, again.state().job().plate().heightMillimetres());
            act(() -> again.desk().choose(greyground.desk.model.Station.PRINT));
            again.key(KeyCode.T);
            assertEquals(
                    25.4 * 0.8 / before,
                    onScreen(() -> again.desk().seen().port().perPixel()),
                    1e-9,
                    "true size as it was measured");
            assertTrue(onScreen(() -> again.desk().wishes.inches()));
            again.key(KeyCode.F4);
        }
        assertFalse(onScreen(() -> new greyground.desk.model.DeskHabits(
                        new greyground.desk.model.DeskFolder(folder.resolve("state")))
                .chosen("inches")
                .orElseThrow()));
    }

    // ------------------------------------------------------------------ workshops

    private double bite() throws Exception {
        return onScreen(() -> hand.desk().model.workshop().bath().biteMinutes().value());
    }

    private void bites(double minutes) throws Exception {
        act(() -> hand.desk()
                .model
                .returnTo(hand.desk()
                        .model
                        .workshop()
                        .with("bath.biteMinutes", greyground.workshop.Figure.assumed(minutes, "x"))));
    }

    @Test
    void workshopsHaveNamesKeepThemselvesAndLeadBack() throws Exception {
        hand.key(KeyCode.F9);
        bites(11);
        hand.type("workshop-name", "../up");
        assertTrue(hand.words("said").contains("can't be called"), hand.words("said"));
        hand.type("workshop-name", "Old bath");
        hand.type("workshop-name", "New bath");
        bites(22);
        act(() -> hand.desk().lay(hand.desk().about));
        DeskHand.waitFor("it to be kept", () -> !hand.desk().model.workshopUnsaved());
        assertTrue(onScreen(() -> hand.desk().pages.isOpen()), "keeping it changes nothing that is seen");
        act(() -> hand.desk().putAway());
        act(() ->
                hand.find("workshop-names", javafx.scene.control.ComboBox.class).requestFocus());
        hand.key(KeyCode.DOWN);
        assertEquals(11, bite());
        assertEquals(
                "workshop-names",
                onScreen(() -> hand.stage().getScene().getFocusOwner().getId()));
        hand.key(KeyCode.UP);
        assertEquals(22, bite());
        assertTrue(String.join(" ", words()).contains("11 \u2192 22 min"), words().toString());
        hand.press("step-back-0");
        assertEquals(11, bite());
        act(() -> hand.desk().model.undo());
        assertEquals(22, bite());
        // One that is written elsewhere meanwhile is kept beside, and closing asks nothing.
        bites(23);
        assertTrue(onScreen(() -> hand.desk().mayClose(() -> {})));
        try (DeskHand again = new DeskHand(folder.resolve("state"))) {
            assertEquals(
                    23,
                    onScreen(() ->
                            again.desk().model.workshop().bath().biteMinutes().value()));
            assertFalse(onScreen(() -> again.desk().model.workshopUnsaved()));
            assertTrue(onScreen(() -> again.desk().model.undoes().isEmpty()), "nothing to go back to before it");
        }
    }
}
