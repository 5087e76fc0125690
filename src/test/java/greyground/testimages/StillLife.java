package greyground.testimages;

/**
 * A jug, three pears, an egg and a cloth on a table by a window: solids given by their distance, followed along rays, lit by a
 * soft light from the left. Invented; every pixel is a pure function of its place.
 */
final class StillLife {
    /** What a ray met. */
    static final class Hit {
        double luminance;
        double normalX;
        double normalY;
        double normalZ;
        int thing;
        double distance;
        double x;
        double y;
        double z;
    }

    static final int WALL = 0;
    static final int TABLE = 1;
    static final int JUG = 2;
    static final int PEAR = 3;
    static final int EGG = 4;
    static final int CLOTH = 5;
    static final int STEM = 6;

    private static final double LIGHT_X = -0.70;
    private static final double LIGHT_Y = 0.58;
    private static final double LIGHT_Z = -0.42;

    // Set by distance(), read right after it; one StillLife belongs to one thread.
    private int nearest;

    /**
     * Looks along one ray.
     *
     * @param across -1 (left) to 1 (right) at the picture's half width
     * @param up in the same unit, 0 at the middle
     */
    void look(double across, double up, Hit hit) {
        double eyeY = 1.55;
        double eyeZ = -5.6;
        double dx = across * 0.46;
        double dy = up * 0.46 - 0.135;
        double dz = 1;
        double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        dx /= length;
        dy /= length;
        dz /= length;
        double t = 2.2;
        double x = 0;
        double y = 0;
        double z = 0;
        for (int i = 0; i < 160; i++) {
            x = dx * t;
            y = eyeY + dy * t;
            z = eyeZ + dz * t;
            double d = distance(x, y, z);
            if (d < 0.0004 * t || t > 14) {
                break;
            }
            t += d * 0.8;
        }
        distance(x, y, z);
        hit.thing = nearest;
        hit.distance = t;
        hit.x = x;
        hit.y = y;
        hit.z = z;
        shade(hit, dx, dy, dz);
    }

    private void shade(Hit hit, double dx, double dy, double dz) {
        int thing = hit.thing;
        double e = 0.0012;
        double x = hit.x;
        double y = hit.y;
        double z = hit.z;
        double nx = distance(x + e, y, z) - distance(x - e, y, z);
        double ny = distance(x, y + e, z) - distance(x, y - e, z);
        double nz = distance(x, y, z + e) - distance(x, y, z - e);
        double n = Math.max(1e-12, Math.sqrt(nx * nx + ny * ny + nz * nz));
        nx /= n;
        ny /= n;
        nz /= n;
        hit.normalX = nx;
        hit.normalY = ny;
        hit.normalZ = nz;
        double norm = Math.sqrt(LIGHT_X * LIGHT_X + LIGHT_Y * LIGHT_Y + LIGHT_Z * LIGHT_Z);
        double lx = LIGHT_X / norm;
        double ly = LIGHT_Y / norm;
        double lz = LIGHT_Z / norm;
        double facing = Math.max(0, nx * lx + ny * ly + nz * lz);
        double lit = facing > 0 ? facing * shadow(x + nx * 0.01, y + ny * 0.01, z + nz * 0.01, lx, ly, lz) : 0;
        double open = openness(x, y, z, nx, ny, nz);
        // A little sky from above, a little bounce from the lit table.
        double fill = open * (0.055 + 0.05 * Math.max(0, ny) + 0.03 * Math.max(0, -nx));
        double albedo = albedo(thing, x, y, z);
        double hx = lx - dx;
        double hy = ly - dy;
        double hz = lz - dz;
        double h = Math.sqrt(hx * hx + hy * hy + hz * hz);
        double half = Math.max(0, (nx * hx + ny * hy + nz * hz) / h);
        double gloss = thing == JUG && y > 0.55 ? 0.55 : thing == PEAR ? 0.10 : thing == TABLE ? 0.05 : 0.02;
        double power = thing == JUG ? 90 : thing == PEAR ? 22 : 12;
        double shine = gloss * StrictMath.pow(half, power) * (facing > 0 ? lit / facing : 0);
        double window = x < 0 ? 1.12 : 1.12 - 0.13 * x;
        double light = albedo * (1.28 * window * lit + fill) + shine;
        if (thing == WALL) {
            light *= 0.30 + 0.85 * Noise.step(2.6, -3.4, x + 0.5 * y);
        }
        // A shoulder keeps the highlights from clipping.
        hit.luminance = light < 0.7 ? light : 0.7 + 0.3 * (1 - StrictMath.exp(-(light - 0.7) / 0.3));
    }

