package greyground.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that ask for a bite, for the parser and the help; {@code app} reads the words themselves. */
final class BiteOptions {
    @Option(names = "--depth", paramLabel = "LENGTH", description = "bite to this depth, such as 30um")
    @Nullable
    String depth;

    @Option(names = "--darkest", paramLabel = "L*", description = "bite until the darkest tone prints so, such as 24")
    @Nullable
    String darkest;

    @Option(
            names = "--bitten",
            paramLabel = "TIME",
            description = "bitten so far, such as 12min; plans the rest. Once for each --measured, in order")
    List<String> bitten = List.of();

    @Option(
            names = "--measured",
            paramLabel = "FILE",
            description = "tones read on the proof after that bite: comma-separated coverage and L* or density, or what"
                    + " 'read --json' printed; tells what further minutes would do")
    List<Path> measured = List.of();

    @Option(
            names = "--proof-density",
            paramLabel = "D",
            description = "density of a deep solid on the proof, paper included, such as 1.1")
    @Nullable
    String proofDensity;

    @Option(names = "--proof-depth", paramLabel = "LENGTH", description = "depth measured so far, such as 18um")
    @Nullable
    String proofDepth;

    @Option(
            names = "--bath-temperature",
            paramLabel = "T",
            description = "the bath's, now, such as 18C (usual: the workshop's)")
    @Nullable
    String bathTemperature;

    @Option(
            names = "--bath-copper",
            paramLabel = "G",
            description = "copper in the bath now, such as 20g/L (usual: the workshop's)")
    @Nullable
    String bathCopper;
}
