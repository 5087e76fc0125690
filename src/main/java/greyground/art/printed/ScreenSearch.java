package greyground.art.printed;

import greyground.raster.GreyPlane;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finds the screens of dots in art that was scanned from a print.
 *
 * <p>A screen is two equal waves at right angles that rise out of the picture's own waves nearly everywhere; one set of stripes, as of cloth or ruled
 * paper, is none. Places spread over the art are looked at, few and small ones at first and more only where these show something. Limits are assumed; on 30
 * mm of a photograph screened at 54 and 60 lines/cm, true screens rose 60 (the cap) and the same picture without one 4.4 at the most.
 */
public final class ScreenSearch {
    private static final int SIDE = 512;
    private static final int LEAST_SIDE = 256;
    private static final int STEPS = 4;
    private static final int FEW = 2;
    private static final int MANY = 4;

    /** Waves longer than this many pixels are the picture's own. */
    private static final double LONGEST_PERIOD_PIXELS = 40;

    private static final double LEAST_RISE = 4;
    private static final double SURE_RISE = 20;
    private static final double VOTING_RISE = 12;

    /** Of a page of pictures and text fewer places show dots; of one that shows them in fewer still nobody would say it is a print. */
    private static final double LEAST_SHARE = 0.3;

    /** Multiples of a screen's waves that a coarse scan may fold to where another ink's could be. */
    private static final int MULTIPLES = 4;

    private static final int CANDIDATES = 24;

    /** A print in colours has four. */
    private static final int MOST_SCREENS = 4;

    /**
     * Least power of a further screen against the first's, a tenth in amplitude (assumed): an image setter that fits its dots to its own pixels leaves
     * waves of 1/800 and less (measured on Ghostscript's screens).
     */
    private static final double FAINTEST = 0.01;

    /** Inks of one print share a ruling, within this ratio (assumed). */
    private static final double LIKE = 1.25;

    /** Waves so near are one. */
    private static final int BESIDE = 3;

    /** JPEG codes squares of eight pixels, which show as waves of 1/8 and its multiples along rows and columns. */
    private static final double JPEG_SQUARE = 8;

    private final List<TileSpectrum> tiles;
    private final TileSpectrum mean;
    private final int side;

    private ScreenSearch(List<TileSpectrum> tiles) {
        this.tiles = tiles;
        this.mean = tiles.size() == 1 ? tiles.get(0) : TileSpectrum.mean(tiles);
        this.side = mean.side();
    }

    /**
     * The screens of a print, strongest first: none in a photograph or drawing, one in a black print, up to four in colours.
     *
     * <p>The answer depends on the art alone. Art of less than 256 pixels either way shows too little, and has none.
     */
    public static List<PrintedScreen> in(GreyPlane art) {
        int least = Math.min(art.width(), art.height());
        if (least < LEAST_SIDE) {
            return List.of();
        }
        ScreenSearch few = new ScreenSearch(tiles(art, LEAST_SIDE, FEW));
        if (few.candidates().stream().noneMatch(wave -> few.squareRise(wave) >= VOTING_RISE)) {
            return List.of();
        }
        return new ScreenSearch(tiles(art, least < SIDE ? LEAST_SIDE : SIDE, MANY)).screens();
    }

    private static List<TileSpectrum> tiles(GreyPlane art, int side, int most) {
        int across = Math.min(most, 1 + STEPS * (art.width() - side) / side);
        int down = Math.min(most, 1 + STEPS * (art.height() - side) / side);
        return IntStream.range(0, across * down)
                .parallel()
                .mapToObj(i -> TileSpectrum.of(
                        art,
                        corner(i % across, across, art.width() - side),
                        corner(i / across, down, art.height() - side),
                        side))
                .toList();
    }

    /** Places between both edges; a single one in the middle. */
    private static int corner(int i, int count, int room) {
        return count == 1 ? room / 2 : (int) ((long) room * i / (count - 1));
    }

    /** A wave by whole periods along row and column of a tile. */
    private record Wave(int across, int down) {
        Wave square() {
            return new Wave(-down, across);
        }

        double length() {
            return Math.sqrt((double) across * across + (double) down * down);
        }

        Wave plus(Wave other, int times) {
            return new Wave(across + times * other.across, down + times * other.down);
        }
    }

    private List<PrintedScreen> screens() {
        List<Wave> left = new ArrayList<>(candidates());
        List<Wave> known = new ArrayList<>();
        List<PrintedScreen> screens = new ArrayList<>();
        while (screens.size() < MOST_SCREENS) {
            Wave best = left.stream()
                    .filter(wave -> squareRise(wave) >= SURE_RISE && share(wave) >= LEAST_SHARE && !ofJpeg(wave))
                    .max(Comparator.comparingDouble(this::squarePower))
                    .orElse(null);
            if (best == null || (!known.isEmpty() && squarePower(best) < FAINTEST * squarePower(known.get(0)))) {
                break;
            }
            known.add(best);
            screens.add(screen(best));
            left.removeIf(wave -> explained(wave, known));
        }
        return List.copyOf(screens);
    }

