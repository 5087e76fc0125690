package greyground.desk.model;

import greyground.app.chart.WedgeWork;

/** Kinds of test plates, as {@link WedgeWork} knows them. */
public enum TestPlateKind {
    FULL("full", "Full", "Wedge and targets. Teaches tones and the workshop's numbers. The one to begin with."),
    STRIP("strip", "Wedge only", "The wedge alone: tones, on an offcut."),
    EXPOSURE("exposure", "Exposure", "Longer and longer exposures side by side: shows which one to take."),
    CHECK(
            "check",
            "Check: does it hold?",
            "Tones that should print at stated L*. Judges the workshop, changes nothing.");

    private final String word;
    private final String label;
    private final String words;

    TestPlateKind(String word, String label, String words) {
        this.word = word;
        this.label = label;
        this.words = words;
    }

    public String label() {
        return label;
    }

    public String words() {
        return words;
    }

    public String word() {
        return word;
    }

    String usualPlate() {
        return WedgeWork.usualPlate(word);
    }
}
