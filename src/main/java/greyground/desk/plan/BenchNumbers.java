package greyground.desk.plan;

import greyground.desk.look.Controls;
import greyground.plan.CardNumber;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The few numbers of a plan that matter, in type that is read from where one stands, as the bench card on paper sets them. */
final class BenchNumbers extends FlowPane {
    private static final double WIDTH = 143;

    BenchNumbers(List<CardNumber> numbers) {
        super(16, 8);
        setId("bench-numbers");
        setPadding(new Insets(8, 0, 16, 0));
        numbers.forEach(number -> getChildren().add(number(number)));
    }

    private static VBox number(CardNumber number) {
        VBox all = new VBox(
                Controls.wrapped((number.restsOnAssumption() ? "\u25cb " : "") + number.act(), "quiet"),
                Controls.wrapped(number.value(), "bench-number"),
                Controls.wrapped(number.conditions(), "quiet"));
        all.setPrefWidth(WIDTH);
        all.setAccessibleText(number.act() + ": " + number.value() + ", " + number.known());
        return all;
    }
}
