package greyground.cli;

import greyground.film.job.FilmFields;
import greyground.film.job.JobField;
import greyground.film.job.JobFields;
import greyground.film.job.Kind;
import greyground.film.job.PlacingFields;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** The settings of a job as options: their names, shapes, limits and help come from {@link JobFields}. */
final class JobOptions {
    private JobOptions() {}

    static CommandSpec all() {
        return of(typed().stream().map(field -> option(field, help(field))).toArray(OptionSpec[]::new));
    }

    static CommandSpec testPlate() {
        Stream<OptionSpec> ofTestPlates = Stream.of(
                option(
                        FilmFields.PLATE,
                        "the copper's size, from 60x80mm; a strip from 30x100mm (usual: 150x200mm, 150x40mm, 100x150mm, 80x100mm by kind)"),
                option(
                        FilmFields.PROCESS,
                        "how the plate is made: etched-film (usual), sprayed-aquatint or unetched-film"),
                option(FilmFields.SEED, "chooses one of many equivalent shuffles and grains, 0 to 1679615 (usual: 1)"),
                option(FilmFields.TITLE, "printed on the film (usual: the kind of test plate)"));
        Stream<JobField<?>> asElsewhere = Stream.of(
                FilmFields.DATE,
                FilmFields.RESOLUTION,
                FilmFields.GRAIN,
                FilmFields.RULING,
                FilmFields.ANGLE,
                FilmFields.DOTS,
                PlacingFields.BEVEL,
                PlacingFields.INK_SIDE,
                PlacingFields.TRANSFERS,
                PlacingFields.SHEET);
        return of(Stream.concat(ofTestPlates, asElsewhere.map(field -> option(field, help(field))))
                .toArray(OptionSpec[]::new));
    }

    /** Options whose words the rooms behind the door read themselves. */
    static CommandSpec of(OptionSpec... options) {
        CommandSpec all = CommandSpec.create();
        List.of(options).forEach(all::addOption);
        return all;
    }

    static OptionSpec word(String name, String shape, String help) {
        return OptionSpec.builder(name)
                .type(String.class)
                .paramLabel(shape)
                .description(help.replace("%", "%%"))
                .build();
    }

    /** One that may be given again and again. */
    static OptionSpec repeated(String name, Class<?> type, String shape, String help) {
        return OptionSpec.builder(name)
                .type(List.class)
                .auxiliaryTypes(type)
                .paramLabel(shape)
                .description(help)
                .build();
    }

    private static List<JobField<?>> typed() {
        return JobFields.ALL.stream().filter(JobField::isTyped).toList();
    }

    private static OptionSpec option(JobField<?> field, String help) {
        OptionSpec.Builder option = OptionSpec.builder("--" + field.name()).description(help.replace("%", "%%"));
        return field.kind() instanceof Kind.Switch
                ? option.type(boolean.class).build()
                : option.type(field.isFile() ? Path.class : String.class)
                        .paramLabel(field.shape())
                        .build();
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
        Optional<String> limits =
                kind.range().filter(range -> range.most() < Long.MAX_VALUE).map(range -> range.words(false));
        return limits.map(ends -> words + " (" + ends + "; usual: " + usual + ")")
                .orElse(kind.range().isPresent() ? words + " (usual: " + usual + ")" : words);
    }

    static List<String> names() {
        return typed().stream().map(JobField::name).toList();
    }

    /** The files that settings name. */
    static Map<String, Path> files(Map<String, String> given) {
        Map<String, Path> files = new TreeMap<>();
        typed().stream()
                .filter(field -> given.containsKey(field.name()) && field.namesFile(given.get(field.name())))
                .forEach(field -> files.put(field.name(), Path.of(given.get(field.name()))));
        return files;
    }

    /** An option that may be given again and again holds a line for each time. */
    private static String words(@Nullable Object value) {
        return value instanceof List<?> times
                ? times.stream().map(String::valueOf).collect(Collectors.joining("\n"))
                : String.valueOf(value);
    }

    static Map<String, String> given(ParseResult parsed) {
        Map<String, String> given = new HashMap<>();
        for (OptionSpec option : parsed.matchedOptions()) {
            given.put(option.longestName().replaceFirst("^--", ""), words(option.getValue()));
        }
        return given;
    }
}
