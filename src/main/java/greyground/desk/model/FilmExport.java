package greyground.desk.model;

import greyground.app.Greyground;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.PositiveOutcome;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleConsumer;

/** Makes a film and writes it. */
public final class FilmExport {
    private FilmExport() {}

    /**
     * Writes a TIFF where the file is named so, else a PDF; nothing if {@code progress} throws.
     *
     * @param named what lies on the bench
     */
    public static PositiveOutcome make(NamedFiles named, BenchState state, Path film, DoubleConsumer progress)
            throws IOException {
        named.writes("film", film, isTiff(film) ? NamedFiles.Content.TIFF : NamedFiles.Content.FILM);
        ArtSource art = Greyground.art(state.art());
        return isTiff(film)
                ? Greyground.positiveAsTiff(art, state.job(), state.workshop(), film, progress::accept)
                : Greyground.positive(art, state.job(), state.workshop(), film, Optional.empty(), progress::accept);
    }

    public static boolean isTiff(Path film) {
        return String.valueOf(film.getFileName()).toLowerCase(Locale.ROOT).matches(".*\\.tiff?");
    }
}
