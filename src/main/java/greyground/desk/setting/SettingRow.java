package greyground.desk.setting;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskWords;
import greyground.film.job.JobField;
import greyground.film.job.Kind;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One setting on the screen: its name, its value with unit, and how it is known. Says what is wrong below itself. */
final class SettingRow extends VBox {
    /** Letters; units no longer than that lie in one column. */
    private static final int SHORT_UNIT = 4;

    private final Setting setting;
    private final BenchModel model;
    private final Supplier<Boolean> inches;
    private final Supplier<LocalDate> today;
    private final Label fault = Controls.wrapped("", "fault");
    private final Label unit = new Label();
    private final TextField field = new TextField();
    private final ToggleButton mark = new ToggleButton();
    private final Control control;
    private Consumer<BenchState> showing = state -> {};
    private boolean filling;

    SettingRow(Setting setting, BenchModel model, Supplier<Boolean> inches, Supplier<LocalDate> today) {
        this.setting = setting;
        this.model = model;
        this.inches = inches;
        this.today = today;
        Label name = Controls.wrapped(setting.label());
        name.setMinWidth(0);
        HBox line = Controls.line(4, Controls.growing(name));
        line.setMinHeight(32);
        say("");
        getChildren().addAll(line, fault);
        if (setting instanceof Setting.Measure measure) {
            control = number(measure);
            line.getChildren().addAll(control, unit);
            if (measure instanceof Setting.ShopNumber shop) {
                line.getChildren().add(mark(shop));
            }
        } else {
            control = setting instanceof Setting.Choice<?> choice ? choice(choice) : text((Setting.Text) setting);
            control.getStyleClass().add("wide");
            control.setAccessibleText(setting.label());
            control.setMaxWidth(Double.MAX_VALUE);
            line.setMinHeight(20);
            VBox.setMargin(control, new Insets(0, 0, 6, 0));
            getChildren().add(1, control);
        }
        control.setId("setting-" + setting.id());
        name.setLabelFor(control);
    }

    Setting setting() {
        return setting;
    }

    Node focus() {
        return control;
    }

    private Control number(Setting.Measure measure) {
        field.getStyleClass().add("number");
        unit.getStyleClass().add("quiet");
        unit.setMinWidth(Region.USE_PREF_SIZE);
        field.setOnAction(entered -> take(measure));
        Controls.whenLeft(field, () -> {
            take(measure);
            model.letGo();
        });
        field.setOnKeyPressed(key -> {
            int steps = key.getCode() == KeyCode.UP ? 1 : key.getCode() == KeyCode.DOWN ? -1 : 0;
            if (steps != 0) {
                step(measure, key.isShiftDown() ? 10 * steps : steps);
                key.consume();
            } else if (key.getCode() == KeyCode.ESCAPE) {
                refresh();
                key.consume();
            }
        });
        showing = state -> {
            String words = shown(measure);
            if (!field.getText().equals(words)) {
                field.setText(words);
            }
            unit.setText(measure.range().unit().symbol(inches.get()));
            Controls.look(unit, "unit", unit.getText().length() <= SHORT_UNIT);
            name(measure, state);
        };
        return field;
    }

    private void step(Setting.Measure measure, int steps) {
        model.state().ifPresent(state -> {
            double least = measure.range().least();
            double present = typed(measure).or(() -> measure.value(state)).orElse(least);
            double next = Math.max(least, Math.min(measure.range().most(), present + steps * measure.step()));
            // Steps of a tenth must not pile up rounding.
            double value = Math.rint(next * 1e6) / 1e6;
            change("step " + setting.id(), each -> measure.with(each, value, today.get()));
        });
    }

    /** What the field says, in the unit beside it or in its own. */
    private double read(Setting.Measure measure) {
        return measure.range().unit().parse(spoken(), field.getText(), inches.get());
    }

    private Optional<Double> typed(Setting.Measure measure) {
        try {
            return Optional.of(read(measure));
        } catch (Refusal notANumber) {
            return Optional.empty();
        }
    }

    private void take(Setting.Measure measure) {
        if (filling || field.getText().equals(shown(measure))) {
            say("");
        } else {
            change(
                    "",
                    state -> measure.told(state, field.getText())
                            .orElseGet(() -> measure.with(state, read(measure), today.get())));
        }
    }

    /** The setting's name within a sentence. */
    private String spoken() {
        return setting.label().toLowerCase(Locale.ROOT);
    }

    private void change(String gesture, UnaryOperator<BenchState> change) {
        change(spoken(), gesture, change);
    }

    /** Changes the model, or says below the row why not. */
    private void change(String what, String gesture, UnaryOperator<BenchState> change) {
        try {
            model.change(what, gesture, change);
            say("");
        } catch (Refusal refused) {
            say(String.valueOf(refused.getMessage()));
        }
    }

    private void say(String words) {
        fault.setText(words);
        Controls.show(fault, !words.isEmpty());
    }

    private Node mark(Setting.ShopNumber shop) {
        mark.getStyleClass().setAll("toggle-button", "mark");
        mark.setId("known-" + setting.id());
        mark.setTooltip(new Tooltip());
        mark.setOnAction(pressed -> change(
                "how " + spoken() + " is known",
                "",
                state -> shop.known(
                        state, shop.figure(state.workshop()).orElseThrow().isAssumed(), today.get())));
        return mark;
    }

    private <T> Control choice(Setting.Choice<T> choice) {
        ComboBox<Kind.Way<T>> ways = Controls.choice(Kind.Way::label);
        ways.getItems().setAll(choice.ways());
        ways.valueProperty().addListener((what, was, is) -> {
            if (!filling && is != null) {
                change("", state -> choice.with(state, is));
            }
        });
        showing = state -> ways.setValue(choice.chosen(state).orElse(null));
        return ways;
    }

    private Control text(Setting.Text text) {
        Runnable take = () -> {
            if (!filling) {
                change("", state -> text.with(state, field.getText().strip()));
            }
        };
        field.setOnAction(entered -> take.run());
        Controls.whenLeft(field, take);
        showing = state -> field.setText(text.value(state));
        return field;
    }

    private String shown(Setting.Measure measure) {
        return model.state()
                .flatMap(measure::value)
                .map(value -> measure.range().unit().words(value, inches.get()))
                .orElse("");
    }

    /** Shows what the program found, where it was left to it, or the word that says so. */
    void found(Map<JobField<?>, Double> values) {
        if (setting instanceof Setting.JobNumber number) {
            field.setPromptText(Optional.ofNullable(values.get(number.field()))
                    .map(value -> "found " + number.range().unit().words(value, inches.get()))
                    .or(() -> number.field().kind().instead())
                    .orElse(""));
        }
    }

    /** Shows the model's value again. */
    void refresh() {
        model.state().ifPresent(state -> {
            filling = true;
            showing.accept(state);
            filling = false;
        });
    }

    private void name(Setting.Measure measure, BenchState state) {
        Optional<Figure> figure = measure.figure(state.workshop());
        String known = figure.map(each -> ", " + each.provenance().words()).orElse("");
        field.setAccessibleText(
                setting.label() + " in " + (unit.getText().isEmpty() ? "numbers" : unit.getText()) + known);
        figure.ifPresent(each -> {
            mark.setText(each.isAssumed() ? "\u25cb" : "\u25cf");
            mark.setSelected(false);
            String words = each.isAssumed()
                    ? "Assumed. Press once you have measured it."
                    : DeskWords.of(each.provenance().words()) + ". Press to call it assumed again.";
            mark.setAccessibleText(setting.label() + ": " + words);
            mark.getTooltip().setText(words);
        });
    }
}
