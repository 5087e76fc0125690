package greyground.app.live;

import greyground.app.recipe.ComposedFilm;
import greyground.app.recipe.FilmRecipe;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.app.sight.StageTones;
import greyground.film.job.Job;
import greyground.film.job.ReadingSide;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Legend;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.film.sheet.SheetShares;
import greyground.film.sheet.SheetTiles;
import greyground.picture.Colouring;
import greyground.picture.TypeShares;
import greyground.quantity.FilmPixels;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/**
 * A whole film sheet to be looked at, as it comes out of the printer or as it lies on the plate. Marks, wedge strip and legends stand
 * where the film's own layout has them; from near the film's own pixels are shown.
 *
 * <p>Views count printed millimetres from the sheet's top left corner as it is seen. Used by the one thread that works the bench.
 */
public final class LiveSheet {
    /** Colours on the copper are made for every 16th coverage (assumed: no eye tells those between). */
    private static final int STEP_BITS = 4;

    private final FilmRecipe recipe;
    private final Job job;
    private final ComposedFilm film;
    private final LivePlacing placing;
    private final StageTones tones;
    private final ToneCurve curve;
    private final IntUnaryOperator coverage;
    private final boolean outlined;
    private final int[] onCopper = new int[(ToneCurve.SOLID >> STEP_BITS) + 2];
    private final SheetLayout layout;
    private final FilmPixels pixels;

    /**
     * A sheet with its picture.
     *
     * @param curve that the strip's greys go through
     * @param coverage turns greys of the art to coverages: by the curve, or all to one on a screen film
     * @param outlined whether the picture's outline ends it
     */
    LiveSheet(
            FilmRecipe recipe,
            ComposedFilm film,
            LivePlacing placing,
            StageTones tones,
            ToneCurve curve,
            IntUnaryOperator coverage,
            boolean outlined) {
        this.outlined = outlined;
        this.recipe = recipe;
        this.job = recipe.job();
        this.film = film;
        this.layout = film.layout();
        this.pixels = layout.pixels();
        this.placing = placing;
        this.tones = tones;
        this.curve = curve;
        this.coverage = coverage;
        for (int step = 0; step < onCopper.length; step++) {
            int share = Math.min(ToneCurve.SOLID, step << STEP_BITS);
            onCopper[step] = Colouring.onCopper(tones.colour(Stage.FILM, share));
        }
    }

    /** Printed width of the whole sheet. */
    public double widthMillimetres() {
        return pixels.acrossMillimetres(layout.width());
    }

    /** Printed height of the whole sheet. */
    public double heightMillimetres() {
        return pixels.downMillimetres(layout.height());
    }

    /** How large its file says it is, or the largest of the films it is printed on: what goes through a printer. */
    public SheetSize printed() {
        double width = layout.width();
        double height = layout.height();
        List<SheetTiles.Tile> films = films();
        if (!films.isEmpty()) {
            width = films.stream().mapToInt(tile -> tile.rows().width()).max().orElse(1);
            height = films.stream().mapToInt(tile -> tile.rows().height()).max().orElse(1);
        }
        return new SheetSize(
                pixels.resolution().millimetres(width), pixels.resolution().millimetres(height), pixels.resolution());
    }

    /** Whether the picture can be read from a side. */
    public boolean pictureReadsRight(SheetSide side) {
        return job.placing().readingSide().mirrored() == turned(side);
    }

    /** Whether the ink faces the eye. */
    public boolean inkIsUp(SheetSide side) {
        return side == SheetSide.AS_PRINTED || job.placing().readingSide().inkSide() == ReadingSide.InkSide.UP;
    }

    /** Whether the film is seen from its back. */
    private boolean turned(SheetSide side) {
        return !inkIsUp(side);
    }

    /** What a side shows, in a sentence or two. */
    public String words(SheetSide side) {
        String reads = pictureReadsRight(side) ? "the picture reads right" : "the picture is mirrored";
        if (side == SheetSide.AS_PRINTED) {
            return "Ink side towards you: " + reads + ", the words read right.";
        }
        return inkIsUp(side)
                ? "On the copper, ink up, away from the resist: " + reads + ", the words read right."
                : "On the copper, ink down, seen through the film's back: " + reads + ", the words are mirrored.";
    }

    /** Edges to be drawn over the sheet, the outermost first. */
    public List<SheetOutline> outlines(SheetSide side) {
        List<SheetOutline> outlines = new ArrayList<>();
        outlines.add(outline(SheetOutline.Edge.SHEET, whole(), side));
        for (SheetTiles.Tile tile : films()) {
            outlines.add(outline(SheetOutline.Edge.TILE, tile.window(), side));
        }
        if (job.placing().bleedMillimetres() > 0) {
            outlines.add(outline(SheetOutline.Edge.BLEED, layout.bleed(), side));
        }
        PixelRect plate = layout.plate();
        outlines.add(outline(SheetOutline.Edge.PLATE, plate, side));
        int across = pixels.across(job.placing().bevelMillimetres());
        int down = pixels.down(job.placing().bevelMillimetres());
        if (across > 0 && down > 0) {
            PixelRect flat = new PixelRect(
                    plate.left() + across, plate.top() + down, plate.width() - 2 * across, plate.height() - 2 * down);
            outlines.add(outline(SheetOutline.Edge.BEVEL, flat, side));
        }
        return outlines;
    }

    private PixelRect whole() {
        return new PixelRect(0, 0, layout.width(), layout.height());
    }

    private SheetOutline outline(SheetOutline.Edge edge, PixelRect rect, SheetSide side) {
        PixelRect seen = turned(side) ? rect.mirrored(layout.width()) : rect;
        return new SheetOutline(
                edge,
                pixels.acrossMillimetres(seen.left()),
                pixels.downMillimetres(seen.top()),
                pixels.acrossMillimetres(seen.width()),
                pixels.downMillimetres(seen.height()));
    }

