package greyground;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Holds the house together: who may import whom, and that every room says what it is for.
 *
 * <p>Blind spot: javac copies constants into their users, so a class that only reads another package's {@code static final}
 * number leaves no trace here.
 */
class ArchitectureTest {
    private static final long MOST_LINES = 400;

    private static final Path MAIN = Path.of("src/main/java/greyground");
    private static final Map<String, Set<String>> MAY_IMPORT = table();
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("greyground");

    /** Rooms that draw; what decides things at the desk is tested without a window, so it must not need one. */
    private static final List<String> WINDOW = List.of(
            "greyground.desk.look..",
            "greyground.desk.picture..",
            "greyground.desk.page..",
            "greyground.desk.plan..",
            "greyground.desk.setting..",
            "greyground.desk.window..");

    /** Where words that are not a refusal's are asked for, each with its reason. */
    private static final List<String> SIFTED = List.of(
            // Reasons that the system gives.
            "greyground.app.files.FileFault",
            // The parser's sentences on options.
            "greyground.cli.CommandLine",
            // Not said to anybody: a record's text, and which reader is asked.
            "greyground.quantity.RecordWords",
            "greyground.art.jpeg.PlatformReaders");

    /** The tower, from the ground up: a room may import the rooms behind its name, and nothing else of ours. */
    private static Map<String, Set<String>> table() {
        String science =
                "quantity raster tone grain plate plate.edge plate.inspect plate.neighbourhood plate.split chart fit json finding";
        String film = "film.job film.sheet film.compose";
        String work = science + " workshop plan " + film + " output picture";
        String seen = "quantity finding workshop plan film.job film.sheet json";
        return Stream.of(
                        "quantity:",
                        "json: quantity",
                        "finding: json",
                        "states: quantity json",
                        "raster: quantity",
                        "tone: quantity",
                        "colour: quantity tone",
                        "grain: quantity raster",
                        "art.page: tone",
                        "art.packing: art.page",
                        "art.colour: quantity raster tone art.page",
                        "art.touch: quantity raster tone",
                        "art.burnish: quantity raster tone art.touch",
                        "art.library: art.page",
                        "art.jpeg: quantity art.page art.packing art.library",
                        "art.webp: art.page art.packing art.library",
                        "art.tiff: quantity art.page art.packing art.jpeg art.library art.webp",
                        "art.kind: quantity tone art.page art.packing art.jpeg art.library",
                        "art.printed: quantity raster",
                        "art.line: raster art.touch",
                        "art.spots: quantity raster tone art.touch",
                        "art: quantity raster tone art.page art.colour art.jpeg art.tiff art.kind art.webp",
                        "plate.edge: quantity",
                        "plate: quantity raster tone plate.edge",
                        "plate.inspect: quantity raster plate plate.edge",
                        "plate.neighbourhood: quantity raster plate plate.edge",
                        "plate.split: quantity raster tone plate plate.edge",
                        "chart: quantity tone plate",
                        "fit: quantity tone plate chart",
                        "scan: quantity raster tone chart fit",
                        "picture: quantity raster tone plate plate.edge chart fit scan",
                        "workshop: quantity json grain plate fit",
                        "ink: quantity json colour workshop",
                        "film.job: quantity raster json tone grain plate workshop art.burnish art.spots",
                        "plan: quantity json tone grain workshop plate plate.split film.job",
                        "film.sheet: quantity raster json tone grain plate chart film.job",
                        "film.compose: quantity raster tone grain plate plate.edge plate.inspect chart art.burnish film.job film.sheet",
                        "output: quantity raster plan film.sheet",
                        "app.files: quantity json states tone ink workshop plan chart film.job film.sheet output picture",
                        "app.kept: quantity tone grain plate plate.neighbourhood film.job app.files",
                        "app.recipe: " + work
                                + " art art.burnish art.colour art.line art.printed art.spots art.touch app.files app.kept",
                        "app.sight: quantity tone plate picture app.recipe",
                        "app.check: " + work + " app.recipe",
                        "app.bite: " + work + " app.files app.kept app.recipe",
                        "app.proof: " + work + " colour ink app.files app.recipe app.sight app.check app.bite",
                        "app.gather: quantity raster json finding grain workshop plan film.job film.sheet output app.files app.bite",
                        "app.record: quantity finding states plan output app.files app.bite",
                        "app.print: " + work + " app.recipe",
                        "app.live: " + work + " app.kept app.recipe app.sight app.check app.bite",
                        "app.chart: " + work + " app.files app.kept app.recipe app.sight app.live",
                        "app.plates: " + work + " colour ink app.files app.recipe app.proof app.chart",
                        "app.teach: " + work + " scan app.files app.kept app.recipe app.sight app.chart",
                        "app.inks: " + work + " scan colour ink app.files app.recipe app.teach",
                        "app: quantity raster finding states workshop ink film.job app.files app.recipe app.bite app.proof app.plates app.gather app.record app.print app.live"
                                + " app.chart app.teach app.inks",
                        "cli: quantity workshop json finding states film.job app app.files app.recipe app.sight app.bite app.proof app.plates app.gather app.record"
                                + " app.chart app.teach app.inks",
                        "desk.model: " + seen
                                + " app app.files app.recipe app.sight app.check app.bite app.chart app.print"
                                + " app.live app.teach",
                        "desk.clock: quantity json plan desk.model",
                        "desk.look: app.sight desk.model",
                        "desk.setting: quantity workshop plate film.job desk.model desk.look",
                        "desk.picture: quantity app.sight app.live desk.model desk.look",
                        "desk.plan: quantity plan app.bite desk.model desk.clock desk.look",
                        "desk.page: quantity app.files desk.model desk.look",
                        "desk.window: " + seen
                                + " plate app.files app.recipe app.sight app.check app.bite app.print app.live"
                                + " app.teach desk.model desk.clock desk.setting desk.look desk.picture desk.plan desk.page")
                .collect(Collectors.toMap(
                        line -> line.substring(0, line.indexOf(':')),
                        line -> Set.copyOf(List.of(
                                line.substring(line.indexOf(':') + 1).strip().split("\\s+"))),
                        (one, two) -> one,
                        LinkedHashMap::new));
    }

