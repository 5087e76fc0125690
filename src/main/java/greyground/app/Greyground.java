package greyground.app;

import greyground.app.bite.BenchAdvice;
import greyground.app.bite.BiteWords;
import greyground.app.bite.PlannedPlate;
import greyground.app.chart.WedgeWork;
import greyground.app.files.NamedFiles;
import greyground.app.files.ShopFile;
import greyground.app.gather.GatherWork;
import greyground.app.inks.InkReadWork;
import greyground.app.live.LiveBench;
import greyground.app.plates.InkTestWork;
import greyground.app.plates.PlatesWork;
import greyground.app.print.FilmPrinting;
import greyground.app.proof.ProofWork;
import greyground.app.proof.SetProof;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmSeries;
import greyground.app.recipe.PositiveOutcome;
import greyground.app.recipe.PositiveWork;
import greyground.app.recipe.SpotSheet;
import greyground.app.record.RecordWords;
import greyground.app.record.RecordWork;
import greyground.app.teach.FilmPrinterWork;
import greyground.app.teach.ReadWords;
import greyground.app.teach.ReadWork;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.states.PlateRecord;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * Everything the program can be asked. A terminal, a window or a test comes in here and goes no other way; the rooms behind the door tell
 * what comes back.
 *
 * <p>What can go wrong, everywhere alike: {@link Refusal} says in one line what was wrong and what to do, by its kind the asking, or a file
 * or the machine; {@link CancellationException} comes from a {@link Progress}
 * that wants the work stopped, and an {@link IOException} from a file that was lost while it was read. Whichever it is, no file is half
 * written, and what stood there before stands there still.
 */
public final class Greyground {
    private Greyground() {}

    // ------------------------------------------------------------------ from art

    /**
     * Looks into a picture without reading its pixels. Choose it first: its title and size go into the {@link Job}, and it is what the films
     * of that job are asked of. Close it.
     */
    public static ArtSource art(Path picture) {
        return ArtSource.open(picture);
    }

    /**
     * Makes a job's films and writes them as a PDF that carries job, workshop, curve and plan. Choose it to make a positive; art is closed
     * by it.
     *
     * @param tiff the same bits as a TIFF too
     */
    public static PositiveOutcome positive(
            ArtSource art, Job job, Workshop shop, Path pdf, Optional<Path> tiff, Progress progress)
            throws IOException {
        return PositiveWork.prepare(art, job, shop, Optional.of(pdf), tiff, progress);
    }

    /**
     * Writes a job's dust and scratches, or those that stand out where it has chosen none, as a file and as a picture with numbers. Choose it
     * before they are healed, to choose among them; art is closed by it.
     */
    public static void spots(ArtSource art, Job job, Optional<Path> list, Optional<Path> picture) throws IOException {
        SpotSheet.write(art, job, list, picture);
    }

    /**
     * Names the films of several pictures in a folder. Choose it where one job and one workshop serve them all; {@link FilmSeries#make} makes
     * them.
     *
     * @param replace whether films that are there already give way
     * @param named what else the work reads
     */
    public static FilmSeries series(List<Path> pictures, Path folder, boolean replace, NamedFiles named) {
        return FilmSeries.of(pictures, folder, replace, named);
    }

    /** The same as a TIFF alone. Choose it for who prints bits and keeps job and plan elsewhere: a TIFF carries neither. */
    public static PositiveOutcome positiveAsTiff(ArtSource art, Job job, Workshop shop, Path tiff, Progress progress)
            throws IOException {
        return PositiveWork.prepare(art, job, shop, Optional.empty(), Optional.of(tiff), progress);
    }

    /**
     * Makes the films of several plates that are printed over one another, as one PDF. Choose it for colours, or for two plates of one hue.
     *
     * @param job of all of them, as of the first art
     */
    public static Findings plates(PlatesWork.Order order, Job job, Workshop shop, Path pdf, Progress progress)
            throws IOException {
        return PlatesWork.make(order, job, shop, pdf, progress);
    }

    /** Makes a job's films and prints them. Choose it where no file is wanted. */
    public static void print(Path art, Job job, Workshop shop, FilmPrinting.Order order, Progress progress)
            throws IOException {
        FilmPrinting.print(art, job, shop, order, progress);
    }

    /** Predicts a job's plate, with a film composed now. Choose it to see a plate before there is a film; close it, and art with it. */
    public static ProofWork proof(ArtSource art, Job job, Workshop shop, Progress progress) throws IOException {
        return ProofWork.ofArt(art, job, shop, progress);
    }

    /** Plans a job's plate. Choose it to know exposure and bite before there is a film; art is closed by it. */
    public static PlannedPlate plan(ArtSource art, Job job, Workshop shop, Progress progress) throws IOException {
        return PlannedPlate.ofArt(art, job, shop, progress);
    }

    /**
     * Puts art on the bench, where job and workshop may change while it is looked at. Choose it for a window; close it. The thread that opens
     * it uses it, and no other may.
     */
    public static LiveBench bench(Path art) {
        return LiveBench.open(art);
    }

    // ------------------------------------------------------------------ from a film

