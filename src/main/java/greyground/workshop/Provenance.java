package greyground.workshop;

import java.time.LocalDate;

/** How a number is known. */
public sealed interface Provenance {
    /** Words for a plan or a legend: "assumed" or "measured 2026-03-04". */
    String words();

    /**
     * Taken from a source or from habit, not from this workshop.
     *
     * @param basis author, year and table, "common practice" or "from memory"
     */
    record Assumed(String basis) implements Provenance {
        @Override
        public String words() {
            return "assumed";
        }
    }

    /**
     * Measured in this workshop.
     *
     * @param date when
     * @param how which test
     */
    record Measured(LocalDate date, String how) implements Provenance {
        @Override
        public String words() {
            return "measured " + date;
        }
    }
}
