package greyground.app;

import greyground.film.Job;
import greyground.wedge.TestPlate;
import greyground.workshop.Workshop;
import java.nio.file.Path;

/**
 * A test plate's film, as its PDF tells of it.
 *
 * @param workshop it was made in
 * @param plate what lies where
 */
record TestFilm(Job job, Workshop workshop, TestPlate plate) {
    static TestFilm of(Path filmPdf) {
        TestPlate plate = KeptFiles.chart(filmPdf);
        return new TestFilm(KeptFiles.job(filmPdf), KeptFiles.workshop(filmPdf), plate);
    }
}
