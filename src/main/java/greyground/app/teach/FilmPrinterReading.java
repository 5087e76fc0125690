package greyground.app.teach;

import greyground.app.files.Lesson;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.fit.FigureChange;
import greyground.fit.FilmPrinterFit;
import greyground.fit.FilmReading;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a printed film says of its printer. */
final class FilmPrinterReading {
    /** Fewer pinholes than this let no light through that matters: 0.05 % of clear film is a density of 3.3 (science of a tint). */
    private static final double FEWEST_PINHOLES = 0.0005;

    /** A field this many of its errors from the fit is worth another look. */
    private static final double ODD = 3;

    private FilmPrinterReading() {}

    static ReadOutcome of(
            Job job,
            Workshop workshop,
            LocalDate date,
            Optional<FilmPrinterFit> fit,
            List<FigureChange> changes,
            List<String> notes) {
        String title = "film " + (job.title().isEmpty() ? "without a title" : job.title());
        List<String> all = new ArrayList<>(notes);
        Findings findings = new Findings().put("kind", "film").put("how", "the film itself");
        fit.ifPresent(found -> {
            findings.rows(
                            "fields",
                            found.fields().stream()
                                    .map(FilmPrinterReading::field)
                                    .toList())
                    .put("pinholeShare", found.pinholeShare());
            all.addAll(odd(found));
        });
        findings.rows("changes", ReadOutcome.changes(changes, List.of())).list("notes", all);
        LearnedWorkshop learned = LearnedWorkshop.of(workshop, changes, date, title);
        return new ReadOutcome(
                title,
                findings,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Lesson(learned.before(), learned.after(), date + "-film")));
    }

    private static Findings field(FilmPrinterFit.Field field) {
        return new Findings()
                .put("coveragePercent", field.coverage() * 100)
                .put("readings", field.readings())
                .put("density", field.measured())
                .put("foretoldDensity", field.foretold())
                .put("inkCoversPercent", field.covered() * 100);
    }

    private static List<String> odd(FilmPrinterFit fit) {
        List<String> odd = new ArrayList<>();
        if (fit.pinholeShare() > FEWEST_PINHOLES) {
            odd.add(String.format(
                    Locale.ROOT,
                    "the thinnest reading of the solid is what %.2f %% of pinholes would make of it: look at the black on a light"
                            + " table; the median was taken",
                    fit.pinholeShare() * 100));
        }
        for (FilmPrinterFit.Field field : fit.fields()) {
            double error = FilmReading.DENSITOMETER_ERROR;
            if (field.coverage() > 0 && field.coverage() < 1 && Math.abs(field.residual()) > ODD * error) {
                odd.add(String.format(
                        Locale.ROOT,
                        "the field of %.0f %% reads %.2f D where these numbers give %.2f D: measure it again",
                        field.coverage() * 100,
                        field.measured(),
                        field.foretold()));
            }
        }
        return odd;
    }
}