    /** Waves that stand higher than their neighbours in half the plane, the highest first. */
    private List<Wave> candidates() {
        List<Wave> waves = new ArrayList<>();
        double least = side / LONGEST_PERIOD_PIXELS;
        for (int down = 0; down < side / 2; down++) {
            for (int across = 1; across < side / 2; across++) {
                if ((double) across * across + (double) down * down >= least * least) {
                    Wave wave = new Wave(across, down);
                    if (rise(wave) > LEAST_RISE && isPeak(wave)) {
                        waves.add(wave);
                    }
                }
            }
        }
        waves.sort(Comparator.comparingDouble(wave -> -rise(wave)));
        return waves.subList(0, Math.min(CANDIDATES, waves.size()));
    }

    private boolean isPeak(Wave wave) {
        double own = power(wave);
        for (int y = -2; y <= 2; y++) {
            for (int x = -2; x <= 2; x++) {
                if (power(new Wave(wave.across + x, wave.down + y)) > own) {
                    return false;
                }
            }
        }
        return true;
    }

    /** The lower of the rises of both waves of a screen. */
    private double squareRise(Wave wave) {
        return Math.min(nearRise(wave), nearRise(wave.square()));
    }

    private double squarePower(Wave wave) {
        return Math.min(power(highest(wave)), power(highest(wave.square())));
    }

    private double rise(Wave wave) {
        return mean.rise(wave.across, wave.down);
    }

    private double power(Wave wave) {
        return mean.power(wave.across, wave.down);
    }

    /** The rise at a wave or beside it, where the screen's wave falls between two. */
    private double nearRise(Wave wave) {
        double most = 0;
        for (int y = -1; y <= 1; y++) {
            for (int x = -1; x <= 1; x++) {
                most = Math.max(most, rise(new Wave(wave.across + x, wave.down + y)));
            }
        }
        return most;
    }

    private List<TileSpectrum> voting(Wave wave) {
        return tiles.stream()
                .filter(tile -> new ScreenSearch(List.of(tile)).squareRise(wave) > VOTING_RISE)
                .toList();
    }

    private double share(Wave wave) {
        return (double) voting(wave).size() / tiles.size();
    }

    private boolean ofJpeg(Wave wave) {
        double across = JPEG_SQUARE * wave.across / side;
        return wave.down == 0 && Math.abs(across - Math.rint(across)) < 0.005 * JPEG_SQUARE;
    }

    /** Whether a wave is no other ink's: of another ruling than the first screen's, or one of a known screen's own. */
    private boolean explained(Wave wave, List<Wave> known) {
        double against = wave.length() / known.get(0).length();
        return against < 1 / LIKE || against > LIKE || known.stream().anyMatch(one -> ofScreen(wave, one));
    }

    /** Whether a wave is one of a screen's two, or a sum of them as the scan's pixels fold it. */
    private boolean ofScreen(Wave wave, Wave first) {
        for (int along = -MULTIPLES; along <= MULTIPLES; along++) {
            for (int beside = Math.abs(along) - MULTIPLES; beside <= MULTIPLES - Math.abs(along); beside++) {
                Wave sum = new Wave(along * first.across, along * first.down).plus(first.square(), beside);
                if ((along != 0 || beside != 0) && near(wave, sum)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean near(Wave one, Wave other) {
        return Math.abs(folded(one.across - other.across)) <= BESIDE
                && Math.abs(folded(one.down - other.down)) <= BESIDE;
    }

    private int folded(int periods) {
        return Math.floorMod(periods + side / 2, side) - side / 2;
    }

    private PrintedScreen screen(Wave wave) {
        List<TileSpectrum> voting = voting(wave);
        ScreenSearch all = new ScreenSearch(voting);
        double[] at = all.between(wave);
        double[] periods = voting.stream()
                .mapToDouble(tile -> period(new ScreenSearch(List.of(tile)).between(wave)))
                .sorted()
                .toArray();
        double drift = (periods[periods.length - 1] - periods[0]) / period(at);
        return new PrintedScreen(at[0], Math.max(0, at[1]), share(wave), drift);
    }

    private static double period(double[] wave) {
        return 1 / Math.sqrt(wave[0] * wave[0] + wave[1] * wave[1]);
    }

    /** The mean of both waves of a screen, the second turned back onto the first, in periods a pixel. */
    private double[] between(Wave wave) {
        double[] first = refined(highest(wave));
        double[] second = refined(highest(wave.square()));
        return new double[] {(first[0] + second[1]) / 2 / side, (first[1] - second[0]) / 2 / side};
    }

    private Wave highest(Wave about) {
        Wave best = about;
        for (int y = -1; y <= 1; y++) {
            for (int x = -1; x <= 1; x++) {
                Wave wave = new Wave(about.across + x, about.down + y);
                best = power(wave) > power(best) ? wave : best;
            }
        }
        return best;
    }

    private double[] refined(Wave wave) {
        double own = Math.sqrt(power(wave));
        double right = Math.sqrt(power(wave.plus(new Wave(1, 0), 1)));
        double left = Math.sqrt(power(wave.plus(new Wave(1, 0), -1)));
        double below = Math.sqrt(power(wave.plus(new Wave(0, 1), 1)));
        double above = Math.sqrt(power(wave.plus(new Wave(0, 1), -1)));
        return new double[] {wave.across + offset(left, own, right), wave.down + offset(above, own, below)};
    }

    /** Where a wave under a Hann window lies between whole periods, from its two highest amplitudes (exact for one lone wave). */
    private static double offset(double before, double own, double after) {
        double ratio = Math.max(before, after) / own;
        double offset = (2 * ratio - 1) / (1 + ratio);
        return after >= before ? offset : -offset;
    }
}
