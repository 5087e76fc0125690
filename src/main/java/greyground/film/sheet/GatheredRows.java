package greyground.film.sheet;

import greyground.film.sheet.GatheredSheet.Laid;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pixels of a sheet of films: those of the films as they are, and between them the lines to cut along.
 *
 * @param sheet where they lie
 * @param films as they lie, turned where they are turned, in the order of the sheet's; all of the same bits per sample
 * @param linePixels how wide a line to cut along is, at least 1
 */
public record GatheredRows(GatheredSheet sheet, List<FilmRows> films, int linePixels) implements FilmRows {
    public GatheredRows {
        films = List.copyOf(films);
    }

    @Override
    public int width() {
        return sheet.widthPixels();
    }

    @Override
    public int height() {
        return sheet.heightPixels();
    }

    @Override
    public int bitsPerSample() {
        return films.get(0).bitsPerSample();
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        List<Bands.Maker<byte[]>> makers = new ArrayList<>();
        films.forEach(film -> makers.add(film.maker()));
        return (first, count) -> band(makers, first, count);
    }

    private byte[] band(List<Bands.Maker<byte[]>> makers, int first, int count) throws IOException {
        byte[] band = new byte[Math.multiplyExact(count, bytesPerRow())];
        for (PixelRect cut : sheet.cuts()) {
            for (int y = first; y < first + count; y++) {
                drawRow(cut, y, band, (y - first) * bytesPerRow());
            }
        }
        for (int i = 0; i < makers.size(); i++) {
            Laid laid = sheet.films().get(i);
            FilmRows film = films.get(i);
            int from = Math.max(first, laid.place().top());
            int to = Math.min(first + count, laid.place().bottom());
            if (from >= to) {
                continue;
            }
            byte[] rows = makers.get(i).make(from - laid.place().top(), to - from);
            int column = Math.toIntExact((long) laid.place().left() * bitsPerSample() / 8);
            for (int y = from; y < to; y++) {
                System.arraycopy(
                        rows,
                        (y - from) * film.bytesPerRow(),
                        band,
                        (y - first) * bytesPerRow() + column,
                        film.bytesPerRow());
            }
        }
        return band;
    }

    /** The part of a frame that lies in one row; it is drawn inwards. */
    private void drawRow(PixelRect cut, int y, byte[] band, int start) {
        if (y < cut.top() || y >= cut.bottom()) {
            return;
        }
        if (y < cut.top() + linePixels || y >= cut.bottom() - linePixels) {
            blacken(band, start, cut.left(), cut.right());
        } else {
            blacken(band, start, cut.left(), cut.left() + linePixels);
            blacken(band, start, cut.right() - linePixels, cut.right());
        }
    }

    private void blacken(byte[] band, int start, int left, int right) {
        int from = Math.max(0, left);
        int to = Math.min(width(), right);
        if (bitsPerSample() > 1) {
            int bytes = bitsPerSample() / 8;
            Arrays.fill(band, start + from * bytes, start + Math.max(from, to) * bytes, (byte) 0xFF);
            return;
        }
        for (int x = from; x < to; x++) {
            band[start + (x >> 3)] |= (byte) (0x80 >> (x & 7));
        }
    }
}
