package greyground.app.inks;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.JobPlate;
import greyground.chart.InkChart;
import greyground.chart.InkChart.PlateTones;
import greyground.chart.InkPatch;
import greyground.chart.InkPatch.Full;
import greyground.chart.Recipe;
import greyground.colour.Acceptance;
import greyground.colour.InkLight;
import greyground.colour.InksInRegister;
import greyground.colour.Lab;
import greyground.colour.MeasuredLight;
import greyground.colour.SmoothSpectrum;
import greyground.colour.Xyz;
import greyground.film.job.JobFields;
import greyground.fit.MeasuredResponse;
import greyground.ink.InkSet;
import greyground.ink.InksFile;
import greyground.ink.PrintingInk;
import greyground.ink.PrintingInk.Opacity;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.simulation.ForeignInks;
import greyground.tone.Lightness;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Inks learnt from the test prints of {@link ForeignInks}, on tones that no test plate had. */
class ForeignInksTest {
    private static final Workshop SHOP = Workshop.assumed();
    private static final double FULL = 0.88;
    private static final List<String> NAMES = List.of("yellow", "magenta", "blue", "black");

    private static InkChart laidOut(int inks) {
        PlateTones tones =
                new PlateTones(List.of(20, 60, 120, 200, 300, 420, 560, 720), 350, List.of(100, 250, 450, 680), 880);
        return InkChart.of(
                Recipe.of(Recipe.Kind.INKS, new Size(120, 150), 2, 3, 75, 180),
                Collections.nCopies(inks, tones),
                inks - 1);
    }

    private static double[] printed(InkPatch patch) {
        return patch.coveragePerMille().stream()
                .mapToDouble(level -> level / 880.0)
                .toArray();
    }

    private static Xyz xyz(double[] values) {
        return new Xyz(values[0], values[1], values[2]);
    }

    /** What a scan and a spectrophotometer see of a test print. */
    private record Print(InkChart chart, Map<Integer, Xyz> shares, Map<Integer, Lab> measured, Lab sheet) {
        static Print of(ForeignInks foreign, int inks) {
            InkChart chart = laidOut(inks);
            Map<Integer, Xyz> shares = new HashMap<>();
            Map<Integer, Lab> measured = new HashMap<>();
            for (int i = 0; i < chart.patches().size(); i++) {
                double[] spectrum = foreign.print(printed(chart.patches().get(i)), foreign.wiped(inks, 0.03));
                shares.put(i, Xyz.ofLight(foreign.scanned(spectrum, 0.003)));
                measured.put(i, Lab.of(xyz(foreign.colour(spectrum))));
            }
            return new Print(chart, shares, measured, Lab.of(xyz(foreign.colour(foreign.sheet()))));
        }

        /** One field of each full tone, then of every other ramp level. */
        TypedColours typed(int count) {
            Map<Integer, Lab> some = new HashMap<>();
            List<InkPatch.Role> had = new ArrayList<>();
            for (int pass = 0; pass < 2; pass++) {
                for (int i = 0; i < chart.patches().size() && some.size() < count; i++) {
                    InkPatch.Role role = chart.patches().get(i).role();
                    if (!role.isCheck() && (pass == 1 || role instanceof Full) && !had.contains(role)) {
                        had.add(role);
                        some.put(i, measured.get(i));
                    }
                }
            }
            return new TypedColours(Optional.of(sheet), some);
        }

        PrintColours colours(TypedColours typed) {
            return PrintColours.of(chart, shares, new Xyz(0.85, 0.88, 0.66), false, typed);
        }
    }

    private static InkSet believed(int inks) {
        List<PrintingInk> all = IntStream.range(0, inks)
                .mapToObj(i -> new PrintingInk(
                        NAMES.get(i),
                        Optional.of(new Lab(80 - 20 * i, 20 * i, 30 - 20 * i)),
                        10,
                        1,
                        Opacity.TRANSPARENT))
                .toList();
        return new InkSet(Optional.empty(), all, List.of(), Acceptance.WHOLE);
    }

