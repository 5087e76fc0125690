package greyground.simulation;

import java.util.Random;
import java.util.stream.IntStream;

/**
 * A flatbed scanner or a camera on a stand, and how the print lies under it.
 *
 * @param pixelsPerInch of the scan
 * @param degrees the print is turned
 * @param mirrored whether the print is seen from behind, as copper is
 * @param skewX perspective across: share by which lengths change over the scan
 * @param skewY perspective down
 * @param blurPixels deviation of the blur
 * @param vignetting share of light lost or won in the corners
 * @param flare share of the light round a place that is added to it
 * @param white share of full scale that a perfect white gives
 * @param noise deviation in full scales
 * @param coding how values are written
 * @param dust specks and hairs on the glass
 */
record Scanner(
        double pixelsPerInch,
        double degrees,
        boolean mirrored,
        double skewX,
        double skewY,
        double blurPixels,
        double vignetting,
        double flare,
        double white,
        double noise,
        Coding coding,
        int dust) {
    private static final double INCH = 25_400;
    private static final int FLARE_BLOCK = 16;

    /** How a scan is written. */
    enum Coding {
        /** 8 bits, coded as sRGB. */
        SRGB_8,
        /** 16 bits, linear. */
        LINEAR_16,
        /** 8 bits, coded with the power 2.2 */
        POWER_8
    }

    /** One of many, at a resolution. */
    static Scanner of(double pixelsPerInch, Random random) {
        double square = 90 * random.nextInt(4);
        double tilt = random.nextInt(8) == 0 ? 40 * random.nextDouble() - 20 : 10 * random.nextDouble() - 5;
        return new Scanner(
                pixelsPerInch,
                random.nextInt(3) == 0 ? square + tilt : tilt,
                random.nextInt(6) == 0,
                0.02 * (2 * random.nextDouble() - 1),
                0.02 * (2 * random.nextDouble() - 1),
                0.5 + random.nextDouble(),
                0.05 * (2 * random.nextDouble() - 1),
                random.nextInt(4) == 0 ? 0.02 * random.nextDouble() : 0,
                0.85 + 0.14 * random.nextDouble(),
                0.001 + 0.004 * random.nextDouble(),
                Coding.values()[random.nextInt(3)],
                random.nextInt(30));
    }

    /** The print under the glass, from plate micrometres to scan pixels. */
    SimulatedScan scan(PaintedPrint print, Random random) {
        return scan(print.canvas(), print.width(), print.height(), random);
    }

    /** Any canvas. */
    SimulatedScan scan(Canvas canvas, double plateWidth, double plateHeight, Random random) {
        double pixel = INCH / pixelsPerInch;
        double angle = Math.toRadians(degrees);
        double cos = Math.cos(angle) / pixel;
        double sin = Math.sin(angle) / pixel;
        double flip = mirrored ? -1 : 1;
        double g = skewX / plateWidth;
        double h = skewY / plateHeight;
        // Plate to scan before moving into the frame: x = (a X + b Y + c) / w with the plate's middle at the origin.
        double middleX = plateWidth / 2;
        double middleY = plateHeight / 2;
        double[] place = {
            flip * cos, -sin, 0, flip * sin, cos, 0, g, h,
        };
        place[2] = -(place[0] * middleX + place[1] * middleY);
        place[5] = -(place[3] * middleX + place[4] * middleY);
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        double top = Double.MAX_VALUE;
        double bottom = -Double.MAX_VALUE;
        for (int corner = 0; corner < 4; corner++) {
            double x = corner % 2 * plateWidth;
            double y = corner / 2 * plateHeight;
            double w = g * x + h * y + 1;
            double across = (place[0] * x + place[1] * y + place[2]) / w;
            double down = (place[3] * x + place[4] * y + place[5]) / w;
            low = Math.min(low, across);
            high = Math.max(high, across);
            top = Math.min(top, down);
            bottom = Math.max(bottom, down);
        }
        double rim = (4000 + 8000 * random.nextDouble()) / pixel;
        int width = (int) Math.ceil(high - low + 2 * rim);
        int height = (int) Math.ceil(bottom - top + 2 * rim);
        // Move: add (dx, dy) w to the numerators.
        double dx = rim - low;
        double dy = rim - top;
        double[] moved = {
            place[0] + dx * g,
            place[1] + dx * h,
            place[2] + dx,
            place[3] + dy * g,
            place[4] + dy * h,
            place[5] + dy,
            g,
            h
        };
        float[] light = seen(canvas, moved, width, height);
        blur(light, width, height);
        light = flared(light, width, height);
        dust(light, width, height, random);
        return new SimulatedScan(width, height, codes(light, width, height, random), moved, this);
    }

    private static float[] seen(Canvas canvas, double[] m, int width, int height) {
        double[] inverse = inverse(m);
        float[] light = new float[width * height];
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int column = 0; column < width; column++) {
                double sum = 0;
                for (int k = 0; k < 4; k++) {
                    double x = column + 0.25 + 0.5 * (k % 2);
                    double y = row + 0.25 + 0.5 * (k / 2);
                    double w = inverse[6] * x + inverse[7] * y + inverse[8];
                    sum += canvas.sample(
                            (inverse[0] * x + inverse[1] * y + inverse[2]) / w,
                            (inverse[3] * x + inverse[4] * y + inverse[5]) / w);
                }
                light[row * width + column] = (float) (sum / 4);
            }
        });
        return light;
    }

    /** Adjugate of the 3 x 3 matrix: the inverse up to a factor, which a projective map doesn't feel. */
    private static double[] inverse(double[] m) {
        double a = m[0];
        double b = m[1];
        double c = m[2];
        double d = m[3];
        double e = m[4];
        double f = m[5];
        double g = m[6];
        double h = m[7];
        return new double[] {
            e - f * h,
            c * h - b,
            b * f - c * e,
            f * g - d,
            a - c * g,
            c * d - a * f,
            d * h - e * g,
            b * g - a * h,
            a * e - b * d
        };
    }

    private void blur(float[] light, int width, int height) {
        int reach = (int) Math.ceil(3 * blurPixels);
        double[] kernel = new double[2 * reach + 1];
        double all = 0;
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] = Math.exp(-(i - reach) * (i - reach) / (2 * blurPixels * blurPixels));
            all += kernel[i];
        }
        for (int i = 0; i < kernel.length; i++) {
            kernel[i] /= all;
        }
        float[] once = new float[light.length];
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int column = 0; column < width; column++) {
                double sum = 0;
                for (int i = -reach; i <= reach; i++) {
                    int at = Math.max(0, Math.min(width - 1, column + i));
                    sum += kernel[i + reach] * light[row * width + at];
                }
                once[row * width + column] = (float) sum;
            }
        });
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int column = 0; column < width; column++) {
                double sum = 0;
                for (int i = -reach; i <= reach; i++) {
                    int at = Math.max(0, Math.min(height - 1, row + i));
                    sum += kernel[i + reach] * once[at * width + column];
                }
                light[row * width + column] = (float) sum;
            }
        });
    }

    /** Light from about 5 mm round a place comes in as well. */
    private float[] flared(float[] light, int width, int height) {
        if (flare == 0) {
            return light;
        }
        int columns = (width + FLARE_BLOCK - 1) / FLARE_BLOCK;
        int rows = (height + FLARE_BLOCK - 1) / FLARE_BLOCK;
        double[] block = new double[columns * rows];
        int[] count = new int[columns * rows];
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int at = row / FLARE_BLOCK * columns + column / FLARE_BLOCK;
                block[at] += light[row * width + column];
                count[at]++;
            }
        }
        int reach = Math.max(1, (int) Math.round(5 / 25.4 * pixelsPerInch / FLARE_BLOCK));
        double[] wide = new double[block.length];
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                double sum = 0;
                int seen = 0;
                for (int r = Math.max(0, row - reach); r <= Math.min(rows - 1, row + reach); r++) {
                    for (int c = Math.max(0, column - reach); c <= Math.min(columns - 1, column + reach); c++) {
                        sum += block[r * columns + c];
                        seen += count[r * columns + c];
                    }
                }
                wide[row * columns + column] = sum / seen;
            }
        }
        float[] flared = light.clone();
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                int at = row * width + column;
                flared[at] += (float) (flare * wide[row / FLARE_BLOCK * columns + column / FLARE_BLOCK]);
            }
        }
        return flared;
    }

    private void dust(float[] light, int width, int height, Random random) {
        for (int i = 0; i < dust; i++) {
            double x = width * random.nextDouble();
            double y = height * random.nextDouble();
            double angle = 2 * Math.PI * random.nextDouble();
            boolean hair = random.nextInt(4) == 0;
            double length = (hair ? 0.06 : 0.006) * pixelsPerInch * (0.5 + random.nextDouble());
            float value = random.nextBoolean() ? 0.05f : 0.9f;
            double radius = Math.max(0.6, 0.002 * pixelsPerInch);
            for (double along = 0; along <= length; along += 0.4) {
                int column = (int) (x + along * Math.cos(angle + along / length));
                int row = (int) (y + along * Math.sin(angle + along / length));
                for (int r = (int) (row - radius); r <= row + radius; r++) {
                    for (int c = (int) (column - radius); c <= column + radius; c++) {
                        if (r >= 0 && r < height && c >= 0 && c < width) {
                            light[r * width + c] = value;
                        }
                    }
                }
            }
        }
    }

    /** What the scanner writes, pixel by pixel: 8-bit codes or 16-bit ones. */
    private char[] codes(float[] light, int width, int height, Random random) {
        long seed = random.nextLong();
        char[] codes = new char[width * height];
        IntStream.range(0, height).parallel().forEach(row -> {
            java.util.SplittableRandom noisy = new java.util.SplittableRandom(seed + row);
            for (int column = 0; column < width; column++) {
                double across = 2.0 * column / width - 1;
                double down = 2.0 * row / height - 1;
                double shade = 1 - vignetting * (across * across + down * down) / 2;
                double value = white * shade * light[row * width + column];
                // Twelve even numbers less six: near enough to a normal deviate, and quick.
                double deviate = -6;
                for (int i = 0; i < 12; i++) {
                    deviate += noisy.nextDouble();
                }
                value += noise * deviate * Math.sqrt(0.2 + value);
                codes[row * width + column] = code(Math.max(0, Math.min(1, value)));
            }
        });
        return codes;
    }

    private char code(double value) {
        return (char)
                switch (coding) {
                    case LINEAR_16 -> Math.round(65_535 * value);
                    case SRGB_8 ->
                        Math.round(
                                255 * (value <= 0.0031308 ? 12.92 * value : 1.055 * Math.pow(value, 1 / 2.4) - 0.055));
                    case POWER_8 -> Math.round(255 * Math.pow(value, 1 / 2.2));
                };
    }

    /** Linear light of a code, 0 to 1. */
    double light(int code) {
        double share = code / (coding == Coding.LINEAR_16 ? 65_535.0 : 255.0);
        return switch (coding) {
            case LINEAR_16 -> share;
            case SRGB_8 -> share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
            case POWER_8 -> Math.pow(share, 2.2);
        };
    }
}
