package greyground.app.recipe;

import greyground.film.job.ArtChoice;
import greyground.film.job.ArtChoice.Crop;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.Job;
import greyground.film.job.LevelledArt;
import greyground.film.job.Placing;
import greyground.film.job.ReadingSide;
import greyground.grain.Grain;
import greyground.plate.PlateProcess;
import greyground.quantity.Angles;
import greyground.quantity.Lengths;
import greyground.quantity.PaperShrink;
import greyground.quantity.Percents;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import greyground.quantity.Size;
import greyground.workshop.Paper;
import greyground.workshop.Workshop;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A job in the words a person gives, such as plate "200x250mm" and grain "180um"; each one left out keeps what the job file,
 * or habit, says.
 *
 * @param given words by name: plate, process, screen-black, screen-spacing, aquatint-land, aquatint-grain, resolution, grain, ruling, angle, dots, crop, rotate,
 *     fit, bleed, bevel, page, white, black, paper-shrink, ink-side, transfers, sheet, tile, range, mend, seed, title, date;
 *     other names are ignored
 */
public record JobWords(Map<String, String> given) {
    public JobWords {
        given = Map.copyOf(given);
    }

    private @Nullable String word(String name) {
        return given.get(name);
    }

    /** A wish that is there or not; "no" takes back what the job had. */
    private boolean asked(String name, boolean base) {
        String word = word(name);
        return word == null ? base : !word.equals("no");
    }

    /**
     * A job in words: given back with the same job as a base, they describe the same job, to a ten-thousandth of each number. Words
     * that don't belong to its process and grain are left out.
     */
    public static JobWords of(Job job) {
        Map<String, String> words = new HashMap<>();
        words.put("title", job.title());
        words.put("date", job.date());
        words.put("plate", millimetres(job.plate()));
        words.put("process", job.process().word());
        words.put("resolution", Refusal.plain(job.resolution().dotsPerInch()) + "dpi");
        words.put("range", job.rangeMapping());
        words.put("mend", job.mended() ? "yes" : "no");
        if (job.process() instanceof PlateProcess.Photogravure screen) {
            words.put("screen-black", Refusal.plain(screen.screenBlack() * 100) + "%");
            words.put("screen-spacing", Refusal.plain(screen.screenSpacingMicrometres()) + "um");
        }
        if (job.process() instanceof PlateProcess.SprayedAquatint ground) {
            words.put("aquatint-land", Refusal.plain(ground.landFraction() * 100) + "%");
            words.put("aquatint-grain", Refusal.plain(ground.grainMicrometres()) + "um");
        }
        if (job.grain() instanceof Grain.Stochastic grain) {
            words.put("grain", Refusal.plain(grain.spacingMicrometres()) + "um");
            words.put("seed", Long.toString(grain.seed()));
        } else if (job.grain() instanceof Grain.Halftone halftone) {
            words.put("ruling", Refusal.plain(halftone.ruling().linesPerCentimetre()) + "/cm");
            words.put("angle", Refusal.plain(halftone.angleDegrees()));
            words.put("dots", halftone.shape() == Grain.DotShape.ROUND ? "round" : "line");
        }
        describe(job.art(), words);
        describe(job.placing(), words);
        return new JobWords(words);
    }

    private static void describe(ArtChoice art, Map<String, String> words) {
        Crop crop = art.crop();
        words.put("page", Integer.toString(art.page()));
        words.put(
                "crop",
                percent(crop.left()) + "," + percent(crop.top()) + "," + percent(crop.width()) + ","
                        + percent(crop.height()));
        words.put("rotate", Refusal.plain(90 * art.quarterTurns() + art.straightenDegrees()));
        words.put("white", point(art.white()));
        words.put("black", point(art.black()));
    }

    private static void describe(Placing placing, Map<String, String> words) {
        words.put("fit", placing.fit().word());
        words.put("bleed", Refusal.plain(placing.bleedMillimetres()) + "mm");
        words.put("bevel", Refusal.plain(placing.bevelMillimetres()) + "mm");
        words.put(
                "paper-shrink",
                Refusal.plain(placing.shrink().acrossPercent()) + "%,"
                        + Refusal.plain(placing.shrink().downPercent()) + "%");
        words.put("ink-side", placing.readingSide().inkSide().word());
        words.put("transfers", Integer.toString(placing.readingSide().transfers()));
        words.put("sheet", placing.sheet().map(JobWords::millimetres).orElse("automatic"));
        words.put("tile", placing.tiled() ? "yes" : "no");
    }

    private static String millimetres(Size size) {
        return Refusal.plain(size.widthMillimetres()) + "x" + Refusal.plain(size.heightMillimetres()) + "mm";
    }

    private static String percent(double share) {
        return Refusal.plain(share * 100) + "%";
    }

    private static String point(TonePoint point) {
        return point instanceof TonePoint.Given given ? percent(given.luminance()) : "automatic";
    }

