package greyground.fuzz;

import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.JobFile;
import greyground.film.sheet.ChartFile;
import greyground.film.sheet.InkChartFile;
import greyground.ink.InkSet;
import greyground.ink.InksFile;
import greyground.plan.BenchOrder;
import greyground.plan.PlanJson;
import greyground.plan.PlanRequest;
import greyground.plan.PlanText;
import greyground.states.PlateRecord;
import greyground.states.PlateRecordFile;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.charset.StandardCharsets;

/** Jobs, workshops, plans, records, inks and charts as JSON; what is taken must come back from its own text. */
public final class KeptTextFuzz {
    private static final double HALF_BLACK = 0.5;

    private KeptTextFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("kept", KeptTextFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        Hostile.answered(() -> job(JobFile.read(text)));
        Hostile.answered(() -> workshop(WorkshopFile.read(text)));
        Hostile.answered(() -> PlanText.of(PlanJson.read(text)));
        Hostile.answered(() -> record(PlateRecordFile.read(text)));
        Hostile.answered(() -> inks(InksFile.read(text)));
        Hostile.answered(() -> ChartFile.text(ChartFile.read(text)));
        Hostile.answered(() -> InkChartFile.text(InkChartFile.read(text)));
        Hostile.answered(() -> ChartFile.readCheck(text).ifPresent(ChartFile::text));
    }

    private static void job(Job job) {
        JobFields.ALL.forEach(field -> field.text(job));
        if (!JobFile.text(JobFile.read(JobFile.text(job))).equals(JobFile.text(job))) {
            throw new AssertionError("a job that its own file does not give back: " + JobFile.text(job));
        }
        plan(job, Workshop.assumed());
    }

    private static void record(PlateRecord record) {
        record.story();
        if (!PlateRecordFile.text(PlateRecordFile.read(PlateRecordFile.text(record)))
                .equals(PlateRecordFile.text(record))) {
            throw new AssertionError("a record that its own file does not give back");
        }
    }

    private static void inks(InkSet inks) {
        if (!InksFile.text(InksFile.read(InksFile.text(inks))).equals(InksFile.text(inks))) {
            throw new AssertionError("inks that their own file does not give back");
        }
    }

    private static void workshop(Workshop workshop) {
        if (!WorkshopFile.text(WorkshopFile.read(WorkshopFile.text(workshop))).equals(WorkshopFile.text(workshop))) {
            throw new AssertionError("a workshop that its own file does not give back");
        }
    }

    private static void plan(Job job, Workshop workshop) {
        PlanText.of(BenchOrder.plan(workshop, new PlanRequest(job, HALF_BLACK, "curve", "")));
    }
}
