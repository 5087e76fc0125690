package greyground.app.recipe;

import greyground.film.job.Job;

/**
 * What a surface needs to know of the art before a job is written down.
 *
 * @param fileName the file's own name
 * @param title the name without its ending, as a first title
 * @param sha256 hexadecimal digest of its bytes, empty while unknown
 * @param width pixels across, upright
 * @param height pixels down, upright
 */
public record SourceArt(String fileName, String title, String sha256, int width, int height) {
    public Job under(Job job) {
        return job.settled(job.art().of(fileName, sha256));
    }
}
