package greyground;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Holds the house together: who may import whom, and that every room says what it is for.
 *
 * <p>Blind spot: javac copies constants into their users, so a class that only reads another package's {@code static final}
 * number leaves no trace here.
 */
class ArchitectureTest {
    private static final Path MAIN = Path.of("src/main/java/greyground");
    private static final List<String> SCIENCES = List.of("quantity", "tone", "grain", "raster", "plate");
    private static final Map<String, List<String>> MAY_IMPORT = table();

    private static Map<String, List<String>> table() {
        Map<String, List<String>> table = new LinkedHashMap<>();
        table.put("quantity", List.of());
        table.put("raster", List.of("quantity"));
        table.put("art", List.of("quantity", "raster"));
        table.put("tone", List.of("quantity"));
        table.put("grain", List.of("quantity", "raster"));
        table.put("plate", List.of("quantity", "tone", "raster"));
        table.put("wedge", SCIENCES);
        table.put("scan", List.of("quantity", "raster", "tone", "wedge"));
        table.put("picture", List.of("quantity", "raster", "tone", "plate", "wedge", "scan"));
        table.put("workshop", with(SCIENCES, "wedge"));
        table.put("plan", List.of("quantity", "workshop", "plate"));
        table.put("film", List.of("quantity", "raster", "art", "tone", "grain", "plate", "wedge", "workshop", "plan"));
        table.put("output", with(table.get("film"), "film"));
        table.put("app", with(with(with(table.get("output"), "output"), "picture"), "scan"));
        table.put("cli", List.of("app", "film", "workshop", "plan", "quantity"));
        table.put("desk", List.of("app", "film", "workshop", "plan", "quantity"));
        return table;
    }

    private static List<String> with(List<String> rooms, String one) {
        return Stream.concat(rooms.stream(), Stream.of(one)).toList();
    }

    @Test
    void packagesImportOnlyWhatTheTableAllows() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("greyground");
        MAY_IMPORT.forEach((room, allowed) -> {
            String[] forbidden = MAY_IMPORT.keySet().stream()
                    .filter(other -> !other.equals(room) && !allowed.contains(other))
                    .map(other -> "greyground." + other + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("greyground." + room + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(forbidden)
                    .allowEmptyShould(true)
                    .check(classes);
            noClasses()
                    .that()
                    .resideInAPackage("greyground." + room + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("greyground")
                    .allowEmptyShould(true)
                    .check(classes);
        });
    }

    @Test
    void theProgramOpensNoNetworkConnection() {
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("greyground");
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
                .check(classes);
    }

    @Test
    void everyPackageIsInTheTableAndSaysItsPurpose() throws IOException {
        TreeSet<String> rooms = new TreeSet<>();
        try (Stream<Path> folders = Files.walk(MAIN)) {
            for (Path folder : folders.filter(Files::isDirectory).toList()) {
                assertTrue(Files.exists(folder.resolve("package-info.java")), folder + " has no package-info.java");
                String info = Files.readString(folder.resolve("package-info.java"));
                assertTrue(info.contains("@NullMarked"), folder + " is not @NullMarked");
                if (!folder.equals(MAIN)) {
                    assertTrue(
                            info.contains("ay import") || info.contains("Imports nothing"),
                            folder + " names no imports");
                    rooms.add(MAIN.relativize(folder).toString());
                }
            }
        }
        rooms.removeAll(MAY_IMPORT.keySet());
        assertEquals(new TreeSet<String>(), rooms, "packages that the table does not know");
    }

    @Test
    void noFileIsLongerThanSixHundredLines() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".java")).toList()) {
                try (Stream<String> lines = Files.lines(file)) {
                    long count = lines.count();
                    assertTrue(count <= 600, file + " has " + count + " lines");
                }
            }
        }
    }

    /** Math's transcendental functions may differ in the last digit from machine to machine; StrictMath's may not. */
    @Test
    void whatDecidesAFilmIsComputedAlikeOnEveryMachine() {
        List<String> inexact = List.of(
                "exp", "expm1", "log", "log10", "log1p", "pow", "sin", "cos", "tan", "asin", "acos", "atan", "atan2",
                "sinh", "cosh", "tanh", "cbrt", "hypot");
        JavaClasses classes = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(
                        "greyground.raster",
                        "greyground.tone",
                        "greyground.grain",
                        "greyground.plate",
                        "greyground.workshop",
                        "greyground.film",
                        "greyground.scan");
        List<String> calls = classes.stream()
                .flatMap(one -> one.getMethodCallsFromSelf().stream())
                .filter(call -> call.getTargetOwner().getName().equals("java.lang.Math"))
                .filter(call -> inexact.contains(call.getTarget().getName()))
                .map(call -> call.getDescription())
                .toList();
        assertEquals(List.of(), calls);
    }
}
