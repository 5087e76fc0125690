package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The print of a set of plates in colour. */
class SetProofIT {
    private static final String AT = "--at=72";

    @TempDir
    static Path folder;

    @BeforeAll
    static void make() throws Exception {
        Files.writeString(
                file("inks.json"),
                "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"blue\", \"lab\": [52, -8, -32]}, {\"name\": \"black\"}]}");
        Files.writeString(
                file("black.json"), "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"black\"}]}");
        art("left", 60, 250);
        art("right", 250, 60);
        set("set", "inks", "left", "right");
        set("alone", "black", "left");
        Attempt.done(
                "positive",
                file("left.png"),
                "--plate=40x30mm",
                "--resolution=720",
                "--title=T",
                "--out=" + file("film.pdf"));
    }

    private static void art(String name, int left, int right) throws Exception {
        BufferedImage art = new BufferedImage(80, 60, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 80 * 60; i++) {
            int x = i % 80;
            art.getRaster().setSample(x, i / 80, 0, x < 40 ? left : right);
        }
        ImageIO.write(art, "png", file(name + ".png").toFile());
    }

    private static void set(String name, String inks, String... arts) {
        Object[] words = new Object[arts.length + 6];
        words[0] = "plates";
        for (int i = 0; i < arts.length; i++) {
            words[i + 1] = file(arts[i] + ".png");
        }
        words[arts.length + 1] = "--inks=" + file(inks + ".json");
        words[arts.length + 2] = "--plate=40x30mm";
        words[arts.length + 3] = "--resolution=720";
        words[arts.length + 4] = "--title=T";
        words[arts.length + 5] = "--out=" + file(name + ".pdf");
        assertEquals("", Attempt.of(words).err());
    }

    private static Path file(String name) {
        return folder.resolve(name);
    }

    private static BufferedImage proof(String pdf, String... more) throws Exception {
        Object[] words = new Object[more.length + 4];
        words[0] = "proof";
        words[1] = file(pdf);
        words[2] = AT;
        words[3] = "--out=" + file("print.png");
        System.arraycopy(more, 0, words, 4, more.length);
        Attempt.done(words);
        return ImageIO.read(file("print.png").toFile());
    }

    /** Mean of a part of the print, red, green and blue, in shares of the picture's width and of its own rows. */
    private static double[] mean(BufferedImage print, int fromPixel, int toPixel) {
        int margin = 25;
        double[] sums = new double[3];
        int count = 0;
        for (int y = margin + 15; y < margin + 70; y++) {
            for (int x = margin + fromPixel; x < margin + toPixel; x++) {
                int colour = print.getRGB(x, y);
                for (int i = 0; i < 3; i++) {
                    sums[i] += colour >> (16 - 8 * i) & 0xFF;
                }
                count++;
            }
        }
        for (int i = 0; i < 3; i++) {
            sums[i] /= count;
        }
        return sums;
    }

    /** A grey ink's set of one is the print that its film gives by itself. */
    @Test
    void aSetOfOneBlackPlateIsItsFilmsOwnPrint() throws Exception {
        BufferedImage own = proof("film.pdf");
        BufferedImage set = proof("alone.pdf");
        int off = 0;
        for (int y = 30; y < 105; y++) {
            for (int x = 30; x < 135; x++) {
                int before = own.getRaster().getSample(x, y, 0);
                off = Math.max(off, Math.abs(before - set.getRaster().getSample(x, y, 0)));
            }
        }
        assertTrue(off <= 1, "codes off: " + off);
    }

    @Test
    void platesPrintInTheirColoursOneAfterTheOther() throws Exception {
        BufferedImage first = proof("set.pdf", "--after=1");
        BufferedImage both = proof("set.pdf");
        double[] blue = mean(first, 15, 45);
        assertTrue(blue[2] > blue[0] + 30, "blue on the left: " + blue[0] + ", " + blue[2]);
        double[] bare = mean(first, 70, 100);
        double[] black = mean(both, 70, 100);
        assertTrue(bare[1] > black[1] + 60, "black comes with the second plate: " + bare[1] + ", " + black[1]);
        double[] still = mean(both, 15, 45);
        assertTrue(still[2] > still[0] + 25, "blue stays: " + still[0] + ", " + still[2]);
    }

    /** The black plate begins where the blue ends; moved to the right by 3 mm it leaves a gap of bare paper there. */
    @Test
    void outOfRegisterThereIsAGap() throws Exception {
        BufferedImage at = proof("set.pdf");
        BufferedImage out = proof("set.pdf", "--register=3mm");
        double[] before = mean(at, 58, 63);
        double[] gap = mean(out, 58, 63);
        assertTrue(gap[1] > before[1] + 40, before[1] + ", " + gap[1]);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "set.pdf|--after=3|--after is 3; it must lie between 1 and 2",
                "set.pdf|--register=9mm|register error is 9 mm; it must lie between 0 and 5 mm",
                "set.pdf|--copper=copper.png|give --out with a name for it and no other file",
                "set.pdf|--plate=10x10mm|can't change a film that is already prepared",
                "film.pdf|--after=1|--after is asked of a set of plates, and film.pdf is none",
                "left.png|--register=1mm|--register is asked of a set of plates"
            })
    void wrongUseIsToldInOneLine(String pdf, String more, String said) {
        Attempt attempt = Attempt.of("proof", file(pdf), more, "--out=" + file("wrong.png"));
        assertTrue(attempt.err().contains(said), attempt.err());
        assertEquals(1, attempt.err().strip().lines().count());
        assertEquals(2, attempt.status());
        assertFalse(Files.exists(file("wrong.png")));
    }
}
