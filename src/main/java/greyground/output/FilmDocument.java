package greyground.output;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.quantity.Refusal;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Everything that a film PDF or film TIFF says, all of it given by the job.
 *
 * @param films one or more sheets, in the order they are exposed
 * @param bench what its paper pages say, and title, date and program of the whole
 * @param others plans of further plates, whose pages follow
 * @param attachments files that travel inside the PDF, each name once
 */
public record FilmDocument(
        List<Film> films, PlanDocument bench, List<PlanDocument> others, List<Attachment> attachments) {
    /** The films of one plate. */
    public FilmDocument(List<Film> films, PlanDocument bench, List<Attachment> attachments) {
        this(films, bench, List.of(), attachments);
    }

    public FilmDocument {
        films = List.copyOf(films);
        others = List.copyOf(others);
        attachments = List.copyOf(attachments);
        if (films.isEmpty()) {
            throw Refusal.use("a film document has 0 films; it needs 1 or more");
        }
        Set<String> names = new HashSet<>();
        for (Attachment attachment : attachments) {
            if (!names.add(attachment.name())) {
                throw Refusal.use("two attachments are named " + attachment.name() + ": each name may stand once");
            }
        }
    }

    String title() {
        return bench.title();
    }

    LocalDate date() {
        return bench.date();
    }

    String program() {
        return bench.program();
    }

    /** Which pages are printed on film and which on paper, in a sentence; the films come first. */
    public static String paper(int films) {
        return films == 1
                ? "page 1 on film, the rest on paper"
                : "pages 1 " + (films == 2 ? "and " : "to ") + films + " on film, the rest on paper";
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
}
