package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Everything that a film PDF or film TIFF says, all of it given by the job: nothing is read from a clock or a host.
 *
 * @param title of the work, as the printmaker wrote it
 * @param date of the job; every date in the file is its midnight, UTC
 * @param program name and version, for example "Greyground 0.2.0"
 * @param films one or more sheets, in the order they are exposed
 * @param particulars numbers for the head of the plan: plate, resolution, grain, curve; may be empty
 * @param curve points of the tone curve, art lightness rising; empty, or two and more
 * @param plan what to do at the bench; without steps no plan page is made
 * @param attachments files that travel inside the PDF, each name once
 */
public record FilmDocument(
        String title,
        LocalDate date,
        String program,
        List<Film> films,
        List<ExposurePlan.Line> particulars,
        List<CurvePoint> curve,
        ExposurePlan plan,
        List<Attachment> attachments) {
    public FilmDocument {
        films = List.copyOf(films);
        particulars = List.copyOf(particulars);
        curve = List.copyOf(curve);
        attachments = List.copyOf(attachments);
        if (films.isEmpty()) {
            throw Refusal.use("a film document has 0 films; it needs 1 or more");
        }
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
        Set<String> names = new HashSet<>();
        for (Attachment attachment : attachments) {
            if (!names.add(attachment.name())) {
                throw Refusal.use("two attachments are named " + attachment.name() + ": each name may stand once");
            }
        }
    }

    /**
     * One film sheet.
     *
     * @param sheet where everything lies
     * @param rows its samples, of the sheet's size
     */
    public record Film(Sheet sheet, FilmRows rows) {
        public Film {
            if (sheet.widthPixels() != rows.width() || sheet.heightPixels() != rows.height()) {
                throw Refusal.use("the sheet measures " + sheet.widthPixels() + " x " + sheet.heightPixels()
                        + " pixels and its rows " + rows.width() + " x " + rows.height() + "; they must agree");
            }
            int bits = rows.bitsPerSample();
            if (bits != 1 && bits != 8 && bits != 16) {
                throw Refusal.use("the film has " + bits + " bits per sample; it must have 1, 8 or 16");
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