    /** The films that a sheet is printed on, where it is too large for one. */
    private List<SheetTiles.Tile> films() {
        return recipe.sheets().tiles(film.sheet(), film.rows());
    }

    /** The sheet from afar: every place as its even tone looks. */
    public LivePicture far(LiveView view, SheetSide side) {
        LiveView printed = asPrinted(view, side);
        float[] shares = SheetShares.of(layout, curve, window(printed));
        picture(printed, shares);
        return coloured(printed, shares, side);
    }

    /** The sheet from near: the mean of the film's own pixels. */
    public LivePicture near(LiveView view, SheetSide side, Progress progress) throws IOException {
        LiveView printed = asPrinted(view, side);
        SheetShares.Window window = window(printed);
        int left = held((int) Math.floor(window.left()), layout.width());
        int top = held((int) Math.floor(window.top()), layout.height());
        int right = held((int) Math.ceil(window.left() + window.across() * window.width()), layout.width());
        int bottom = held((int) Math.ceil(window.top() + window.down() * window.height()), layout.height());
        float[] shares = new float[view.width() * view.height()];
        if (right > left && bottom > top) {
            FilmRows rows = film.within(new PixelRect(left, top, right - left, bottom - top));
            shares = SheetShares.ofFilm(rows, top, bottom, window, progress);
        }
        return coloured(printed, shares, side);
    }

    private static int held(int value, int most) {
        return Math.max(0, Math.min(most, value));
    }

    /** The same window on the sheet as printed. */
    private LiveView asPrinted(LiveView view, SheetSide side) {
        return turned(side) ? turned(view, widthMillimetres()) : view;
    }

    private static LiveView turned(LiveView view, double width) {
        return new LiveView(
                width - view.left() - view.width() * view.perPixel(),
                view.top(),
                view.perPixel(),
                view.width(),
                view.height());
    }

    private SheetShares.Window window(LiveView printed) {
        double across = pixels.acrossMillimetres(1);
        double down = pixels.downMillimetres(1);
        return new SheetShares.Window(
                printed.left() / across,
                printed.top() / down,
                printed.perPixel() / across,
                printed.perPixel() / down,
                printed.width(),
                printed.height());
    }

    /** Lays the picture's tones into the place it has on the sheet. */
    private void picture(LiveView printed, float[] shares) {
        SheetOutline image = outline(SheetOutline.Edge.BLEED, film.sheet().image(), SheetSide.AS_PRINTED);
        SheetOutline plate = outline(SheetOutline.Edge.PLATE, layout.plate(), SheetSide.AS_PRINTED);
        boolean mirrored = job.placing().readingSide().mirrored();
        LiveView onPlate = new LiveView(
                printed.left() - plate.left(),
                printed.top() - plate.top(),
                printed.perPixel(),
                printed.width(),
                printed.height());
        LiveView plain = mirrored ? turned(onPlate, plate.width()) : onPlate;
        short[] greys = placing.greys(plain);
        Shares left = outlined ? Shares.of(recipe, plain) : new Shares(Optional.empty(), new int[0]);
        int width = printed.width();
        for (int y = 0; y < printed.height(); y++) {
            double down = printed.top() + (y + 0.5) * printed.perPixel();
            for (int x = 0; x < width; x++) {
                if (image.has(printed.left() + (x + 0.5) * printed.perPixel(), down)) {
                    int at = y * width + (mirrored ? width - 1 - x : x);
                    int black = left.coverage(coverage.applyAsInt(greys[at] & 0xFFFF), at);
                    shares[y * width + x] = black / (float) ToneCurve.SOLID;
                }
            }
        }
    }

    private LivePicture coloured(LiveView printed, float[] shares, SheetSide side) {
        TypeShares type = type(printed);
        SheetOutline plate = outline(SheetOutline.Edge.PLATE, layout.plate(), SheetSide.AS_PRINTED);
        SheetOutline sheet = outline(SheetOutline.Edge.SHEET, whole(), SheetSide.AS_PRINTED);
        LivePicture seen = LiveGreys.coloured(printed, (at, across, down) -> {
            if (!sheet.has(across, down)) {
                return 0;
            }
            int share = Math.round(ToneCurve.SOLID * Math.min(1, shares[at] + type.share(at)));
            boolean copper = side == SheetSide.ON_THE_PLATE && plate.has(across, down);
            return LivePicture.OPAQUE
                    | (copper
                            ? onCopper[(share + (1 << (STEP_BITS - 1))) >> STEP_BITS]
                            : tones.colour(Stage.FILM, share));
        });
        return turned(side) ? mirrored(seen) : seen;
    }

    private static LivePicture mirrored(LivePicture seen) {
        int[] pixels = new int[seen.pixels().length];
        for (int i = 0; i < pixels.length; i++) {
            int x = i % seen.width();
            pixels[i - x + seen.width() - 1 - x] = seen.pixels()[i];
        }
        return new LivePicture(seen.width(), seen.height(), pixels);
    }

    private TypeShares type(LiveView printed) {
        TypeShares type =
                new TypeShares(printed.left(), printed.top(), printed.perPixel(), printed.width(), printed.height());
        for (Legend legend : film.sheet().legends()) {
            type.line(
                    legend.text(),
                    legend.leftMillimetres() * pixels.scaleX(),
                    legend.topMillimetres() * pixels.scaleY(),
                    legend.capHeightMillimetres(),
                    legend.quarterTurns(),
                    pixels.scaleX(),
                    pixels.scaleY());
        }
        return type;
    }
}
