package greyground.app.check;

import greyground.film.job.JobField;
import greyground.finding.Findings;
import greyground.quantity.Offset;
import java.util.Optional;

/**
 * Something that the plate will not keep, and where.
 *
 * @param kind one word for programs: open-bite, lost-land, shut-opening, lost-light, lost-dark, thin-black, small-sheet, assumed, or film
 *     for what else concerns the whole film
 * @param words what it is and how large, for people; without its place
 * @param place from the plate's top left, as the print reads; empty for the whole film
 * @param sizeMillimetres its width; 0 where it has none
 * @param areaSquareMillimetres how much of the plate it concerns; 0 where that is not told
 * @param mends the number that mends it: a path of the workshop file, such as bath.biteMinutes, or the name of a {@link JobField}; empty
 *     where no single one does
 */
public record PlateWarning(
        String kind,
        String words,
        Optional<Offset> place,
        double sizeMillimetres,
        double areaSquareMillimetres,
        String mends) {
    public static PlateWarning of(String kind, String words, String mends) {
        return new PlateWarning(kind, words, Optional.empty(), 0, 0, mends);
    }

    public Findings figures() {
        Findings figures = new Findings().put("kind", kind).say("words", words);
        place.ifPresent(
                at -> figures.put("xMillimetres", at.acrossMillimetres()).put("yMillimetres", at.downMillimetres()));
        return figures.put("sizeMillimetres", sizeMillimetres).put("areaSquareMillimetres", areaSquareMillimetres);
    }
}
