package greyground.desk.model;

/** What can fill the window's middle. */
public enum Place {
    /** The station that was last chosen. */
    STATION("Station", "station", "1 to 5", "The plate at one of its stations"),
    /** The wall card. */
    PLAN("Plan", "plan-view", "F2", "The plan as a wall card, with clocks"),
    /** The whole film sheet, reached from the station Film. */
    SHEET("Whole sheet", "sheet-view", "S", "The whole film sheet with all its marks, and how it lies on the plate"),
    /** What teaches the workshop its own tones. */
    TEST_PLATE("Test plate", "test-plate-view", "F5", "Make a test plate, and read its print back"),
    /** Every number of the workshop. */
    WORKSHOP("Workshop", "workshop-view", "F9", "Every number of your workshop, and how it is known");

    private final String label;
    private final String id;
    private final String key;
    private final String words;

    Place(String label, String id, String key, String words) {
        this.label = label;
        this.id = id;
        this.key = key;
        this.words = words;
    }

    public String label() {
        return label;
    }

    public String id() {
        return id;
    }

    public String key() {
        return key;
    }

    /** Whether one can go there without a picture. */
    public boolean needsNoPicture() {
        return this == TEST_PLATE || this == WORKSHOP;
    }

    public String words() {
        return words;
    }
}
