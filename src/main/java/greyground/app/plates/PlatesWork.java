package greyground.app.plates;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.SafeFile;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.SourceArt;
import greyground.colour.ColourParting;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.film.sheet.SheetLayout;
import greyground.finding.Findings;
import greyground.ink.InkSet;
import greyground.json.JsonText;
import greyground.output.FilmDocument;
import greyground.output.FilmPdf;
import greyground.plan.ExposurePlan;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.raster.Crew;
import greyground.raster.Progress;
import greyground.tone.PrintRange;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Makes the films of plates that are printed over one another: all of one size, their marks at the same places, each with a grain of its own. */
public final class PlatesWork {
    /** Done when the art is parted, and when all films are settled. */
    private static final double PARTED = 0.2;

    private static final double SETTLED = 0.6;

    /** What of the grey that it could the key plate carries. */
    private static final Range KEY =
            new Range(0, 100, Unit.PERCENT, "60 % strays least where each plate strays by itself");

    private static final double USUAL_KEY_PERCENT = 60;

    private PlatesWork() {}

    /** How the picture comes to lie on several plates. */
    public enum By {
        /** Each plate has art of its own, drawn or parted elsewhere. */
        HAND,
        /** Two plates of one hue share the tones of one picture. */
        TONE,
        /** Plates of several inks share the colours of one picture. */
        COLOUR;

        /** As it is typed. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** Whether a picture is parted; the whole picture goes to a set's only plate. */
        boolean parts(InkSet inks) {
            return this == TONE || (this == COLOUR && inks.inks().size() > 1);
        }

        /** Finds a way by its word. */
        public static By named(String word) {
            for (By by : values()) {
                if (by.word().equals(word)) {
                    return by;
                }
            }
            throw Refusal.use(
                    "--by \"" + word + "\" is unknown: choose hand, for a picture of each plate, tone, for two"
                            + " plates of one hue, or colour, for one picture in several inks");
        }
    }

    /**
     * What is asked.
     *
     * @param arts a file for each plate, or one that holds a picture for each, by hand; else one
     * @param inks in the order of printing
     * @param separations a folder for each plate's grey art; empty where nobody wants to see it
     * @param keyPercent of the grey that it could, carried by the darkest of four inks; empty for the usual
     */
    public record Order(List<Path> arts, By by, InkSet inks, Optional<Path> separations, Optional<Double> keyPercent) {
        public Order {
            keyPercent.ifPresent(percent -> KEY.check("--key", percent));
            arts = List.copyOf(arts);
            int plates = inks.inks().size();
            if (by == By.TONE && plates != 2) {
                throw Refusal.use("--by tone shares one hue between two plates, and the inks file names " + plates
                        + (plates == 1 ? " ink" : " inks") + ": name a pale and a dark one");
            }
            if (by == By.COLOUR && plates > ColourParting.MOST_PLATES) {
                throw Refusal.use("--by colour parts a picture between two to four inks, and the inks file names "
                        + plates + ": use --by hand with a picture for each plate");
            }
            if (keyPercent.isPresent() && !(by == By.COLOUR && plates == ColourParting.MOST_PLATES)) {
                throw Refusal.use("--key shares grey between four inks that --by colour parts a picture between, and"
                        + " here it is --by " + by.word() + " with " + plates + (plates == 1 ? " ink" : " inks")
                        + ": leave it out");
            }
            if (by != By.HAND && arts.size() != 1) {
                throw Refusal.use(arts.size() + " pictures are given, and --by " + by.word()
                        + " parts one: give one, or use --by hand" + " with a picture for each plate");
            }
            if (by == By.HAND && arts.size() != 1 && arts.size() != plates) {
                throw Refusal.use(arts.size() + " pictures are given for " + plates + " inks, "
                        + inks.names((1 << plates) - 1)
                        + ": give one for each plate in the order of printing, or one file that holds them all");
            }
            if (by == By.HAND && separations.isPresent()) {
                throw Refusal.use(
                        "--separations keeps what --by tone or colour parts; by hand each plate has its own picture already:"
                                + " leave it out");
            }
        }
    }

    /** Art of a plate. */
    private record PlateArt(Path file, int page) {}

    /** Art of all plates, and how far a picture's colours were moved for them. */
    private record Parted(List<PlateArt> arts, Optional<ColourSeparation.Moved> moved) {}

