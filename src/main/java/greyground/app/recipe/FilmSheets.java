package greyground.app.recipe;

import greyground.film.job.Job;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.SheetTiles;
import greyground.film.sheet.WedgeStrip;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.quantity.FilmPixels;
import greyground.quantity.Size;
import greyground.workshop.Figure;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The sheets that a job's films lie on.
 *
 * @param pixels of the film
 * @param margin that the film printer leaves unprinted, in millimetres
 */
public record FilmSheets(Job job, FilmPixels pixels, Figure margin) {
    /** A sheet given for tiles is not the sheet that they are cut from; where it is too small for all, each legend goes on one tile. */
    SheetLayout layout(List<String> words, WedgeStrip strip) {
        Optional<Size> film = job.placing().tile();
        SheetLayout whole = layout(
                words,
                strip,
                film.isPresent() ? Optional.empty() : job.placing().sheet(),
                Double.POSITIVE_INFINITY);
        return film.filter(one -> !holds(one, pixels, whole.width(), whole.height()))
                .map(one -> layout(words, strip, Optional.empty(), SheetTiles.widestLineMillimetres(one)))
                .orElse(whole);
    }

    private static boolean holds(Size film, FilmPixels pixels, int width, int height) {
        return pixels.across(film.widthMillimetres()) >= width && pixels.down(film.heightMillimetres()) >= height;
    }

    private SheetLayout layout(
            List<String> words, WedgeStrip strip, Optional<Size> sheet, double widestLineMillimetres) {
        return SheetLayout.of(
                pixels,
                job.plate(),
                job.placing().bleedMillimetres(),
                job.placing().bevelMillimetres(),
                sheet,
                words,
                strip,
                widestLineMillimetres,
                FilmPdf.legendWidth());
    }

    /** The tiles of a film where the job asks for them and its sheet is too small; none where one film holds it. */
    public List<SheetTiles.Tile> tiles(Sheet sheet, FilmRows rows) {
        Optional<Size> film = job.placing().tile();
        boolean fits = film.isEmpty() || holds(film.get(), sheet.pixels(), sheet.widthPixels(), sheet.heightPixels());
        return fits ? List.of() : SheetTiles.of(sheet, rows, film.get(), margin.value());
    }

    /** Says that the film printer does not reach all that lies on the job's own sheet, which holds it; empty without a sheet. */
    Optional<String> unprinted(List<String> words) {
        return job.placing()
                .sheet()
                .flatMap(sheet -> FilmWords.unprinted(
                        sheet, layout(words, WedgeStrip.of(job)).clearMillimetres(), margin));
    }

    /** A film as it is printed: whole, or in tiles. */
    Stream<FilmDocument.Film> printed(Sheet sheet, FilmRows rows) {
        List<SheetTiles.Tile> tiles = tiles(sheet, rows);
        return tiles.isEmpty()
                ? Stream.of(new FilmDocument.Film(sheet, rows))
                : tiles.stream().map(tile -> new FilmDocument.Film(tile.sheet(), tile.rows()));
    }
}
