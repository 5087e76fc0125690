package greyground.film.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Kind.Art;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.tone.RangeMapping;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Laws that every setting of a job keeps. */
class JobFieldsTest {
    /** Under these each setting applies somewhere. */
    private static final List<Map<String, String>> PLATES = List.of(
            Map.of(),
            Map.of("ruling", "40"),
            Map.of("process", "photogravure"),
            Map.of("process", "sprayed-aquatint"),
            Map.of("source", "line"),
            Map.of("sheet", "A3"),
            Map.of("outline", "ellipse"));

    /** Another value than the usual one, as it may be typed. */
    private static final Map<String, String> OTHERS = others();

    private static Map<String, String> others() {
        Map<String, String> words = new HashMap<>(Map.of(
                "title", "Low water",
                "date", "2026-03-31",
                "plate", "8x10in",
                "process", "unetched-film",
                "screen-black", "45%",
                "screen-spacing", "0.14mm",
                "aquatint-land", "42 %",
                "aquatint-grain", "65um",
                "resolution", "567 dots/cm"));
        words.putAll(Map.of(
                "grain", "222um",
                "seed", "-7",
                "ruling", "100lpi",
                "angle", "-12.5",
                "dots", "line",
                "page", "3",
                "rotate", "273.2",
                "crop", "10%,5%,33.3333%,50%",
                "white", "81.25%",
                "black", "2%"));
        words.putAll(Map.of(
                "fit", "whole",
                "bleed", "0,15in",
                "bevel", "0mm",
                "paper-shrink", "0.7%,-0.4%",
                "ink-side", "up",
                "transfers", "2",
                "sheet", "B3 landscape",
                "tile", "yes",
                "range", "density",
                "mend", "yes"));
        words.put("through", "yellow");
        words.put("emulsion", "0.3,0.6,0.1");
        words.put("source", "printed");
        words.put("even-paper", "3.75%");
        words.put("threshold", "62.5%");
        words.put("specks", "85um");
        words.put("edge-growth", "7.5um");
        words.put("tones", "30:38.25,60:64");
        words.put("middle", "-4.5");
        words.put("crisp", "plate");
        words.put("local-contrast", "25%");
        words.put("crisp-radius", "62um");
        words.put(
                "touches",
                "{\"greyground\": \"touches\", \"version\": 1, \"touches\": [{\"shape\": \"gradient\", \"deepen\": 4.5,"
                        + " \"fromMillimetres\": [0, 0.125], \"toMillimetres\": [3, 40]}]}");
        words.put(
                "spots",
                "{\"greyground\": \"spots\", \"version\": 1, \"spots\": [{\"placePixels\": [[3.5, 0.125], [9, 4]],"
                        + " \"widthPixels\": 2.5, \"accepted\": false}]}");
        words.put("plate-shape", "rounded:8mm");
        words.put("outline", "polygon:10mm,12.5mm:-3mm,80mm:60mm,70.125mm");
        words.put("outline-fade", "7.5mm");
        words.put("outline-tear", "0.8mm,7");
        words.put("outside", "black");
        words.put("hardness", "15%");
        words.put("reserve", "4%");
        words.put("strip", "offcut");
        words.put("split", "1.65,1.07,0.03mm,45%");
        return words;
    }

    static List<JobField<?>> typed() {
        return JobFields.ALL.stream().filter(JobField::isTyped).toList();
    }

