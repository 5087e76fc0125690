package greyground.app.teach;

import greyground.chart.LevelPatch;
import greyground.chart.TestPlate;
import greyground.film.compose.TestPlateSheet;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;

/**
 * The wedge's fields by row and column, as they are numbered beside the plate and listed in its plan: rows from the top, from 1, and
 * in each row the fields from the left.
 */
record ChartFields(List<List<LevelPatch>> rows) {
    private static final double SAME_PLACE_MILLIMETRES = 0.5;

    static ChartFields of(TestPlate plate) {
        return new ChartFields(TestPlateSheet.fields(plate));
    }

    int rowCount() {
        return rows.size();
    }

    int columns(int row) {
        return rows.get(row - 1).size();
    }

    LevelPatch at(int row, int column) {
        return rows.get(row - 1).get(column - 1);
    }

    static MeasuredPatch read(LevelPatch field, double lightness) {
        return new MeasuredPatch(field.coverage(), lightness, x(field), y(field), 1);
    }

    static double x(LevelPatch field) {
        return field.area().middleX() / 1000;
    }

    static double y(LevelPatch field) {
        return field.area().middleY() / 1000;
    }

    /** "row 3, column 7 (80 %)" of what was read there; its place in mm where no field lies. */
    String name(MeasuredPatch read) {
        for (int row = 1; row <= rows.size(); row++) {
            for (int column = 1; column <= columns(row); column++) {
                LevelPatch field = at(row, column);
                if (Math.abs(x(field) - read.xMillimetres()) < SAME_PLACE_MILLIMETRES
                        && Math.abs(y(field) - read.yMillimetres()) < SAME_PLACE_MILLIMETRES) {
                    return "row " + row + ", column " + column + " (" + Refusal.plain(field.coveragePerMille() / 10.0)
                            + " %)";
                }
            }
        }
        return Refusal.plain(read.coverage() * 100) + " %";
    }

    Optional<Integer> level(double coveragePercent) {
        return rows.stream()
                .flatMap(List::stream)
                .map(LevelPatch::coveragePerMille)
                .filter(level -> Math.abs(level / 10.0 - coveragePercent) < 0.05)
                .findFirst();
    }
}
