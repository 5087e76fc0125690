package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.job.JobFields;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A job told in words and read back is the same job. */
class JobWordsTest {
    static final SourceArt ART = new SourceArt("leaf.png", "leaf", "", 400, 300);

    private static Job job(Map<String, String> words, Optional<Job> base) {
        return new JobWords(words).job(base, ART, greyground.workshop.Workshop.assumed(), "2026-01-02");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "plate=8x10in",
                "plate=60x40mm;process=photogravure;screen-black=45%;screen-spacing=140um",
                "plate=60x40mm;ruling=52.5;angle=30;dots=line;mend=yes;sheet=200x200mm;tile=yes",
                "plate=60x40mm;process=sprayed-aquatint;aquatint-land=42%;aquatint-grain=65um;grain=222um;seed=-7;crop=10%,5%,33.33%,50%;rotate=-93.5",
                "plate=60x40mm;white=81.25%;black=automatic;paper-shrink=0.7%,-0.4%;ink-side=up;transfers=2;fit=whole",
                "plate=60x40mm;process=unetched-film;bleed=0mm;bevel=1.5mm;range=density;title=A leaf;page=3"
            })
    void wordsOfAJobDescribeIt(org.junit.jupiter.params.aggregator.ArgumentsAccessor pairs) {
        Map<String, String> words = new java.util.HashMap<>();
        for (Object each : pairs.toList()) {
            String pair = (String) each;
            if (pair != null) {
                words.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
            }
        }
        Job job = job(words, Optional.empty());
        Map<String, String> told = new java.util.HashMap<>();
        JobFields.ALL.stream()
                .filter(field -> field.isTyped() && field.appliesTo(job))
                .forEach(field -> told.put(field.name(), field.text(job)));
        assertEquals(job, job(told, Optional.of(job)));
        assertEquals(job, job(told, Optional.empty()), "words alone describe it, too");
    }

    @Test
    void aGroundBelongsToASprayedAquatint() {
        var told = org.junit.jupiter.api.Assertions.assertThrows(
                greyground.quantity.Refusal.class,
                () -> job(Map.of("plate", "60x40mm", "aquatint-land", "40%"), Optional.empty()));
        assertTrue(String.valueOf(told.getMessage()).contains("--process sprayed-aquatint"), told.getMessage());
    }

    @Test
    void aWishCanBeTakenBack() {
        Job job = job(Map.of("plate", "60x40mm", "mend", "yes", "tile", "true"), Optional.empty());
        assertTrue(job.mended() && job.placing().tiled());
        Job back = job(Map.of("mend", "no", "tile", "no"), Optional.of(job));
        assertFalse(back.mended() || back.placing().tiled());
    }
}