    @Test
    void packagesImportOnlyWhatTheTableAllows() {
        MAY_IMPORT.forEach((room, allowed) -> {
            String[] forbidden = Stream.concat(
                            Stream.of("greyground"),
                            MAY_IMPORT.keySet().stream()
                                    .filter(other -> !other.equals(room) && !allowed.contains(other))
                                    .map(other -> "greyground." + other))
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("greyground." + room)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(forbidden)
                    .check(CLASSES);
        });
    }

    /** A room stands on those above it in the table alone, so there is no circle and no arrow back. */
    @Test
    void theTableIsATower() {
        Set<String> below = new HashSet<>(Set.of(""));
        MAY_IMPORT.forEach((room, allowed) -> {
            assertTrue(below.containsAll(allowed), room + " imports a room that stands above it");
            below.add(room);
        });
    }

    /** docs/architecture.md lists the rooms that there are, and no other. */
    @Test
    void theRoomsInTheDocsAreThese() throws IOException {
        String text = Files.readString(Path.of("docs/architecture.md"));
        String rooms = text.substring(text.indexOf("## The rooms"), text.indexOf("## Who reads which kind"));
        Set<String> listed = new TreeSet<>();
        rooms.lines()
                .filter(line -> line.startsWith("| `"))
                .map(line -> line.split("\\|")[1])
                .flatMap(cell -> Stream.of(cell.split(",")))
                .forEach(room -> listed.add(room.strip().replace("`", "")));
        assertEquals(new TreeSet<>(MAY_IMPORT.keySet()), listed);
    }

    /** What the door hands out, no surface makes for itself. */
    @Test
    void surfacesReachTheUseCasesThroughTheDoor() {
        Set<String> handedOut = Stream.concat(
                        Stream.of("greyground.app.recipe.PositiveWork"),
                        Stream.of(greyground.app.Greyground.class.getMethods())
                                .map(method -> method.getReturnType().getName()))
                .filter(name -> name.startsWith("greyground.app."))
                .collect(Collectors.toSet());
        assertTrue(handedOut.size() >= 8, handedOut.toString());
        List<String> around = CLASSES.stream()
                .filter(one -> one.getPackageName().matches("greyground[.](cli|desk).*"))
                .flatMap(one -> one.getCodeUnitCallsFromSelf().stream())
                .filter(call -> handedOut.contains(call.getTargetOwner().getName()))
                .filter(call -> call.getTarget()
                        .resolveMember()
                        .filter(member -> member instanceof JavaConstructor
                                || member.getModifiers().contains(JavaModifier.STATIC)
                                        && handedOut.contains(((JavaMethod) member)
                                                .getRawReturnType()
                                                .getName()))
                        .isPresent())
                .map(call -> call.getDescription())
                .toList();
        assertEquals(List.of(), around);
    }

