package greyground.desk.window;

import greyground.desk.clock.BenchClocks;
import greyground.desk.model.Place;
import greyground.desk.model.ProofWords;
import greyground.desk.model.Station;
import greyground.film.job.Told;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Goes through all that the window can show of a plate. Every step is to be run on the window's own thread, in order. */
final class DeskWalk {
    private DeskWalk() {}

    /** What is done to see each state, by its name. */
    static Map<String, Runnable> states(DeskWindow desk) {
        Map<String, Runnable> states = new LinkedHashMap<>();
        for (boolean inches : new boolean[] {false, true}) {
            for (Station station : Station.values()) {
                states.put(station.label() + (inches ? " in inches" : ""), () -> {
                    desk.wishes.inches(inches);
                    desk.choose(station);
                });
            }
        }
        states.put("Art, process photogravure", () -> {
            desk.wishes.inches(false);
            desk.tell("process", Told.as(Map.of("process", "photogravure")));
            desk.choose(Station.FILM);
        });
        states.put("Film, halftone", () -> {
            desk.tell("process", Told.as(Map.of("process", "etched-film")));
            desk.tell("dots", Told.as(Map.of("ruling", "40")));
        });
        for (Place place : Place.values()) {
            states.put(place.label(), () -> desk.go(place));
        }
        states.put("Plan with clocks, notes and a log", () -> {
            desk.go(Place.PLAN);
            desk.clocks.all().forEach(BenchClocks.StepClock::startOrStop);
            desk.model.note(
                    "note",
                    "",
                    notes -> notes.withPlate("Second state, warm bath.")
                            .withProof(ProofWords.read("12", ProofWords.Kind.DEPTH, "14"))
                            .withProof(ProofWords.read(
                                    "17", ProofWords.Kind.LIGHTNESS, "10 83, 40 58, 80 27.5, 90 22, 95 20.5")));
            desk.plan.tick();
        });
        states.put("Clocks while a station is looked at", () -> {
            desk.choose(Station.PRINT);
        });
        states.put("Keys", () -> desk.lay(desk.keys));
        states.put("About", () -> desk.lay(desk.about));
        states.put("Preferences", () -> desk.lay(desk.preferences));
        states.put("A question", () -> {
            desk.putAway();
            desk.clocks.begun().forEach(BenchClocks.StepClock::setBack);
            desk.mayClose(() -> {});
        });
        states.put("A refusal", () -> {
            desk.frame.messages.withdraw();
            desk.choose(Station.FILM);
            ((javafx.scene.control.TextField) desk.root().lookup("#setting-bleed")).setText("77");
            desk.root().lookup("#setting-bleed").fireEvent(new javafx.event.ActionEvent());
            desk.tell("plate", Told.as(Map.of("plate", "999 furlongs")));
        });
        return states;
    }

    /** The list of states must not run dry unseen. */
    static List<String> names(DeskWindow desk) {
        return List.copyOf(states(desk).keySet());
    }
}