    /**
     * Makes the set and writes it, whole or not at all.
     *
     * @param base the job of all plates
     */
    public static Findings make(Order order, Job base, Workshop shop, Path pdf, Progress progress) throws IOException {
        InkSet inks = order.inks();
        PlateJobs.check(base, inks.inks().size());
        if (order.by() == By.COLOUR && order.by().parts(inks)) {
            PlateJobs.checkColours(base);
        }
        inks.checkApart(shop);
        List<ArtSource> open = new ArrayList<>();
        Path spare = order.by().parts(inks) && order.separations().isEmpty()
                ? Files.createTempDirectory("greyground-plates")
                : null;
        Parted art = new Parted(List.of(), Optional.empty());
        try {
            art = order.by().parts(inks)
                    ? parted(
                            order,
                            base,
                            shop,
                            spare == null ? order.separations().orElseThrow() : spare,
                            progress)
                    : new Parted(byHand(order, base), Optional.empty());
            Job own = order.by().parts(inks) ? PlateJobs.parted(base) : base;
            List<FilmRecipe> plates = plates(order, art.arts(), own, shop, open, progress.part(PARTED, SETTLED));
            checkRegister(plates);
            FilmDocument document = document(order, base, shop, plates);
            SafeFile.write(
                    "set",
                    pdf,
                    channel -> FilmPdf.write(
                            document, Channels.newOutputStream(channel), Crew.allCores(), progress.part(SETTLED, 1)));
            return findings(order, plates, art.moved(), document.films().size());
        } finally {
            open.forEach(ArtSource::close);
            if (spare != null) {
                for (PlateArt own : art.arts()) {
                    Files.deleteIfExists(own.file());
                }
                Files.deleteIfExists(spare);
            }
        }
    }

    private static List<PlateArt> byHand(Order order, Job base) {
        List<PlateArt> arts = new ArrayList<>();
        for (int i = 0; i < order.inks().inks().size(); i++) {
            boolean oneFile = order.arts().size() == 1;
            arts.add(new PlateArt(order.arts().get(oneFile ? 0 : i), base.art().page() + (oneFile ? i : 0)));
        }
        return arts;
    }

    private static Parted parted(Order order, Job base, Workshop shop, Path folder, Progress progress)
            throws IOException {
        Files.createDirectories(folder);
        try (ArtSource art = ArtSource.open(order.arts().get(0))) {
            SourceArt known = art.source(base.art().page());
            List<Job> jobs = new ArrayList<>();
            List<Path> files = new ArrayList<>();
            for (int i = 0; i < order.inks().inks().size(); i++) {
                jobs.add(PlateJobs.of(PlateJobs.parted(base), known, 1, i + 1, order.inks()));
                String ink = order.inks().inks().get(i).name().replaceAll("[^\\p{L}\\p{N}]+", "-");
                files.add(folder.resolve(known.title() + "-" + (i + 1) + "-" + ink + ".tif"));
            }
            List<PlateArt> arts =
                    files.stream().map(file -> new PlateArt(file, 1)).toList();
            Progress part = progress.part(0, PARTED);
            if (order.by() == By.TONE) {
                ToneSeparation.of(jobs, order.inks(), shop).write(art, base, shop, files, part);
                return new Parted(arts, Optional.empty());
            }
            double key = order.keyPercent().orElse(USUAL_KEY_PERCENT) / 100;
            return new Parted(
                    arts,
                    Optional.of(ColourSeparation.of(jobs, order.inks(), shop, key)
                            .write(order.arts().get(0), base, shop, files, part)));
        }
    }

    private static List<FilmRecipe> plates(
            Order order, List<PlateArt> arts, Job base, Workshop shop, List<ArtSource> open, Progress progress)
            throws IOException {
        List<Job> jobs = new ArrayList<>();
        SourceArt first = null;
        for (int i = 0; i < arts.size(); i++) {
            ArtSource art = ArtSource.open(arts.get(i).file());
            open.add(art);
            SourceArt known = known(art, arts.get(i).page(), i, order);
            if (first != null && (first.width() != known.width() || first.height() != known.height())) {
                throw Refusal.use("the picture of plate " + (i + 1) + " measures " + known.width() + " x "
                        + known.height() + " pixels and that of plate 1 " + first.width() + " x " + first.height()
                        + "; plates in register need pictures of one size: crop or enlarge them alike");
            }
            first = known;
            jobs.add(PlateJobs.of(base, known, arts.get(i).page(), i + 1, order.inks()));
        }
        PlateJobs.checkGrains(jobs);
        List<FilmRecipe> plates = new ArrayList<>();
        for (int i = 0; i < jobs.size(); i++) {
            plates.add(FilmRecipe.of(
                    open.get(i), jobs.get(i), order.inks().shop(i, shop), progress.share(i, jobs.size())));
        }
        return plates;
    }

    private static SourceArt known(ArtSource art, int page, int plate, Order order) {
        try {
            return art.source(page);
        } catch (Refusal missing) {
            if (plate == 0 || order.arts().size() > 1) {
                throw missing;
            }
            throw Refusal.use(art.file().getFileName() + " holds no picture for plate " + (plate + 1) + ", "
                    + order.inks().inks().get(plate).name()
                    + "; it must hold one for each ink: give a picture for each plate in the order of printing");
        }
    }

