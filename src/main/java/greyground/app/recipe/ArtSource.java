package greyground.app.recipe;

import greyground.art.Art;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/** The art of one job: looked into once, decoded once, within a share of the program's memory. */
public final class ArtSource {
    /** Left for film bands, grain and the program itself. */
    private static final long RESERVE_BYTES = 160L << 20;

    private static final long LEAST_BUDGET_BYTES = 48L << 20;

    /** More is never needed to be fast; beyond it planes spill, so that the program stays within 1 GiB. */
    private static final long MOST_BUDGET_BYTES = 640L << 20;

    private final Path file;
    private Art look;

    private ArtSource(Path file, Art look) {
        this.file = file;
        this.look = look;
    }

    /**
     * Decoded art.
     *
     * @param plane whoever takes it closes it
     * @param fingerprint SHA-256 of the file's bytes, which may take longer than the plane
     * @param warnings what was odd about the file
     */
    public record Decoded(GreyPlane plane, CompletableFuture<String> fingerprint, List<String> warnings) {
        /** Waits for the fingerprint. */
        public String sha256() {
            return FilmPreparation.joined(fingerprint);
        }
    }

    public static ArtSource open(Path file) {
        return new ArtSource(file, Art.open(file));
    }

    public Path file() {
        return file;
    }

    /** What is known of a page, from 1. */
    public SourceArt source(int page) {
        if (look.page() != page) {
            look = Art.open(file, page);
        }
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return new SourceArt(
                name, Job.titleOf(dot > 0 ? name.substring(0, dot) : name), "", look.width(), look.height());
    }

    public Decoded decode(ArtChoice choice, Progress progress) {
        source(choice.page());
        CompletableFuture<String> fingerprint = look.fingerprint();
        return new Decoded(look.decode(progress, planeBudgetBytes(), spillFolder()), fingerprint, look.remarks());
    }

    public long planeBudgetBytes() {
        long free = Runtime.getRuntime().maxMemory() - RESERVE_BYTES;
        return Math.max(LEAST_BUDGET_BYTES, Math.min(MOST_BUDGET_BYTES, free));
    }

    public Path spillFolder() {
        return Path.of(System.getProperty("java.io.tmpdir", "."));
    }
}
