package greyground.cli;

import greyground.film.job.FilmFields;
import greyground.film.job.JobField;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.job.PlacingFields;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The settings of a job as options: their names, shapes, limits and help come from {@link JobFields}. */
final class JobOptions {
    private JobOptions() {}

    /** Every setting of a job. */
    static CommandSpec all() {
        CommandSpec options = CommandSpec.create();
        typed().forEach(field -> options.addOption(option(field, help(field))));
        return options;
    }

    /** The settings of a test plate's film. */
    static CommandSpec testPlate() {
        CommandSpec options = CommandSpec.create();
        options.addOption(
                option(
                        FilmFields.PLATE,
                        "the copper's size, from 60x80mm; a strip from 30x100mm (usual: 150x200mm, 150x40mm, 100x150mm, 80x100mm by kind)"));
        options.addOption(option(
                FilmFields.PROCESS, "how the plate is made: etched-film (usual), sprayed-aquatint or unetched-film"));
        options.addOption(
                option(FilmFields.SEED, "chooses one of many equivalent shuffles and grains, 0 to 1679615 (usual: 1)"));
        options.addOption(option(FilmFields.TITLE, "printed on the film (usual: the kind of test plate)"));
        for (JobField<?> field : List.of(
                FilmFields.DATE,
                FilmFields.RESOLUTION,
                FilmFields.GRAIN,
                FilmFields.RULING,
                FilmFields.ANGLE,
                FilmFields.DOTS,
                PlacingFields.BEVEL,
                PlacingFields.INK_SIDE,
                PlacingFields.TRANSFERS,
                PlacingFields.SHEET)) {
            options.addOption(option(field, help(field)));
        }
        return options;
    }

    private static List<JobField<?>> typed() {
        return JobFields.ALL.stream().filter(JobField::isTyped).toList();
    }

    private static OptionSpec option(JobField<?> field, String help) {
        OptionSpec.Builder option = OptionSpec.builder("--" + field.name()).description(help.replace("%", "%%"));
        return field.kind() instanceof Kind.Switch
                ? option.type(boolean.class).build()
                : option.type(String.class).paramLabel(field.shape()).build();
    }

    /** The first sentence of a field's help, with its ways or limits and what is usual. */
    private static <T> String help(JobField<T> field) {
        String first = field.help().split("\\.(?= |$)", 2)[0];
        String words = first.substring(0, 1).toLowerCase(Locale.ROOT) + first.substring(1);
        Kind<T> kind = field.kind();
        String usual = kind.print(field.usual());
        if (kind instanceof Kind.Switch || usual.isEmpty()) {
            return words;
        }
        if (!kind.ways().isEmpty()) {
            return words + ": "
                    + kind.ways().stream()
                            .map(way -> way.word() + (way.word().equals(usual) ? " (usual)" : ""))
                            .collect(Collectors.joining(", "));
        }
        Optional<String> limits = kind.range()
                .filter(range -> range.most() < Long.MAX_VALUE)
                .map(range -> range.unit().text(range.least()).replaceAll("[^0-9.-]", "") + " to "
                        + range.unit().text(range.most()));
        return limits.map(ends -> words + " (" + ends + "; usual: " + usual + ")")
                .orElse(kind.range().isPresent() ? words + " (usual: " + usual + ")" : words);
    }

    /** The names of all these options, without dashes. */
    static List<String> names() {
        return typed().stream().map(JobField::name).toList();
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
