package greyground.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options that describe a test plate's film, for the parser and the help; {@code app} reads the words themselves. */
final class WedgeOptions {
    @Option(
            names = "--kind",
            paramLabel = "WORD",
            description =
                    "full (usual: wedge and targets), strip (wedge alone), exposure (strips of rising exposure) or check (tones that"
                            + " should print at stated lightness)")
    @Nullable
    String kind;

    @Option(
            names = "--plate",
            paramLabel = "SIZE",
            description =
                    "the copper's size, from 60x80mm; a strip from 30x100mm (usual: 150x200mm, 150x40mm, 100x150mm, 80x100mm by kind)")
    @Nullable
    String plate;

    @Option(
            names = "--process",
            paramLabel = "WORD",
            description = "etched-film (usual), sprayed-aquatint or unetched-film")
    @Nullable
    String process;

    @Option(
            names = "--grain",
            paramLabel = "SIZE",
            description = "stochastic grain of this mean spacing, in µm (usual: 180um)")
    @Nullable
    String grain;

    @Mixin
    FilmOptions film = new FilmOptions();

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "chooses one of many equivalent shuffles and grains, 0 to 1679615 (usual: 1)")
    @Nullable
    String seed;

    @Option(names = "--title", paramLabel = "TEXT", description = "printed on the film (usual: the kind of test plate)")
    @Nullable
    String title;
}
