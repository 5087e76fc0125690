package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.PrintStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Every command, with each file that it writes given the name of each file that it reads, and of each other file that it writes: by the same
 * name, by a link, by a second name of the file, and by another way to its folder. All is refused, and every byte stays.
 */
class OwnInputsIT {
    private static final String JOB = "--plate=40x30mm --resolution=720";

    /**
     * A command line, and which of its options name what.
     *
     * @param line all its files; an ordinary word is an argument, {@code --name=file} an option
     * @param written options that name a file to write
     */
    private record Line(String name, String line, List<String> written) {
        @Override
        public String toString() {
            return name + " " + String.join(" ", written);
        }

        List<String> words() {
            return List.of(line.split(" "));
        }
    }

    private static Stream<Line> lines() {
        return Stream.of(
                new Line(
                        "positive",
                        "art.png --workshop=shop.json --job=job.json --touches=touches.json --spots=spots.json --out=out.pdf --tiff=out.tif --plan-out=pages.pdf"
                                + " --spots-out=list.json --spots-picture=rings.png " + JOB,
                        List.of("--out", "--tiff", "--plan-out", "--spots-out", "--spots-picture")),
                new Line(
                        "positive",
                        "art.png --workshop=shop.json --job=new.json --out=out.pdf --tiff=out.tif " + JOB,
                        List.of("--out", "--tiff")),
                new Line(
                        "wedge",
                        "--inks=inks.json --workshop=shop.json --out=out.pdf --plan-out=pages.pdf",
                        List.of("--out", "--plan-out")),
                new Line(
                        "read",
                        "scan.png --wedge=test.pdf --workshop=shop.json --measured=values.csv --out=learnt.json",
                        List.of("--out")),
                new Line("record", "plate.json --film=first.pdf --proof=scan.png --card=out.pdf", List.of("--card")),
                new Line(
                        "plan", "first.pdf --workshop=shop.json --record=plate.json --weighed=1g", List.of("--record")),
                new Line(
                        "plates",
                        "art.png --inks=inks.json --workshop=shop.json --job=job.json --touches=touches.json --spots=spots.json --out=out.pdf "
                                + JOB,
                        List.of("--out")),
                new Line("gather", "first.pdf test.pdf --sheet=A3 --out=out.pdf", List.of("--out")),
                new Line(
                        "plan",
                        "art.png --workshop=shop.json --job=job.json --touches=touches.json --spots=spots.json --plan-out=pages.pdf "
                                + JOB,
                        List.of("--plan-out")),
                new Line(
                        "proof",
                        "art.png --workshop=shop.json --job=job.json --touches=touches.json --spots=spots.json --out=out.png --copper=copper.png --resist=resist.png"
                                + " --loupe=10mm,10mm --loupe-out=loupe.png --bite=5min --bite-out=bites.png"
                                + " --diagram=diagram.svg " + JOB,
                        List.of("--out", "--copper", "--resist", "--loupe-out", "--bite-out", "--diagram")),
                new Line(
                        "read",
                        "scan.png --wedge=test.pdf --workshop=shop.json --reference=reference.csv --curve=curve.svg"
                                + " --overlay=overlay.png",
                        List.of("--curve", "--overlay")),
                new Line(
                        "read",
                        "scan.png --accept --wedge=test.pdf --workshop=shop.json --reference=reference.csv --curve=curve.svg"
                                + " --overlay=overlay.png",
                        List.of("--curve", "--overlay", "--workshop")),
                new Line(
                        "read",
                        "--accept --values=values.csv --wedge=test.pdf --workshop=shop.json --curve=curve.svg",
                        List.of("--curve", "--workshop")),
                new Line(
                        "read",
                        "--accept --film=film.csv --wedge=test.pdf --workshop=shop.json",
                        List.of("--workshop")));
    }

    @TempDir
    Path folder;

    @BeforeEach
    void whatIsRead() throws Exception {
        Files.copy(Path.of("testimages/still-life.png"), folder.resolve("art.png"));
        Files.copy(Path.of("testimages/still-life.png"), folder.resolve("scan.png"));
        KeptFiles.saveWorkshop(folder.resolve("shop.json"), Workshop.assumed());
        Files.writeString(folder.resolve("job.json"), "{\"greyground\": \"job\", \"version\": 1}");
        Files.writeString(
                folder.resolve("touches.json"), "{\"greyground\": \"touches\", \"version\": 1, \"touches\": []}");
        Files.writeString(
                folder.resolve("inks.json"),
                "{\"greyground\": \"inks\", \"version\": 1, \"inks\": [{\"name\": \"black\"}]}");
        Files.writeString(folder.resolve("spots.json"), "{\"greyground\": \"spots\", \"version\": 1, \"spots\": []}");
        Files.writeString(folder.resolve("test.pdf"), "%PDF-1.7 of a test plate");
        Files.writeString(folder.resolve("first.pdf"), "%PDF-1.7 of a film");
        for (String readings : List.of("values.csv", "reference.csv", "film.csv")) {
            Files.writeString(folder.resolve(readings), "coverage,density\n50,0.6\n");
        }
    }

