package greyground.film.compose;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.SheetLayout;
import greyground.raster.Bands;
import greyground.raster.ContourDepth;
import greyground.raster.PackedRows;
import greyground.tone.ToneCurve;
import java.util.Arrays;

/**
 * A drawing on its film: black and clear and nothing between. The art is enlarged in linear light first and parted at its threshold after, since half the
 * light is where an edge runs; then each edge moves inwards by what the plate makes it grow ({@link LineGrowth}), measured from the edge and not from
 * pixels. No stroke becomes thinner than what washes out, nor a gap narrower than the land that holds; where both can't be had, the stroke stays.
 *
 * @param greys the art on its film, whose samples rise with darkness; 0 where there is none
 * @param threshold what is this dark or darker is ink, 1 to 65 535
 * @param mirrored whether the film is seen from behind
 */
record LineFilm(FilmRows greys, int threshold, LineGrowth growth, boolean mirrored) implements FilmRows {
    /** Pixels worked on at a time, which stay in the nearer caches. */
    private static final int STRIP = 512;

    private static final int ROWS = 128;

    private static final float NEVER = Float.POSITIVE_INFINITY;

    /** A film of lines, on its layout as it is printed. */
    static LineFilm of(SheetLayout layout, FilmContent.Lines lines) {
        char[] darkness = new char[ToneCurve.CODES];
        for (int grey = 0; grey < darkness.length; grey++) {
            darkness[grey] = (char) (ToneCurve.SOLID - grey);
        }
        FilmComposer greys =
                FilmComposer.continuous(layout.bare(), lines.picture(), new ToneCurve("as it is", darkness), 16, false);
        return new LineFilm(greys, ToneCurve.SOLID - lines.threshold(), lines.growth(), lines.mirrored());
    }

    /** How far from a pixel the art decides what becomes of it, in film pixels. */
    static int reach(LineGrowth growth) {
        return depthReach(growth) + strokeReach(growth) + 2;
    }

    /** As far as any edge moves, or any stroke that is widened. */
    private static int depthReach(LineGrowth growth) {
        double farthest = growth.insets().stream()
                .mapToDouble(inset -> Math.abs(inset) / growth.pitchMicrometres())
                .max()
                .orElse(0);
        double half = Math.max(growth.leastHalfPixels(), growth.leastClear() / growth.pitchMicrometres() / 2);
        return (int) Math.ceil(farthest + half) + 1;
    }

    private static int strokeReach(LineGrowth growth) {
        return (int) Math.ceil(Math.max(growth.leastHalfPixels(), growth.leastClear() / growth.pitchMicrometres() / 2))
                + 1;
    }

    @Override
    public int width() {
        return greys.width();
    }

    @Override
    public int height() {
        return greys.height();
    }

    @Override
    public int bitsPerSample() {
        return 1;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        Bands.Maker<byte[]> art = greys.maker();
        Strip strip = new Strip();
        return (first, count) -> {
            byte[] band = new byte[Math.multiplyExact(count, bytesPerRow())];
            for (int y = first; y < first + count; y += ROWS) {
                int rows = Math.min(ROWS, first + count - y);
                int top = Math.max(0, y - strip.halo);
                int bottom = Math.min(height(), y + rows + strip.halo);
                byte[] seen = art.make(top, bottom - top);
                for (int x = 0; x < width(); x += STRIP) {
                    strip.make(seen, top, bottom, x, y, rows, band, (y - first) * bytesPerRow());
                }
            }
            return band;
        };
    }

    /** A piece of film at work; owned by one thread. */
    private final class Strip {
        private final int halo = reach(growth);
        private final int depthReach = depthReach(growth);
        private final int strokeReach = strokeReach(growth);
        private final float leastHalf = (float) growth.leastHalfPixels();
        private final float clearHalf = (float) (growth.leastClear() / growth.pitchMicrometres() / 2);
        private final float[] insets = new float[LineGrowth.LEVELS];
        private final float[] plane = new float[(STRIP + 2 * halo) * (ROWS + 2 * halo)];
        private final float[] held = new float[plane.length];
        private final float[] kept = new float[plane.length];

