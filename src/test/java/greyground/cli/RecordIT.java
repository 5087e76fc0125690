package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.output.Archivable;
import greyground.output.ExternalTool;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A plate's record from its film to the drawer, as other programs see it. */
class RecordIT {
    @TempDir
    static Path films;

    @TempDir
    Path folder;

    private Path record;

    @BeforeAll
    static void film() {
        Attempt.done(
                "positive",
                "testimages/gravel.png",
                "--plate=40x30mm",
                "--resolution=720",
                "--title=Marsh",
                "--out",
                pdf());
    }

    private static Path pdf() {
        return films.resolve("marsh.pdf");
    }

    @BeforeEach
    void place() {
        record = folder.resolve("plate.json");
    }

    private Attempt told(Object... words) {
        List<Object> all = new ArrayList<>(List.of("record", record));
        all.addAll(List.of(words));
        return Attempt.of(all.toArray());
    }

    private void begun() {
        Attempt begun = told("--film", pdf(), "--exposed", "60s+90s", "--date", "2026-03-04");
        assertEquals("", begun.err());
        assertTrue(begun.out().contains("title   Marsh"), begun.out());
    }

    /** Outside authorities: poppler takes the record out of the card byte for byte and reads its words, veraPDF finds it archivable. */
    @Test
    void aCardCarriesItsRecord() throws Exception {
        begun();
        Path scan = Files.write(folder.resolve("scan.tif"), new byte[] {1, 2, 3});
        told(
                "--bitten",
                "12min",
                "--bath-temperature",
                "19C",
                "--proof",
                scan,
                "--depth",
                "25um",
                "--date",
                "2026-03-04");
        told("--reworked", "burnished the sky", "--date", "2026-03-06");
        Path card = folder.resolve("card.pdf");
        Attempt printed = told("--printed", "1-10/25", "--date", "2026-03-07", "--card", card);
        assertEquals("", printed.err());
        assertTrue(printed.out().contains("edition 10 of 25 printed"), printed.out());
        ExternalTool.run(folder, "pdfdetach", "-save", "1", "-o", "out.json", "card.pdf");
        assertArrayEquals(Files.readAllBytes(record), Files.readAllBytes(folder.resolve("out.json")));
        String words = ExternalTool.run(folder, "pdftotext", "-layout", "card.pdf", "-")
                .replaceAll("\\s+", " ");
        int at = 0;
        for (String each : List.of(
                "Marsh",
                "Before the first bite",
                "exposed 60 s through the screen and 90 s through the positive",
                "State 1",
                "2026-03-04 bitten 12 min at 19 \u00b0C",
                "measured 25 \u00b5m deep",
                "proof pulled, scan scan.tif",
                "State 2",
                "reworked: burnished the sky",
                "Edition",
                "numbers 1 to 10 of 25 printed")) {
            at = words.indexOf(each, at);
            assertTrue(at >= 0, each + " in " + words);
        }
        Archivable.check(Files.readAllBytes(card));
        String sum = HexDigest.of(scan);
        assertTrue(Files.readString(record).contains(sum), sum);
        assertEquals(
                told().out().replace(record.toString(), ""),
                Attempt.done("record", card).out().replace(card.toString(), ""));
    }

    private static final class HexDigest {
        static String of(Path file) throws Exception {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
            return String.format("%064x", new BigInteger(1, digest));
        }
    }

    /** What the plan is told counts from the first minute; the record takes what is new. */
    @Test
    void thePlanWritesDownWhatItIsTold() throws Exception {
        begun();
        told("--bitten", "8min");
        Attempt.done("plan", pdf(), "--bitten", "14min", "--proof-density", "1.1", "--record", record);
        Attempt.done("plan", pdf(), "--weighed", "0.4g", "--record", record);
        String said = told().out();
        assertTrue(said.contains("bitten 6 min") && said.contains("a solid at 1.1 D"), said);
        assertTrue(said.contains("measured 0.4 g lighter") && said.contains("bitten  14 min in all"), said);
        byte[] before = Files.readAllBytes(record);
        Attempt less = Attempt.of("plan", pdf(), "--bitten", "9min", "--proof-density", "1.1", "--record", record);
        assertEquals(2, less.status());
        assertTrue(less.err().contains("the record has 14 min already"), less.err());
        assertEquals(
                2,
                Attempt.of("plan", pdf(), "--depth", "30um", "--record", record).status());
        assertArrayEquals(before, Files.readAllBytes(record));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--film=FILM | is begun already",
                "--title=x | is begun already",
                "--bath-copper=3g/L | add --bitten, such as 12min",
                "--bitten=12 | has no unit: add s, min or h",
                "--bitten=0s | it must lie between 0.1 and 10000 min",
                "--printed=5-3/9 | such as 1-10/25",
                "--printed=five | write 1-10/25, or 7/25",
                "--date=4.3.2026 | it must be a day such as 2026-03-04",
                "--exposed=1s+2s+3s | write 60s+90s",
                "--strike=9 | it must be one of 1 to 1",
                "--strike=x | it must be its number",
                "--proof=nowhere.tif | there is no scan nowhere.tif",
                "--note= | it must have 1 to 500",
                "--card=RECORD | would replace the record",
                "--card=card.txt | let its name end in .pdf",
                "--depth=0um | it must lie between 0.1 and 1000"
            })
    void aWrongWordIsOneLineAndChangesNothing(String word, String said) throws Exception {
        begun();
        byte[] before = Files.readAllBytes(record);
        Attempt refused = told(word.replace("FILM", pdf().toString()).replace("RECORD", record.toString()));
        assertEquals(1, refused.err().lines().count(), refused.err());
        assertTrue(refused.err().contains(said), refused.err());
        assertTrue(refused.status() != 0);
        assertArrayEquals(before, Files.readAllBytes(record));
    }

    @Test
    void aFileOfAnotherKindIsLeftAlone() throws Exception {
        Files.writeString(record, "{\"greyground\": \"workshop\", \"version\": 1}");
        Attempt refused = told("--note", "x");
        assertTrue(refused.err().contains("choose a plate record file"), refused.err());
        assertEquals("{\"greyground\": \"workshop\", \"version\": 1}", Files.readString(record));
        assertTrue(Attempt.of("record", pdf(), "--note", "x").err().contains("is a PDF, which never changes"));
    }

    /** Whoever writes at the same moment takes turns. */
    @Test
    void noEntryIsLostBetweenTwoThatWrite() throws Exception {
        begun();
        CountDownLatch together = new CountDownLatch(1);
        List<Thread> writers = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            int number = i;
            Thread writer = new Thread(() -> {
                try {
                    together.await();
                } catch (InterruptedException stopped) {
                    return;
                }
                told("--note", "from " + number);
            });
            writer.start();
            writers.add(writer);
        }
        together.countDown();
        for (Thread writer : writers) {
            writer.join();
        }
        String said = told().out();
        for (int i = 0; i < 8; i++) {
            assertTrue(said.contains("note: from " + i), said);
        }
    }
}
