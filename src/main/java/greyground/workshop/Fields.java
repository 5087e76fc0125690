package greyground.workshop;

/**
 * Something that goes through a workshop's fields in their fixed order. A section hands it each field with its present value
 * and builds itself anew from the answers, so that one list of fields serves reading (answers from a file), writing (notes
 * the value and gives it back), listing and changing a single number.
 */
public interface Fields {
    /** Goes through one section, whose fields follow until the next call. */
    Fields section(String name);

    /** Answers one number for the present one. */
    Figure figure(String name, Figure present);

    /** Answers a line of text for the present one. */
    String text(String name, String present);

    /** Answers one of an enumeration's constants for the present one; files hold its lower-case name. */
    <E extends Enum<E>> E choice(String name, E present);
}
