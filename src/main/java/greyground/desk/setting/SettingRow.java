package greyground.desk.setting;

import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
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
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** One setting on the screen: its name, its value with unit, and how it is known. Says what is wrong below itself. */
final class SettingRow extends VBox {
    private final Setting setting;
    private final BenchModel model;
    private final Supplier<Boolean> inches;
    private final Supplier<LocalDate> today;
    private final Label fault = new Label();
    private final Label unit = new Label();
    private final TextField field = new TextField();
    private final ToggleButton mark = new ToggleButton();
    private final Node control;
    private Consumer<BenchState> showing = state -> {};
    private boolean filling;

    SettingRow(Setting setting, BenchModel model, Supplier<Boolean> inches, Supplier<LocalDate> today) {
        this.setting = setting;
        this.model = model;
        this.inches = inches;
        this.today = today;
        Label name = new Label(setting.label());
        name.setMinWidth(Region.USE_PREF_SIZE);
        HBox.setHgrow(name, Priority.ALWAYS);
        name.setMaxWidth(Double.MAX_VALUE);
        HBox line = new HBox(8, name);
        line.setAlignment(Pos.CENTER_LEFT);
        line.setMinHeight(32);
        fault.getStyleClass().add("fault");
        fault.setWrapText(true);
        fault.setManaged(false);
        fault.setVisible(false);
        getChildren().addAll(line, fault);
        if (setting instanceof Setting.Measure measure) {
            control = number(measure);
            line.getChildren().addAll(control, unit, mark(measure));
        } else {
            control = setting instanceof Setting.Choice<?> choice ? choice(choice) : text((Setting.Text) setting);
            line.getChildren().add(control);
        }
        name.setLabelFor(focus());
    }

    Setting setting() {
        return setting;
    }

    /** What takes the keys. */
    Node focus() {
        return control;
    }

    private Node number(Setting.Measure measure) {
        field.setId("setting-" + setting.id());
        field.getStyleClass().add("number");
        unit.getStyleClass().addAll("quiet", "unit");
        field.setOnAction(entered -> take(measure));
        field.focusedProperty().addListener((what, was, is) -> {
            if (was) {
                take(measure);
                model.letGo();
            }
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
            set(measure, Math.rint(next * 1e6) / 1e6, "step " + setting.id());
        });
    }

    /** What the field says, in the unit beside it or in its own. */
    private double read(Setting.Measure measure) {
        return measure.range().unit().parse(setting.label().toLowerCase(Locale.ROOT), field.getText(), inches.get());
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
            show("");
            return;
        }
        attempt(() -> change(measure, read(measure), ""));
    }

    private void set(Setting.Measure measure, double value, String gesture) {
        attempt(() -> change(measure, value, gesture));
    }

    private void change(Setting.Measure measure, double value, String gesture) {
        model.change(
                setting.label().toLowerCase(Locale.ROOT), gesture, state -> measure.with(state, value, today.get()));
    }

    private void attempt(Runnable change) {
        try {
            change.run();
            show("");
        } catch (Refusal refused) {
            show(String.valueOf(refused.getMessage()));
        }
    }

    private void show(String words) {
        fault.setText(words);
        fault.setManaged(!words.isEmpty());
        fault.setVisible(!words.isEmpty());
    }

    private Node mark(Setting.Measure measure) {
        mark.getStyleClass().setAll("toggle-button", "mark");
        mark.setId("known-" + setting.id());
        if (measure instanceof Setting.ShopNumber shop) {
            mark.setTooltip(new Tooltip());
            mark.setOnAction(pressed -> attempt(() -> model.change(
                    "how " + setting.label().toLowerCase(Locale.ROOT) + " is known",
                    "",
                    state -> shop.known(
                            state, shop.figure(state.workshop()).orElseThrow().isAssumed(), today.get()))));
        } else {
            mark.setVisible(false);
        }
        return mark;
    }

    private <T> Node choice(Setting.Choice<T> choice) {
        ComboBox<Kind.Way<T>> ways = new ComboBox<>();
        ways.setId("setting-" + setting.id());
        ways.getItems().setAll(choice.ways());
        ways.getStyleClass().add("wide");
        ways.setAccessibleText(setting.label());
        ways.setConverter(new StringConverter<>() {
            @Override
            public String toString(Kind.Way<T> way) {
                return way == null ? "" : way.label();
            }

            @Override
            public Kind.Way<T> fromString(String label) {
                return choice.ways().stream()
                        .filter(way -> way.label().equals(label))
                        .findFirst()
                        .orElse(choice.ways().get(0));
            }
        });
        ways.valueProperty().addListener((what, was, is) -> {
            if (!filling && is != null) {
                attempt(() ->
                        model.change(setting.label().toLowerCase(Locale.ROOT), "", state -> choice.with(state, is)));
            }
        });
        showing = state -> ways.setValue(choice.chosen(state).orElse(null));
        return ways;
    }

    private Node text(Setting.Text text) {
        field.setId("setting-" + setting.id());
        field.getStyleClass().add("wide");
        field.setAccessibleText(setting.label());
        Runnable take = () -> {
            if (!filling) {
                attempt(() -> model.change(
                        setting.label().toLowerCase(Locale.ROOT),
                        "",
                        state -> text.with(state, field.getText().strip())));
            }
        };
        field.setOnAction(entered -> take.run());
        field.focusedProperty().addListener((what, was, is) -> {
            if (was) {
                take.run();
            }
        });
        showing = state -> field.setText(text.value(state));
        return field;
    }

    private String shown(Setting.Measure measure) {
        return model.state()
                .flatMap(measure::value)
                .map(value -> measure.range().unit().words(value, inches.get()))
                .orElse("");
    }

    /** Shows what the program found, where it was left to it. */
    void found(Map<JobField<?>, Double> values) {
        Double value = setting instanceof Setting.JobNumber number ? values.get(number.field()) : null;
        if (value != null && setting instanceof Setting.Measure measure) {
            field.setPromptText("found " + measure.range().unit().words(value, inches.get()));
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
                    : upper(each.provenance().words()) + ". Press to call it assumed again.";
            mark.setAccessibleText(setting.label() + ": " + words);
            mark.getTooltip().setText(words);
        });
    }

    private static String upper(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
