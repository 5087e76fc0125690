package greyground.app.teach;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.scan.ScanChoices;
import greyground.tone.Lightness;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedValuesTest {
    private static final TestPlate PLATE = TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(100, 30), 2, 1, 75, 180));

    @TempDir
    Path folder;

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("values.csv"), text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "row,column,density\n1,2,0.35\n2,1,1.2\n",
                "\uFEFFRow;Column;D\r\n# by the window\r\n\r\n1;2;0,35\r\n2;1;1,20\r\n",
                "Row\tCol\tDensity\n1\t2\t0,35\n2\t1\t1.2",
                "\"row\", \"column\", \"density\"\n1, 2, \"0.35\"\n2, 1, 1.2\n"
            })
    void fieldsAreFoundByRowAndColumnHoweverTheTableIsWritten(String text) throws Exception {
        List<MeasuredPatch> read = TypedValues.fields(file(text), PLATE);
        ChartFields fields = ChartFields.of(PLATE);
        assertEquals(2, read.size());
        assertEquals(fields.at(1, 2).coverage(), read.get(0).coverage());
        assertEquals(ChartFields.x(fields.at(1, 2)), read.get(0).xMillimetres());
        // Density is -log10 of luminance (ISO 5-4), L* by CIE 15.
        assertEquals(116 * Math.cbrt(Math.pow(10, -0.35)) - 16, read.get(0).lightness(), 1e-9);
        assertEquals(Lightness.ofDensity(1.2), read.get(1).lightness(), 1e-9);
        assertTrue(fields.name(read.get(0)).startsWith("row 1, column 2 ("), fields.name(read.get(0)));
    }

    @Test
    void levelsMayBeGivenByTheirCoverage() throws Exception {
        List<MeasuredPatch> read = TypedValues.fields(file("coverage;L*\n0;93,5\n7,5 %;84\n100;88\n"), PLATE);
        assertEquals(
                List.of(0.0, 0.075, 1.0),
                read.stream().map(MeasuredPatch::coverage).toList());
        assertEquals(93.5, read.get(0).lightness());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "row,column,density~1,2,thick|line 2: density is \"thick\"",
                "row,column,density~# note~1,2,4.5|line 3: density is \"4.5\"; it must be a number from 0 to 4",
                "row,column,density~1,2,0,35|line 2: has 4 cells where the header has 3: with decimal commas",
                "row;column;density~1;2|line 2: has 2 cells where the header has 3",
                "row,column,density~1,,0.3|line 2: has no column",
                "row,column,density~1.5,1,0.3|line 2: row is 1.5; it must be a whole number",
                "row,column,density~99,1,0.3|line 2: row is \"99\"",
                "row,column,density~1,99,0.3|line 2: column is \"99\"",
                "row,column,coverage,density~1,1,33,0.3|line 2: coverage is 33 %, but the field there has",
                "coverage,density~33,0.3|line 2: coverage is 33 %, which no field of this test plate has",
                "row,column,colour~1,1,0.3|line 1: the column \"colour\" is unknown",
                "row,row,density~1,1,0.3|line 1: the column \"row\" is there twice",
                "row,column~1,1|one column of density or one of L*",
                "row,density~1,0.3|no column \"column\"",
                "density~0.3|no column \"coverage\"",
                "row,column,density|holds no rows",
                "row,column,density~1,1,NaN|line 2: density is \"NaN\""
            })
    void faultIsNamedByItsLineInOneLine(String text, String named) throws Exception {
        Refusal refusal = assertThrows(Refusal.class, () -> TypedValues.fields(file(text.replace('~', '\n')), PLATE));
        assertTrue(refusal.getMessage().contains(named), refusal.getMessage());
        assertFalse(refusal.getMessage().contains("\n"));
    }

    @Test
    void reflectionWedgeIsReadWithItsPlacesOnTheScan() throws Exception {
        assertEquals(
                List.of(new ScanChoices.Reference(120, 80, 40, 0.05), new ScanChoices.Reference(180, 80, 40, 1.5)),
                TypedValues.reference(file("x;y;side;density\n120;80;40;0,05\n180;80;40;1,5\n")));
        Refusal refusal = assertThrows(Refusal.class, () -> TypedValues.reference(file("x;y;density\n1;2;0,1\n")));
        assertTrue(refusal.getMessage().contains("no column \"side\""), refusal.getMessage());
    }
}
