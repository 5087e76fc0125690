package greyground.app.proof;

import greyground.app.files.KeptFiles;
import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.app.recipe.FilmOnPlate;
import greyground.app.recipe.JobPlate;
import greyground.colour.InkLight;
import greyground.colour.InksInRegister;
import greyground.colour.Lab;
import greyground.colour.SmoothSpectrum;
import greyground.film.compose.GrainPatches;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.picture.Colouring;
import greyground.picture.Mount;
import greyground.picture.Picture;
import greyground.picture.PngFile;
import greyground.plan.BenchConditions;
import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.plate.PlateFilm;
import greyground.plate.PlateMap;
import greyground.plate.PlateProcess;
import greyground.plate.PlateWindow;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The print of a set of plates in colour: each film's own virtual print, computed once for its ink's strengths, and all over one another band by
 * band.
 */
public final class SetProof {
    private static final double MICROMETRES_PER_INCH = 25_400;
    private static final double FEWEST_DOTS_PER_INCH = 10;

    /** Plates after the first are out of register in directions this far apart. */
    private static final double TURN_DEGREES = 120;

    private final FilmPdfReader reader;
    private final InkSet inks;
    private final Workshop shop;
    private final List<Job> jobs;

    private SetProof(FilmPdfReader reader, InkSet inks, Workshop shop, List<Job> jobs) {
        this.reader = reader;
        this.inks = inks;
        this.shop = shop;
        this.jobs = jobs;
    }

    /**
     * What is asked.
     *
     * @param print the picture to write
     * @param dotsPerInch of it
     * @param after how many plates are printed, in their order; empty for all
     * @param outMillimetres how far each plate after the first lies out of register, each in another direction, 0 to 5
     */
    public record Order(Path print, double dotsPerInch, Optional<Integer> after, double outMillimetres) {
        public Order {
            Refusal.checkRange("register error", outMillimetres, 0, 5, "mm", "0.2 to 0.5 mm is usual by the platemark");
        }
    }

