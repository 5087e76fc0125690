package greyground.plate.split;

import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualResponse;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Searches how to share the light of photogravure between its aquatint screen and its image, how black the screen should be
 * and how soft its edges, for the widest range of tones with the smallest gap at the light end.
 *
 * <p>Doses cost nothing to search: a screen's {@link CriticalTones} serve every split. The image's dose follows from the
 * screen's, so that clear film just closes the whites, one {@link ExposureSplit#FILM_STEP} to spare; more of it would only ask
 * for a denser film. The screen's dose is at least what hardens lands where the screen is clear, image or none. Every screen within reach is scanned at pixels of 9 um, and the three best again at 6 um and 33 levels.
 *
 * @param conditions of photogravure, one exposure through each film; their doses don't matter
 * @param screen the screen film at each share of black
 * @param reach what the shop can do
 */
public record ExposureSearch(PlateConditions conditions, FilmPatches screen, Reach reach) {
    // Assumed, as coarse as keeps gap and range within a unit of L* (tested).
    private static final double SCAN_PIXEL_MICROMETRES = 9;
    private static final int SCAN_LEVELS = 16;
    private static final double PIXEL_MICROMETRES = 6;
    private static final int MOST_REFINED = 3;
    private static final double DOSE_STEP = 0.05;

    /**
     * What the shop can do.
     *
     * @param leastDose of either exposure, in units of the dose that hardens this resist, above 0
     * @param mostDose of either, at most 20
     * @param screenBlacks shares of black that the screen film may have, each 0.05 to 0.95
     * @param edgeBlursMicrometres softness that its edges may be given, each 0 to 200
     */
    public record Reach(
            double leastDose, double mostDose, List<Double> screenBlacks, List<Double> edgeBlursMicrometres) {
        public Reach {
            Refusal.checkRange("least exposure", leastDose, 0.01, 20, "times the hardening dose", "0.3 is usual");
            Refusal.checkRange("longest exposure", mostDose, leastDose, 20, "times the hardening dose", "3 is usual");
            screenBlacks = List.copyOf(screenBlacks);
            edgeBlursMicrometres = List.copyOf(edgeBlursMicrometres);
            screenBlacks.forEach(black -> Refusal.checkRange("screen black", black, 0.05, 0.95, "", "0.4 to 0.7"));
            edgeBlursMicrometres.forEach(blur ->
                    Refusal.checkRange("edge blur of the screen", blur, 0, 200, "µm", "10 to 40 µm is a soft edge"));
            if (screenBlacks.isEmpty() || edgeBlursMicrometres.isEmpty()) {
                throw Refusal.use("no screen is within reach; give at least one share of black and one edge blur");
            }
        }

        /**
         * Doses of 0.3 to 3, screens 40 to 70 % black, edges from as sharp as they come to a quarter of the spacing
         * (assumed).
         *
         * @param spacingMicrometres mean spacing of the screen's dots
         * @param sharpestMicrometres blur that printer and lamp give without trying
         */
        public static Reach usual(double spacingMicrometres, double sharpestMicrometres) {
            TreeSet<Double> blurs = new TreeSet<>(List.of(sharpestMicrometres));
            for (int thirtieth = 3; thirtieth <= 7; thirtieth++) {
                double blur = Math.rint(spacingMicrometres * thirtieth / 30);
                if (blur > sharpestMicrometres + 1) {
                    blurs.add(blur);
                }
            }
            return new Reach(0.3, 3, List.of(0.4, 0.5, 0.6, 0.7), List.copyOf(blurs));
        }
    }

    /** A screen film as it reaches the resist. */
    private record Screen(double black, double blurMicrometres) {}

    /** Searches on all cores. The same conditions give the same trade on any number of them. */
    public ExposureTrade search(Progress progress) throws IOException {
        List<Screen> all = new ArrayList<>();
        for (double black : reach.screenBlacks()) {
            for (double blur : reach.edgeBlursMicrometres()) {
                all.add(new Screen(black, blur));
            }
        }
        List<ExposureSplit> scanned = splits(all, SCAN_PIXEL_MICROMETRES, SCAN_LEVELS, progress.part(0, 0.6));
        List<Screen> best = best(ExposureTrade.of(scanned));
        List<ExposureSplit> refined =
                splits(best, PIXEL_MICROMETRES, VirtualResponse.FEWEST_LEVELS, progress.part(0.6, 1));
        return ExposureTrade.of(refined);
    }

    /** Judges one split and screen as finely as the advised one, such as what the shop exposes today. */
    public ExposureSplit judge(DoubleExposure doses, double screenBlack, double edgeBlurMicrometres) {
        CriticalTones tones = CriticalTones.of(
                conditions,
                screen.at(screenBlack),
                edgeBlurMicrometres,
                PIXEL_MICROMETRES,
                VirtualResponse.FEWEST_LEVELS);
        Film film = CriticalTones.exposure(conditions, Exposure.Sheet.POSITIVE).film();
        return ExposureSplit.of(doses, screenBlack, edgeBlurMicrometres, tones, film);
    }

    /** Screens of the front, those first that lie nearest to the advised split. */
    private static List<Screen> best(ExposureTrade trade) {
        int advised = trade.rows().indexOf(trade.advised());
        List<Screen> best = new ArrayList<>();
        for (int away = 0; away < trade.rows().size() && best.size() < MOST_REFINED; away++) {
            for (int at : new int[] {advised + away, advised - away}) {
                if (at >= 0 && at < trade.rows().size() && best.size() < MOST_REFINED) {
                    ExposureSplit row = trade.rows().get(at);
                    Screen screen = new Screen(row.screenBlack(), row.edgeBlurMicrometres());
                    if (!best.contains(screen)) {
                        best.add(screen);
                    }
                }
            }
        }
        return best;
    }

    private List<ExposureSplit> splits(List<Screen> screens, double pixelMicrometres, int levels, Progress progress)
            throws IOException {
        List<ExposureSplit> splits = new ArrayList<>();
        Bands.inOrder(
                screens.size(),
                1,
                Runtime.getRuntime().availableProcessors(),
                () -> (at, count) -> splits(screens.get(at), pixelMicrometres, levels),
                (at, count, made) -> splits.addAll(made),
                progress);
        return splits;
    }

    private List<ExposureSplit> splits(Screen with, double pixelMicrometres, int levels) {
        CriticalTones tones =
                CriticalTones.of(conditions, screen.at(with.black()), with.blurMicrometres(), pixelMicrometres, levels);
        Film film = CriticalTones.exposure(conditions, Exposure.Sheet.POSITIVE).film();
        List<ExposureSplit> splits = new ArrayList<>();
        // Lands must stand where the screen is clear, whatever the image: Es Ts >= 1.
        double landDose = StrictMath.pow(
                10,
                CriticalTones.exposure(conditions, Exposure.Sheet.SCREEN).film().clearDensity());
        double least = Math.max(reach.leastDose(), landDose);
        int most = (int) Math.floor(reach.mostDose() / DOSE_STEP + 1e-9);
        for (int i = (int) Math.ceil(least / DOSE_STEP - 1e-9); i <= most; i++) {
            double screenDose = i * DOSE_STEP;
            double missing = 1 - screenDose * tones.opening();
            double imageDose = missing * StrictMath.pow(10, film.clearDensity() + ExposureSplit.FILM_STEP);
            if (missing > 0 && imageDose <= reach.mostDose()) {
                DoubleExposure doses = new DoubleExposure(screenDose, Math.max(reach.leastDose(), imageDose));
                splits.add(ExposureSplit.of(doses, with.black(), with.blurMicrometres(), tones, film));
            }
        }
        return splits;
    }
}
