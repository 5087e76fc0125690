package greyground.cli;

import greyground.app.SourceArt;
import greyground.film.ArtChoice;
import greyground.film.ArtChoice.Crop;
import greyground.film.ArtChoice.TonePoint;
import greyground.film.Job;
import greyground.film.Placing;
import greyground.film.ReadingSide;
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
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that describe a job; each one left out keeps what the job file, or habit, says. */
final class JobOptions {
    @Option(names = "--plate", paramLabel = "SIZE", description = "the copper's size, such as 200x250mm or 8x10in")
    @Nullable
    String plate;

    @Option(
            names = "--process",
            paramLabel = "WORD",
            description = "etched-film (usual), sprayed-aquatint, photogravure or unetched-film")
    @Nullable
    String process;

    @Option(
            names = "--resolution",
            paramLabel = "DPI",
            description = "the film printer's own resolution (usually the workshop's)")
    @Nullable
    String resolution;

    @Option(
            names = "--grain",
            paramLabel = "SIZE",
            description = "stochastic grain of this mean spacing, in um (usual: 180um), or 'none' for continuous tone")
    @Nullable
    String grain;

    @Option(names = "--ruling", paramLabel = "N", description = "halftone of N lines per cm, instead of a grain")
    @Nullable
    String ruling;

    @Option(names = "--angle", paramLabel = "DEGREES", description = "of the halftone (usual: 45)")
    @Nullable
    String angle;

    @Option(names = "--dots", paramLabel = "WORD", description = "halftone dots: round (usual) or line")
    @Nullable
    String dots;

    @Option(
            names = "--crop",
            paramLabel = "L,T,W,H",
            description = "fragment of the art: left, top, width, height in percent (10%%,5%%,80%%,80%%) or pixels")
    @Nullable
    String crop;

    @Option(
            names = "--rotate",
            paramLabel = "DEGREES",
            description = "turn the art clockwise; 90s exactly, the rest straightens")
    @Nullable
    String rotate;

    @Option(
            names = "--fit",
            paramLabel = "WORD",
            description = "fill (usual: cover the plate) or whole (show all the art)")
    @Nullable
    String fit;

    @Option(
            names = "--bleed",
            paramLabel = "LENGTH",
            description = "how far the art runs past the platemark (usual: 3mm)")
    @Nullable
    String bleed;

    @Option(names = "--bevel", paramLabel = "LENGTH", description = "width of the plate's bevel (usual: 2mm)")
    @Nullable
    String bevel;

    @Option(names = "--page", paramLabel = "N", description = "picture within a file that holds several (usual: 1)")
    @Nullable
    Integer page;

    @Option(
            names = "--white",
            paramLabel = "POINT",
            description = "the art's paper white as reflectance, such as 85%%, or 'automatic'")
    @Nullable
    String white;

    @Option(
            names = "--black",
            paramLabel = "POINT",
            description = "the art's ink black as reflectance, such as 2%%, or 'automatic'")
    @Nullable
    String black;

    @Option(
            names = "--paper-shrink",
            paramLabel = "X,Y",
            description = "how much damp paper shrinks on drying, across and down, such as 0.7%%,0.4%%")
    @Nullable
    String paperShrink;

    @Option(names = "--ink-side", paramLabel = "WORD", description = "down (usual: ink on the resist) or up")
    @Nullable
    String inkSide;

    @Option(
            names = "--transfers",
            paramLabel = "N",
            description = "contacts from plate to final sheet (usual: 1; offset: 2)")
    @Nullable
    Integer transfers;

    @Option(
            names = "--sheet",
            paramLabel = "SIZE",
            description = "the film printer's sheet, or 'automatic' for just large enough")
    @Nullable
    String sheet;

    @Option(names = "--tile", description = "split a plate that is too large for the sheet over several, with overlaps")
    boolean tile;

    @Option(
            names = "--range",
            paramLabel = "WORD",
            description = "how the art's range meets the print's: lightness (usual), black-point or density")
    @Nullable
    String range;

    @Option(names = "--seed", paramLabel = "N", description = "chooses one of many equivalent grains (usual: 1)")
    @Nullable
    Long seed;

    @Option(names = "--title", paramLabel = "TEXT", description = "printed on the film (usual: the art's file name)")
    @Nullable
    String title;

    @Option(names = "--date", paramLabel = "DATE", description = "printed on the film, year-month-day (usual: today)")
    @Nullable
    String date;

