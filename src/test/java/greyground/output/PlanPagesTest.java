package greyground.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.FilmFields;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.plan.BenchOrder;
import greyground.plan.CardNumber;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanRequest;
import greyground.plate.PlateProcess;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.io.ByteArrayOutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The plan on paper, of every process: the bench card comes first, nothing that the plan says is lost, and it stays short. */
class PlanPagesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 6);

    /** Five numbers, six where screen and image are exposed apart, three where nothing is bitten; A4 upright. */
    static Stream<PlateProcess> everyProcess() {
        return PlateProcess.all().stream();
    }

    private static PlanDocument document(PlateProcess process, Workshop shop) {
        Job job = FilmFields.PROCESS.with(JobFields.usual(), process);
        ExposurePlan plan = BenchOrder.plan(shop, new PlanRequest(job, 0.4, "predicted", ""));
        return new PlanDocument("Marsh", "150 x 200 mm", DAY, "Greyground", List.of(), List.of(), plan);
    }

    private static byte[] pdf(PlanDocument document) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        FilmPdf.writePlan(document, out);
        return out.toByteArray();
    }

    private static String text(PDDocument pdf, int first, int last) throws Exception {
        PDFTextStripper words = new PDFTextStripper();
        words.setStartPage(first);
        words.setEndPage(last);
        return words.getText(pdf).replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void theCardIsFirstAndAllIsSaidOnThreePages(PlateProcess process) throws Exception {
        PlanDocument document = document(process, Workshop.assumed());
        ExposurePlan plan = document.plan();
        try (PDDocument pdf = Loader.loadPDF(pdf(document))) {
            assertTrue(pdf.getNumberOfPages() <= 3, process.word() + ": " + pdf.getNumberOfPages());
            String card = text(pdf, 1, 1);
            for (CardNumber number : plan.card()) {
                assertTrue(card.contains(number.act()) && card.contains(number.value()), number + " in " + card);
                number.blanks().forEach(blank -> assertTrue(card.contains(blank), blank));
            }
            for (ExposurePlan.Step step : plan.atTheBench()) {
                assertTrue(card.contains(step.title()), step.title());
            }
            assertTrue(card.contains("State 3") && card.contains(plan.caution()), card);
            // Columns break words' order between lines, never within a line's start.
            String rest = text(pdf, 2, pdf.getNumberOfPages());
            for (ExposurePlan.Step step : plan.atTheBench()) {
                assertTrue(rest.contains(step.title()), step.title());
                Stream.concat(step.advice().stream(), step.cautions().stream())
                        .forEach(words -> assertTrue(rest.contains(start(words)), start(words)));
                step.lines()
                        .forEach(line -> assertTrue(rest.contains(line.value().split(" ")[0]), line.toString()));
            }
        }
    }

    private static String start(String words) {
        String[] each = words.split(" ");
        return String.join(" ", List.of(each).subList(0, Math.min(3, each.length)));
    }

    @ParameterizedTest
    @MethodSource("everyProcess")
    void numbersAreReadFromWhereOneStands(PlateProcess process) throws Exception {
        PlanDocument document = document(process, Workshop.assumed());
        List<String> large = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(pdf(document))) {
            PDFTextStripper words = new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> places) {
                    // 40 pt: digits of 10 mm.
                    if (places.get(0).getFontSizeInPt() >= 40) {
                        large.add(text.strip());
                    }
                }
            };
            words.setEndPage(1);
            words.getText(pdf);
        }
        assertEquals(
                document.plan().card().stream()
                        .map(number -> number.value().split(" ")[0])
                        .toList(),
                large);
    }

    @Test
    void theCardHoldsTheNumbersOfTheTrade() {
        List<String> etched = document(new PlateProcess.EtchedFilm(), Workshop.assumed()).plan().card().stream()
                .map(number -> number.act() + " " + number.value())
                .toList();
        assertEquals(List.of("Thin 27 min", "Expose 150 s", "Develop 5 min", "Harden 10 min", "Bite 20 min"), etched);
        assertEquals(
                List.of("Expose", "Develop", "Harden"),
                document(new PlateProcess.UnetchedFilm(), Workshop.assumed()).plan().card().stream()
                        .map(CardNumber::act)
                        .toList());
    }

    @Test
    void aTitleTooLongForTheCardSaysThatItGoesOn() throws Exception {
        PlanDocument marsh = document(new PlateProcess.EtchedFilm(), Workshop.assumed());
        String title = "reeds and water ".repeat(20);
        PlanDocument named =
                new PlanDocument(title, marsh.subject(), DAY, marsh.program(), List.of(), List.of(), marsh.plan());
        try (PDDocument pdf = Loader.loadPDF(pdf(named))) {
            String card = text(pdf, 1, 1);
            assertTrue(card.contains("\u2026") && card.contains("Bite"), card);
        }
    }

    @Test
    void warningsShowOnTheCard() throws Exception {
        Workshop long45 = Workshop.assumed().with("resist.thinningMinutes", Figure.measured(45, DAY, "strips"));
        try (PDDocument pdf = Loader.loadPDF(pdf(document(new PlateProcess.EtchedFilm(), long45)))) {
            String card = text(pdf, 1, 1);
            assertTrue(card.contains("1 warning on the next pages"), card);
            assertTrue(card.contains("measured 2026-03-06"), card);
        }
    }

    @Test
    void theCardSaysWhatIsPrintedOnFilm() throws Exception {
        for (int films : new int[] {1, 2, 3}) {
            FilmDocument.Film[] all = new FilmDocument.Film[films];
            for (int i = 0; i < films; i++) {
                all[i] = SampleFilm.film(360, 80, 70, 1);
            }
            try (PDDocument pdf = Loader.loadPDF(Written.pdf(SampleFilm.document(all), 2))) {
                String pages =
                        List.of("page 1", "pages 1 and 2", "pages 1 to 3").get(films - 1);
                String card = text(pdf, films + 1, films + 1);
                assertTrue(card.contains("Print " + pages + " on film, the rest on paper."), card);
            }
        }
    }

    @Test
    void aPlanOfItsOwnIsArchivable() throws Exception {
        Archivable.check(pdf(document(new PlateProcess.EtchedFilm(), Workshop.assumed())));
    }
}
