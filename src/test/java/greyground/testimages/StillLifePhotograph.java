package greyground.testimages;

/** The still life as a camera would see it: soft light, texture, the full range of tones, a trace of grain. */
final class StillLifePhotograph implements Picture {
    private final StillLife scene = new StillLife();
    private final StillLife.Hit hit = new StillLife.Hit();

    @Override
    public String file() {
        return "still-life.png";
    }

    @Override
    public int width() {
        return 1680;
    }

    @Override
    public int height() {
        return 1200;
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
            double light = 0;
            // Four rays a pixel soften the edges.
            for (int ray = 0; ray < 4; ray++) {
                double px = x + 0.25 + 0.5 * (ray & 1);
                double py = y + 0.25 + 0.5 * (ray >> 1);
                scene.look((px - width() / 2.0) / (width() / 2.0), -(py - height() / 2.0) / (width() / 2.0), hit);
                light += hit.luminance / 4;
            }
            double dx = (x - width() / 2.0) / width();
            double dy = (y - height() / 2.0) / width();
            double corners = 1 - 0.55 * (dx * dx + dy * dy);
            double grain = 1 + 0.035 * (Noise.hash(x, y, 91) + Noise.hash(x, y, 92) - 1);
            samples[x] = code(light * corners * grain);
        }
    }
}