    /**
     * The job these options describe.
     *
     * @param base from a job file, if one is reused
     * @param dotsPerInch of the workshop's film printer
     * @param today for a new job without a date
     */
    Job job(Optional<Job> base, SourceArt art, double dotsPerInch, String today) {
        if (base.isEmpty() && plate == null) {
            throw Refusal.use("no plate size is given: add --plate with the copper's size, such as --plate 200x250mm");
        }
        PlateProcess madeBy = process != null
                ? PlateProcess.named(process)
                : base.map(Job::process).orElse(new PlateProcess.EtchedFilm());
        return new Job(
                title != null ? title : base.map(Job::title).orElse(art.title()),
                date != null ? date : base.map(Job::date).orElse(today),
                plate != null ? Size.parse("plate", plate) : base.orElseThrow().plate(),
                madeBy,
                resolution != null
                        ? Resolution.parse("film resolution", resolution)
                        : base.map(Job::resolution).orElse(new Resolution(dotsPerInch)),
                grain(madeBy, base.map(Job::grain)),
                choice(base.map(Job::art).orElse(ArtChoice.WHOLE), art),
                placing(base.map(Job::placing).orElse(Placing.USUAL)),
                range != null ? range : base.map(Job::rangeMapping).orElse("lightness"),
                base.map(Job::kept).orElse(List.of()));
    }

    private Grain grain(PlateProcess madeBy, Optional<Grain> base) {
        if (grain != null && ruling != null) {
            throw Refusal.use("both --grain and --ruling are given; a film carries one of them: leave one out");
        }
        if (ruling == null && (angle != null || dots != null)) {
            throw Refusal.use(
                    (angle != null ? "--angle" : "--dots") + " belongs to a halftone: add --ruling N, or leave it out");
        }
        if (ruling != null) {
            double degrees = angle == null ? 45 : Angles.parseDegrees("halftone angle", angle);
            return new Grain.Halftone(Ruling.parse("halftone ruling", ruling), degrees, shape());
        }
        if (grain != null && !grain.equals("none")) {
            boolean bare = grain.matches("[0-9.,]+");
            double spacing = Lengths.parseMicrometres("grain", bare ? grain + "um" : grain);
            return new Grain.Stochastic(spacing, seed == null ? 1 : seed);
        }
        boolean photogravure = madeBy instanceof PlateProcess.Photogravure;
        if (grain != null
                || (photogravure
                        && base.filter(Grain.Continuous.class::isInstance).isEmpty())) {
            return new Grain.Continuous(16);
        }
        boolean fits = base.isPresent()
                && (base.get() instanceof Grain.Continuous
                        ? photogravure || madeBy instanceof PlateProcess.UnetchedFilm
                        : !photogravure);
        if (fits && seed != null && base.get() instanceof Grain.Stochastic before) {
            return new Grain.Stochastic(before.spacingMicrometres(), seed);
        }
        return fits ? base.get() : new Grain.Stochastic(180, seed == null ? 1 : seed);
    }

    private Grain.DotShape shape() {
        if (dots == null || dots.equals("round")) {
            return Grain.DotShape.ROUND;
        }
        if (dots.equals("line")) {
            return Grain.DotShape.LINE;
        }
        throw Refusal.use("halftone dots \"" + dots + "\" are unknown: write round or line");
    }

    private ArtChoice choice(ArtChoice base, SourceArt art) {
        int turns = base.quarterTurns();
        double rest = base.straightenDegrees();
        if (rotate != null) {
            double degrees = Angles.parseDegrees("rotation", rotate);
            long quarters = Math.round(degrees / 90);
            turns = (int) Math.floorMod(quarters, 4L);
            rest = degrees - 90 * quarters;
        }
        return new ArtChoice(
                art.fileName(),
                art.sha256(),
                page != null ? page : base.page(),
                crop != null ? crop(crop, art, turns) : base.crop(),
                turns,
                rest,
                point("art white", white, base.white()),
                point("art black", black, base.black()));
    }

    private static Crop crop(String text, SourceArt art, int turns) {
        String[] parts = text.split(",", -1);
        if (parts.length != 4) {
            throw Refusal.use("crop \"" + text + "\" has " + parts.length
                    + " parts; it must have 4: left,top,width,height, each in % or pixels, such as 10%,5%,80%,80%");
        }
        boolean turned = turns % 2 == 1;
        double across = turned ? art.height() : art.width();
        double down = turned ? art.width() : art.height();
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

    private Placing placing(Placing base) {
        ReadingSide side = new ReadingSide(
                inkSide != null
                        ? ReadingSide.InkSide.named(inkSide)
                        : base.readingSide().inkSide(),
                transfers != null ? transfers : base.readingSide().transfers());
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
                tile || base.tiled());
    }
}
