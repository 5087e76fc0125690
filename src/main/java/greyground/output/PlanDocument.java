package greyground.output;

import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.List;

/**
 * Everything that the paper pages of a plan say, all of it given by the job: nothing is read from a clock or a host.
 *
 * @param title of the work, as the printmaker wrote it
 * @param subject the plate and what it carries in a line, for example "210 x 148 mm, etched film, grain 180 µm at 1440 dpi"
 * @param date of the job; every date in the file is its midnight, UTC
 * @param program name and version, for example "Greyground 0.2.0"
 * @param particulars the film's facts: plate, resolution, grain, curve; may be empty
 * @param curve points of the tone curve, art lightness rising; empty, or two and more
 * @param plan what to do at the bench; without steps no page is made
 */
public record PlanDocument(
        String title,
        String subject,
        LocalDate date,
        String program,
        List<ExposurePlan.Line> particulars,
        List<CurvePoint> curve,
        ExposurePlan plan) {
    public PlanDocument {
        particulars = List.copyOf(particulars);
        curve = List.copyOf(curve);
        if (date.getYear() < 1900 || date.getYear() > 9999) {
            throw Refusal.use("the job's date is " + date + "; its year must lie between 1900 and 9999");
        }
        if (curve.size() == 1) {
            throw Refusal.use("the tone curve has 1 point; it needs 2 or more, or none");
        }
        for (int i = 1; i < curve.size(); i++) {
            if (curve.get(i).artLightness() < curve.get(i - 1).artLightness()) {
                throw Refusal.use("the tone curve's point " + (i + 1) + " lies at L* "
                        + Refusal.plain(curve.get(i).artLightness()) + ", below the point before it: sort them");
            }
        }
    }

    /**
     * One point of the tone curve.
     *
     * @param artLightness CIE L*, 0 to 100
     * @param filmCoverage 0 (clear) to 1 (black)
     */
    public record CurvePoint(double artLightness, double filmCoverage) {
        public CurvePoint {
            Refusal.checkRange("art lightness", artLightness, 0, 100, "L*", "correct the curve");
            Refusal.checkRange("film coverage", filmCoverage, 0, 1, "", "correct the curve");
        }
    }
}
