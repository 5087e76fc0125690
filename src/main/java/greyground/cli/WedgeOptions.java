package greyground.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that describe a test plate's film, for the parser and the help; {@code app} reads the words themselves. */
final class WedgeOptions {
    @Option(
            names = "--kind",
            paramLabel = "WORD",
            description =
                    "full (usual: wedge and targets), strip (wedge alone) or exposure (strips of rising exposure)")
    @Nullable
    String kind;

    @Option(
            names = "--plate",
            paramLabel = "SIZE",
            description =
                    "the copper's size, from 60x80mm; a strip from 30x100mm (usual: 150x200mm, 150x40mm, 100x150mm by kind)")
    @Nullable
    String plate;

    @Option(
            names = "--process",
            paramLabel = "WORD",
            description = "etched-film (usual), sprayed-aquatint or unetched-film")
    @Nullable
    String process;

    @Option(
            names = "--resolution",
            paramLabel = "DPI",
            description = "the film printer's own resolution (usually the workshop's)")
    @Nullable
    String resolution;

    @Option(
            names = "--grain",
            paramLabel = "SIZE",
            description = "stochastic grain of this mean spacing, in um (usual: 180um)")
    @Nullable
    String grain;

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

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "chooses one of many equivalent shuffles and grains, 0 to 1679615 (usual: 1)")
    @Nullable
    String seed;

    @Option(names = "--title", paramLabel = "TEXT", description = "printed on the film (usual: the kind of test plate)")
    @Nullable
    String title;

    @Option(names = "--date", paramLabel = "DATE", description = "printed on the film, year-month-day (usual: today)")
    @Nullable
    String date;
}
