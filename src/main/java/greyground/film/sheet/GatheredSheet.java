package greyground.film.sheet;

import greyground.film.sheet.StripPacking.Packed;
import greyground.film.sheet.StripPacking.Piece;
import greyground.quantity.FilmPixels;
import greyground.quantity.Range;
import greyground.quantity.Size;
import greyground.quantity.Unit;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Several films laid out on one sheet, each with all its own marks, in film pixels from the sheet's top left corner. Films begin at whole
 * bytes of a row, so that their pixels go over as they are.
 *
 * @param widthPixels of the whole sheet
 * @param heightPixels of the whole sheet
 * @param films what lies on it, in the order of the films
 * @param cuts where to cut, a frame round each film
 */
public record GatheredSheet(int widthPixels, int heightPixels, List<Laid> films, List<PixelRect> cuts) {
    /** From one film to the next, with the line to cut along in the middle. */
    public static final Range GAP = new Range(2, 50, Unit.MILLIMETRES, "4 mm leave room for scissors");

    /** Films' places are multiples of it: whole bytes where a pixel is one bit. */
    private static final int STEP = 8;

    public GatheredSheet {
        films = List.copyOf(films);
        cuts = List.copyOf(cuts);
    }

    /**
     * One film on the sheet.
     *
     * @param index of the film, from 0
     * @param place where its pixels lie, as it lies
     * @param turned whether it lies turned by a quarter, clockwise
     */
    public record Laid(int index, PixelRect place, boolean turned) {
        /** A line of the film's words where it lies on the sheet; the film is as high as {@code filmHeightMillimetres} before it is turned. */
        public Legend legend(Legend own, FilmPixels pixels, double filmHeightMillimetres) {
            double left = pixels.resolution().millimetres(place.left());
            double top = pixels.resolution().millimetres(place.top());
            return turned
                    ? new Legend(
                            left + filmHeightMillimetres - own.topMillimetres(),
                            top + own.leftMillimetres(),
                            own.capHeightMillimetres(),
                            (own.quarterTurns() + 1) % 4,
                            own.text())
                    : new Legend(
                            left + own.leftMillimetres(),
                            top + own.topMillimetres(),
                            own.capHeightMillimetres(),
                            own.quarterTurns(),
                            own.text());
        }
    }

    /** Room for films: a sheet without its margins, in steps of {@link #STEP} pixels. */
    private record Room(FilmPixels pixels, Size sheet, int margin, int gap, int width, int height) {
        static Room of(FilmPixels pixels, Size sheet, double marginMillimetres, double gapMillimetres) {
            int gap = steps(pixels.across(gapMillimetres));
            int margin = steps(pixels.across(marginMillimetres));
            return new Room(
                    pixels,
                    sheet,
                    margin,
                    gap,
                    pixels.across(sheet.widthMillimetres()) / STEP - 2 * margin,
                    pixels.down(sheet.heightMillimetres()) / STEP - 2 * margin);
        }

        /** A gap belongs to each film, half of it on each side. */
        private Piece withGap(Piece film) {
            return new Piece(steps(film.width()) + gap, steps(film.height()) + gap, film.mayTurn());
        }

        boolean holds(Piece film) {
            Piece piece = withGap(film);
            return (piece.width() <= width && piece.height() <= height)
                    || (piece.mayTurn() && piece.height() <= width && piece.width() <= height);
        }

        private static int steps(int pixels) {
            return (pixels + STEP - 1) / STEP;
        }
    }

    /**
     * Lays films out on as few sheets as it finds.
     *
     * @param films in pixels of the film
     * @param marginMillimetres that the printer leaves clear at each edge of the sheet
     * @return the sheets; empty if a film goes on none
     */
    public static Optional<List<GatheredSheet>> lay(
            List<Piece> films, FilmPixels pixels, Size sheet, double marginMillimetres, double gapMillimetres) {
        Room room = Room.of(pixels, sheet, marginMillimetres, gapMillimetres);
        if (!films.stream().allMatch(room::holds)) {
            return Optional.empty();
        }
        List<Integer> left = new ArrayList<>(IntStream.range(0, films.size())
                .boxed()
                .sorted(Comparator.comparingLong(
                        i -> -(long) films.get(i).width() * films.get(i).height()))
                .toList());
        List<GatheredSheet> sheets = new ArrayList<>();
        while (!left.isEmpty()) {
            List<Integer> taken = new ArrayList<>(left);
            Packed packed = packed(taken, films, room);
            if (packed.height() > room.height) {
                taken.clear();
                for (int film : left) {
                    taken.add(film);
                    if (packed(taken, films, room).height() > room.height) {
                        taken.remove(taken.size() - 1);
                    }
                }
                packed = packed(taken, films, room);
            }
            left.removeAll(taken);
            sheets.add(sheet(taken, films, packed, room));
        }
        return Optional.of(sheets);
    }

    private static Packed packed(List<Integer> taken, List<Piece> films, Room room) {
        List<Piece> pieces = new ArrayList<>();
        for (int film : taken) {
            Piece piece = room.withGap(films.get(film));
            // What goes on the sheet only one way lies that way.
            boolean upright = piece.width() <= room.width && piece.height() <= room.height;
            boolean onItsSide = piece.mayTurn() && piece.height() <= room.width && piece.width() <= room.height;
            pieces.add(
                    upright
                            ? new Piece(piece.width(), piece.height(), onItsSide)
                            : new Piece(piece.height(), piece.width(), false));
        }
        return StripPacking.pack(pieces, room.width);
    }

    private static GatheredSheet sheet(List<Integer> taken, List<Piece> films, Packed packed, Room room) {
        List<Laid> laid = new ArrayList<>();
        List<PixelRect> cuts = new ArrayList<>();
        int half = room.gap * STEP / 2;
        for (int i = 0; i < taken.size(); i++) {
            Piece film = films.get(taken.get(i));
            StripPacking.Place place = packed.places().get(i);
            Piece piece = room.withGap(film);
            boolean laidOnItsSide = piece.width() > room.width || piece.height() > room.height;
            boolean turned = place.turned() != laidOnItsSide;
            int across = turned ? film.height() : film.width();
            int down = turned ? film.width() : film.height();
            int cellLeft = (room.margin + place.x()) * STEP;
            int cellTop = (room.margin + place.y()) * STEP;
            // Half a gap, in whole steps.
            int inset = (room.gap + 1) / 2 * STEP;
            laid.add(new Laid(taken.get(i), new PixelRect(cellLeft + inset, cellTop + inset, across, down), turned));
            cuts.add(
                    new PixelRect(cellLeft + inset - half, cellTop + inset - half, across + 2 * half, down + 2 * half));
        }
        laid.sort(Comparator.comparingInt(Laid::index));
        return new GatheredSheet(
                room.pixels.across(room.sheet.widthMillimetres()),
                room.pixels.down(room.sheet.heightMillimetres()),
                laid,
                cuts);
    }

    /** How far down the sheet films reach, in pixels. */
    public int usedHeightPixels() {
        return cuts.stream().mapToInt(PixelRect::bottom).max().orElse(0);
    }
}
