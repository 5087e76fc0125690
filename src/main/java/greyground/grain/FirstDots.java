package greyground.grain;

import java.util.Arrays;

/**
 * The pixels that turn black while not every site has its dot yet, in order.
 *
 * <p>A dot appears whole, at its least size, where the film is least crowded by black so far (the void filling of
 * Ulichney 1993, void and cluster, on scattered sites in place of pixels). Between births the least crowded dots grow by
 * a pixel at a time, which evens out what whole dots can't. The crowding kernel is a Gaussian that narrows as the dots
 * thicken. Each dot takes its pixels as {@link FirstPixels} lists them and never gives one back.
 */
final class FirstDots {
    /** The kernel's width in mean distances of the dots so far; found by trial, as all three below. */
    private static final double REACH = 0.6;

    private static final double CUT = 2.6;

    /** How many pixels are grown for each pixel born. */
    private static final double GROWN_PER_BORN = 0.4;

    private static final double RENEW = 1.15;
    private static final int TABLE = 512;

    private final double[] x;
    private final double[] y;
    private final int side;
    private final FirstPixels stock;
    private final int[] turn;
    private int total;

    // What each dot has: pixels, and the sum of their offsets from the site.
    private final int[] mass;
    private final double[] sumX;
    private final double[] sumY;

    private final float[] crowd;
    private final LeastCrowded unborn;
    private final LeastCrowded growing;
    private final SiteCells cells;
    private final float[] kernel = new float[TABLE + 1];

    private FirstDots(double[] x, double[] y, int side, FirstPixels stock) {
        this.x = x;
        this.y = y;
        this.side = side;
        this.stock = stock;
        int sites = x.length;
        turn = new int[side * side];
        Arrays.fill(turn, -1);
        mass = new int[sites];
        sumX = new double[sites];
        sumY = new double[sites];
        crowd = new float[sites];
        unborn = new LeastCrowded(crowd);
        growing = new LeastCrowded(crowd);
        cells = new SiteCells(x, y, side, Math.max(1, (int) (Math.sqrt(sites) / 1.3)));
        for (int i = 0; i < TABLE; i++) {
            kernel[i] = (float) (StrictMath.exp(-CUT * CUT * i / (2.0 * TABLE)) - StrictMath.exp(-CUT * CUT / 2));
        }
    }

    /**
     * @param x places of the sites in pixels, in [0, side)
     * @param stock what each site takes, and how much of it is its least dot
     */
    static FirstDots born(double[] x, double[] y, int side, FirstPixels stock, long seed) {
        FirstDots dots = new FirstDots(x, y, side, stock);
        dots.fill((int) Math.floorMod(GrainSites.hash(seed, -1), (long) x.length));
        return dots;
    }

    /** When a pixel turns black, 0 first, or -1 if it is none of these. */
    int turn(int pixel) {
        return turn[pixel];
    }

    /** How many pixels these are. */
    int pixels() {
        return total;
    }

    private void fill(int start) {
        crowd[start] = -1;
        for (int site = 0; site < x.length; site++) {
            unborn.add(site);
        }
        int least = stock.least();
        int quantum = Math.max(1, least / 8);
        double debt = 0;
        double reach = Double.MAX_VALUE;
        for (int n = 0; n < x.length; n++) {
            int site = unborn.take();
            take(site, least);
            double wanted = REACH * side / Math.sqrt(n + 1.0);
            if (wanted * RENEW < reach) {
                reach = wanted;
                crowdAnew(reach);
            } else {
                crowdAbout(site, sumX[site] / least, sumY[site] / least, reach, least);
            }
            if (hasMore(site)) {
                growing.add(site);
            }
            debt += GROWN_PER_BORN * least;
            while (debt >= quantum && !growing.isEmpty()) {
                grow(growing.peek(), quantum, reach);
                debt -= quantum;
            }
        }
    }

    private void grow(int site, int quantum, double reach) {
        double oldX = sumX[site];
        double oldY = sumY[site];
        int taken = take(site, quantum);
        crowdAbout(site, (sumX[site] - oldX) / taken, (sumY[site] - oldY) / taken, reach, taken);
        if (!hasMore(site)) {
            growing.drop(site);
        }
    }

    private boolean hasMore(int site) {
        return mass[site] < stock.count(site);
    }

    private int take(int site, int count) {
        int taken = 0;
        for (; taken < count && hasMore(site); taken++) {
            int pixel = stock.pixel(site, mass[site]++);
            int row = pixel / side;
            turn[pixel] = total++;
            sumX[site] += shortWay(pixel % side + 0.5 - x[site]);
            sumY[site] += shortWay(row + 0.5 - y[site]);
        }
        return taken;
    }

    private double shortWay(double d) {
        return d > side / 2.0 ? d - side : d < -side / 2.0 ? d + side : d;
    }

    private void crowdAnew(double reach) {
        Arrays.fill(crowd, 0);
        for (int site = 0; site < x.length; site++) {
            if (mass[site] > 0) {
                crowdAbout(site, sumX[site] / mass[site], sumY[site] / mass[site], reach, mass[site]);
            }
        }
        unborn.renew();
        growing.renew();
    }

    /** Adds the crowding by {@code weight} pixels about a place near a site to every site that it reaches. */
    private void crowdAbout(int site, double offX, double offY, double reach, float weight) {
        double cut = Math.min(CUT * reach, side / 2.0);
        float perIndex = (float) (TABLE / (CUT * CUT * reach * reach));
        float cut2 = (float) (cut * cut);
        double atX = x[site] + offX;
        double atY = y[site] + offY;
        int span = cells.span(cut);
        for (int j = 0; j < span; j++) {
            for (int i = 0; i < span; i++) {
                int cell = cells.near(site, i, j, span);
                for (int k = cells.first(cell); k < cells.first(cell + 1); k++) {
                    int other = cells.site(k);
                    double dx = shortWay(atX - x[other]);
                    double dy = shortWay(atY - y[other]);
                    float d2 = (float) (dx * dx + dy * dy);
                    if (d2 < cut2) {
                        crowd[other] += weight * kernel[(int) (d2 * perIndex)];
                    }
                }
            }
        }
    }
}