    /**
     * Foretells and writes the print.
     *
     * @param other workshop to print it in; empty for the set's own
     */
    public static Findings write(Path set, Optional<Workshop> other, Order order, Progress progress)
            throws IOException {
        InkSet inks = KeptFiles.inks(set);
        Workshop shop = other.isPresent() ? other.get() : KeptFiles.workshop(set);
        int count = inks.inks().size();
        int after = order.after().orElse(count);
        Refusal.checkRange("--after", after, 1, count, "", "the set has so many plates");
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String name = i + 1 + "-" + Attachment.JOB;
            jobs.add(JobFile.read(KeptFiles.carried(set, name)
                    .orElseThrow(
                            () -> Refusal.failure(set.getFileName() + " carries no " + name + ": make the set anew"))));
        }
        if (jobs.get(0).process() instanceof PlateProcess.Photogravure) {
            throw Refusal.use(
                    "the set is of photogravure plates, whose print in colour isn't foretold: prove each alone");
        }
        try (FilmPdfReader reader = FilmPdfReader.open(set)) {
            if (reader.films().size() != count) {
                throw Refusal.failure(set.getFileName() + " holds "
                        + reader.films().size() + " films for " + count + " plates: make the set anew");
            }
            return new SetProof(reader, inks, shop, jobs).write(order, after, progress);
        }
    }

    /** A plate's print at the strengths of its ink. */
    private record Seen(InkLight bands, List<PlateMap> roots, double paperRoot, double gain, double out, double down) {
        /** What it prints alone at a cell. */
        double[] light(int cell, double[] paper, boolean onPlate) {
            double[] light = paper.clone();
            if (!onPlate) {
                return light;
            }
            double[] logarithms = new double[roots.size()];
            for (int i = 0; i < logarithms.length; i++) {
                double share = roots.get(i).values()[cell] / paperRoot;
                logarithms[i] = gain * StrictMath.log(Math.max(1e-6, Math.min(1, share)));
            }
            for (int band = 0; band < light.length; band++) {
                light[band] *= StrictMath.exp(bands.logarithm(band, logarithms));
            }
            return light;
        }
    }

    private Findings write(Order order, int after, Progress progress) throws IOException {
        double finest = jobs.get(0).resolution().dotsPerInch();
        Refusal.checkRange(
                "picture's resolution",
                order.dotsPerInch(),
                FEWEST_DOTS_PER_INCH,
                finest,
                "dpi",
                "150 dpi suits a screen; the film itself carries no more than its own");
        List<Seen> plates = new ArrayList<>();
        List<double[]> full = new ArrayList<>();
        PlateWindow window = null;
        for (int i = 0; i < after; i++) {
            JobPlate plate = JobPlate.of(inks.shop(i, shop), jobs.get(i));
            PlateFilm film = FilmOnPlate.read(
                    reader,
                    i,
                    jobs.get(i).placing().readingSide().mirrored(),
                    shop.filmPrinter(),
                    BenchConditions.film(shop));
            if (window == null) {
                window = window(film, order.dotsPerInch());
            }
            double turn = StrictMath.toRadians(TURN_DEGREES * (i - 1));
            double out = i == 0 ? 0 : 1000 * order.outMillimetres() * StrictMath.cos(turn);
            double down = i == 0 ? 0 : 1000 * order.outMillimetres() * StrictMath.sin(turn);
            PlateWindow moved = new PlateWindow(
                    window.leftMicrometres() - out,
                    window.topMicrometres() - down,
                    window.cellMicrometres(),
                    window.columns(),
                    window.rows());
            InkLight bands = inks.light(i, shop);
            List<Ink> strengths = strengths(plate, bands);
            Paper paper = plate.conditions().paper();
            List<PlateMap> roots = new PlateLooks(
                            plate,
                            plate.tones(),
                            GrainPatches.spacingMicrometres(jobs.get(i).grain()),
                            film,
                            null)
                    .prints(moved, strengths, progress.part(0.9 * i / after, 0.9 * (i + 1) / after));
            plates.add(new Seen(bands, roots, paper.root(0), paper.opticalGain(), out, down));
            if (inks.needsFullTones()) {
                full.add(new InkedTones(plate, bands, inks.paperInBands(shop))
                        .light(plate.tones().turningPoint()));
            }
        }
        if (window == null) {
            throw new IllegalStateException("a set has a plate");
        }
        return written(order, after, window, plates, full);
    }

    private static PlateWindow window(PlateFilm film, double dotsPerInch) {
        double cell = MICROMETRES_PER_INCH / dotsPerInch;
        return new PlateWindow(
                0,
                0,
                cell,
                Math.max(1, (int) Math.round(film.width() * film.pitchMicrometres() / cell)),
                Math.max(1, (int) Math.round(film.height() * film.pitchMicrometres() / cell)));
    }

    private static List<Ink> strengths(JobPlate plate, InkLight bands) {
        return DoubleStream.of(bands.strengths())
                .mapToObj(plate.conditions().ink()::withDensityPerMicrometre)
                .toList();
    }

    private Findings written(Order order, int after, PlateWindow window, List<Seen> plates, List<double[]> full)
            throws IOException {
        double[] paper = inks.paperInBands(shop);
        InksInRegister print = inks.inRegister(shop, full);
        int[] codes = new int[window.area()];
        long unshown = IntStream.range(0, window.rows())
                .parallel()
                .mapToLong(row -> row(row, window, plates, paper, print, codes))
                .sum();
        List<String> words = new ArrayList<>();
        words.add(printed(after) + registered(order));
        words.add(inks.known(after));
        Picture picture = Mount.of(
                Colouring.codes(window, codes),
                after == inks.inks().size() ? "Print" : "State after plate " + after,
                words,
                null);
        SafeFile.write("print", order.print(), channel -> {
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            PngFile.write(picture, "print of a set, predicted by " + Program.words(), out);
            out.flush();
        });
        double share = (double) unshown / window.area();
        return new Findings()
                .say("set", printed(after), after)
                .say(
                        "offset",
                        order.outMillimetres() == 0
                                ? Optional.empty()
                                : Optional.of(registered(order).strip()))
                .say("known", words.get(1))
                .say(
                        "screen",
                        share == 0
                                ? "a screen of sRGB shows every colour of it"
                                : String.format(
                                        Locale.ROOT,
                                        "%.1f %% of it is purer than a screen of sRGB shows, and paler in the picture",
                                        100 * share),
                        share)
                .list("notes", inks.notes());
    }

    private String printed(int after) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < after; i++) {
            names.add(inks.inks().get(i).name());
        }
        return String.join(", then ", names) + ", on one sheet.";
    }

    private static String registered(Order order) {
        return order.outMillimetres() == 0
                ? ""
                : " Plates after the first lie " + Refusal.plain(order.outMillimetres())
                        + " mm out of register, each in another direction.";
    }

    private static long row(
            int row, PlateWindow window, List<Seen> plates, double[] paper, InksInRegister print, int[] codes) {
        long unshown = 0;
        double cell = window.cellMicrometres();
        List<double[]> alone = new ArrayList<>();
        for (int column = 0; column < window.columns(); column++) {
            int at = row * window.columns() + column;
            alone.clear();
            for (Seen plate : plates) {
                double x = (column + 0.5) * cell - plate.out();
                double y = (row + 0.5) * cell - plate.down();
                boolean onPlate = x >= 0 && x <= window.columns() * cell && y >= 0 && y <= window.rows() * cell;
                alone.add(plate.light(at, paper, onPlate));
            }
            Lab seen = Lab.of(SmoothSpectrum.colour(print.print(alone)));
            unshown += Lab.onScreen(seen.xyz().light()) ? 0 : 1;
            codes[at] = seen.code();
        }
        return unshown;
    }
}
