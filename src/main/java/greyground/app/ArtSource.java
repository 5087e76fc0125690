package greyground.app;

import greyground.art.Art;
import greyground.film.ArtChoice;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/** The art of one job: looked into once, decoded once, within a share of the program's memory. */
final class ArtSource {
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
    record Decoded(GreyPlane plane, CompletableFuture<String> fingerprint, List<String> warnings) {
        /** Waits for the fingerprint. */
        String sha256() {
            return FilmPreparation.joined(fingerprint);
        }
    }

    static ArtSource open(Path file) {
        return new ArtSource(file, Art.open(file));
    }

    Path file() {
        return file;
    }

    /** What is known of a page, from 1. */
    SourceArt source(int page) {
        if (look.page() != page) {
            look = Art.open(file, page);
        }
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return new SourceArt(name, dot > 0 ? name.substring(0, dot) : name, "", look.width(), look.height());
    }

    Decoded decode(ArtChoice choice, Progress progress) {
        source(choice.page());
        CompletableFuture<String> fingerprint = look.fingerprint();
        return new Decoded(look.decode(progress, planeBudgetBytes(), spillFolder()), fingerprint, look.remarks());
    }

    long planeBudgetBytes() {
        long free = Runtime.getRuntime().maxMemory() - RESERVE_BYTES;
        return Math.max(LEAST_BUDGET_BYTES, Math.min(MOST_BUDGET_BYTES, free));
    }

    Path spillFolder() {
        return Path.of(System.getProperty("java.io.tmpdir", "."));
    }
}
