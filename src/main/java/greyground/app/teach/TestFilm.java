package greyground.app.teach;

import greyground.app.files.KeptFiles;
import greyground.chart.CheckPlate;
import greyground.chart.TestPlate;
import greyground.film.job.Job;
import greyground.film.sheet.ChartFile;
import greyground.output.Attachment;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A test plate's film, as its PDF tells of it.
 *
 * @param workshop it was made in
 * @param plate what lies where
 * @param check how its tones should print, where it is a check plate
 */
record TestFilm(Job job, Workshop workshop, TestPlate plate, Optional<CheckPlate> check) {
    static TestFilm of(Path filmPdf) {
        TestPlate plate = KeptFiles.chart(filmPdf);
        return new TestFilm(
                KeptFiles.job(filmPdf),
                KeptFiles.workshop(filmPdf),
                plate,
                ChartFile.readCheck(KeptFiles.text("chart", filmPdf, Attachment.CHART)));
    }
}
