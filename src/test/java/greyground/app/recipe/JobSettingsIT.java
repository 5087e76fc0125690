package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.film.job.FilmFields;
import greyground.film.job.HandFields;
import greyground.film.job.Job;
import greyground.film.job.JobField;
import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.grain.Grain;
import greyground.output.FilmDocument;
import greyground.plan.PlanText;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A job asks for nothing that it doesn't use. */
class JobSettingsIT {
    private static final Workshop SHOP = Workshop.assumed();
    private static final Path ART = Path.of("testimages/sketchbook.tif");
    private static final Path PRINT = Path.of("testimages/printed-page.png");

    /** Small, coarse and without a reserve but once, so that a film is quick to make; under one of these every setting means something. */
    private static final List<Map<String, String>> JOBS = List.of(
            Map.of("ruling", "40/cm", "rotate", "3", "reserve", "0"),
            Map.of("grain", "260um", "sheet", "A4", "crisp", "100%", "crisp-radius", "200um"),
            Map.of("source", "line", "threshold", "45%", "ruling", "40/cm", "reserve", "0"),
            Map.of("process", "photogravure", "screen-spacing", "260um", "reserve", "0"),
            Map.of("process", "sprayed-aquatint", "ruling", "40/cm", "reserve", "0"),
            Map.of("outline", "ellipse:4mm,4mm,20mm,20mm"));

    /** Another value of each, as it may be typed. */
    private static final Map<String, String> OTHERS = Map.ofEntries(
            Map.entry("title", "Low water"),
            Map.entry("date", "2026-03-31"),
            Map.entry("plate", "36x31mm"),
            Map.entry("process", "unetched-film"),
            Map.entry("screen-black", "45%"),
            Map.entry("split", "1.6,1.1,30um,45%"),
            Map.entry("screen-spacing", "300um"),
            Map.entry("aquatint-land", "42%"),
            Map.entry("aquatint-grain", "65um"),
            Map.entry("resolution", "600dpi"),
            Map.entry("grain", "300um"),
            Map.entry("seed", "7"),
            Map.entry("ruling", "36/cm"),
            Map.entry("angle", "30"),
            Map.entry("dots", "line"),
            Map.entry("page", "2"),
            Map.entry("rotate", "94"),
            Map.entry("crop", "10%,5%,50%,50%"),
            Map.entry("white", "70%"),
            Map.entry("black", "9%"),
            Map.entry("through", "red"),
            Map.entry("emulsion", "orthochromatic"),
            Map.entry("source", "printed"),
            Map.entry("even-paper", "4%"),
            Map.entry("threshold", "60%"),
            Map.entry("specks", "400um"),
            Map.entry("edge-growth", "0um"),
            Map.entry("crisp", "150%"),
            Map.entry("local-contrast", "80%"),
            Map.entry("crisp-radius", "300um"),
            Map.entry("tones", "30:38,60:64"),
            Map.entry("middle", "+6"),
            Map.entry(
                    "touches",
                    "{\"greyground\": \"touches\", \"version\": 1, \"touches\": [{\"shape\": \"stroke\", \"burnish\": 12,"
                            + " \"widthMillimetres\": 6, \"featherMillimetres\": 3, \"pointsMillimetres\": [[10, 15], [20, 16]]}]}"),
            Map.entry(
                    "spots",
                    "{\"greyground\": \"spots\", \"version\": 1, \"spots\": [{\"placePixels\": [[20, 20], [40, 30]],"
                            + " \"widthPixels\": 12}]}"),
            Map.entry("plate-shape", "cut:6mm"),
            Map.entry("outline", "rounded:8mm"),
            Map.entry("outline-fade", "5mm"),
            Map.entry("outline-tear", "0.8mm"),
            Map.entry("outside", "black"),
            Map.entry("hardness", "15%"),
            Map.entry("fit", "whole"),
            Map.entry("bleed", "4mm"),
            Map.entry("bevel", "3mm"),
            Map.entry("paper-shrink", "2%,-1%"),
            Map.entry("ink-side", "up"),
            Map.entry("transfers", "2"),
            Map.entry("sheet", "A3"),
            Map.entry("tile", "yes"),
            Map.entry("strip", "offcut"),
            Map.entry("range", "density"),
            Map.entry("mend", "yes"),
            Map.entry("reserve", "9%"));

    /** Numbers that are kept and not typed by themselves. */
    private static final Map<String, Double> NUMBERS = Map.of("quarter-turns", 1.0, "straighten", 2.0);

    /** What the art says of itself whenever it is opened, so that a job that is told otherwise changes nothing. */
    private static final Set<String> OF_THE_ART = Set.of("art-name", "art-digest");

    private static final Map<Map.Entry<Path, Job>, String> MADE = new HashMap<>();

    static List<JobField<?>> settings() {
        return JobFields.ALL.stream()
                .filter(field -> !OF_THE_ART.contains(field.name()))
                .toList();
    }

    @Test
    void everySettingIsAskedFor() {
        Set<String> told = new TreeSet<>(OTHERS.keySet());
        told.addAll(NUMBERS.keySet());
        told.add(FilmFields.CARRIER.name());
        assertEquals(told, settings().stream().map(JobField::name).collect(Collectors.toCollection(TreeSet::new)));
    }

    static List<JobField<?>> some() {
        return Sweep.of(settings());
    }

    @ParameterizedTest
    @MethodSource("some")
    void changesAFilmAPlanOrAProof(JobField<?> field) {
        UnaryOperator<Job> change = change(field);
        Path art = field == HandFields.SOURCE ? PRINT : ART;
        assertTrue(
                JOBS.stream()
                        .map(words -> Told.as(words).apply(small()))
                        .filter(field::appliesTo)
                        .anyMatch(job -> !made(art, job).equals(made(art, change.apply(job)))),
                field.name() + " changes nothing");
    }

    private static UnaryOperator<Job> change(JobField<?> field) {
        if (field == FilmFields.CARRIER) {
            return job -> FilmFields.CARRIER.with(job, new Grain.Stochastic(280, 1));
        }
        Double number = NUMBERS.get(field.name());
        return number == null ? Told.as(field.name(), OTHERS.get(field.name())) : job -> field.withNumber(job, number);
    }

    private static Job small() {
        return Told.as(Map.of("plate", "34x30mm", "resolution", "720dpi", "date", "2026-01-02"))
                .apply(JobFields.usual());
    }

    /** Sheets, films, plan, and what the plate is proofed with. */
    private static String made(Path file, Job job) {
        return MADE.computeIfAbsent(Map.entry(file, job), key -> make(file, job));
    }

    private static String make(Path file, Job job) {
        StringBuilder made = new StringBuilder();
        try (ArtSource art = ArtSource.open(file)) {
            FilmRecipe recipe = FilmRecipe.of(art, job, SHOP, Progress.NONE);
            for (FilmDocument.Film film : recipe.films()) {
                CRC32 bits = new CRC32();
                bits.update(film.rows().maker().make(0, film.rows().height()));
                made.append(film.sheet()).append(' ').append(bits.getValue()).append('\n');
            }
            return made.append(PlanText.of(recipe.plan()))
                    .append(recipe.plate().conditions())
                    .toString();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
