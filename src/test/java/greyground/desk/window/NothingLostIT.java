package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.Recovery;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import greyground.film.job.Told;
import greyground.output.ExternalTool;
import greyground.workshop.Workshop;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is on the bench outlives a kill, and every file that can't be read or written is told in one line that says what to do. */
class NothingLostIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    // ------------------------------------------------------------------ a real kill

    /** The real program on a virtual screen, killed by SIGKILL (Process.destroyForcibly on Linux) once its change is kept. */
    @Test
    void aKilledProgramOffersItsWorkWithTheChangeInIt() throws Exception {
        ExternalTool.run(folder, "xauth", "-V");
        Process running = start("work", ART.toAbsolutePath().toString());
        ProcessHandle program;
        String line;
        long began = System.nanoTime();
        long seen = began;
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(running.getInputStream(), StandardCharsets.UTF_8))) {
            do {
                line = said.readLine();
                seen = System.nanoTime();
            } while (line != null && !line.startsWith("changed") && !line.startsWith("failed"));
            assertTrue(line != null && line.startsWith("changed 155 and started "), line);
            program = running.descendants()
                    .filter(each -> each.info().command().orElse("").endsWith("java"))
                    .findFirst()
                    .orElseThrow();
            Path kept = folder.resolve(".local/state/greyground/unsaved-" + program.pid() + ".json");
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            Path clocks = kept.resolveSibling("clocks-" + program.pid() + ".json");
            while (!Files.exists(kept) || !Files.readString(kept).contains("155") || !Files.exists(clocks)) {
                assertTrue(System.nanoTime() < end, "nothing was kept in " + kept);
                Thread.sleep(50);
            }
            assertTrue(program.destroyForcibly());
            program.onExit().get(30, TimeUnit.SECONDS);
        }
        running.waitFor(30, TimeUnit.SECONDS);
        long until = System.nanoTime();
        Process again = start("again");
        String said = new String(again.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        again.waitFor(60, TimeUnit.SECONDS);
        assertTrue(said.contains("asks: Unsaved work on leaf-alpha.png was left"), said);
        assertTrue(said.contains("offers: Recover") && said.contains("found 155"), said);
        theClockHasRunOn(line, said, (until - seen) / 1e9, (System.nanoTime() - began) / 1e9);
    }

    /** The clock was started before {@code least} seconds at least, and after {@code most}, whether or not a program ran. */
    private static void theClockHasRunOn(String started, String said, double least, double most) {
        String word = "(\\+?)(\\d+):(\\d\\d)";
        double planned = seconds("started " + word, started);
        double left = seconds("clock .* " + word, said);
        // Clocks show whole seconds.
        assertTrue(
                planned - left >= least - 1 && planned - left <= most + 1,
                planned + " s, of which " + left + " s are left after " + least + " to " + most + " s");
    }

    private static double seconds(String pattern, String said) {
        Matcher clock = Pattern.compile(pattern).matcher(said);
        assertTrue(clock.find(), said);
        double seconds = Integer.parseInt(clock.group(2)) * 60 + Integer.parseInt(clock.group(3));
        return clock.group(1).isEmpty() ? seconds : -seconds;
    }

    private Process start(String... arguments) throws Exception {
        java.util.List<String> command = new java.util.ArrayList<>(java.util.List.of(
                "xvfb-run",
                "-a",
                "-s",
                "-screen 0 1400x900x24",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-Dprism.order=sw",
                "-Duser.home=" + folder,
                "-cp",
                RealWindowIT.absolute(System.getProperty("java.class.path")),
                KilledDesk.class.getName()));
        command.addAll(java.util.List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().remove("XDG_STATE_HOME");
        return builder.start();
    }

    // ------------------------------------------------------------------ the guard

    @Test
    void closingOpeningAndAnotherWorkshopAllAskBeforeAnythingUnsavedGoes() throws Exception {
        Path shop = folder.resolve("other-shop.json");
        KeptFiles.saveWorkshop(
                shop, Workshop.assumed().with("bath.biteMinutes", greyground.workshop.Figure.assumed(9, "x")));
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            hand.smallPlate(ART);
            act(() -> hand.desk()
                    .model
                    .change(
                            "bite",
                            "",
                            state -> ((Setting.ShopNumber) Settings.named("bite"))
                                    .with(state, 13, java.time.LocalDate.of(2026, 3, 4))));
            act(() -> hand.desk().mayClose(() -> {}));
            assertTrue(hand.question().contains("not saved"), hand.question());
            hand.answer("Stay here");
            act(() -> hand.desk().files.open(Path.of("testimages/still-life.png")));
            assertTrue(hand.question().contains("opening still-life.png loses"), hand.question());
            hand.answer("Stay here");
            assertEquals("leaf-alpha.png", hand.state().art().getFileName().toString());
            act(() -> hand.desk().files.open(shop));
            assertTrue(hand.question().contains("workshop"), hand.question());
            hand.answer("Stay here");
            assertEquals(13, hand.state().workshop().bath().biteMinutes().value());
            act(() -> hand.desk().files.open(shop));
            hand.answer("Don't save");
            assertEquals(9, hand.state().workshop().bath().biteMinutes().value());
            act(() -> hand.desk().model.undo());
            assertEquals(13, hand.state().workshop().bath().biteMinutes().value(), "the way back leads past it");
        }
    }

    // ------------------------------------------------------------------ one line that says what to do

    private static String said(DeskHand hand) throws Exception {
        return onScreen(() -> DeskHand.seen(hand.root()).stream()
                .filter(node -> "said".equals(node.getId()))
                .map(node -> ((javafx.scene.control.Label) node).getText())
                .collect(Collectors.joining()));
    }

    private static void oneLine(String said, String... parts) {
        assertFalse(said.isEmpty(), "nothing was said");
        assertFalse(said.contains("\n") || said.contains("Exception"), said);
        assertTrue(said.contains(":"), "it says what to do: " + said);
        for (String part : parts) {
            assertTrue(said.contains(part), said);
        }
    }

    @Test
    void filesThatCantBeReadOrWrittenAreToldInOneLine() throws Exception {
        Path art = folder.resolve("leaf.png");
        Files.copy(ART, art);
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            Path text = folder.resolve("notes.txt");
            Files.writeString(text, "no picture");
            act(() -> hand.desk().files.open(text));
            waitFor("a word", () -> !saidNow(hand).isEmpty());
            oneLine(said(hand), "notes.txt");
            hand.smallPlate(art);
            Path newer = folder.resolve("newer.json");
            Files.writeString(newer, "{\"greyground\": \"workshop\", \"version\": 99}");
            act(() -> hand.desk().files.open(newer));
            oneLine(said(hand), "version 99", "newer Greyground");
            Path newerJob = folder.resolve("newer-job.json");
            Files.writeString(newerJob, "{\"greyground\": \"job\", \"version\": 99}");
            act(() -> hand.desk().files.open(newerJob));
            hand.answer("Don't save");
            oneLine(said(hand), "version 99", "newer Greyground");
            hand.toSave.add(Path.of("/proc/nowhere/leaf.json"));
            act(() -> hand.desk().files.saveJobAs());
            oneLine(said(hand), "/proc/nowhere");
            assertTrue(onScreen(() -> hand.desk().model.jobUnsaved()));
            // The picture is gone: what has been seen of it goes on, a film can't be made.
            Files.delete(art);
            Path film = folder.resolve("leaf.pdf");
            hand.toSave.add(film);
            hand.press("make-film");
            waitFor("the end", () -> !hand.desk().export.isWorking());
            oneLine(said(hand), "leaf.png");
            assertFalse(Files.exists(film));
        }
    }

    private static String saidNow(DeskHand hand) {
        return ((javafx.scene.control.Label) hand.root().lookup("#said")).getText();
    }

    @Test
    void unsavedWorkThatCantBeReadIsLaidAsideAndSaid() throws Exception {
        Path state = Files.createDirectories(folder.resolve("state"));
        Path spoilt = state.resolve("unsaved-" + DeskHand.GONE + ".json");
        Files.writeString(spoilt, "{\"greyground\": \"desk's");
        try (DeskHand hand = new DeskHand(state)) {
            act(() -> hand.desk().begin(Optional.empty()));
            oneLine(said(hand), "unreadable-" + DeskHand.GONE + ".json");
            assertEquals("", hand.question());
        }
        assertEquals(
                "{\"greyground\": \"desk's", Files.readString(state.resolve("unreadable-" + DeskHand.GONE + ".json")));
        try (DeskHand hand = new DeskHand(state)) {
            act(() -> hand.desk().begin(Optional.empty()));
            assertEquals("", said(hand), "it is said once");
        }
    }

    /** Work whose picture has been moved meanwhile is not let go of. */
    @Test
    void leftWorkWhosePictureIsGoneStaysUntilThePictureIsFound() throws Exception {
        Path art = folder.resolve("leaf.png");
        Files.copy(ART, art);
        DeskFolder state = new DeskFolder(folder.resolve("state"));
        BenchState left = BenchState.fresh(
                art,
                new greyground.app.recipe.SourceArt("leaf.png", "leaf", "", 400, 300),
                Workshop.assumed(),
                "2026-03-04");
        new Recovery(state, DeskHand.GONE).keep(left, Optional.empty(), 0);
        Path moved = folder.resolve("moved.png");
        Files.move(art, moved);
        try (DeskHand hand = new DeskHand(state.folder())) {
            act(() -> hand.desk().begin(Optional.empty()));
            hand.answer("Recover");
            waitFor("a question", () -> hand.root().lookup("#question") != null);
            assertTrue(hand.question().contains("leaf.png"), hand.question());
            hand.toOpen.add(moved);
            hand.answer("Find the picture");
            waitFor("the work", () -> hand.desk().model.state().isPresent());
            assertEquals(moved, hand.state().art());
        }
    }

    /** A state folder that can't be written: unsaved work is not safe, which must be said. */
    @Test
    void workThatCantBeKeptAsideIsSaid() throws Exception {
        Path inTheWay = folder.resolve("state");
        Files.writeString(inTheWay, "");
        try (DeskHand hand = new DeskHand(inTheWay)) {
            hand.smallPlate(ART);
            waitFor("a word", () -> saidNow(hand).contains("save"));
            oneLine(said(hand), inTheWay.toString());
            act(() -> hand.desk().tell("bleed", Told.as(Map.of("bleed", "4mm"))));
        }
    }
}
