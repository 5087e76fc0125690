package greyground.picture;

import greyground.plate.Paper;
import greyground.plate.PlateMap;
import greyground.plate.PlateWindow;
import greyground.tone.Srgb;
import java.util.function.IntUnaryOperator;

/** Gives the numbers of a map their colours. Tables of 4096 steps stand for the curves: far finer than a pixel's 256. */
public final class Colouring {
    private static final int STEPS = 4096;
    private static final double MICROMETRES_PER_INCH = 25_400;

    private Colouring() {}

    /**
     * The print: each cell's reflectance, true to scale, so that white paper is as grey as it is.
     *
     * @param roots of {@link greyground.plate.PlateView#printRoot}
     */
    public static Picture print(PlateMap roots, Paper paper) {
        return coloured(roots, 1, step -> Palette.ofReflectance(paper.reflectance((double) step / STEPS)));
    }

    /**
     * Cells in colours of their own.
     *
     * @param codes 0xRRGGBB in sRGB, row by row
     */
    public static Picture codes(PlateWindow window, int[] codes) {
        byte[] samples = new byte[Math.multiplyExact(3, codes.length)];
        for (int i = 0; i < codes.length; i++) {
            samples[3 * i] = (byte) (codes[i] >> 16);
            samples[3 * i + 1] = (byte) (codes[i] >> 8);
            samples[3 * i + 2] = (byte) codes[i];
        }
        return new Picture(window.columns(), window.rows(), MICROMETRES_PER_INCH / window.cellMicrometres(), samples);
    }

    /**
     * Film on a light table.
     *
     * @param light of {@link greyground.plate.PlateView#filmLight}
     */
    public static Picture film(PlateMap light) {
        return coloured(light, 1, step -> Palette.ofReflectance((double) step / STEPS));
    }

    /**
     * The developed plate: resist grey, bare copper copper.
     *
     * @param covered of {@link greyground.plate.PlateView#covered}
     */
    public static Picture resist(PlateMap covered) {
        return coloured(covered, 1, step -> Palette.mixed(Palette.COPPER, Palette.RESIST, (double) step / STEPS));
    }

    /**
     * The bitten plate, lit from the top left.
     *
     * @param brightness of {@link CopperRelief}
     */
    public static Picture copper(PlateMap brightness) {
        return coloured(
                brightness, CopperRelief.BRIGHTEST, step -> Palette.copper(CopperRelief.BRIGHTEST * step / STEPS));
    }

    /**
     * Film that lies on polished copper: what light it lets through comes back copper.
     *
     * @param film its colour on a light table, 0xRRGGBB
     */
    public static int onCopper(int film) {
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            double light =
                    Srgb.decode((film >> shift & 0xFF) / 255.0) * Srgb.decode((Palette.COPPER >> shift & 0xFF) / 255.0);
            colour |= (int) Math.round(255 * Srgb.encode(light)) << shift;
        }
        return colour;
    }

    private static Picture coloured(PlateMap map, double most, IntUnaryOperator colours) {
        int[] table = new int[STEPS + 1];
        for (int step = 0; step <= STEPS; step++) {
            table[step] = colours.applyAsInt(step);
        }
        byte[] samples = new byte[3 * map.values().length];
        for (int i = 0; i < map.values().length; i++) {
            double share = Math.max(0, Math.min(1, map.values()[i] / most));
            int colour = table[(int) Math.round(share * STEPS)];
            samples[3 * i] = (byte) (colour >> 16);
            samples[3 * i + 1] = (byte) (colour >> 8);
            samples[3 * i + 2] = (byte) colour;
        }
        return new Picture(
                map.window().columns(),
                map.window().rows(),
                MICROMETRES_PER_INCH / map.window().cellMicrometres(),
                samples);
    }
}
