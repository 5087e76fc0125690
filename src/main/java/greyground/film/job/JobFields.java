package greyground.film.job;

import greyground.grain.Grain;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.tone.RangeMapping;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Every setting of a job, once: options, files, the window's rows, ranges and help come from {@link FilmFields}, {@link ArtFields},
 * {@link HandFields}, {@link LineFields}, {@link RetouchFields}, {@link PlacingFields} and {@link OutlineFields}.
 */
public final class JobFields {
    /** A5 (ISO 216) is a plate that fits most bevelled presses. */
    static final Job USUAL = new Job(
            "",
            "",
            Size.parse("plate", "A5"),
            new PlateProcess.EtchedFilm(),
            new Resolution(1440),
            Grain.Stochastic.USUAL,
            ArtChoice.WHOLE,
            Placing.USUAL,
            RangeMapping.DEFAULT,
            false,
            Optional.empty(),
            List.of());

    /** All that is typed or kept, in the order of the job's file, in which options are taken, too. */
    public static final List<JobField<?>> ALL = Stream.of(
                    FilmFields.LISTED,
                    ArtFields.LISTED,
                    HandFields.LISTED,
                    LineFields.LISTED,
                    RetouchFields.LISTED,
                    PlacingFields.LISTED,
                    OutlineFields.LISTED,
                    List.<JobField<?>>of(ArtFields.RANGE, FilmFields.MEND, FilmFields.RESERVE))
            .flatMap(List::stream)
            .toList();

    /** What a test plate shares with the job on the bench. */
    private static final List<JobField<?>> SHARED = List.of(
            FilmFields.PROCESS,
            FilmFields.CARRIER,
            FilmFields.RESOLUTION,
            PlacingFields.BEVEL,
            PlacingFields.INK_SIDE,
            PlacingFields.TRANSFERS);

    private JobFields() {}

    public static Job usual() {
        return USUAL;
    }

    /**
     * A job with settings told anew, as a person types them.
     *
     * @param words by name; other names are ignored
     * @param art on which pixels are counted, upright
     */
    public static Job told(Job job, Map<String, String> words, Kind.Art art) {
        if (words.containsKey(FilmFields.GRAIN.name()) && words.containsKey(FilmFields.RULING.name())) {
            throw Refusal.use("both --grain and --ruling are given; a film carries one of them: leave one out");
        }
        Map<String, String> settings = new HashMap<>(words);
        boolean covered = settings.remove(ArtFields.CROP.name(), ArtFields.COVERED);
        Job told = job;
        for (JobField<?> field : ALL) {
            String text = settings.get(field.name());
            if (field.isTyped() && text != null) {
                told = field.told(told, text, art);
            }
        }
        return covered ? ArtFields.covered(told, art) : told;
    }

    /** A job with the process, the grain and the reading side of another, as a test plate has them. */
    public static Job sharing(Job job, Job with) {
        Job shared = job;
        for (JobField<?> field : SHARED) {
            shared = field.copied(with, shared);
        }
        return shared;
    }
}
