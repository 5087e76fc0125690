package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.Viewport;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Each kind of warning comes up where it should, and leads to the place or to the number that mends it. */
class WarningsIT extends SmallPlate {
    /** Every tone from black to light, left to right. */
    @Override
    Path art() throws Exception {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 300 * 200; i++) {
            image.getRaster().setSample(i % 300, i / 300, 0, (i % 300) * 255 / 299);
        }
        Path file = folder.resolve("ramp.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    @SuppressWarnings("unchecked")
    private ListView<WarningsView.Line> list() {
        return (ListView<WarningsView.Line>) hand.root().lookup("#warnings");
    }

    private void set(String id, String words) throws Exception {
        act(() -> hand.desk().set(Settings.named(id)));
        hand.type("setting-" + id, words);
        hand.rest();
    }

    private WarningsView.Line taken(String words) throws Exception {
        hand.rest();
        WarningsView.Line line = onScreen(() -> {
            List<WarningsView.Line> lines = list().getItems();
            WarningsView.Line found = lines.stream()
                    .filter(each -> each.words().contains(words))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no \"" + words + "\" in " + lines));
            list().getSelectionModel().select(found);
            list().fireEvent(new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.ENTER, false, false, false, false));
            return found;
        });
        onScreen(() -> null);
        return line;
    }

    private void leadsToSetting(String words, String id) throws Exception {
        WarningsView.Line line = taken(words);
        assertEquals("\u2192", line.mark(), words);
        assertEquals(
                "setting-" + id,
                onScreen(() -> hand.stage().getScene().getFocusOwner().getId()));
    }

    private void leadsToPlace(String words) throws Exception {
        WarningsView.Line line = taken(words);
        assertTrue(line.number() > 0, line.words());
        Viewport port = onScreen(() -> hand.desk().picture.port());
        double x = port.pixelX(line.place().orElseThrow().acrossMillimetres());
        double y = port.pixelY(line.place().orElseThrow().downMillimetres());
        assertTrue(x >= 0 && x <= port.width() && y >= 0 && y <= port.height(), x + ", " + y);
        assertTrue(port.perPixel() <= 0.02);
    }

    @Test
    void assumedNumbersThatMatterMostLeadToTheirSettings() throws Exception {
        leadsToSetting("bite of 20 min is only assumed", "bite");
        leadsToSetting("etch factor", "etch-factor");
        // Measured, it is no longer told; the next one takes its place.
        act(() -> {
            Setting.ShopNumber bite = (Setting.ShopNumber) Settings.named("bite");
            hand.desk().model.change("bite", "", state -> bite.known(state, true, java.time.LocalDate.of(2026, 3, 4)));
        });
        hand.rest();
        assertTrue(onScreen(
                () -> list().getItems().stream().noneMatch(line -> line.words().contains("bite of 20 min"))));
        leadsToSetting("spot growth", "spot-growth");
    }

    @Test
    void aBlackTooThinLeadsToTheFilmsDensity() throws Exception {
        set("black-density", "1.2");
        leadsToSetting("print a denser black", "black-density");
    }

    @Test
    void aSheetTooSmallLeadsToItsSizeAndThePlateIsStillShown() throws Exception {
        set("sheet-width", "80");
        leadsToSetting("sheet is 80", "sheet-width");
        assertTrue(onScreen(() -> hand.desk().sight.plate().isPresent()));
    }

    @Test
    void lostHighlightsLeadToWhereTheyAre() throws Exception {
        // Dots below 120 um stay shut in this resist: a grain of 180 um has no light tones, and they print as paper.
        set("opening", "120");
        leadsToPlace("will not wash out");
    }

    @Test
    void anOpenBiteLeadsToItsPlace() throws Exception {
        // No land below 200 um stays: the darks of a grain of 180 um open to one wide field.
        set("land", "200");
        leadsToPlace("pen bite");
    }
}
