package greyground.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is told of a proof beside its scan, for the parser and the help; {@code app} reads the words themselves. */
final class ReadOptions {
    @Option(
            names = "--depth",
            paramLabel = "LENGTH",
            description = "how deep the bare strip was measured to be, such as 34um: tells the bath's rate")
    @Nullable
    String depth;

    @Option(
            names = "--bite",
            paramLabel = "TIME",
            description = "how long the plate was bitten, such as 22min (usual: as its film's plan says)")
    @Nullable
    String bite;

    @Option(
            names = "--paper",
            paramLabel = "WHITE",
            description = "the bare sheet's L* or density, such as 95 or 0.06 (usual: as in the workshop)")
    @Nullable
    String paper;

    @Option(
            names = "--flare",
            paramLabel = "SHARE",
            description = "stray light that the scanner adds to darks, such as 1%% (usual: 0%%)")
    @Nullable
    String flare;

    @Option(
            names = "--corners",
            paramLabel = "PLACES",
            description =
                    "where the plate lies, if its codes can't be found: its four corners in scan pixels, as the print reads from the top left clockwise, such as \"120,95 1890,101 1884,2460 115,2452\"")
    @Nullable
    String corners;

    @Option(
            names = "--date",
            paramLabel = "DATE",
            description = "when the proof was printed, as 2026-03-04 (usual: today)")
    @Nullable
    String date;
}
