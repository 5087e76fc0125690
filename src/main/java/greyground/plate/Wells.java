package greyground.plate;

/** What holds the ink below the surface of the plate. */
public sealed interface Wells permits Bath, FilmRelief {}
