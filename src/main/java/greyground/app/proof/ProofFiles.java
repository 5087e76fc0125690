package greyground.app.proof;

import greyground.app.bite.BiteTimes;
import greyground.app.files.DiagramFile;
import greyground.app.files.NamedFiles;
import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.app.sight.Stage;
import greyground.picture.Picture;
import greyground.picture.PngFile;
import greyground.quantity.Offset;
import greyground.raster.Progress;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The files of a proof: named before the work begins, so that a wrong name costs nothing, and each written whole or not at all.
 * One thread.
 */
public final class ProofFiles {
    private final NamedFiles named;
    private final EnumMap<Stage, Path> whole = new EnumMap<>(Stage.class);
    private Optional<Close> close = Optional.empty();
    private Optional<Series> series = Optional.empty();
    private Optional<Path> diagram = Optional.empty();

    /** A loupe. */
    private record Close(Path file, Offset place, double widthMillimetres) {}

    /** A series of bites. */
    private record Series(Path file, BiteTimes times, Optional<Offset> place) {}

    /**
     * No files yet.
     *
     * @param named what the proof reads
     */
    public ProofFiles(NamedFiles named) {
        this.named = named;
    }

    /** Wants the whole plate at a stage. */
    public void wantWhole(Stage stage, Path file) {
        named.writes(stage.word(), file, NamedFiles.Content.PICTURE);
        whole.put(stage, file);
    }

    /** Wants a loupe. */
    public void wantLoupe(Path file, Offset place, double widthMillimetres) {
        named.writes("loupe", file, NamedFiles.Content.PICTURE);
        close = Optional.of(new Close(file, place, widthMillimetres));
    }

    /** Wants a sheet of bites, about a place or the plate's middle. */
    public void wantBites(Path file, BiteTimes times, Optional<Offset> place) {
        named.writes("bites", file, NamedFiles.Content.PICTURE);
        series = Optional.of(new Series(file, times, place));
    }

    /** Wants the tone diagram, written as its name ends: svg, png or pdf. */
    public void wantDiagram(Path file) {
        named.writes("diagram", file, NamedFiles.Content.DIAGRAM);
        diagram = Optional.of(file);
    }

    /** Every file wanted, by what it is, in the order of asking. */
    public Map<String, Path> named() {
        return named.written();
    }

    /**
     * Computes and writes everything wanted; what may be refused or is quick comes first.
     *
     * @param dotsPerInch of whole pictures
     */
    public void write(ProofWork work, double dotsPerInch, Progress progress) throws IOException {
        ProofPictures pictures = new ProofPictures(work);
        // What can be refused is refused before anything is written.
        if (!whole.isEmpty()) {
            work.whole(dotsPerInch);
        }
        close.ifPresent(loupe -> work.about(loupe.place(), loupe.widthMillimetres(), 1000));
        series.ifPresent(bites -> pictures.checkBites(bites.place()));
        if (diagram.isPresent()) {
            DiagramFile.write("diagram", diagram.get(), work.diagram());
        }
        double closeEnd = close.isEmpty() ? 0 : 0.05;
        double seriesEnd = series.isEmpty() ? closeEnd : whole.isEmpty() ? 1 : 0.4;
        if (close.isPresent()) {
            Close loupe = close.get();
            write(
                    "loupe",
                    loupe.file(),
                    pictures.loupe(loupe.place(), loupe.widthMillimetres(), progress.part(0, closeEnd)));
        }
        if (series.isPresent()) {
            Series bites = series.get();
            write(
                    "bites",
                    bites.file(),
                    pictures.bites(bites.times(), bites.place(), progress.part(closeEnd, seriesEnd)));
        }
        if (!whole.isEmpty()) {
            List<Picture> seen = pictures.whole(dotsPerInch, List.copyOf(whole.keySet()), progress.part(seriesEnd, 1));
            Iterator<Picture> picture = seen.iterator();
            for (Map.Entry<Stage, Path> each : whole.entrySet()) {
                write(each.getKey().word(), each.getValue(), picture.next());
            }
        }
    }

    private static void write(String what, Path file, Picture picture) throws IOException {
        SafeFile.write(what, file, channel -> {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            PngFile.write(picture, what + ", predicted by " + Program.words(), out);
            out.flush();
        });
    }
}
