package greyground.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that describe any film, a picture's or a test plate's. */
final class FilmOptions {
    @Option(
            names = "--resolution",
            paramLabel = "DPI",
            description = "the film printer's own resolution (usually the workshop's)")
    @Nullable
    String resolution;

    @Option(names = "--ruling", paramLabel = "N", description = "halftone of N lines per cm, instead of a grain")
    @Nullable
    String ruling;

    @Option(names = "--angle", paramLabel = "DEGREES", description = "of the halftone (usual: 45)")
    @Nullable
    String angle;

    @Option(names = "--dots", paramLabel = "WORD", description = "halftone dots: round (usual) or line")
    @Nullable
    String dots;

    @Option(names = "--bevel", paramLabel = "LENGTH", description = "width of the plate's bevel (usual: 2mm)")
    @Nullable
    String bevel;

    @Option(names = "--ink-side", paramLabel = "WORD", description = "down (usual: ink on the resist) or up")
    @Nullable
    String inkSide;

    @Option(
            names = "--transfers",
            paramLabel = "N",
            description = "contacts from plate to final sheet (usual: 1; offset: 2)")
    @Nullable
    String transfers;

    @Option(
            names = "--sheet",
            paramLabel = "SIZE",
            description = "the film printer's sheet, or 'automatic' for just large enough")
    @Nullable
    String sheet;

    @Option(names = "--date", paramLabel = "DATE", description = "printed on the film, year-month-day (usual: today)")
    @Nullable
    String date;
}