    private static InkLesson lesson(Print print, PrintColours colours) {
        return InkLesson.of(
                new InkLesson.Told(
                        print.chart(),
                        believed(print.chart().tones().size()),
                        SHOP,
                        Collections.nCopies(print.chart().tones().size(), JobPlate.making(SHOP, JobFields.usual())),
                        Collections.nCopies(print.chart().tones().size(), 0.1),
                        LocalDate.of(2026, 12, 1),
                        "scan"),
                colours);
    }

    /** As a set made of the learnt inks would be foretold. */
    private static Lab foretold(InkSet inks, double[] shares) {
        List<double[]> full = new ArrayList<>();
        List<double[]> alone = new ArrayList<>();
        for (int ink = 0; ink < shares.length; ink++) {
            full.add(alone(inks, ink, FULL));
            alone.add(alone(inks, ink, FULL * shares[ink]));
        }
        InksInRegister print = inks.inRegister(SHOP, full);
        return Lab.of(SmoothSpectrum.colour(print.print(alone)));
    }

    private static double[] alone(InkSet inks, int ink, double coverage) {
        MeasuredResponse response =
                inks.inks().get(ink).tones().orElseThrow().response().response();
        double paperLight = Math.pow(10, -SHOP.paper().whiteDensity().value());
        InkLight light = inks.light(ink, SHOP);
        double[] own = {Math.log(Lightness.toLuminance(response.lightness(coverage)) / paperLight)};
        double[] spectrum = inks.paperInBands(SHOP);
        for (int band = 0; band < spectrum.length; band++) {
            spectrum[band] *= Math.exp(light.logarithm(band, own));
        }
        return spectrum;
    }

    /** Inks known by a scan of their swatches, tones in proportion to the film's black, overprints as products. */
    private static Lab uncalibrated(ForeignInks foreign, double[] shares) {
        double[] paper = SmoothSpectrum.of(Xyz.ofLight(0.9, 0.9, 0.88)).orElseThrow();
        List<double[]> alone = new ArrayList<>();
        for (int ink = 0; ink < shares.length; ink++) {
            double[] one = new double[shares.length];
            one[ink] = 1;
            double[] scanned = foreign.scanned(foreign.print(one, foreign.even(shares.length)), 0);
            Xyz swatch = Xyz.ofLight(0.9 * scanned[0], 0.9 * scanned[1], 0.88 * scanned[2]);
            double[] full = MeasuredLight.shares(paper, swatch);
            double[] own = new double[paper.length];
            for (int band = 0; band < own.length; band++) {
                own[band] = paper[band] * Math.pow(1 - shares[ink] * (1 - Math.pow(full[band], 1 / 1.7)), 1.7);
            }
            alone.add(own);
        }
        return Lab.of(SmoothSpectrum.colour(new InksInRegister(paper, new double[paper.length]).print(alone)));
    }

    private static double at(List<Double> sorted, double share) {
        return sorted.get((int) Math.min(sorted.size() - 1, Math.floor(share * sorted.size())));
    }

