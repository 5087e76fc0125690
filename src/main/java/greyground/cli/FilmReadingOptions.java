package greyground.cli;

import greyground.quantity.Lengths;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What was measured on a printed film itself, before any plate is made of it. */
final class FilmReadingOptions {
    @Option(
            names = "--film",
            paramLabel = "FILE.csv",
            description =
                    "densities of the film's own strip, to learn the film printer: a header line of coverage (in %%) and density"
                            + " (ultraviolet), visual, or step (of a transmission wedge that looks the same in the developed"
                            + " resist), then one line for each field")
    private @Nullable Path film;

    @Option(
            names = "--ruler-across",
            paramLabel = "LENGTH",
            description = "what the film's ruler of 100 mm above the plate measures, such as 100.4mm")
    private @Nullable String rulerAcross;

    @Option(
            names = "--ruler-down",
            paramLabel = "LENGTH",
            description = "the same of the ruler beside the plate, such as 99.8mm")
    private @Nullable String rulerDown;

    /** Whether anything is. */
    boolean areGiven() {
        return film != null || rulerAcross != null || rulerDown != null;
    }

    Optional<Path> film() {
        return Optional.ofNullable(film);
    }

    Optional<Double> acrossMillimetres() {
        return Optional.ofNullable(rulerAcross).map(text -> Lengths.parseMillimetres("ruler across", text));
    }

    Optional<Double> downMillimetres() {
        return Optional.ofNullable(rulerDown).map(text -> Lengths.parseMillimetres("ruler down", text));
    }
}
