package greyground.desk.model;

import greyground.app.sight.Stage;
import java.util.Optional;

/** Where the plate can be worked on, in the order it travels. */
public enum Station {
    ART(1, "Art", "The picture: which part of it, which way up, and what counts as its white and its black.", null),
    FILM(2, "Film", "The positive: its size, the dots that carry its tones, and how it lies on the plate.", Stage.FILM),
    RESIST(
            3,
            "Resist",
            "The light-hardened resist on the copper: what stays covered and what washes open.",
            Stage.RESIST),
    COPPER(
            4,
            "Copper",
            "The bite: how deep the wells go, and how far the bath creeps under their edges.",
            Stage.COPPER),
    PRINT(5, "Print", "Wiping, ink and paper: what hangs on the wall in the end.", Stage.PRINT);

    private final int number;
    private final String label;
    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // an Optional of an enum never changes
    private final Optional<Stage> stage;

    Station(int number, String label, String words, @org.jspecify.annotations.Nullable Stage stage) {
        this.number = number;
        this.label = label;
        this.words = words;
        this.stage = Optional.ofNullable(stage);
    }

    /** Its place on the way, from 1. */
    public int number() {
        return number;
    }

    public String label() {
        return label;
    }

    /** What is settled here, in a sentence. */
    public String words() {
        return words;
    }

    /** Which way round it is seen, where that is not plain. */
    public String side() {
        return this == RESIST || this == COPPER ? "As it will print; the copper itself is mirrored" : "";
    }

    /** The stage of the virtual plate that is seen here; empty for the art. */
    public Optional<Stage> stage() {
        return stage;
    }
}
