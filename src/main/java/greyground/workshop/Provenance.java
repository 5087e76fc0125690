package greyground.workshop;

import greyground.quantity.Refusal;
import java.time.LocalDate;

/** How a number is known. */
public sealed interface Provenance {
    /** Words for a plan or a legend: "assumed" or "measured 2026-03-04". */
    String words();

    /** Where the number comes from: the source of an assumption, or the test that measured it. Never empty. */
    String basis();

    /**
     * Taken from a source or from habit, not from this workshop.
     *
     * @param basis author, year and table, "common practice" or "from memory"; not empty
     */
    record Assumed(String basis) implements Provenance {
        public Assumed {
            requireWords("basis of an assumed number", basis);
        }

        @Override
        public String words() {
            return "assumed";
        }
    }

    /**
     * Measured in this workshop.
     *
     * @param date when
     * @param how which test; not empty
     */
    record Measured(LocalDate date, String how) implements Provenance {
        public Measured {
            requireWords("test that measured a number", how);
        }

        @Override
        public String words() {
            return "measured " + date;
        }

        @Override
        public String basis() {
            return how;
        }
    }

    /**
     * Typed for one answer; how it was read, nobody said.
     *
     * @param date when
     */
    record Typed(LocalDate date) implements Provenance {
        @Override
        public String words() {
            return "as typed " + date;
        }

        @Override
        public String basis() {
            return "typed for this answer";
        }
    }

    private static void requireWords(String what, String text) {
        if (text.isBlank()) {
            throw Refusal.use(what + " is \"\"; it must be at least one word: say where the number comes from");
        }
    }
}
