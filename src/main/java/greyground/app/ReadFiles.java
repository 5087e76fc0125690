package greyground.app;

import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pictures wanted of a reading. None is written over what the reading rests on. */
public final class ReadFiles {
    private static final String CURVE = "curve";

    private final List<Path> sources;
    private final Map<String, Path> named = new LinkedHashMap<>();

    /**
     * Pictures of a reading.
     *
     * @param sources scan or values, film and workshop, which must survive
     */
    public ReadFiles(List<Path> sources) {
        this.sources = List.copyOf(sources);
    }

    /** Wants the response drawn, as the name ends: svg, png or pdf. */
    public void wantCurve(Path file) {
        if (!DiagramFile.ending(file).matches("svg|png|pdf")) {
            throw Refusal.use("the " + CURVE + " " + file + " ends in none of .svg, .png and .pdf: choose one");
        }
        want(CURVE, file);
    }

    private void want(String what, Path file) {
        SafeFile.checkWritable(what, file);
        sources.forEach(source -> SafeFile.checkDistinct(what, file, "file that is read", source));
        named.forEach((other, otherFile) -> SafeFile.checkDistinct(what, file, other, otherFile));
        named.put(what, file);
    }

    /** Every file wanted, by what it is, in the order of asking. */
    public Map<String, Path> named() {
        return Collections.unmodifiableMap(named);
    }

    /** Writes what was wanted. */
    public void write(ReadOutcome outcome) throws Exception {
        Optional<Path> curve = Optional.ofNullable(named.get(CURVE));
        if (curve.isPresent()) {
            outcome.draw(CURVE, curve.get());
        }
    }
}
