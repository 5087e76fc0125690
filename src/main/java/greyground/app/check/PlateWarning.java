package greyground.app.check;

import greyground.app.recipe.JobWords;
import greyground.plate.inspect.FilmFindings;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Something that the plate will not keep, and where.
 *
 * @param kind one word for programs: open-bite, lost-land, shut-opening, lost-light, lost-dark, thin-black, small-sheet, assumed, or film
 *     for what else concerns the whole film
 * @param words what it is and how large, for people; without its place
 * @param place from the plate's top left, as the print reads; empty for the whole film
 * @param sizeMillimetres its width; 0 where it has none
 * @param areaSquareMillimetres how much of the plate it concerns; 0 where that is not told
 * @param mends the number that mends it: a path of the workshop file, such as bath.biteMinutes, or a word of {@link JobWords}; empty
 *     where no single one does
 */
public record PlateWarning(
        String kind,
        String words,
        Optional<Offset> place,
        double sizeMillimetres,
        double areaSquareMillimetres,
        String mends) {
    /** Where the film's black is kept. */
    private static final String BLACK = "filmPrinter.blackUvDensity";

    /** Dots and lands round off by about as much anyhow (assumed). */
    private static final double SHARE_UNSAID = 0.02;

    /**
     * What the checks of a film found, most pressing first.
     *
     * @param mirrored whether the film is the mirror of the print
     * @param plateMillimetres the plate's width
     */
    public static List<PlateWarning> of(FilmChecks checks, boolean mirrored, double plateMillimetres) {
        List<PlateWarning> warnings = new ArrayList<>();
        Set<String> told = new HashSet<>();
        for (FilmChecks.Inspected film : checks.films()) {
            FilmFindings found = film.findings();
            for (String prefix : List.of("", "film " + film.number() + ": ")) {
                told.addAll(FilmWarnings.findings(prefix, found));
            }
            for (FilmFindings.OpenBite bite : found.openBites()) {
                String words = String.format(
                        Locale.ROOT,
                        "open bite %.2f mm wide, where the pad holds %.2f mm",
                        bite.widthMillimetres(),
                        bite.criticalWidthMillimetres());
                warnings.add(
                        warning("open-bite", words, bite, bite.widthMillimetres(), mirrored ? plateMillimetres : 0));
            }
            if (found.lostLandShare() > SHARE_UNSAID && !found.lostLands().isEmpty()) {
                String words = String.format(
                        Locale.ROOT,
                        "%.1f %% of the clear film leaves no land, narrower than %.0f um; most",
                        100 * found.lostLandShare(),
                        found.limits().leastLandMicrometres());
                warnings.add(warning("lost-land", words, found.lostLands().get(0), 0, mirrored ? plateMillimetres : 0));
            }
            if (found.shutShare() > SHARE_UNSAID && !found.shutOpenings().isEmpty()) {
                String words = String.format(
                        Locale.ROOT,
                        "%.1f %% of the black will not wash out, narrower than %.0f um; most",
                        100 * found.shutShare(),
                        found.limits().leastOpeningMicrometres());
                warnings.add(warning(
                        "shut-opening", words, found.shutOpenings().get(0), 0, mirrored ? plateMillimetres : 0));
            }
        }
        List<String> black = FilmWarnings.black(checks.black());
        for (String words : checks.warnings()) {
            if (!told.contains(words)) {
                warnings.add(black.contains(words) ? of("thin-black", words, BLACK) : of("film", words, ""));
            }
        }
        return warnings;
    }

    /** A warning that has no place. */
    public static PlateWarning of(String kind, String words, String mends) {
        return new PlateWarning(kind, words, Optional.empty(), 0, 0, mends);
    }

    private static PlateWarning warning(
            String kind, String words, FilmFindings.Finding finding, double size, double turnedIn) {
        double across = finding.acrossMillimetres();
        return new PlateWarning(
                kind,
                words,
                Optional.of(new Offset(turnedIn > 0 ? turnedIn - across : across, finding.downMillimetres())),
                size,
                finding.areaSquareMillimetres(),
                "");
    }
}