    /**
     * Predicts the plate of a film PDF. Choose it to see what the film at hand will give; close it.
     *
     * @param shop to expose and bite it in; empty for its own
     */
    public static ProofWork proof(Path pdf, Optional<Workshop> shop) throws IOException {
        return ProofWork.ofFilm(pdf, shop);
    }

    /**
     * Foretells the print of a set of plates in colour and writes it as a PNG. Choose it where a film PDF holds the films of several plates.
     *
     * @param shop to expose, bite and print them in; empty for the set's own
     */
    public static Findings proofOfSet(Path set, Optional<Workshop> shop, SetProof.Order order, Progress progress)
            throws IOException {
        return SetProof.write(set, shop, order, progress);
    }

    /**
     * Lays films out on sheets of film, pixel by pixel as they are, their plans behind. Choose it where small plates share a sheet.
     *
     * @param sheet the PDF to write
     */
    public static Findings gather(GatherWork.Order order, Path sheet, Progress progress) throws IOException {
        return GatherWork.gather(order, sheet, progress);
    }

    public static PlannedPlate plan(Path pdf) {
        return PlannedPlate.ofFilm(pdf);
    }

    /** Prints a film PDF; {@code title} is what the printer's queue calls it. */
    public static void print(Path pdf, String title, FilmPrinting.Order order, Progress progress) throws IOException {
        FilmPrinting.print(pdf, title, order, progress);
    }

    /**
     * Answers a question about a planned plate: minutes for a depth or a darkest tone, a second bite, the split of two exposures. Choose it
     * at the bench, before the plate goes into the bath or after its proof.
     *
     * @param searchExposure whether to search the split of two exposures
     * @param today when temperature and copper were read
     */
    public static BenchAdvice advice(
            PlannedPlate plate, BiteWords question, boolean searchExposure, LocalDate today, Progress progress)
            throws IOException {
        return BenchAdvice.of(plate, question, searchExposure, today, progress);
    }

    // ------------------------------------------------------------------ what a workshop learns

    /**
     * A test plate, to be looked at or made. Choose it when a workshop is new, or something in it has changed.
     *
     * @param given its kind and what concerns its film, by option name without dashes
     * @param like a job whose process, grain and reading side it shares where nothing is given
     */
    public static WedgeWork testPlate(Map<String, String> given, Optional<Job> like, Workshop shop, LocalDate today) {
        return WedgeWork.of(given, like, shop, today.toString());
    }

    /**
     * Test plates of a set's inks, to be made. Choose it when an ink or a paper of colour prints is new.
     *
     * @param given what concerns their films, by option name without dashes
     */
    public static InkTestWork inkTest(Map<String, String> given, InkSet inks, Workshop shop, LocalDate today) {
        return InkTestWork.of(given, inks, shop, today.toString());
    }

    /**
     * Reads a test plate's proof, scanned or measured by hand. Choose it when the proof is dry; it writes nothing.
     *
     * @param pdf of the test plate's film
     * @param shop to be taught; where there is none yet, the film's own is
     * @param today for a proof whose date isn't told
     */
    public static ReadWork reading(Path pdf, Optional<Workshop> shop, ReadWords told, LocalDate today) {
        return ReadWork.of(pdf, shop, told, today);
    }

    /**
     * Reads the print of inks' test plates. Choose it when it is dry; the inks that it teaches go to a file of their own.
     *
     * @param set the films of the test plates
     * @param shop in which they were made; empty for the films' own
     * @param today for a print whose date isn't told
     */
    public static InkReadWork inkReading(Path set, Optional<Workshop> shop, ReadWords told, LocalDate today) {
        return InkReadWork.of(set, shop, told, today);
    }

    /**
     * Reads what a film printer lays down. Choose it before any plate is etched: it takes a printed film, and a densitometer or a ruler. It
     * writes nothing.
     */
    public static FilmPrinterWork filmReading(Path pdf, Optional<Workshop> shop, LocalDate date) {
        return FilmPrinterWork.of(pdf, shop, date);
    }

    /** A workshop's own file, or the place for one. Choose it to write down what a reading teaches, or to take the last lesson back. */
    public static ShopFile workshop(Path file) {
        return ShopFile.open(file);
    }

    // ------------------------------------------------------------------ what was done to a plate

    /**
     * A plate's record, after writing down what is told. Choose it at the bench, with every bite, proof and print of the edition; with
     * nothing told it only looks.
     *
     * @param file of the record
     * @param film to begin it from, where it isn't begun yet
     * @param today for what is told without a date
     */
    public static PlateRecord record(Path file, Optional<Path> film, RecordWords told, LocalDate today)
            throws IOException {
        return RecordWork.write(file, film, told, today);
    }

    /** The same with what a question about the bite told. Choose it beside {@link #advice}. */
    public static PlateRecord record(Path file, Path film, BiteWords told, LocalDate today) throws IOException {
        return RecordWork.writeAnswered(file, film, told.given(), today);
    }

    /** A record as pages for paper. Choose it for the drawer in which the plate lies. */
    public static void recordCard(PlateRecord record, LocalDate today, Path pdf) {
        RecordWork.card(record, today, pdf);
    }
}
