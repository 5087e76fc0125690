package greyground.art.spots;

import greyground.art.Art;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Soft discs of known places put into a picture, on L*: the truth that what is found is held against. Seeded, at least 20 pixels from the edge
 * and from one another, 12 to 30 L* lighter or darker.
 */
public record Specks(int width, int height, double[] clean, double[] specked, List<Speck> specks) {
    /** A disc of a radius in pixels. */
    public record Speck(double across, double down, double radius, double contrast) {
        /** Whether a spot lies on it. */
        public boolean under(Spot spot) {
            double x = spot.points().get(0).across() - across;
            double y = spot.points().get(0).down() - down;
            return Math.sqrt(x * x + y * y) < radius + 2;
        }
    }

    /** At most a side of 1024 pixels of a picture, from its top left. */
    public static double[][] rows(Path file) {
        GreyPlane plane = Art.open(file).decode(Progress.NONE, 1L << 28, Path.of(System.getProperty("java.io.tmpdir")));
        double[][] rows = new double[Math.min(1024, plane.height())][Math.min(1024, plane.width())];
        short[] row = new short[plane.width()];
        for (int y = 0; y < rows.length; y++) {
            plane.readRow(y, row);
            for (int x = 0; x < rows[0].length; x++) {
                rows[y][x] = Lightness.ofLuminance((double) (row[x] & 0xFFFF) / GreyPlane.WHITE);
            }
        }
        plane.close();
        return rows;
    }

    /** Puts up to so many into a picture. */
    public static Specks in(double[][] rows, int most, long seed, double leastRadius, double mostRadius) {
        int width = rows[0].length;
        int height = rows.length;
        double[] clean = new double[width * height];
        for (int y = 0; y < height; y++) {
            System.arraycopy(rows[y], 0, clean, y * width, width);
        }
        double[] specked = clean.clone();
        List<Speck> specks = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(seed);
        for (int trial = 0; trial < 4 * most && specks.size() < most; trial++) {
            double x = 20 + random.nextDouble() * (width - 40);
            double y = 20 + random.nextDouble() * (height - 40);
            double radius = leastRadius + random.nextDouble() * (mostRadius - leastRadius);
            double contrast = (12 + random.nextDouble() * 18) * (random.nextBoolean() ? 1 : -1);
            double there = clean[(int) y * width + (int) x];
            contrast = there + contrast < 2 || there + contrast > 98 ? -contrast : contrast;
            boolean near = specks.stream()
                    .anyMatch(other -> Math.hypot(other.across() - x, other.down() - y) < 20 + other.radius() + radius);
            if (!near && there + contrast >= 2 && there + contrast <= 98) {
                Speck speck = new Speck(x, y, radius, contrast);
                specks.add(speck);
                put(speck, specked, width, height);
            }
        }
        return new Specks(width, height, clean, specked, specks);
    }

    /** An edge of one pixel and a half. */
    private static void put(Speck speck, double[] field, int width, int height) {
        for (int i = 0; i < field.length; i++) {
            double distance = Math.hypot(i % width + 0.5 - speck.across(), i / width + 0.5 - speck.down());
            double share = Math.max(0, Math.min(1, (speck.radius() - distance) / 1.5 + 0.5));
            field[i] = Math.max(0, Math.min(100, field[i] + speck.contrast() * share));
        }
    }

    /** The picture as a plane, with or without them. */
    public GreyPlane plane(boolean with) {
        return plane(width, height, with ? specked : clean);
    }

    static GreyPlane plane(int width, int height, double[] lightness) {
        return new GreyPlane() {
            @Override
            public int width() {
                return width;
            }

            @Override
            public int height() {
                return height;
            }

            @Override
            public void readRow(int y, short[] into) {
                for (int x = 0; x < width; x++) {
                    into[x] = (short) Math.round(GreyPlane.WHITE * Lightness.toLuminance(lightness[y * width + x]));
                }
            }

            @Override
            public void close() {}
        };
    }

    /** How many specks lie under spots. */
    public long hits(List<Spot> spots) {
        return specks.stream()
                .filter(speck -> spots.stream().anyMatch(speck::under))
                .count();
    }

    /** How many spots lie on none. */
    public long falsehoods(List<Spot> spots) {
        return spots.stream()
                .filter(spot -> specks.stream().noneMatch(speck -> speck.under(spot)))
                .count();
    }

    /** Root of the mean square of how far a field is from the clean picture, in L*, over specks that spots lie on. */
    public double rms(double[] field, List<Spot> spots) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < field.length; i++) {
            for (Speck speck : specks) {
                if (Math.hypot(i % width + 0.5 - speck.across(), i / width + 0.5 - speck.down()) <= speck.radius()
                        && spots.stream().anyMatch(speck::under)) {
                    sum += (field[i] - clean[i]) * (field[i] - clean[i]);
                    count++;
                }
            }
        }
        return Math.sqrt(sum / Math.max(1, count));
    }

    /** L* of a plane with spots healed. */
    public double[] healed(List<Spot> spots) throws java.io.IOException {
        double[] healed = new double[specked.length];
        SpotHealing.of(plane(true), spots)
                .rows(
                        2,
                        (first, count, rows) -> {
                            for (int i = 0; i < rows.length; i++) {
                                healed[first * width + i] = SpotSearch.lightness(rows[i]);
                            }
                        },
                        Progress.NONE);
        return healed;
    }
}
