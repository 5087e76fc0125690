package greyground.app.recipe;

import greyground.app.kept.CacheFolder;
import greyground.app.kept.FigureStore;
import greyground.finding.Findings;
import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import greyground.tone.PlateResponse;
import greyground.tone.Reserved;
import greyground.tone.UsableCoverage;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * How far the blacks of a job's film stop short of the turning point. A plate whose edges creep farther than planned turns paler at less
 * black; up to the limit 95 plates in 100 still darken.
 *
 * <p>What strays from plate to plate moves edges: a deeper bite and a lower etch factor undercut farther, and the film's dots spread. These
 * lengths add as variances to one standard deviation of an edge. The turning point falls as edges move out, so its 5 % quantile is the turn of the
 * plate whose edges lie 1.645 of them farther out.
 *
 * @param asked whether the job states it, instead of leaving it to be worked out
 * @param limit most film black that the curve uses
 * @param turn where the print turns paler; 1 where it doesn't
 * @param cost lightness that the darkest tone is given up by, in L*
 * @param strays what moves an edge; none where the job states the reserve
 */
public record JobReserve(boolean asked, double limit, double turn, double cost, List<Stray> strays) {
    /** One-sided 95 % of a normal distribution. */
    private static final double SURE = 1.645;

    // Standard deviations from plate to plate, all assumed: of a number that nobody has measured here, and of one that
    // was.
    private static final double BITE_ASSUMED = 0.10;
    private static final double BITE_KNOWN = 0.05;
    private static final double ETCH_FACTOR_ASSUMED = 0.25;
    private static final double ETCH_FACTOR_KNOWN = 0.1;
    private static final double DOTS_ASSUMED_MICROMETRES = 2;
    private static final double DOTS_KNOWN_MICROMETRES = 1;

    public JobReserve {
        strays = List.copyOf(strays);
    }

    /**
     * A figure that strays from plate to plate.
     *
     * @param words such as "bite 10 %"
     * @param micrometres that it moves an edge by, a standard deviation
     */
    public record Stray(String words, double micrometres) {}

    /** Works it out, or takes what the job states. */
    public static JobReserve of(JobPlate plate, JobTones tones) {
        UsableCoverage usable = tones.response().usable();
        double turn = usable.most();
        boolean asked = plate.job().reserve().isPresent();
        boolean seenToDarken = tones.isMeasured() && turn == 1;
        List<Stray> strays = asked || seenToDarken ? List.of() : strays(plate, tones.isMeasured());
        double wanted = plate.job().reserve().orElseGet(() -> fall(plate, tones, SURE * together(strays)));
        // Half of the tones that hold must stay in use.
        double spare = (turn - usable.least()) / 2;
        if (asked && wanted > spare) {
            throw Refusal.use("reserve is " + percent(wanted) + " %; this plate's print turns paler at " + percent(turn)
                    + " % of film black, so it must be from 0 to " + percent(spare) + " %: give less, or 'automatic'");
        }
        double limit = turn - Math.min(wanted, spare);
        double cost = tones.response().lightness(limit) - tones.response().lightness(turn);
        return new JobReserve(asked, limit, turn, Math.max(0, cost), strays);
    }

    /** What moves edges; a test plate that was read leaves no more than one plate differs from the next. */
    private static List<Stray> strays(JobPlate job, boolean measured) {
        Workshop workshop = job.workshop();
        List<Stray> strays = new ArrayList<>();
        if (job.conditions().wells() instanceof Bath bath) {
            boolean rate =
                    measured || !workshop.bath().rateMicrometresPerMinute().isAssumed();
            double bite = rate ? BITE_KNOWN : BITE_ASSUMED;
            strays.add(new Stray("bite " + percent(bite) + " %", bite * bath.undercutMicrometres()));
            boolean factor = measured || !workshop.bath().etchFactor().isAssumed();
            double etch = factor ? ETCH_FACTOR_KNOWN : ETCH_FACTOR_ASSUMED;
            // u = h / F, so a small change of F moves it by u / F.
            strays.add(new Stray(
                    "etch factor " + Refusal.plain(etch), etch * bath.undercutMicrometres() / bath.etchFactor()));
        }
        boolean dots =
                measured || !workshop.filmPrinter().spotGrowthMicrometres().isAssumed();
        double growth = dots ? DOTS_KNOWN_MICROMETRES : DOTS_ASSUMED_MICROMETRES;
        strays.add(new Stray("film dots " + Refusal.plain(growth) + " \u00b5m", growth));
        return strays;
    }

    /** Standard deviation of an edge's place. */
    private static double together(List<Stray> strays) {
        return StrictMath.sqrt(strays.stream()
                .mapToDouble(stray -> stray.micrometres() * stray.micrometres())
                .sum());
    }

    /** How far the turning point falls when every edge lies farther out. */
    private static double fall(JobPlate job, JobTones tones, double outMicrometres) {
        if (outMicrometres == 0) {
            return 0;
        }
        FigureStore turns = new FigureStore(CacheFolder.usual());
        double about = tones.predicted().turningPoint();
        double planned = turns.turn(job.plate(), job.patches(), about);
        double moved = turns.turn(job.plate(movedOut(job.conditions(), outMicrometres)), job.patches(), about);
        return Math.max(0, planned - moved);
    }

    private static PlateConditions movedOut(PlateConditions planned, double micrometres) {
        List<Exposure> exposures = planned.exposures().stream()
                .map(each -> each.withFilm(
                        each.film().withSpotGrowth(Math.min(100, each.film().spotGrowthMicrometres() + micrometres))))
                .toList();
        return planned.withExposures(exposures);
    }

    /** The response as the curve may use it. */
    public PlateResponse within(PlateResponse response) {
        return limit < turn ? new Reserved(response, limit) : response;
    }

    /** Share of film black between limit and turning point. */
    public double share() {
        return turn - limit;
    }

    /** In one line, for answers; the window and the plan say {@link #brief}. */
    public String words() {
        if (share() == 0) {
            return turn < 1
                    ? "none: blacks go up to the turning point at " + percent(turn)
                            + " % of film, past which more prints paler; --reserve automatic keeps some back"
                    : "none needed: the print darkens up to solid black";
        }
        String why = asked
                ? "as the job asks"
                : String.format(
                                Locale.ROOT,
                                "so that 95 plates in 100 still darken while edges stray by %.1f",
                                together(strays))
                        + " \u00b5m (" + strays.stream().map(Stray::words).collect(Collectors.joining(", "))
                        + ", assumed)";
        return brief() + ", " + why + "; it costs " + String.format(Locale.ROOT, "L* %.1f", cost) + " of black";
    }

    /** For the plan: where blacks stop. */
    public String brief() {
        if (share() == 0) {
            return "";
        }
        return "blacks stop at " + percent(limit) + " % of film, " + percent(share()) + " % before "
                + (turn < 1 ? "the turning point at " + percent(turn) + " %" : "solid black");
    }

    /** The same for programs. */
    public Findings findings() {
        return new Findings()
                .put("asked", asked)
                .put("share", share())
                .put("limit", limit)
                .put("turningPoint", turn)
                .put("lightnessGivenUp", cost)
                .rows(
                        "strays",
                        strays.stream()
                                .map(stray -> new Findings()
                                        .put("figure", stray.words())
                                        .put("movesEdgesMicrometres", stray.micrometres()))
                                .toList());
    }

    private static String percent(double share) {
        return Refusal.plain(Math.rint(share * 1000) / 10);
    }
}
