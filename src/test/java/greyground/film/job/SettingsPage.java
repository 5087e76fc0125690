package greyground.film.job;

import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * docs/settings.md, written from the table of a job's settings and from the workshop's numbers: {@code SettingsPage
 * docs/settings.md}.
 */
public final class SettingsPage {
    private static final String HEAD = """
            # Every setting

            Written from the program's own tables; a test holds it to them.

            ## Of a film

            Options of `greyground positive`; most of `plan`, `proof` and `wedge` too. The window shows the same settings at its five stations, and a
            job file keeps them. Lengths take mm, cm, in or µm. Wherever the size of a plate or sheet is asked for (option, job file, either row of the
            window), the name of a sheet of ISO 216 will do: `A5`, `B4 landscape`.

            | option | range or choice | usual | what it is |
            |---|---|---|---|
            """;

    private static final String SHOP = """

            ## Of the workshop

            Every number of `shop.json`, by section. A file need only hold those that you know; each is given as
            `{ "value": 8, "known": "measured", "date": "2026-11-20", "how": "a wedge strip on an offcut" }`, or as a bare number.

            | number | assumed | on what ground |
            |---|---|---|
            """;

    private SettingsPage() {}

    /** Writes the page. */
    public static void main(String[] arguments) throws IOException {
        Files.writeString(Path.of(arguments[0]), text());
    }

    static String text() {
        String fields = JobFields.ALL.stream()
                .filter(JobField::isTyped)
                .map(SettingsPage::row)
                .collect(Collectors.joining());
        String figures = Workshop.assumed().figures().entrySet().stream()
                .map(figure -> String.format(
                        Locale.ROOT,
                        "| `%s` | %s | %s |%n",
                        figure.getKey(),
                        Refusal.plain(figure.getValue().value()),
                        cell(figure.getValue().provenance().basis())))
                .collect(Collectors.joining());
        return HEAD + fields + SHOP + figures;
    }

    private static <T> String row(JobField<T> field) {
        String range = field.kind()
                .range()
                .map(limits -> limits.words(false))
                .orElseGet(
                        () -> field.kind().ways().stream().map(Kind.Way::word).collect(Collectors.joining(", ")));
        boolean unsaid = field.kind() instanceof Kind.Switch || field == (JobField<?>) FilmFields.PLATE;
        String usual = unsaid ? "" : field.kind().print(field.usual());
        return String.format(
                Locale.ROOT,
                "| `--%s%s` | %s | %s | %s |%n",
                field.name(),
                field.kind() instanceof Kind.Switch ? "" : " " + field.shape(),
                cell(range),
                cell(usual),
                cell(field.help()));
    }

    private static String cell(String text) {
        return text.replace("|", "\\|");
    }
}