        Strip() {
            for (int kind = 0; kind < insets.length; kind++) {
                insets[kind] = (float) (growth.insets().get(kind) / growth.pitchMicrometres());
            }
        }

        private void make(byte[] seen, int top, int bottom, int x0, int y0, int rows, byte[] into, int start) {
            int columns = Math.min(STRIP, LineFilm.this.width() - x0);
            int wide = columns + 2 * halo;
            int high = rows + 2 * halo;
            boolean ink = false;
            boolean paper = false;
            Arrays.fill(plane, 0, wide * high, -ToneCurve.SOLID);
            for (int y = top; y < bottom; y++) {
                int row = (y - y0 + halo) * wide;
                int from = Math.max(0, x0 - halo);
                int to = Math.min(LineFilm.this.width(), x0 + columns + halo);
                int at = ((y - top) * LineFilm.this.width() + from) * 2;
                for (int x = from; x < to; x++, at += 2) {
                    int sample = ((seen[at] & 0xFF) << 8) | (seen[at + 1] & 0xFF);
                    plane[row + x - x0 + halo] = sample - threshold;
                    ink |= sample >= threshold;
                    paper |= sample < threshold;
                }
            }
            if (!ink) {
                return;
            }
            if (!paper
                    && top == y0 - halo
                    && bottom == y0 + rows + halo
                    && x0 >= halo
                    && x0 + columns + halo <= LineFilm.this.width()) {
                for (int y = 0; y < rows; y++) {
                    PackedRows.blacken(into, start + y * bytesPerRow(), x0, x0 + columns);
                }
                return;
            }
            float[] depth = ContourDepth.pixels(plane, wide, high, depthReach);
            hold(depth, wide, high);
            for (int y = 0; y < rows; y++) {
                for (int x = 0; x < columns; x++) {
                    int at = (y + halo) * wide + x + halo;
                    int column = mirrored ? LineFilm.this.width() - 1 - x0 - x : x0 + x;
                    float inset = Math.max(insets[LineGrowth.kind(column, y0 + y)], kept[at]);
                    if (depth[at] >= Math.min(inset, held[at])) {
                        PackedRows.blacken(into, start + y * bytesPerRow(), x0 + x, x0 + x + 1);
                    }
                }
            }
        }

        /** Marks how deep a place must lie beside the middle of a thin stroke, and beside that of a narrow gap. */
        private void hold(float[] depth, int wide, int high) {
            Arrays.fill(held, 0, wide * high, NEVER);
            Arrays.fill(kept, 0, wide * high, -NEVER);
            float[] clear = new float[wide * high];
            for (int i = 0; i < clear.length; i++) {
                clear[i] = -depth[i];
            }
            float deepest = insets[insets.length - 1];
            float shallowest = insets[0];
            for (int y = 1; y + 1 < high; y++) {
                for (int x = 1; x + 1 < wide; x++) {
                    int at = y * wide + x;
                    if (depth[at] >= 0 && depth[at] < deepest + leastHalf) {
                        float middle = ContourDepth.middle(depth, wide, at);
                        if (middle < deepest + leastHalf) {
                            about(held, wide, high, x, y, leastHalf, middle - leastHalf, true);
                        }
                    } else if (depth[at] < 0 && clear[at] < clearHalf - shallowest) {
                        float middle = ContourDepth.middle(clear, wide, at);
                        if (middle < clearHalf - shallowest) {
                            about(kept, wide, high, x, y, clearHalf, clearHalf - middle, false);
                        }
                    }
                }
            }
        }

        /** Sets a limit all round a place, where it is lower or higher than what stands there. */
        private void about(float[] limits, int wide, int high, int x, int y, float half, float limit, boolean lower) {
            float far = (half + 0.75f) * (half + 0.75f);
            for (int v = Math.max(0, y - strokeReach); v <= Math.min(high - 1, y + strokeReach); v++) {
                for (int u = Math.max(0, x - strokeReach); u <= Math.min(wide - 1, x + strokeReach); u++) {
                    int at = v * wide + u;
                    if ((u - x) * (u - x) + (v - y) * (v - y) <= far && lower == limit < limits[at]) {
                        limits[at] = limit;
                    }
                }
            }
        }
    }
}
