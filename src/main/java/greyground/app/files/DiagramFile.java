package greyground.app.files;

import greyground.picture.DrawnPage;
import greyground.picture.PngFile;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Writes diagrams as their names end. */
public final class DiagramFile {
    private DiagramFile() {}

    /** Writes a diagram, whole or not at all, as its name ends: .svg, .png or .pdf; {@code what} it is, for errors and its own words. */
    public static void write(String what, Path file, DrawnPage drawn) throws IOException {
        SafeFile.write(what, file, channel -> {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            switch (NamedFiles.ending(file)) {
                case "png" -> PngFile.write(drawn.picture(), what + ", drawn by " + Program.words(), out);
                case "svg" -> out.write(drawn.svg().getBytes(StandardCharsets.UTF_8));
                default -> drawn.writePdf(out);
            }
            out.flush();
        });
    }
}