    private static long whole(String what, String text, long least, long most) {
        try {
            long number = Long.parseLong(text.strip());
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException notWhole) {
            // Refused below, like a number out of range.
        }
        throw Refusal.use(what + " is \"" + text + "\"; it must be a whole number from " + least + " to " + most);
    }

    /** The page asked for, or that of the job reused, or the first. */
    public int page(Optional<Job> base) {
        String page = word("page");
        return page == null ? base.map(job -> job.art().page()).orElse(1) : (int) whole("page", page, 1, 100_000);
    }

    /**
     * The job these words describe.
     *
     * @param base from a job file, if one is reused
     * @param workshop gives the film printer's resolution and the paper's shrinkage to a job that says neither
     * @param today for a new job without a date
     */
    public Job job(Optional<Job> base, SourceArt art, Workshop workshop, String today) {
        String plate = word("plate");
        String process = word("process");
        String title = word("title");
        String date = word("date");
        String resolution = word("resolution");
        String range = word("range");
        if (base.isEmpty() && plate == null) {
            throw Refusal.use("no plate size is given: add --plate with the copper's size, such as --plate 200x250mm");
        }
        PlateProcess madeBy = sprayed(screened(
                process != null
                        ? PlateProcess.named(process)
                        : base.map(Job::process).orElse(new PlateProcess.EtchedFilm())));
        Size copper =
                plate != null ? Size.parse("plate", plate) : base.orElseThrow().plate();
        Placing placing = placing(base.map(Job::placing).orElseGet(() -> usual(workshop.paper())));
        return new Job(
                title != null ? title : base.map(Job::title).orElse(art.title()),
                date != null ? date : base.map(Job::date).orElse(today),
                copper,
                madeBy,
                resolution != null
                        ? Resolution.parse("film resolution", resolution)
                        : base.map(Job::resolution)
                                .orElseGet(() -> new Resolution(
                                        workshop.filmPrinter().resolutionDpi().value())),
                grain(madeBy, base.map(Job::grain)),
                choice(base.map(Job::art).orElse(ArtChoice.WHOLE), art, page(base), copper, placing),
                placing,
                range != null ? range : base.map(Job::rangeMapping).orElse("lightness"),
                asked("mend", base.map(Job::mended).orElse(false)),
                base.map(Job::kept).orElse(List.of()));
    }

    /** The process with its screen film as given. */
    private PlateProcess screened(PlateProcess madeBy) {
        String black = word("screen-black");
        String spacing = word("screen-spacing");
        if (black == null && spacing == null) {
            return madeBy;
        }
        if (!(madeBy instanceof PlateProcess.Photogravure usual)) {
            throw Refusal.use((black != null ? "--screen-black" : "--screen-spacing")
                    + " belongs to the screen film of photogravure: add --process photogravure, or leave it out");
        }
        return new PlateProcess.Photogravure(
                black == null ? usual.screenBlack() : Percents.parsePercent("screen black", black) / 100,
                spacing == null
                        ? usual.screenSpacingMicrometres()
                        : Lengths.parseMicrometres("screen spacing", spacing));
    }

    /** The process with its sprayed ground as given. */
    private PlateProcess sprayed(PlateProcess madeBy) {
        String land = word("aquatint-land");
        String grain = word("aquatint-grain");
        if (land == null && grain == null) {
            return madeBy;
        }
        if (!(madeBy instanceof PlateProcess.SprayedAquatint usual)) {
            throw Refusal.use((land != null ? "--aquatint-land" : "--aquatint-grain")
                    + " belongs to a sprayed aquatint: add --process sprayed-aquatint, or leave it out");
        }
        return new PlateProcess.SprayedAquatint(
                land == null ? usual.landFraction() : Percents.parsePercent("aquatint land", land) / 100,
                grain == null ? usual.grainMicrometres() : Lengths.parseMicrometres("aquatint grain", grain),
                usual.seed());
    }

    private Grain grain(PlateProcess madeBy, Optional<Grain> base) {
        String grain = word("grain");
        String ruling = word("ruling");
        String angle = word("angle");
        String dots = word("dots");
        String chosen = word("seed");
        Optional<Long> seed =
                Optional.ofNullable(chosen).map(text -> whole("seed", text, Long.MIN_VALUE, Long.MAX_VALUE));
        if (grain != null && ruling != null) {
            throw Refusal.use("both --grain and --ruling are given; a film carries one of them: leave one out");
        }
        if (ruling == null && (angle != null || dots != null)) {
            throw Refusal.use(
                    (angle != null ? "--angle" : "--dots") + " belongs to a halftone: add --ruling N, or leave it out");
        }
        if (ruling != null) {
            double degrees = angle == null ? 45 : Angles.parseDegrees("halftone angle", angle);
            return new Grain.Halftone(Ruling.parse("halftone ruling", ruling), degrees, shape(dots));
        }
        if (grain != null && !grain.equals("none")) {
            boolean bare = grain.matches("[0-9.,]+");
            double spacing = Lengths.parseMicrometres("grain", bare ? grain + "um" : grain);
            return new Grain.Stochastic(spacing, seed.orElse(1L));
        }
        boolean photogravure = madeBy instanceof PlateProcess.Photogravure;
        if (grain != null
                || (photogravure
                        && base.filter(Grain.Continuous.class::isInstance).isEmpty())) {
            return new Grain.Continuous(16);
        }
        boolean fits = base.isPresent() && base.get() instanceof Grain.Continuous == photogravure;
        if (fits && seed.isPresent() && base.get() instanceof Grain.Stochastic before) {
            return new Grain.Stochastic(before.spacingMicrometres(), seed.get());
        }
        return fits ? base.get() : new Grain.Stochastic(180, seed.orElse(1L));
    }

