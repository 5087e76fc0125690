package greyground.app.plates;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.Program;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.ink.InkSet;
import greyground.ink.InksFile;
import greyground.json.JsonText;
import greyground.output.Attachment;
import greyground.output.FilmDocument;
import greyground.output.PlanDocument;
import greyground.plan.ExposurePlan;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.util.ArrayList;
import java.util.List;

/**
 * The films of several plates as one document: each with its own plan and what it carries, the order at the press before them.
 *
 * @param base the job of all plates
 * @param set which plate is which
 * @param particulars of the plates, for the first page
 * @param press what to do at the press
 */
record SetDocument(
        Job base, Workshop shop, InkSet inks, ObjectNode set, List<ExposurePlan.Line> particulars, ExposurePlan press) {
    /**
     * Joins them.
     *
     * @param plates a document of each plate
     * @param more what the set carries besides
     */
    FilmDocument of(List<FilmDocument> plates, List<Attachment> more) {
        List<FilmDocument.Film> films = new ArrayList<>();
        List<PlanDocument> plans = new ArrayList<>();
        List<Attachment> attachments = new ArrayList<>();
        for (int i = 0; i < plates.size(); i++) {
            films.addAll(plates.get(i).films());
            plans.add(plates.get(i).bench());
            for (Attachment each : plates.get(i).attachments()) {
                attachments.add(new Attachment(
                        i + 1 + "-" + each.name(),
                        each.mediaType(),
                        each.text(),
                        each.description() + " of plate " + (i + 1),
                        each.relationship()));
            }
        }
        attachments.add(json(Attachment.JOB, JobFile.text(base), "the job of all plates"));
        attachments.add(json(Attachment.WORKSHOP, WorkshopFile.text(shop), "the workshop's numbers"));
        attachments.add(json(Attachment.INKS, InksFile.text(inks), "the inks, in the order of printing"));
        attachments.add(json(Attachment.SET, JsonText.print(set), "which plate is which"));
        attachments.addAll(more);
        PlanDocument first = plans.get(0);
        PlanDocument head = new PlanDocument(
                base.title(),
                plates.size() + (plates.size() == 1 ? " plate, " : " plates over one another, ") + first.subject(),
                first.date(),
                Program.words(),
                particulars,
                List.of(),
                press);
        return new FilmDocument(films, head, plans, attachments);
    }

    static Attachment json(String name, String text, String what) {
        return new Attachment(name, "application/json", text, what, Attachment.Relationship.SOURCE);
    }
}
