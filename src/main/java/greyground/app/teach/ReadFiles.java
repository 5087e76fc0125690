package greyground.app.teach;

import greyground.app.files.DiagramFile;
import greyground.app.files.NamedFiles;
import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.picture.Picture;
import greyground.picture.PngFile;
import greyground.quantity.Refusal;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The pictures wanted of a reading. None is written over what the reading rests on. */
public final class ReadFiles {
    private static final String CURVE = "curve";

    private static final String OVERLAY = "overlay";

    private final NamedFiles named;

    public ReadFiles(NamedFiles named) {
        this.named = named;
    }

    /** Wants the response drawn, as the name ends: svg, png or pdf. */
    public void wantCurve(Path file) {
        named.writes(CURVE, file, NamedFiles.Content.DIAGRAM);
    }

    /** Wants the scan with what was measured drawn over it, as PNG. */
    public void wantOverlay(Path file) {
        named.writes(OVERLAY, file, NamedFiles.Content.PICTURE);
    }

    /** Every picture wanted, by what it is, in the order of asking. */
    public Map<String, Path> named() {
        Map<String, Path> pictures = new LinkedHashMap<>(named.written());
        pictures.keySet().retainAll(List.of(CURVE, OVERLAY));
        return pictures;
    }

    public void write(ReadOutcome outcome) throws IOException {
        Path curve = named.written().get(CURVE);
        if (curve != null) {
            DiagramFile.write(
                    CURVE,
                    curve,
                    outcome.diagram()
                            .orElseThrow(() ->
                                    Refusal.use(outcome.title() + " has no response to draw: leave out --" + CURVE)));
        }
        Path overlay = named.written().get(OVERLAY);
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
