package greyground.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.fit.CheckResult;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResidualPlotTest {
    @TempDir
    private Path folder;

    /** An invented plate whose shadows print too light. */
    static CheckResult invented() {
        List<CheckResult.Line> lines = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            double stated = 94.8 - 6.6 * i;
            double off = i > 10 ? 2.6 : 0.7 * Math.sin(2.1 * i);
            lines.add(new CheckResult.Line(
                    i * 0.07,
                    stated,
                    4,
                    stated + off,
                    0.5,
                    0.8,
                    i == 0 ? OptionalDouble.empty() : OptionalDouble.of(-5 * Math.sin(0.26 * i))));
        }
        return new CheckResult(lines);
    }

    /** Every dot stands where its numbers say: its height above the line of nought is in proportion to what it is off. */
    @Test
    void dotsStandInProportion() {
        String svg = ResidualPlot.of("an invented plate", invented()).svg();
        List<double[]> dots = new ArrayList<>();
        Matcher circle = Pattern.compile(
                        "<circle cx=\"([0-9.]+)\" cy=\"([0-9.]+)\" r=\"5\" fill=\"#b4562a\"", Pattern.CASE_INSENSITIVE)
                .matcher(svg);
        while (circle.find()) {
            dots.add(new double[] {Double.parseDouble(circle.group(1)), Double.parseDouble(circle.group(2))});
        }
        // One for each tone and one in the legend.
        assertEquals(14, dots.size(), svg.substring(0, 400));
        List<CheckResult.Line> lines = invented().lines();
        double perLightness = (dots.get(12)[0] - dots.get(0)[0])
                / (lines.get(12).stated() - lines.get(0).stated());
        double perOff = (dots.get(12)[1] - dots.get(3)[1])
                / (lines.get(12).off() - lines.get(3).off());
        for (int i = 0; i < 13; i++) {
            assertEquals(
                    dots.get(0)[0]
                            + perLightness
                                    * (lines.get(i).stated() - lines.get(0).stated()),
                    dots.get(i)[0],
                    0.1);
            assertEquals(
                    dots.get(3)[1] + perOff * (lines.get(i).off() - lines.get(3).off()), dots.get(i)[1], 0.1);
        }
        assertTrue(perLightness > 0 && perOff < 0);
    }

    @Test
    void thePdfSaysTheVerdict() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ResidualPlot.of("an invented plate", invented()).writePdf(bytes);
        Path file = Files.write(folder.resolve("plot.pdf"), bytes.toByteArray());
        try (var document = Loader.loadPDF(file.toFile())) {
            String words = new PDFTextStripper().getText(document);
            assertTrue(words.contains("the darkest 2 print 2.6 L* too light"), words);
        }
        assertEquals(
                1440, ResidualPlot.of("an invented plate", invented()).picture().width());
    }
}
