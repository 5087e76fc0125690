package greyground.cli;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParseResult;

/**
 * The options that describe a job, for the parser and the help; {@code app} reads the words themselves. Each one left out keeps
 * what the job file, or habit, says.
 */
final class JobOptions {
    @Option(names = "--plate", paramLabel = "SIZE", description = "the copper's size, such as 200x250mm or 8x10in")
    @Nullable
    String plate;

    @Option(
            names = "--process",
            paramLabel = "WORD",
            description = "etched-film (usual), sprayed-aquatint, photogravure or unetched-film")
    @Nullable
    String process;

    @Option(
            names = "--screen-black",
            paramLabel = "SHARE",
            description = "black share of photogravure's screen film (usual: 50%%)")
    @Nullable
    String screenBlack;

    @Option(
            names = "--screen-spacing",
            paramLabel = "LENGTH",
            description = "mean spacing of the screen film's dots (usual: 150um)")
    @Nullable
    String screenSpacing;

    @Option(
            names = "--aquatint-land",
            paramLabel = "SHARE",
            description = "share of the open copper that a sprayed aquatint covers (usual: 50%%)")
    @Nullable
    String aquatintLand;

    @Option(
            names = "--aquatint-grain",
            paramLabel = "LENGTH",
            description = "mean diameter of a sprayed aquatint's grains (usual: 50um)")
    @Nullable
    String aquatintGrain;

    @Option(
            names = "--grain",
            paramLabel = "SIZE",
            description =
                    "stochastic grain of this mean spacing, in µm (usual: 180um), or 'none' for photogravure's continuous tone")
    @Nullable
    String grain;

    @Mixin
    FilmOptions film = new FilmOptions();

    @Option(
            names = "--crop",
            paramLabel = "L,T,W,H",
            description =
                    "fragment of the art: left, top, width, height in percent (10%%,5%%,80%%,80%%) or pixels; or 'covered', the largest that a straightened picture fills")
    @Nullable
    String crop;

    @Option(
            names = "--rotate",
            paramLabel = "DEGREES",
            description = "turn the art clockwise; 90s exactly, the rest straightens")
    @Nullable
    String rotate;

    @Option(
            names = "--fit",
            paramLabel = "WORD",
            description = "fill (usual: cover the plate) or whole (show all the art)")
    @Nullable
    String fit;

    @Option(
            names = "--bleed",
            paramLabel = "LENGTH",
            description = "how far the art runs past the platemark (usual: 3mm)")
    @Nullable
    String bleed;

    @Option(names = "--page", paramLabel = "N", description = "picture within a file that holds several (usual: 1)")
    @Nullable
    String page;

    @Option(
            names = "--white",
            paramLabel = "POINT",
            description = "the art's paper white as reflectance, such as 85%%, or 'automatic'")
    @Nullable
    String white;

    @Option(
            names = "--black",
            paramLabel = "POINT",
            description = "the art's ink black as reflectance, such as 2%%, or 'automatic'")
    @Nullable
    String black;

    @Option(
            names = "--paper-shrink",
            paramLabel = "X,Y",
            description = "how much damp paper shrinks on drying, across and down, such as 0.7%%,0.4%%")
    @Nullable
    String paperShrink;

    @Option(names = "--tile", description = "split a plate that is too large for the sheet over several, with overlaps")
    boolean tile;

    @Option(
            names = "--range",
            paramLabel = "WORD",
            description = "how the art's range meets the print's: lightness (usual), black-point or density")
    @Nullable
    String range;

    @Option(
            names = "--mend",
            description =
                    "make blacks solid where the plate holds them: strokes whole, wide blacks at their edges (usual: all in grain)")
    boolean mend;

    @Option(names = "--seed", paramLabel = "N", description = "chooses one of many equivalent grains (usual: 1)")
    @Nullable
    String seed;

    @Option(names = "--title", paramLabel = "TEXT", description = "printed on the film (usual: the art's file name)")
    @Nullable
    String title;

    /** The names of all these options, without dashes. */
    static Set<String> names() {
        Set<String> names = new HashSet<>();
        CommandSpec.forAnnotatedObject(new JobOptions())
                .options()
                .forEach(option -> names.add(option.longestName().replaceFirst("^--", "")));
        return names;
    }

    /** An option that may be given again and again holds a line for each time. */
    private static String words(@Nullable Object value) {
        return value instanceof List<?> times
                ? times.stream().map(String::valueOf).collect(Collectors.joining("\n"))
                : String.valueOf(value);
    }

    /** What was given, by option name without its dashes. */
    static Map<String, String> given(ParseResult parsed) {
        Map<String, String> given = new HashMap<>();
        for (OptionSpec option : parsed.matchedOptions()) {
            given.put(option.longestName().replaceFirst("^--", ""), words(option.getValue()));
        }
        return given;
    }
}