    @Test
    void theProgramOpensNoNetworkConnection() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.net.Socket")
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.net.URL")
                .orShould()
                .dependOnClassesThat()
                .resideInAPackage("java.net.http..")
                .check(CLASSES);
    }

    @Test
    void everyRoomIsInTheTableNamesItsDoorAndHoldsAtMostFortyFiles() throws IOException {
        TreeSet<String> rooms = new TreeSet<>();
        for (Path folder : foldersOf(MAIN)) {
            Path info = folder.resolve("package-info.java");
            assertTrue(Files.exists(info), folder + " has no package-info.java");
            String page = Files.readString(info);
            assertTrue(page.contains("@NullMarked"), folder + " is not @NullMarked");
            if (!folder.equals(MAIN)) {
                assertTrue(page.contains("Door"), folder + " names no door");
                rooms.add(MAIN.relativize(folder).toString().replace('/', '.'));
            }
        }
        assertEquals(new TreeSet<>(MAY_IMPORT.keySet()), rooms);
        for (Path root : List.of(MAIN, Path.of("src/test/java/greyground"))) {
            for (Path folder : foldersOf(root)) {
                assertTrue(javaFilesIn(folder) <= 40, folder + " holds " + javaFilesIn(folder) + " files");
            }
        }
    }

    private static List<Path> foldersOf(Path root) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(folder -> Files.isDirectory(folder) && javaFilesIn(folder) > 0)
                    .toList();
        }
    }

    private static long javaFilesIn(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".java")).count();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    @Test
    void noFileIsLongerThanFourHundredLines() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".java")).toList()) {
                try (Stream<String> lines = Files.lines(file)) {
                    long count = lines.count();
                    assertTrue(count <= MOST_LINES, file + " has " + count + " lines");
                }
            }
        }
    }

    /** Math's transcendental functions may differ in the last digit from machine to machine; StrictMath's may not. The window may. */
    @Test
    void whatDecidesAFilmIsComputedAlikeOnEveryMachine() {
        List<String> inexact = List.of(
                "exp", "expm1", "log", "log10", "log1p", "pow", "sin", "cos", "tan", "asin", "acos", "atan", "atan2",
                "sinh", "cosh", "tanh", "cbrt", "hypot");
        List<String> calls = CLASSES.stream()
                .filter(one -> !one.getPackageName().startsWith("greyground.desk"))
                .flatMap(one -> one.getMethodCallsFromSelf().stream())
                .filter(call -> call.getTargetOwner().getName().equals("java.lang.Math"))
                .filter(call -> inexact.contains(call.getTarget().getName()))
                .map(call -> call.getDescription())
                .toList();
        assertEquals(List.of(), calls);
    }

    @Test
    void whatDrawsNothingKnowsNothingOfJavaFx() {
        noClasses()
                .that()
                .resideOutsideOfPackages(WINDOW.toArray(String[]::new))
                .or()
                .haveFullyQualifiedName(greyground.desk.look.Bell.class.getName())
                .or()
                .haveFullyQualifiedName(greyground.desk.setting.FigureWords.class.getName())
                .or()
                .haveFullyQualifiedName(greyground.desk.setting.Setting.class.getName())
                .or()
                .haveFullyQualifiedName(greyground.desk.setting.Settings.class.getName())
                .should()
                .dependOnClassesThat()
                .resideInAPackage("javafx..")
                .check(CLASSES);
    }

    /** What an exception that isn't ours says was written for programmers; only where it is sifted may it be asked. */
    @Test
    void onlyRefusalsAreAskedForTheirWords() {
        TreeSet<String> asked = new TreeSet<>();
        CLASSES.forEach(each -> each.getMethodCallsFromSelf().forEach(call -> {
            boolean words = List.of("getMessage", "getLocalizedMessage").contains(call.getName());
            boolean named = List.of("getSimpleName", "getName", "getTypeName").contains(call.getName())
                    && call.getTargetOwner().isEquivalentTo(Class.class);
            if ((words
                            && call.getTargetOwner().isAssignableTo(Throwable.class)
                            && !call.getTargetOwner().isEquivalentTo(Refusal.class))
                    || named) {
                asked.add(each.getName());
            }
        }));
        SIFTED.forEach(asked::remove);
        assertEquals(List.of(), List.copyOf(asked));
    }
}