    @ParameterizedTest
    @MethodSource("lines")
    void noOutputIsAnInputOrAnotherOutput(Line line) throws Exception {
        Map<String, String> before = digests();
        Map<String, String> files = new LinkedHashMap<>();
        for (String word : line.words()) {
            String file = word.replaceFirst("^--[a-z-]+=", "");
            if (file.matches("[a-z]+\\.[a-z]+")) {
                files.put(word.equals(file) ? "" : word.substring(0, word.indexOf('=')), file);
            }
        }
        int tried = 0;
        for (String out : line.written()) {
            for (Map.Entry<String, String> other : files.entrySet()) {
                if (other.getKey().equals(out)) {
                    continue;
                }
                for (Path name : names(folder.resolve(other.getValue()), ending(files.get(out)))) {
                    // Two new files that hold different things are told apart by their endings already.
                    boolean read = Files.exists(folder.resolve(other.getValue()));
                    refused(line, out, name, read ? "would replace" : "(would replace|let its name end in)");
                    tried++;
                }
            }
        }
        assertTrue(tried >= line.written().size() * 4, line + " tried " + tried);
        assertEquals(before, digests());
    }

    /** Other names of a file: those of one that exists can be links and second names, those of a new one differ in the case of letters. */
    private List<Path> names(Path file, String ending) throws IOException {
        Path sub = Files.createDirectories(folder.resolve("sub"));
        Path roundabout = sub.resolve("..").resolve(file.getFileName());
        if (!Files.exists(file)) {
            String capitals = file.getFileName().toString().toUpperCase(Locale.ROOT);
            return List.of(file, roundabout, folder.resolve(capitals));
        }
        Path link = sub.resolve("link." + ending);
        Path second = sub.resolve("second." + ending);
        Files.deleteIfExists(link);
        Files.deleteIfExists(second);
        return List.of(
                file,
                roundabout,
                Files.createSymbolicLink(link, file.toAbsolutePath()),
                Files.createLink(second, file));
    }

    private static String ending(String name) {
        return name.substring(name.lastIndexOf('.') + 1);
    }

    private void refused(Line line, String out, Path name, String why) {
        List<Object> words = new ArrayList<>(List.of(line.name()));
        for (String word : line.words()) {
            String option = word.startsWith("--") ? word.replaceFirst("=.*", "=") : "";
            String value = word.substring(option.length());
            boolean file = value.matches("[a-z]+\\.[a-z]+");
            words.add(option + (option.equals(out + "=") ? name : file ? folder.resolve(value) : value));
        }
        Attempt attempt = Attempt.of(words.toArray());
        assertEquals(2, attempt.status(), words + ": " + attempt.err());
        assertTrue(Pattern.compile(why).matcher(attempt.err()).find(), words + ": " + attempt.err());
        assertEquals(1, attempt.err().lines().count(), words + ": " + attempt.err());
    }

    private Map<String, String> digests() throws Exception {
        Map<String, String> digests = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                byte[] sum = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file));
                digests.put(file.getFileName().toString(), new BigInteger(1, sum).toString(16));
            }
        }
        return digests;
    }

    /** A new option that names a file belongs into a line above. */
    @Test
    void everyOptionThatNamesAFileIsTried() {
        TreeSet<String> known = new TreeSet<>();
        lines().forEach(line -> line.words().stream()
                .filter(word -> word.matches("(--[a-z-]+=)?[a-z]+\\.[a-z]+"))
                .forEach(word ->
                        known.add(line.name() + " " + (word.contains("=") ? word.replaceFirst("=.*", "") : ""))));
        // Nothing is written where these are given.
        known.addAll(List.of("plan --measured", "desk "));
        // Its films are named by their pictures: SeveralFilmsIT.
        known.add("positive --out-folder");
        // A folder for pictures named by the art: PlatesIT.
        known.add("plates --separations");
        PrintStream nowhere = new PrintStream(PrintStream.nullOutputStream());
        TreeSet<String> options = new TreeSet<>();
        CommandLine.parser("", nowhere, nowhere, file -> {}).getSubcommands().forEach((name, command) -> {
            CommandSpec spec = command.getCommandSpec();
            Stream.concat(spec.options().stream(), spec.positionalParameters().stream())
                    .filter(OwnInputsIT::namesAFile)
                    .forEach(each ->
                            options.add(name + " " + (each instanceof OptionSpec option ? option.longestName() : "")));
        });
        assertEquals(options, known);
    }

    private static boolean namesAFile(ArgSpec spec) {
        return Arrays.asList(spec.typeInfo().getType(), spec.auxiliaryTypes()[0])
                .contains(Path.class);
    }

    @Test
    void twoNamesOfOneFileAreNotTwoOutputs() throws Exception {
        Path film = Files.writeString(folder.resolve("earlier.pdf"), "an earlier film");
        Path tiff = Files.createLink(folder.resolve("earlier.tif"), film);
        Path link = Files.createSymbolicLink(folder.resolve("link.tif"), film);
        Map<String, String> before = digests();
        for (Path other : List.of(tiff, link)) {
            Attempt attempt = Attempt.of("positive", folder.resolve("art.png"), "--out", film, "--tiff", other);
            assertTrue(attempt.err().contains("would replace the film"), attempt.err());
        }
        assertEquals(before, digests());
    }

    /** A picture that is named by none of the options, but lies beside one that is. */
    @Test
    void aPictureBesideAnotherIsNoInputEither() throws Exception {
        Path art = Files.move(folder.resolve("art.png"), folder.resolve("print-loupe.png"));
        Map<String, String> before = digests();
        Attempt attempt =
                Attempt.of("proof", art, "--plate=40x30mm", "--loupe=10mm,10mm", "--out", folder.resolve("print.png"));
        assertEquals(2, attempt.status(), attempt.err());
        assertTrue(attempt.err().contains("would replace"), attempt.err());
        assertEquals(before, digests());
    }
}