    private static Grain.DotShape shape(@Nullable String dots) {
        if (dots == null || dots.equals("round")) {
            return Grain.DotShape.ROUND;
        }
        if (dots.equals("line")) {
            return Grain.DotShape.LINE;
        }
        throw Refusal.use("halftone dots \"" + dots + "\" are unknown: write round or line");
    }

    private ArtChoice choice(ArtChoice base, SourceArt art, int page, Size plate, Placing placing) {
        String rotate = word("rotate");
        String crop = word("crop");
        String white = word("white");
        String black = word("black");
        int turns = base.quarterTurns();
        double rest = base.straightenDegrees();
        if (rotate != null) {
            double degrees = Angles.parseDegrees("rotation", rotate);
            long quarters = Math.round(degrees / 90);
            turns = (int) Math.floorMod(quarters, 4L);
            rest = degrees - 90 * quarters;
        }
        ArtChoice turned = new ArtChoice(
                art.fileName(),
                art.sha256(),
                page,
                base.crop(),
                turns,
                rest,
                point("art white", white, base.white()),
                point("art black", black, base.black()));
        if (crop == null) {
            return turned;
        }
        double across = turns % 2 == 1 ? art.height() : art.width();
        double down = turns % 2 == 1 ? art.width() : art.height();
        return turned.cropped(
                crop.equals("covered")
                        ? LevelledArt.of(across, down, turned).covered(plate, placing)
                        : crop(crop, across, down));
    }

    private static Crop crop(String text, double across, double down) {
        String[] parts = text.split(",", -1);
        if (parts.length != 4) {
            throw Refusal.use(
                    "crop \"" + text + "\" has " + parts.length
                            + " parts; it must have 4: left,top,width,height, each in % or pixels, such as 10%,5%,80%,80%; or be the word covered");
        }
        double[] shares = new double[4];
        for (int i = 0; i < 4; i++) {
            String part = parts[i].strip();
            if (part.endsWith("%")) {
                shares[i] = Percents.parsePercent("crop", part) / 100;
            } else if (part.matches("[0-9]{1,9}(px)?")) {
                shares[i] = Integer.parseInt(part.replace("px", "")) / (i % 2 == 0 ? across : down);
            } else {
                throw Refusal.use(
                        "crop part \"" + part + "\" is neither a percentage nor whole pixels: write 10% or 240");
            }
        }
        return new Crop(shares[0], shares[1], shares[2], shares[3]);
    }

    private static TonePoint point(String what, @Nullable String text, TonePoint base) {
        if (text == null) {
            return base;
        }
        if (text.equals("automatic") || text.equals("auto")) {
            return new TonePoint.Automatic();
        }
        double percent = Percents.parsePercent(what, text);
        return new TonePoint.Given(Refusal.checkRange(what, percent, 0, 100, "%", "give a reflectance") / 100);
    }

    private static Placing usual(Paper paper) {
        Placing usual = Placing.USUAL;
        return new Placing(
                usual.fit(),
                usual.bleedMillimetres(),
                usual.bevelMillimetres(),
                new PaperShrink(
                        paper.shrinkXPercent().value(), paper.shrinkYPercent().value()),
                usual.readingSide(),
                usual.sheet(),
                usual.tiled());
    }

    private Placing placing(Placing base) {
        String inkSide = word("ink-side");
        String transfers = word("transfers");
        String sheet = word("sheet");
        String fit = word("fit");
        String bleed = word("bleed");
        String bevel = word("bevel");
        String paperShrink = word("paper-shrink");
        ReadingSide side = new ReadingSide(
                inkSide != null
                        ? ReadingSide.InkSide.named(inkSide)
                        : base.readingSide().inkSide(),
                transfers != null
                        ? (int) whole("transfers", transfers, 1, 9)
                        : base.readingSide().transfers());
        Optional<Size> film = base.sheet();
        if (sheet != null) {
            film = sheet.startsWith("auto") ? Optional.empty() : Optional.of(Size.parse("sheet", sheet));
        }
        return new Placing(
                fit != null ? Placing.Fit.named(fit) : base.fit(),
                bleed != null ? Lengths.parseMillimetres("bleed", bleed) : base.bleedMillimetres(),
                bevel != null ? Lengths.parseMillimetres("bevel", bevel) : base.bevelMillimetres(),
                paperShrink != null ? PaperShrink.parse("paper shrinkage", paperShrink) : base.shrink(),
                side,
                film,
                asked("tile", base.tiled()));
    }
}