    /** Marks lie where the plate lies; words at the foot may push it on a sheet that is given. */
    private static void checkRegister(List<FilmRecipe> plates) throws IOException {
        SheetLayout first = plates.get(0).positive().layout();
        for (FilmRecipe plate : plates) {
            SheetLayout layout = plate.positive().layout();
            if (!layout.plate().equals(first.plate()) || layout.width() != first.width()) {
                throw Refusal.use(
                        "the words at the foot take more room on one film than on another, so that plates would lie at"
                                + " different places on a sheet of "
                                + plate.job().placing().sheet().orElseThrow()
                                + ": leave out --sheet, or give a shorter --title");
            }
        }
    }

    private static FilmDocument document(Order order, Job base, Workshop shop, List<FilmRecipe> plates)
            throws IOException {
        List<FilmDocument> own = new ArrayList<>();
        for (FilmRecipe plate : plates) {
            own.add(FilmFile.of(plate, plate.plan(), plate.films()));
        }
        ExposurePlan press = PressOrder.plan(
                order.inks(), plates.get(0).job(), plates.get(0).plan().caution());
        return new SetDocument(base, shop, order.inks(), set(order, plates), particulars(order, plates), press)
                .of(own, List.of());
    }

    private static ObjectNode set(Order order, List<FilmRecipe> plates) {
        ObjectNode file = JsonText.file("set", 1).put("by", order.by().word());
        order.keyPercent().ifPresent(percent -> file.put("keyPercent", percent));
        ArrayNode list = file.putArray("plates");
        for (int i = 0; i < plates.size(); i++) {
            list.addObject()
                    .put("number", i + 1)
                    .put("ink", order.inks().inks().get(i).name())
                    .put("title", plates.get(i).job().title())
                    .put("grain", plates.get(i).job().grain().name());
        }
        return file;
    }

    private static List<ExposurePlan.Line> particulars(Order order, List<FilmRecipe> plates) {
        List<ExposurePlan.Line> lines = new ArrayList<>();
        for (int i = 0; i < plates.size(); i++) {
            lines.add(new ExposurePlan.Line("plate " + (i + 1), words(order, plates.get(i), i), "", ""));
        }
        return lines;
    }

    private static String words(Order order, FilmRecipe plate, int index) {
        PrintRange range = plate.compensation().print();
        return String.format(
                Locale.ROOT,
                "%s, printed %s, by itself L* %.1f to %.1f%s",
                order.inks().inks().get(index).name(),
                index + 1 == order.inks().inks().size() && index > 0 ? "last" : InkSet.ordinal(index + 1),
                range.paperLightness(),
                range.darkestLightness(),
                order.inks().inks().get(index).patch().isPresent() ? " in the light that it takes most of" : "");
    }

    private static Findings findings(
            Order order, List<FilmRecipe> plates, Optional<ColourSeparation.Moved> moved, int films)
            throws IOException {
        Findings findings = new Findings()
                .say(
                        "set",
                        plates.size() + (plates.size() == 1 ? " plate" : " plates over one another") + " of "
                                + plates.get(0).job().plate() + ", by "
                                + order.by().word(),
                        plates.size());
        List<String> words = new ArrayList<>();
        List<Findings> rows = new ArrayList<>();
        List<String> notes = new ArrayList<>(order.inks().notes());
        for (int i = 0; i < plates.size(); i++) {
            FilmRecipe plate = plates.get(i);
            words.add(i + 1 + "  " + words(order, plate, i));
            PrintRange range = plate.compensation().print();
            rows.add(new Findings()
                    .put("number", i + 1)
                    .put("ink", order.inks().inks().get(i).name())
                    .put("lightness", range.paperLightness(), range.darkestLightness())
                    .put("job", JobFile.tree(plate.job())));
        }
        notes.addAll(notes(plates));
        moved.ifPresent(colours -> {
            findings.say("colours", colours.words(), colours.figures());
            colours.inked().ifPresent(notes::add);
        });
        return findings.rows("plates", words, rows)
                .say("print", FilmDocument.paper(films))
                .list("notes", notes);
    }

    /** What all plates are noted for alike is said once. */
    private static List<String> notes(List<FilmRecipe> plates) throws IOException {
        List<List<String>> own = new ArrayList<>();
        for (FilmRecipe plate : plates) {
            own.add(Stream.concat(plate.warnings().stream(), plate.plan().warnings().stream())
                    .toList());
        }
        List<String> notes = new ArrayList<>();
        for (int i = 0; i < own.size(); i++) {
            for (String note : own.get(i)) {
                boolean all = own.stream().allMatch(each -> each.contains(note));
                if (!all) {
                    notes.add("plate " + (i + 1) + ": " + note);
                } else if (i == 0) {
                    notes.add(note);
                }
            }
        }
        return notes;
    }
}
