package greyground.plate.inspect;

import greyground.raster.BitPlane;
import greyground.raster.PixelRect;
import greyground.raster.Regions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/** Joins the slabs of a film, in order, into what is found on all of it. One thread. */
final class FoundOnFilm {
    private static final double PATCH_MICROMETRES = 2000;

    private final FilmLimits limits;
    private final FilmPitch printed;
    private final double pitch;
    private final PixelRect plate;
    private final int left;
    private final WideClearings clearings;
    private final Regions sites = new Regions(this::site);
    private final Patches lands = new Patches();
    private final Patches openings = new Patches();
    private final Regions landRegions = new Regions(lands::add);
    private final Regions openingRegions = new Regions(openings::add);
    private final List<Site> siteList = new ArrayList<>();
    private final double farthestMeasured;
    private long siteCount;
    private long sitePixels;
    private long blackPixels;
    private long shutPixels;
    private long lostPixels;

    /** A site as found, in plate pixels. */
    private record Site(long pixels, long lostPixels, double squaredPixels, int x, int y) {}

    /**
     * An empty finding.
     *
     * @param left the plate's first column in the slabs' planes
     */
    FoundOnFilm(FilmLimits limits, FilmPitch pitch, BareCopper copper, PixelRect plate, int left) {
        this.limits = limits;
        this.printed = pitch;
        this.pitch = pitch.micrometres();
        this.plate = plate;
        this.left = left;
        this.clearings = new WideClearings(plate);
        double most = copper.farthestPixels();
        this.farthestMeasured = most * most;
    }

    /** Adds the next slab. */
    void take(FilmSlab slab) {
        blackPixels += slab.blackPixels;
        shutPixels += slab.shutPixels;
        lostPixels += slab.lostPixels;
        int firstPlateRow = slab.firstRow - plate.top();
        clearings.take(slab.lands, left, plate.width(), firstPlateRow);
        int right = left + plate.width();
        for (int y = 0; y < slab.rows; y++) {
            landRegions.add(slab.lostLands, y, left, right, -left, firstPlateRow + y);
            landRegions.endRow();
            openingRegions.add(slab.shutOpenings, y, left, right, -left, firstPlateRow + y);
            openingRegions.endRow();
            BitPlane wide = slab.sites;
            if (wide != null) {
                siteRuns(slab, wide, y, right, firstPlateRow + y);
            }
            sites.endRow();
        }
    }

    private void siteRuns(FilmSlab slab, BitPlane wide, int row, int right, int plateRow) {
        int x = left;
        while (x < right) {
            int start = wide.next(row, x, right, true);
            if (start == right) {
                return;
            }
            int end = wide.next(row, start, right, false);
            WidestRuns.Run widest = slab.widest.widestWithin(row, start, end);
            long lost = (long) end - start - slab.black.count(row, start, end);
            sites.add(start - left, end - left, lost, widest.squaredPixels(), widest.x() - left, plateRow);
            x = end;
        }
    }

    private void site(long pixels, long lost, double squared, int x, int y) {
        siteCount++;
        sitePixels += pixels;
        siteList.add(new Site(pixels, lost, squared, x, y));
        if (siteList.size() >= 4 * FilmFindings.LONGEST_LIST) {
            shorten();
        }
    }

    private void shorten() {
        siteList.sort(Comparator.comparingDouble((Site site) -> -site.squaredPixels())
                .thenComparingLong(site -> -site.pixels())
                .thenComparingInt(Site::y)
                .thenComparingInt(Site::x));
        if (siteList.size() > FilmFindings.LONGEST_LIST) {
            siteList.subList(FilmFindings.LONGEST_LIST, siteList.size()).clear();
        }
    }

    /** All that was found, once every slab was taken. */
    FilmFindings findings() {
        landRegions.end();
        openingRegions.end();
        sites.end();
        shorten();
        long platePixels = (long) plate.width() * plate.height();
        return new FilmFindings(
                limits,
                openBites(),
                siteCount,
                square(sitePixels),
                lands.worst(FilmFindings.LostLand::new),
                lands.count,
                square(lostPixels),
                square(platePixels - blackPixels),
                openings.worst(FilmFindings.ShutOpening::new),
                openings.count,
                square(shutPixels),
                square(blackPixels));
    }

    private List<FilmFindings.OpenBite> openBites() {
        List<FilmFindings.OpenBite> bites = new ArrayList<>();
        WideClearings.Finder finder = null;
        for (Site site : siteList) {
            int x = site.x();
            int y = site.y();
            double half = BareCopper.halfWidthPixels(Math.sqrt(site.squaredPixels()));
            if (site.squaredPixels() >= farthestMeasured) {
                finder = finder == null ? clearings.finder() : finder;
                WideClearings.Disc disc = finder.widest(x, y, half);
                x = disc.x();
                y = disc.y();
                half = disc.radius();
            }
            // A site reaches over the plate's edge when its widest disc is centred in the bleed; what of it is measured
            // on the plate
            // is less, but it is a site because a disc of the critical width lies in it.
            double width = Math.max(
                    limits.criticalWidthMicrometres(),
                    2 * (half * pitch + limits.edgeShiftMicrometres() + limits.undercutMicrometres()));
            bites.add(new FilmFindings.OpenBite(
                    across(x),
                    down(y),
                    width / 1000,
                    limits.criticalWidthMicrometres() / 1000,
                    square(site.pixels()),
                    square(site.lostPixels())));
        }
        bites.sort(worst(FilmFindings.OpenBite::widthMillimetres));
        return bites;
    }

    /** Worst first; equal ones by area, then from the top, then from the left. */
    private static <T extends FilmFindings.Finding> Comparator<T> worst(ToDoubleFunction<T> measure) {
        return Comparator.comparingDouble((T finding) -> -measure.applyAsDouble(finding))
                .thenComparingDouble(finding -> -finding.areaSquareMillimetres())
                .thenComparingDouble(FilmFindings.Finding::downMillimetres)
                .thenComparingDouble(FilmFindings.Finding::acrossMillimetres);
    }

    private double across(int pixel) {
        return (pixel + 0.5) * printed.acrossMicrometres() / 1000;
    }

    private double down(int pixel) {
        return (pixel + 0.5) * printed.downMicrometres() / 1000;
    }

    private double square(long pixels) {
        return pixels * pitch * pitch / 1e6;
    }

    /** Makes a finding of a patch. */
    @FunctionalInterface
    private interface Made<T> {
        T of(double across, double down, double area, long count);
    }

    /** Small things by patches of plate. */
    private final class Patches {
        private final TreeMap<Long, long[]> sums = new TreeMap<>();
        private long count;

        void add(long pixels, long weight, double best, int x, int y) {
            count++;
            long patch = (long) (y * pitch / PATCH_MICROMETRES) << 32 | (long) (x * pitch / PATCH_MICROMETRES);
            long[] sum = sums.computeIfAbsent(patch, none -> new long[5]);
            sum[0] += pixels;
            sum[1]++;
            boolean earlier = y < sum[4] || (y == sum[4] && x < sum[3]);
            if (pixels > sum[2] || (pixels == sum[2] && earlier)) {
                sum[2] = pixels;
                sum[3] = x;
                sum[4] = y;
            }
        }

        <T extends FilmFindings.Finding> List<T> worst(Made<T> made) {
            return sums.values().stream()
                    .map(sum -> made.of(across((int) sum[3]), down((int) sum[4]), square(sum[0]), sum[1]))
                    .sorted(FoundOnFilm.worst(FilmFindings.Finding::areaSquareMillimetres))
                    .limit(FilmFindings.LONGEST_LIST)
                    .toList();
        }
    }
}
