package greyground.app.teach;

import greyground.app.files.DiagramFile;
import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.picture.Picture;
import greyground.picture.PngFile;
import greyground.quantity.Refusal;
import java.io.BufferedOutputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pictures wanted of a reading. None is written over what the reading rests on. */
public final class ReadFiles {
    private static final String CURVE = "curve";

    private static final String OVERLAY = "overlay";

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

    /** Wants the scan with what was measured drawn over it, as PNG. */
    public void wantOverlay(Path file) {
        if (!DiagramFile.ending(file).equals("png")) {
            throw Refusal.use("the " + OVERLAY + " " + file + " does not end in .png: pictures are written as PNG");
        }
        want(OVERLAY, file);
    }

    /** Whether an overlay is wanted. */
    public boolean wantsOverlay() {
        return named.containsKey(OVERLAY);
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
        Path curve = named.get(CURVE);
        if (curve != null) {
            outcome.draw(CURVE, curve);
        }
        Path overlay = named.get(OVERLAY);
        Optional<Picture> drawn = outcome.overlay();
        if (overlay != null && drawn.isPresent()) {
            SafeFile.write(OVERLAY, overlay, channel -> {
                OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
                PngFile.write(drawn.get(), "what was read of a scan, drawn by " + Program.words(), out);
                out.flush();
            });
        }
    }
}
