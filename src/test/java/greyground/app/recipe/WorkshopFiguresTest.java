package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.WedgeStrip;
import greyground.plan.BenchConditions;
import greyground.plan.BenchOrder;
import greyground.plan.PlanRequest;
import greyground.plan.PlanText;
import greyground.plate.PlateProcess;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A workshop asks for no figure that it doesn't use. */
class WorkshopFiguresTest {
    /** A shop whose lamp, bath and frame are no longer as they were tested, so that every correction counts. */
    private static final Workshop SHOP = shop(Map.of(
            "light.hours", 300.0,
            "light.distanceMillimetres", 500.0,
            "bath.temperatureCelsius", 24.0,
            "bath.copperGramsPerLitre", 10.0));

    private static Workshop shop(Map<String, Double> changes) {
        Workshop shop = Workshop.assumed();
        for (var change : changes.entrySet()) {
            shop = shop.with(change.getKey(), Figure.assumed(change.getValue(), "for this test"));
        }
        return shop;
    }

    static Stream<String> everyFigure() {
        return SHOP.figures().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("everyFigure")
    void changesAFilmAPlanOrAProof(String path) {
        Figure present = SHOP.figures().get(path);
        double value = present.value();
        String before = made(SHOP);
        assertTrue(
                DoubleStream.of(value * 1.25, value * 0.8, value * 1.05, value + 1, value + 0.3, value + 50)
                        .anyMatch(other ->
                                other != value && !made(path, other, present).equals(before)),
                path + " changes nothing");
    }

    private static String made(String path, double value, Figure present) {
        try {
            return made(SHOP.with(path, new Figure(value, present.provenance())));
        } catch (Refusal outOfRange) {
            return made(SHOP);
        }
    }

    /** Job, film pixels, plate and print conditions, and plan of every process. */
    private static String made(Workshop shop) {
        return Stream.concat(PlateProcess.all().stream(), Stream.of(PlateProcess.Photogravure.unsaid()))
                .map(process -> made(shop, process))
                .collect(Collectors.joining("\n"));
    }

    private static String made(Workshop shop, PlateProcess process) {
        Job job = new JobWords(Map.of("plate", "60x45mm", "process", process.word()))
                .job(Optional.empty(), JobWordsTest.ART, shop, "2026-01-02");
        FilmPixels pixels = shop.filmPrinter().pixels(job.resolution());
        Figure margin = shop.filmPrinter().marginMillimetres();
        SheetLayout least = new FilmSheets(job, pixels, margin).layout(List.of("a legend"), WedgeStrip.of(job));
        // As small as it can be, so that marks lie where printers leave off.
        Size sheet = new Size(
                Math.ceil(pixels.acrossMillimetres(least.width())), Math.ceil(pixels.downMillimetres(least.height())));
        Job onSheet = job.placed(job.placing().onOneSheet(Optional.of(sheet)));
        PlanRequest request = new PlanRequest(job, 0.4, "curve", "");
        return job.placing()
                + "\n"
                + pixels
                + "\n"
                + new FilmSheets(onSheet, pixels, margin).unprinted(List.of("a legend"))
                + "\n"
                + BenchConditions.ofDepth(shop, process, shop.usualDepthMicrometres(), true)
                + "\n"
                + PlanText.of(BenchOrder.plan(shop, request));
    }
}
