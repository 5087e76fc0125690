package greyground.app.recipe;

import greyground.film.compose.FilmComposer;
import greyground.film.compose.FilmContent;
import greyground.film.compose.Mend;
import greyground.film.compose.WishedBlack;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.SheetLayout;
import greyground.plate.Film;
import greyground.plate.PlateFilm;
import greyground.plate.inspect.FilmLimits;
import greyground.raster.PixelRect;
import greyground.tone.ArtRange;
import greyground.tone.ToneCurve;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One film of a recipe on its whole sheet, mended where the job asks for it: its rows, or any part of them, made when they are asked for. */
public final class ComposedFilm implements FilmOnPlate.Parts {
    private final FilmComposer composer;
    private final @Nullable Mending mending;
    private final boolean mirrored;
    private final Film printed;
    private final @Nullable Mend mend;

    /** {@code printed} is what its printer lays down. */
    ComposedFilm(FilmComposer composer, @Nullable Mending mending, boolean mirrored, Film printed) {
        this.composer = composer;
        this.mending = mending;
        this.mirrored = mirrored;
        this.printed = printed;
        this.mend = mending == null ? null : mending.of(composer, mending.content(), mirrored);
    }

    /** What a positive is mended by. */
    record Mending(FilmContent.Picture content, ToneCurve curve, ArtRange range, FilmLimits limits) {
        private Mend of(FilmComposer composer, FilmContent.Picture seen, boolean mirrored) {
            FilmRows wished =
                    composer.lines().orElseGet(() -> WishedBlack.of(composer.layout(), seen, curve, range, mirrored));
            return new Mend(composer.sheet(), composer, wished, limits);
        }

        /** A mend of what lies within a rectangle of the sheet as the film is; within its own reach of the edges it is unsure. */
        private Mend within(FilmComposer whole, PixelRect part, boolean mirrored) {
            PixelRect plain = mirrored ? part.mirrored(whole.layout().width()) : part;
            return of(whole.within(part), (FilmContent.Picture) content.within(plain), mirrored);
        }
    }

    public Sheet sheet() {
        return composer.sheet();
    }

    public SheetLayout layout() {
        return composer.layout();
    }

    public FilmRows rows() {
        return mend != null ? mend.rows() : composer;
    }

    public Optional<Mend> mend() {
        return Optional.ofNullable(mend);
    }

    @Override
    public FilmRows within(PixelRect part) {
        if (mending == null) {
            return composer.within(part);
        }
        int reach = mending.within(composer, part, mirrored).reachPixels() + composer.reachPixels();
        int left = Math.max(0, part.left() - reach);
        int top = Math.max(0, part.top() - reach);
        PixelRect wide = new PixelRect(left, top, part.right() + reach - left, part.bottom() + reach - top);
        return mending.within(composer, wide, mirrored).rows();
    }

    /** As it lies on the plate, to be looked through from top to bottom. */
    public PlateFilm onPlate() {
        return FilmOnPlate.composed(sheet(), rows(), mirrored, printed);
    }

    /** As it lies on the plate, of which only what is looked at is composed. */
    public PlateFilm onPlateInParts() {
        return FilmOnPlate.inParts(sheet(), composer, this, mirrored, printed);
    }
}
