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
}
