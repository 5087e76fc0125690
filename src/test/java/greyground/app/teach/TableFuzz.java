package greyground.app.teach;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fuzz.Hostile;
import greyground.quantity.Size;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;

/** Readings typed in or exported: of a test plate's fields, of a reflection wedge, of a film's own strip. */
public final class TableFuzz {
    private static final TestPlate PLATE = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(60, 80), 2, 1, 75, 180));
    /** Of a film without grain, whose strip is fitted in no time. */
    private static final Path FILM = Path.of("src/test/resources/greyground/fuzz/film/seeds/positive.pdf");

    private TableFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("tables", TableFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        Path file = Hostile.file("readings.csv", bytes);
        Hostile.answered(() -> TypedValues.fields(file, PLATE));
        Hostile.answered(() -> TypedValues.reference(file));
        Hostile.answered(() -> FilmPrinterWork.of(FILM, Optional.empty(), LocalDate.of(2026, 3, 31))
                .read(Optional.of(file), Optional.empty(), Optional.empty()));
    }
}