    @ParameterizedTest
    @CsvSource({"2, 1", "3, 2", "3, 3", "4, 6"})
    void inksOfAnotherShopAreLearnt(int inks, long seed) {
        ForeignInks foreign = new ForeignInks(inks, seed);
        Print print = Print.of(foreign, inks);
        InkLesson lesson = lesson(print, print.colours(print.typed(24)));
        InkSet learnt = InksFile.read(InksFile.text(lesson.learnt()));
        assertEquals(lesson.learnt(), learnt);
        List<Double> after = new ArrayList<>();
        List<Double> before = new ArrayList<>();
        for (double[] shares : foreign.tones(inks, 200)) {
            Lab truth = Lab.of(xyz(foreign.colour(foreign.print(shares, foreign.even(inks)))));
            after.add(foretold(learnt, shares).difference(truth));
            before.add(uncalibrated(foreign, shares).difference(truth));
        }
        Collections.sort(after);
        Collections.sort(before);
        String words = String.format(
                "%d inks, seed %d: before %.1f / %.1f / %.1f, learnt %.2f / %.2f / %.2f; said +- %.1f, scanner %.2f, wiping %.2f, checks %s, taken %d of %d",
                inks,
                seed,
                at(before, .5),
                at(before, .95),
                at(before, 1),
                at(after, .5),
                at(after, .95),
                at(after, 1),
                lesson.doubt().orElseThrow(),
                print.colours(print.typed(24)).scannerError().orElseThrow(),
                lesson.wiping(),
                lesson.checks().stream().map(off -> String.format("%.1f", off)).toList(),
                learnt.overprints().size(),
                lesson.overprints().size());
        assertTrue(at(after, .5) < 2, words);
        assertTrue(at(after, .95) < 5, words);
        assertTrue(at(after, .5) < 0.5 * at(before, .5), words);
        assertTrue(at(after, .95) < lesson.doubt().orElseThrow(), words);
    }

    /** One of three like fields under a thumb teaches nothing, and is told. */
    @Test
    void aFieldThatItsLikeContradictIsLeftOut() {
        ForeignInks foreign = new ForeignInks(2, 12);
        Print print = Print.of(foreign, 2);
        List<InkPatch.Role> roles =
                print.chart().patches().stream().map(InkPatch::role).toList();
        Lab before = lesson(print, print.colours(TypedColours.NONE))
                .learnt()
                .inks()
                .get(1)
                .patch()
                .orElseThrow();
        print.shares().put(roles.indexOf(new Full(2)), new Xyz(0.3, 0.25, 0.1));
        List<String> said = new ArrayList<>();
        PrintColours seen = print.colours(TypedColours.NONE).agreeing(said::add);
        assertEquals(1, said.size());
        assertTrue(said.get(0).startsWith("1 field is left out"), said.get(0));
        Lab after = lesson(print, seen).learnt().inks().get(1).patch().orElseThrow();
        assertTrue(after.difference(before) < 1, before + ", " + after);
        assertEquals(
                0,
                print.colours(TypedColours.NONE).fields().size() - seen.fields().size() - 1);
    }

    /** A plate that was left out is told by its number and ink. */
    @Test
    void aPlateThatWasNotPrintedIsTold() {
        ForeignInks foreign = new ForeignInks(3, 7);
        Print print = Print.of(foreign, 3);
        for (int i = 0; i < print.chart().patches().size(); i++) {
            double[] shares = printed(print.chart().patches().get(i));
            shares[1] = 0;
            double[] spectrum = foreign.print(shares, foreign.wiped(3, 0.02));
            print.shares().put(i, Xyz.ofLight(foreign.scanned(spectrum, 0.003)));
        }
        PrintColours colours = print.colours(TypedColours.NONE);
        String words = String.valueOf(
                assertThrows(Refusal.class, () -> lesson(print, colours)).getMessage());
        assertTrue(words.contains("plate 2, magenta, printed nothing"), words);
    }

    /** Without anything measured nothing is promised, and the file is of the scanner's own colours. */
    @Test
    void withoutMeasuredFieldsNothingIsPromised() {
        ForeignInks foreign = new ForeignInks(2, 8);
        Print print = Print.of(foreign, 2);
        PrintColours colours = print.colours(TypedColours.NONE);
        assertTrue(colours.words().contains("sRGB is assumed"), colours.words());
        assertTrue(lesson(print, colours).doubt().isEmpty());
    }

    @Test
    void fewOrAlikeFieldsDoNotCharacteriseAScanner() {
        ForeignInks foreign = new ForeignInks(3, 9);
        Print print = Print.of(foreign, 3);
        String few = String.valueOf(
                assertThrows(Refusal.class, () -> print.colours(print.typed(5))).getMessage());
        assertTrue(few.contains("number of colours that were measured is 6"), few);
    }
}
