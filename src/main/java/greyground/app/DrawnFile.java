package greyground.app;

import greyground.picture.Diagram;
import greyground.picture.Picture;
import greyground.picture.PngFile;
import greyground.quantity.Refusal;
import java.io.BufferedOutputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;

/** Writes pictures and diagrams, whole or not at all, in the kind that the file's name ends in. */
final class DrawnFile {
    private DrawnFile() {}

    /** Refuses a picture that is not named as PNG. */
    static void checkPicture(String what, Path file) {
        if (!ending(file).equals("png")) {
            throw Refusal.use("the " + what + " " + file + " does not end in .png: pictures are written as PNG");
        }
    }

    /** Refuses a diagram whose name ends in no kind that is known. */
    static void checkDiagram(String what, Path file) {
        if (!ending(file).matches("svg|png|pdf")) {
            throw Refusal.use("the " + what + " " + file + " ends in none of .svg, .png and .pdf: choose one");
        }
    }

    /**
     * Writes a picture.
     *
     * @param title inside the file
     */
    static void write(String what, Path file, Picture picture, String title) throws Exception {
        SafeFile.write(what, file, channel -> {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            PngFile.write(picture, title, out);
            out.flush();
        });
    }

    /** Writes a diagram. */
    static void write(String what, Path file, Diagram drawn, String title) throws Exception {
        if (ending(file).equals("png")) {
            write(what, file, drawn.picture(), title);
            return;
        }
        SafeFile.write(what, file, channel -> {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            if (ending(file).equals("svg")) {
                out.write(drawn.svg().getBytes(StandardCharsets.UTF_8));
            } else {
                drawn.writePdf(out);
            }
            out.flush();
        });
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }
}
