package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.finding.Findings;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FindingLinesTest {
    private static Findings tone(double percent, double stated, double printed, OptionalDouble half) {
        return new Findings()
                .put("coveragePercent", percent)
                .put("statedLightness", stated)
                .put("lightness", printed)
                .put("off", printed - stated)
                .put("half95", half);
    }

    @Test
    void sentencesStandBehindTheirWordAndFiguresAloneAreLeftToPrograms() {
        Findings findings = new Findings()
                .say("how", "densitometer, 48 readings of 54 fields", "densitometer")
                .put("kind", "check")
                .list("notes", List.of("one", "another"));
        assertEquals(
                List.of("read    densitometer, 48 readings of 54 fields", "note    one", "note    another"),
                FindingLines.of(findings));
    }

    @Test
    void rowsStandInColumnsAndAColumnThatNoRowFillsIsNotThere() {
        Findings findings = new Findings()
                .rows(
                        "tones",
                        List.of(
                                tone(0, 94.8, 95, OptionalDouble.empty()),
                                tone(83.5, 15.25, 14, OptionalDouble.of(0.5))));
        assertEquals(
                List.of(
                        "tones     film  should print  printed   off  95 %",
                        "         0.0 %       L* 94.8     95.0  +0.2",
                        "        83.5 %       L* 15.3     14.0  -1.3  ±0.5"),
                FindingLines.of(findings));
    }
}