    private double shadow(double x, double y, double z, double lx, double ly, double lz) {
        double open = 1;
        double t = 0.02;
        for (int i = 0; i < 48 && t < 6; i++) {
            double d = distance(x + lx * t, y + ly * t, z + lz * t);
            open = Math.min(open, 0.5 + 0.5 * d / (0.11 * t));
            if (open <= 0) {
                return 0;
            }
            t += Math.max(0.012, Math.min(0.25, d * 0.9));
        }
        open = Math.max(0, open);
        return open * open * (3 - 2 * open);
    }

    private double openness(double x, double y, double z, double nx, double ny, double nz) {
        double shut = 0;
        double weight = 1;
        for (int i = 1; i <= 5; i++) {
            double reach = 0.07 * i;
            shut += weight * (reach - distance(x + nx * reach, y + ny * reach, z + nz * reach));
            weight *= 0.75;
        }
        return Math.max(0.08, Math.min(1, 1 - 1.5 * shut));
    }

    private static double albedo(int thing, double x, double y, double z) {
        switch (thing) {
            case TABLE: {
                double plank = Math.floor(z / 0.62);
                double grain =
                        Noise.fractal(x * 1.3 + 9 * plank, z * 22 + 3 * Noise.fractal(x * 0.9, z * 2, 3, 5), 4, 11);
                double edge = Math.abs(z / 0.62 - plank - 0.5) > 0.485 ? 0.35 : 1;
                return (0.14 + 0.34 * grain) * edge;
            }
            case JUG: {
                double speck = 1 - 0.45 * Noise.step(0.80, 0.95, Noise.value(x * 75 + z * 20, y * 75 + z * 30, 21));
                double drip = 0.55 + 0.10 * Noise.fractal(x * 3 + z * 2, 0.5, 3, 23);
                double glaze = Noise.step(drip - 0.015, drip + 0.015, y);
                double body = 0.40 + 0.10 * Noise.fractal(x * 9, y * 30 + z * 5, 3, 22);
                return Noise.mix(body, 0.17 + 0.06 * Noise.fractal(x * 4 + z, y * 4, 3, 24), glaze) * speck;
            }
            case PEAR: {
                double dots = 1 - 0.35 * Noise.step(0.78, 0.95, Noise.value(x * 85 - z * 30, y * 85 + z * 40, 31));
                return (0.34 + 0.34 * Noise.fractal(x * 3 + z, y * 3 - z, 4, 32)) * dots;
            }
            case EGG:
                return 0.86 + 0.05 * Noise.fractal(x * 40, y * 40 + z * 40, 2, 41);
            case CLOTH: {
                double weave = 0.5 * Noise.hash((long) Math.floor(x * 160), (long) Math.floor(z * 160), 51);
                double stripe =
                        Math.abs(x + 0.15 * z + 0.33) < 0.035 || Math.abs(x + 0.15 * z + 0.22) < 0.012 ? 0.45 : 1;
                return (0.70 + 0.14 * weave) * stripe;
            }
            case STEM:
                return 0.10;
            default:
                return 0.20
                        + 0.16 * Noise.fractal(x * 1.6, y * 1.6, 5, 61)
                        + 0.05 * Noise.fractal(x * 14, y * 14, 3, 62);
        }
    }

    private double distance(double x, double y, double z) {
        double best = 3.0 - z;
        nearest = WALL;
        best = take(best, y, TABLE);
        if (best > 0.0) {
            best = take(best, cloth(x, y, z), CLOTH);
            best = take(best, jug(x + 0.62, y, z - 0.55), JUG);
            best = take(best, egg(x - 0.12, y, z + 0.72), EGG);
            best = pear(best, x - 0.62, y, z + 0.12, 1, 0.06);
            best = pear(best, x - 1.28, y, z - 0.50, 1.08, -0.10);
            best = lyingPear(best, x - 0.95, y, z + 0.95);
        }
        return best;
    }

    private double take(double best, double other, int thing) {
        if (other < best) {
            nearest = thing;
            return other;
        }
        return best;
    }

