package greyground.desk.page;

import greyground.app.files.Program;
import greyground.desk.look.Controls;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** The program's version and what it is made with: each library's version, whose it is, and its licence, whose text opens below. */
public final class AboutPage extends LaidPage {
    private final ScrollPane rolling;
    private final Label text = Controls.wrapped("", "licence");
    private final VBox parts = new VBox(8);
    private String shown = "";
    private boolean filled;

    public AboutPage(Runnable close) {
        super("about", close);
        text.setId("licence-text");
        Controls.show(text, false);
        rolling = roll(Program.words(), "Put this page away (Escape)", close, parts, text);
    }

    @Override
    protected void opened() {
        if (!filled) {
            fill();
            filled = true;
        }
        rolling.setVvalue(0);
        rolling.requestFocus();
    }

    private void fill() {
        Map<String, String> versions = CarriedParts.versions();
        parts.getChildren()
                .add(Controls.wrapped(
                        "Java " + System.getProperty("java.version") + ", " + System.getProperty("os.name") + " "
                                + System.getProperty("os.arch"),
                        "quiet"));
        CarriedParts.words().forEach(each -> parts.getChildren().add(Controls.wrapped(each)));
        GridPane grid = new GridPane();
        grid.setHgap(24);
        grid.setVgap(8);
        for (double percent : new double[] {40, 26, 34}) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(percent);
            grid.getColumnConstraints().add(column);
        }
        int row = 0;
        licence(grid, row++, "Greyground " + Program.VERSION, "", "Apache License 2.0", "LICENSE");
        for (CarriedParts.Part part : CarriedParts.all()) {
            licence(grid, row++, named(part.jars(), versions), part.by(), part.licence(), part.text());
        }
        licence(grid, row, "Liberation Sans", "", "OFL 1.1", "OFL-1.1.txt");
        parts.getChildren().add(grid);
    }

    /** Names with versions; those that share one say it once. */
    private static String named(List<String> jars, Map<String, String> versions) {
        return jars.stream()
                .collect(Collectors.groupingBy(
                        jar -> Optional.ofNullable(versions.get(jar)).orElse(""),
                        LinkedHashMap::new,
                        Collectors.joining(", ")))
                .entrySet()
                .stream()
                .map(each -> (each.getValue() + " " + each.getKey()).strip())
                .collect(Collectors.joining("; "));
    }

    private void licence(GridPane grid, int row, String what, String by, String licence, String file) {
        Button read = Controls.button(licence, "licence-" + row, "Read the licence of " + what, () -> show(file));
        read.setAccessibleText(licence + ", the licence of " + what);
        read.getStyleClass().add("figure");
        grid.addRow(row, Controls.wrapped(what), Controls.wrapped(by, "quiet"), read);
    }

    /** Opens a licence below, or folds it away. */
    private void show(String file) {
        shown = shown.equals(file) ? "" : file;
        text.setText(shown.isEmpty() ? "" : CarriedParts.notice(shown));
        Controls.show(text, !shown.isEmpty());
        applyCss();
        layout();
        if (!shown.isEmpty()) {
            double whole = rolling.getContent().getBoundsInLocal().getHeight();
            double room = whole - rolling.getViewportBounds().getHeight();
            rolling.setVvalue(
                    room <= 0 ? 0 : Math.min(1, text.getBoundsInParent().getMinY() / room));
        }
    }
}