    /** The first of the plates for which a setting means anything. */
    private static Job plateOf(JobField<?> field) {
        return PLATES.stream()
                .map(words -> Told.as(words).apply(JobFields.usual()))
                .filter(field::appliesTo)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void eachIsNamedOnceAndSaysWhatItIs() {
        Set<String> names = new HashSet<>();
        for (JobField<?> field : JobFields.ALL) {
            assertTrue(names.add(field.name()), field.name());
            assertTrue(!field.isTyped() || field.help().matches("(?s)[A-Z].{15,}[.]"), field.name());
        }
        assertEquals(
                OTHERS.keySet(),
                new HashSet<>(typed().stream().map(JobField::name).toList()));
    }

    @Test
    void theUsualIsWhatAnEmptyFileHas() {
        Job usual = JobFields.usual();
        Job empty = JobFile.read(
                "{\"greyground\": \"job\", \"version\": 1, \"plate\": {\"widthMillimetres\": 148, \"heightMillimetres\": 210}}");
        assertEquals(
                usual,
                FilmFields.RESERVE.with(empty, Optional.empty()),
                "but for the reserve, which older jobs had none of");
        for (JobField<?> field : JobFields.ALL) {
            assertEquals(field.usual(), field.of(usual), field.name());
        }
    }

    @ParameterizedTest
    @MethodSource("typed")
    void comesBackFromItsOptionAndFromTheFile(JobField<?> field) {
        Job plate = plateOf(field);
        Job told = Told.as(field.name(), OTHERS.get(field.name())).apply(plate);
        assertNotEquals(field.of(plate), field.of(told), "it was told");
        assertEquals(
                field.text(told),
                field.text(Told.as(field.name(), field.text(told)).apply(plate)),
                "in its words");
        assertEquals(told, JobFile.read(JobFile.text(told)), "as its file holds it");
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void takesBothItsEndsAndNothingPastThem(JobField<?> field) {
        Range range = field.kind().range().orElseThrow();
        if (range.most() == Long.MAX_VALUE) {
            assertThrows(Refusal.class, () -> field.told(plateOf(field), "9223372036854775808"));
            return;
        }
        for (double end : new double[] {range.least(), range.most()}) {
            double beyond = end + (end == range.least() ? -1 : 1) * field.kind().step();
            Job job = field.told(plateOf(field), range.unit().text(end));
            assertEquals(
                    field.name().equals("rotate") ? 0 : end, field.number(job).orElseThrow(), 1e-9);
            for (Runnable telling : List.<Runnable>of(
                    () -> field.told(plateOf(field), range.unit().text(beyond)),
                    () -> field.withNumber(plateOf(field), beyond))) {
                String said = String.valueOf(
                        assertThrows(Refusal.class, telling::run, field.name()).getMessage());
                assertTrue(said.contains("negative") || said.contains(named(range)), said);
            }
        }
    }

    private static String named(Range range) {
        return "between " + Refusal.plain(range.unit().shown(range.least(), false)) + " and "
                + Refusal.plain(range.unit().shown(range.most(), false));
    }

    static List<JobField<?>> numbers() {
        return typed().stream()
                .filter(field -> field.kind().range().isPresent())
                .toList();
    }

    /** What belongs to one kind of plate says so on another, and what does not is taken. */
    @Test
    void aSettingOfAnotherPlateSaysWhoseItIs() {
        for (String name :
                List.of("angle", "dots", "screen-black", "screen-spacing", "aquatint-land", "aquatint-grain")) {
            String said = String.valueOf(assertThrows(
                            Refusal.class, () -> Told.as(name, OTHERS.get(name)).apply(JobFields.usual()))
                    .getMessage());
            assertTrue(said.startsWith("--" + name + " belongs to ") && said.contains(": add --"), said);
        }
    }

    @Test
    void whatIsLeftOutOfAHalftoneOrAGrainStays() {
        Job line =
                Told.as(Map.of("ruling", "40", "angle", "30", "dots", "line")).apply(JobFields.usual());
        Job finer = Told.as("ruling", "52").apply(line);
        assertEquals(30, FilmFields.ANGLE.of(finer));
        assertEquals(FilmFields.DOTS.of(line), FilmFields.DOTS.of(finer));
        Job seeded = Told.as("seed", "7").apply(JobFields.usual());
        assertEquals(7, FilmFields.SEED.of(Told.as("grain", "150um").apply(seeded)));
    }

    @Test
    void aContinuousFilmLosesItsMendingAndAGrainComesBackAsUsual() {
        Job mended = Told.as("mend", "yes").apply(JobFields.usual());
        Job continuous = Told.as("process", "photogravure").apply(mended);
        assertEquals(JobFields.usual(), Told.as("process", "etched-film").apply(continuous));
    }

    @Test
    void aFragmentMayBeGivenInPixelsOfTheTurnedArt() {
        Job job = JobFields.told(
                JobFields.usual(), Map.of("rotate", "90", "crop", "30,40,150px,200px"), new Art(400, 300));
        assertEquals(new ArtChoice.Crop(0.1, 0.1, 0.5, 0.5), job.art().crop());
    }

    /** Whatever the order in which they are told, the fragment that turned art fills is that of the plate told with it. */
    @Test
    void theFragmentThatIsCoveredIsThatOfTheWholeJob() {
        Map<String, String> words = Map.of("crop", "covered", "rotate", "94", "plate", "100x80mm", "bleed", "0mm");
        Job job = JobFields.told(JobFields.usual(), words, new Art(400, 300));
        assertEquals(
                LevelledArt.of(300, 400, job.art()).covered(job.plate(), job.placing()),
                job.art().crop());
    }

    /** The words that a range mapping is looked up by, elsewhere. */
    @Test
    void everyWayToFitTonesIsKnown() {
        var ways = ArtFields.RANGE.kind().ways();
        assertEquals(
                ways.size(),
                ways.stream()
                        .map(way -> RangeMapping.named(way.word()))
                        .distinct()
                        .count());
    }
}
