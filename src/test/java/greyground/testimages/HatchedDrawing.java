package greyground.testimages;

/**
 * The still life drawn with a needle: rows of strokes that follow each form, swell where it darkens and break off where it
 * lightens, one direction after another laid across; outlines where forms meet. Nearly black and white.
 */
final class HatchedDrawing implements Picture {
    private static final double SPACING = 8.5;

    private final StillLife scene = new StillLife();
    private StillLife.Hit here = new StillLife.Hit();
    private final StillLife.Hit right = new StillLife.Hit();
    private final StillLife.Hit below = new StillLife.Hit();

    @Override
    public String file() {
        return "hatched-jug.png";
    }

    @Override
    public int width() {
        return 1800;
    }

    @Override
    public int height() {
        return 1290;
    }

    @Override
    public int bands() {
        return 1;
    }

    @Override
    public int bits() {
        return 8;
    }

    @Override
    public void row(int y, int[] samples) {
        for (int x = 0; x < width(); x++) {
            // The hand is never quite steady.
            double wx = x + 5 * (Noise.value(x / 38.0, y / 38.0, 201) - 0.5);
            double wy = y + 5 * (Noise.value(x / 38.0, y / 38.0, 202) - 0.5);
            look(wx, wy, here);
            look(wx + 2.6, wy, right);
            look(wx, wy + 2.6, below);
            double tone = tone(here);
            double margin = Math.min(Math.min(x, width() - 1 - x), Math.min(y, height() - 1 - y));
            double bitten = outline();
            double fray = margin - 46 - 26 * Noise.fractal(x / 70.0, y / 70.0, 2, 203);
            if (fray > 0) {
                bitten = Math.max(bitten, hatch(wx, wy, direction(0), 0.04, tone, 0));
                bitten = Math.max(bitten, hatch(wx, wy, direction(1), 0.34, tone, 1));
                bitten = Math.max(bitten, hatch(wx, wy, direction(2), 0.56, tone, 2));
                bitten = Math.max(bitten, hatch(wx, wy, direction(3), 0.74, tone, 3));
            } else {
                bitten = margin < 40 ? 0 : bitten;
            }
            samples[x] = (int) Math.round(250 - 232 * Noise.clamp(bitten));
        }
    }

    private void look(double x, double y, StillLife.Hit hit) {
        scene.look((x - width() / 2.0) / (width() / 2.0), -(y - height() / 2.0) / (width() / 2.0), hit);
    }

    /** Darkness 0..1, stretched so that lit things stay open paper. */
    private static double tone(StillLife.Hit hit) {
        double code = StrictMath.pow(Math.max(0, hit.luminance), 0.42);
        double dark = 1.14 - 1.22 * code;
        return Noise.clamp(
                hit.thing == StillLife.WALL ? dark * 0.86 : hit.thing == StillLife.TABLE ? dark * 0.94 : dark);
    }

    /** The direction of a layer's strokes, degrees: along the table, across the wall, round the forms. */
    private double direction(int layer) {
        double turned = layer == 0 ? 0 : layer == 1 ? 58 : layer == 2 ? -42 : 98;
        return switch (here.thing) {
            case StillLife.TABLE -> turned + 2;
            case StillLife.WALL -> turned - 52;
            case StillLife.CLOTH -> turned + 28;
            default -> turned + 16;
        };
    }

    private double hatch(double x, double y, double degrees, double from, double tone, int layer) {
        double depth = (tone - from) / 0.42;
        if (depth <= 0) {
            return 0;
        }
        double angle = degrees * Math.PI / 180;
        double sin = StrictMath.sin(angle);
        double cos = StrictMath.cos(angle);
        double across = -sin * x + cos * y;
        double along = cos * x + sin * y;
        // On a rounded form the strokes bend with the surface.
        boolean round = here.thing >= StillLife.JUG && here.thing <= StillLife.EGG;
        if (round) {
            across += 60 * here.normalX * here.normalX * (layer % 2 == 0 ? 1 : -1) + 26 * here.normalX;
        }
        across += 3.0 * (Noise.value(along / 140, across / 60, 210 + layer) - 0.5);
        double line = Math.floor(across / SPACING);
        double offset = (across / SPACING - line - 0.5) * SPACING;
        offset += 1.6 * (Noise.hash((long) line, layer, 220) - 0.5);
        // Strokes end and start anew; each has its own pressure.
        double start = 400 * Noise.hash((long) line, layer, 230);
        double stroke = Math.floor((along + start) / 210);
        double inStroke = (along + start) / 210 - stroke;
        double pressure = 0.75 + 0.5 * Noise.hash((long) line, (long) stroke, 240 + layer);
        double taper = Noise.step(0, 0.07, inStroke) * Noise.step(1, 0.90, inStroke);
        double width = SPACING * 0.46 * Math.min(1, 0.20 + 0.8 * depth) * pressure * (depth > 0.5 ? 1 : taper);
        width *= Noise.step(0, 0.10, depth);
        return Noise.clamp((width / 2 - Math.abs(offset)) + 0.5);
    }

    private double outline() {
        double edge = Math.max(step(here, right), step(here, below));
        return edge * (0.7 + 0.3 * Noise.value(here.x * 9, here.y * 9, 250));
    }

    private static double step(StillLife.Hit a, StillLife.Hit b) {
        if (a.thing != b.thing && a.thing + b.thing != StillLife.WALL + StillLife.TABLE) {
            return 1;
        }
        return a.thing == b.thing && a.thing >= StillLife.JUG && Math.abs(a.distance - b.distance) > 0.12 ? 1 : 0;
    }
}
