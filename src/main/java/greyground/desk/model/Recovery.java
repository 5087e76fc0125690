package greyground.desk.model;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.recipe.SourceArt;
import greyground.film.job.JobFile;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.workshop.WorkshopFile;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Unsaved work on disk, so that a killed program or a power cut takes at most the last moments: one file for each running desk, gone
 * when its work is saved or let go on purpose.
 */
public final class Recovery {
    private static final String KIND = "desk's unsaved work";
    private static final String WHAT = "unsaved";

    private final DeskFolder folder;
    private final String own;
    private int cleared;
    private boolean failing;

    public Recovery(DeskFolder folder, long process) {
        this.folder = folder;
        this.own = DeskFolder.named(WHAT, process);
    }

    /**
     * Work that was left.
     *
     * @param name of its file
     * @param art the picture
     * @param job as text
     * @param workshop as text
     * @param jobFile where the job was to be saved
     */
    public record Left(String name, Path art, String job, String workshop, Optional<Path> jobFile) {
        /** The work itself, on the picture wherever it is now; refused where it can't be read. */
        public BenchState state(Path picture, SourceArt source) {
            return new BenchState(picture, source, JobFile.read(job), WorkshopFile.read(workshop));
        }
    }

    /** Counts how often everything was saved or let go; work that was to be kept before that is kept no more. */
    synchronized int cleared() {
        return cleared;
    }

    /**
     * Keeps work as it stands. Any thread may call it.
     *
     * @param asOf {@link #cleared} when the work stood so
     * @return whether it is kept
     */
    public synchronized boolean keep(BenchState state, Optional<Path> jobFile, int asOf) {
        if (asOf != cleared) {
            return false;
        }
        ObjectNode tree = JsonText.object();
        tree.put("greyground", KIND);
        tree.put("version", 1);
        tree.put("art", state.art().toString());
        jobFile.ifPresent(file -> tree.put("jobFile", file.toString()));
        tree.set("job", JobFile.tree(state.job()));
        tree.set("workshop", WorkshopFile.tree(state.workshop()));
        boolean kept = folder.keep("unsaved work", own, JsonText.print(tree));
        failing = !kept;
        return kept;
    }

    /** Says what to do where unsaved work could not be kept when that was last tried; else empty. */
    synchronized String trouble() {
        return failing
                ? "unsaved work can't be kept in " + folder.folder()
                        + ": save the job yourself, or make that folder writable"
                : "";
    }

    /** Nothing of this process is unsaved any more. */
    synchronized void clear() {
        cleared++;
        folder.forget(own);
    }

    /** The work is taken over, or let go. */
    public void forget(Left left) {
        folder.forget(left.name());
    }

    private Stream<String> names() {
        return folder.ofGone(WHAT).stream().filter(name -> !name.equals(own));
    }

    /** Work of desks that no longer run. */
    public List<Left> left() {
        return names().flatMap(name -> read(name).stream()).toList();
    }

    /** Lays work that can't be read aside, so that it is neither lost nor asked about again; says where it lies. */
    public List<Path> layAside() {
        return names().filter(name -> read(name).isEmpty())
                .flatMap(name -> folder.rename(name, name.replace("unsaved-", "unreadable-")).stream())
                .toList();
    }

    private Optional<Left> read(String name) {
        return folder.read(name).flatMap(text -> {
            try {
                ObjectNode tree = JsonText.read(KIND, 1, text);
                return Optional.of(new Left(
                        name,
                        Path.of(tree.path("art").asText()),
                        JsonText.print(tree.path("job")),
                        JsonText.print(tree.path("workshop")),
                        Optional.of(tree.path("jobFile").asText())
                                .filter(file -> !file.isEmpty())
                                .map(Path::of)));
            } catch (Refusal | InvalidPathException spoilt) {
                return Optional.empty();
            }
        });
    }
}