    private static double jug(double x, double y, double z) {
        double r = Math.sqrt(x * x + z * z);
        if (r > 1.6 || y > 2.8) {
            return Math.max(0.3, r - 1.3);
        }
        double body = ellipse(r, y - 0.66, 0.66, 0.70);
        double neck = Math.max(r - 0.315 - 0.45 * (y - 1.48) * (y - 1.48), Math.abs(y - 1.42) - 0.40);
        double outer = smooth(body, neck, 0.22);
        outer = Math.max(outer, -(y - 0.02));
        double ring = Math.sqrt((r - 0.37) * (r - 0.37) + (y - 1.80) * (y - 1.80)) - 0.045;
        outer = smooth(outer, ring, 0.05);
        double hollow = Math.max(r - 0.255 - 0.45 * (y - 1.48) * (y - 1.48), 1.15 - y);
        double jug = Math.max(outer, -hollow);
        // The handle is a ring that stands upright, on the side of the shadow.
        double hx = x - 0.50;
        double hy = (y - 1.22) * 0.82;
        double around = Math.sqrt(hx * hx + hy * hy) - 0.36;
        double handle = Math.sqrt(around * around + z * z * 0.6) - 0.062;
        handle = Math.max(handle, 0.22 - r);
        return smooth(jug, handle, 0.07) * 0.8;
    }

    private static double egg(double x, double y, double z) {
        double ux = 0.93 * x + 0.36 * z;
        double uz = -0.36 * x + 0.93 * z;
        double taper = 1 - 0.22 * ux;
        double r = Math.sqrt((y - 0.205) * (y - 0.205) + uz * uz);
        return ellipse(r / taper, ux, 0.205, 0.27) * 0.8;
    }

    private double pear(double best, double x, double y, double z, double size, double lean) {
        double px = (x - lean * y) / size;
        double py = y / size;
        double pz = z / size;
        double low = Math.sqrt(px * px + (py - 0.33) * (py - 0.33) + pz * pz) - 0.345;
        double high = Math.sqrt(px * px + (py - 0.80) * (py - 0.80) + pz * pz) - 0.155;
        double body = smooth(low, high, 0.30) * size * 0.85;
        double sx = px - 0.16 * (py - 0.9) * (py - 0.9) * 4;
        double stem = Math.max(Math.sqrt(sx * sx + pz * pz) - 0.019, Math.abs(py - 1.06) - 0.15) * size * 0.6;
        return take(take(best, body, PEAR), stem, STEM);
    }

    private double lyingPear(double best, double x, double y, double z) {
        double along = 0.86 * x - 0.50 * z;
        double aside = 0.50 * x + 0.86 * z;
        double low = Math.sqrt(along * along + (y - 0.31) * (y - 0.31) + aside * aside) - 0.315;
        double ax = along - 0.44;
        double high = Math.sqrt(ax * ax + (y - 0.20) * (y - 0.20) + aside * aside) - 0.15;
        double body = smooth(low, high, 0.26) * 0.85;
        double dy = y - 0.22 - 0.35 * (along - 0.60);
        double stem = Math.max(Math.sqrt(dy * dy + aside * aside) - 0.018, Math.abs(along - 0.68) - 0.13) * 0.7;
        return take(take(best, body, PEAR), stem, STEM);
    }

    private static double cloth(double x, double y, double z) {
        // A cloth lies crumpled at the left, its edge wavering.
        double edge = 0.30 * (Noise.fractal(x * 1.7, z * 1.7, 3, 71) - 0.5);
        double inside = Math.max(Math.abs(x + 0.75 + 0.35 * z) - 1.15 + edge, Math.abs(z + 0.62) - 0.68 + edge);
        if (y > 0.6) {
            return y - 0.3;
        }
        double fold = Noise.fractal(x * 1.5 + 0.8 * z, z * 0.75 - 0.4 * x, 3, 72);
        double ridge = 1 - Math.abs(2 * fold - 1) * 2.2;
        double height =
                0.022 + 0.10 * Math.max(0, ridge) * Math.max(0, ridge) + 0.05 * Noise.fractal(x * 3, z * 3, 2, 73);
        height *= Noise.step(0.02, -0.22, inside);
        return Math.max((y - height) * 0.55, inside * 0.7);
    }

    private static double ellipse(double r, double y, double a, double b) {
        double k = Math.sqrt(r * r / (a * a) + y * y / (b * b));
        return (k - 1) * Math.min(a, b);
    }

    private static double smooth(double a, double b, double k) {
        double h = Math.max(0, k - Math.abs(a - b)) / k;
        return Math.min(a, b) - h * h * k / 4;
    }
}
