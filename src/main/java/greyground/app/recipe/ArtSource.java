package greyground.app.recipe;

import greyground.art.Art;
import greyground.art.colour.PaperAndInk;
import greyground.art.printed.CellMeans;
import greyground.art.spots.SpotsFound;
import greyground.art.touch.EvenPaper;
import greyground.art.touch.Touch;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtChoice.TonePoint;
import greyground.film.job.Job;
import greyground.film.job.Origin;
import greyground.film.job.SpotWish;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.Histogram;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.raster.TurnedArt;
import greyground.tone.ArtRange;
import greyground.tone.ColourSight;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;

/**
 * The art of a job, within a share of the program's memory: looked into, decoded and turned once, until the job asks for another page or
 * turn. Closed, it lets all go, and can be asked anew. The thread that opens it uses it, and no other may.
 */
public final class ArtSource implements Closeable {
    private final Path file;
    private final boolean stays;
    private final Thread owner = Thread.currentThread();
    private Art look;
    private @Nullable Decoded decoded;

    private ArtSource(Path file, boolean stays) {
        this.file = file;
        this.stays = stays;
        this.look = Art.open(file);
    }

    /** A page that was read, and what was made of it. */
    private static final class Decoded {
        final int page;
        final ColourSight sight;
        final Origin origin;
        final double evenPaper;
        final CompletableFuture<String> fingerprint;
        final List<String> remarks;
        final ArtSpots spots = new ArtSpots();

        /** As it was read; let go once it is turned, unless the art stays. */
        @Nullable
        GreyPlane upright;

        @Nullable
        PrintedArt print;

        Optional<EvenPaper> paper = Optional.empty();

        @Nullable
        LineArt line;

        @Nullable
        ArtRange found;

        @Nullable
        Turned turned;

        @Nullable
        Touched touched;

        @Nullable
        Counted counted;

        Decoded(ArtChoice choice, CompletableFuture<String> fingerprint, List<String> remarks) {
            this.page = choice.page();
            this.sight = choice.hand().sight();
            this.origin = choice.hand().origin();
            this.evenPaper = choice.hand().evenPaper();
            this.fingerprint = fingerprint;
            this.remarks = remarks;
        }

        boolean suits(ArtChoice choice) {
            return page == choice.page()
                    && sight.equals(choice.hand().sight())
                    && origin == choice.hand().origin()
                    && evenPaper == choice.hand().evenPaper();
        }
    }

    private record Turned(int quarterTurns, double degrees, SpotWish spots, GreyPlane plane) {
        boolean suits(ArtChoice choice) {
            return quarterTurns == choice.quarterTurns()
                    && degrees == choice.straightenDegrees()
                    && spots.equals(choice.hand().retouching().spots());
        }
    }

    private record Touched(GreyPlane from, List<Object> how, GreyPlane plane) {}

    @SuppressWarnings("ArrayRecordComponent") // handed on without copying; equality is never asked
    private record Counted(GreyPlane plane, PixelRect part, long[] greys) {}

    public static ArtSource open(Path file) {
        return new ArtSource(file, false);
    }

    /** Art that is worked on for a while: it stays at hand as it was read, so that another turn does not read it again. */
    public static ArtSource toStay(Path file) {
        return new ArtSource(file, true);
    }

    /** Refuses to work for any thread but the one that opened it: a window that called by mistake would stand still. */
    public void own() {
        if (Thread.currentThread() != owner) {
            throw new IllegalStateException("the art is worked by " + owner.getName() + ", not by "
                    + Thread.currentThread().getName());
        }
    }

    public Path file() {
        return file;
    }

    /** What is known of a page, from 1, without decoding it. */
    public SourceArt source(int page) {
        if (look.page() != page) {
            look = Art.open(file, page);
        }
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return new SourceArt(
                name, Job.titleOf(dot > 0 ? name.substring(0, dot) : name), "", look.width(), look.height());
    }

    /** The art, healed and turned as the job says; whoever holds it never closes it. */
    public GreyPlane turned(ArtChoice choice, Progress progress) throws IOException {
        Decoded page = decoded(choice, progress.part(0, 0.8));
        Turned present = page.turned;
        if (present != null && present.suits(choice)) {
            return present.plane();
        }
        letTurnedGo(page);
        GreyPlane upright = upright(page, progress);
        SpotWish spots = choice.hand().retouching().spots();
        GreyPlane healed = page.spots.healed(upright, spots, progress.part(0.8, 0.9));
        TurnedArt turning = new TurnedArt(healed, choice.quarterTurns(), choice.straightenDegrees());
        GreyPlane plane = turning.unchanged() ? healed : turned(turning, progress.part(0.9, 1));
        page.turned = new Turned(choice.quarterTurns(), choice.straightenDegrees(), spots, plane);
        if (!stays && plane != upright) {
            range(choice, Progress.NONE);
            if (choice.hand().origin() == Origin.LINE) {
                line(choice);
            }
            upright.close();
            page.upright = null;
            if (plane != healed) {
                page.spots.letGo();
            }
        }
        return plane;
    }

    private static GreyPlane turned(TurnedArt turning, Progress progress) throws IOException {
        return ArtPlanes.stored(
                turning.width(), turning.height(), store -> turning.rows(Crew.allCores(), store::putRows, progress));
    }

    /** Looks through a plane for what a touch needs of it. */
    @FunctionalInterface
    interface Touching {
        Touch of(GreyPlane plane) throws IOException;
    }

    /**
     * The art as the job turns it, touched; it stays at hand until it is turned or touched otherwise. Whoever holds it never closes it.
     *
     * @param how all that decides the touches
     * @param touches one after the other
     */
    GreyPlane touched(ArtChoice choice, List<Object> how, List<Touching> touches, Progress progress)
            throws IOException {
        GreyPlane from = turned(choice, Progress.NONE);
        Decoded page = decoded(choice, progress);
        Touched present = page.touched;
        if (present != null && present.from() == from && present.how().equals(how)) {
            return present.plane();
        }
        letTouchedGo(page);
        GreyPlane last = from;
        for (Touching touching : touches) {
            GreyPlane before = last;
            try {
                last = ArtPlanes.stored(
                        from.width(),
                        from.height(),
                        store -> touching.of(before).rows(before, Crew.allCores(), store::putRows, progress));
            } finally {
                if (before != from) {
                    before.close();
                }
            }
        }
        page.touched = new Touched(from, how, last);
        return last;
    }

    private static void letTouchedGo(Decoded page) {
        Touched present = page.touched;
        page.touched = null;
        if (present != null) {
            present.plane().close();
        }
    }

    private Decoded decoded(ArtChoice choice, Progress progress) throws IOException {
        own();
        Decoded present = decoded;
        if (present != null && present.suits(choice)) {
            return present;
        }
        close();
        source(choice.page());
        List<String> remarks = new ArrayList<>(look.remarks());
        if (choice.hand().sight().weights().isPresent() && !look.coloured()) {
            remarks.add("the art has no colours, so that filter, emulsion and weights change nothing");
        }
        Decoded read = new Decoded(choice, look.fingerprint(), remarks);
        decoded = read;
        read(read, progress);
        remarks.addAll(Objects.requireNonNull(read.print).remarks());
        read.paper.map(EvenPaper::found).ifPresent(found -> remarks.addAll(PaperWords.of(found, read.evenPaper)));
        return read;
    }

    /** The page upright, its dots taken out and its paper made even where the job says so; it is read again where it was let go. */
    private GreyPlane upright(Decoded page, Progress progress) throws IOException {
        if (page.upright == null) {
            source(page.page);
            read(page, progress);
        }
        return Objects.requireNonNull(page.upright);
    }

    private void read(Decoded page, Progress progress) throws IOException {
        GreyPlane asRead = look.decode(
                page.sight.weights(), progress.part(0, 0.8), ArtPlanes.budgetBytes(), ArtPlanes.spillFolder());
        page.upright = asRead;
        PrintedArt print = page.print == null ? PrintedArt.of(page.origin, asRead, look.pixelsPerInch()) : page.print;
        page.print = print;
        Optional<CellMeans> means = print.withoutDots(asRead);
        if (means.isPresent()) {
            replace(page, store -> means.get().rows(Crew.allCores(), store::putRows, progress.part(0.8, 0.9)));
        }
        GreyPlane uneven = Objects.requireNonNull(page.upright);
        page.paper = EvenPaper.of(uneven, page.evenPaper, Crew.allCores(), Progress.NONE);
        if (page.paper.isPresent()) {
            EvenPaper paper = page.paper.get();
            replace(page, store -> paper.rows(uneven, Crew.allCores(), store::putRows, progress.part(0.9, 1)));
        }
    }

    private static void replace(Decoded page, ArtPlanes.Filling rows) throws IOException {
        GreyPlane before = Objects.requireNonNull(page.upright);
        page.upright = ArtPlanes.stored(before.width(), before.height(), rows);
        before.close();
    }

    /** What is known of it as a drawing. */
    LineArt line(ArtChoice choice) throws IOException {
        Decoded page = decoded(choice, Progress.NONE);
        LineArt present = page.line;
        if (present == null) {
            present = LineArt.of(upright(page, Progress.NONE));
            page.line = present;
        }
        return present;
    }

    /** What stands out of it, looked for once. */
    SpotsFound spots(ArtChoice choice) throws IOException {
        Decoded page = decoded(choice, Progress.NONE);
        return page.spots.found(() -> upright(page, Progress.NONE));
    }

    /** What is known of it as a print. */
    PrintedArt print(ArtChoice choice) throws IOException {
        return Objects.requireNonNull(decoded(choice, Progress.NONE).print);
    }

    /**
     * The ends the job gives; what it leaves open is found on the whole page, since a fragment may show no bare paper, and before it
     * is turned, since corners that turning leaves blank are no paper.
     */
    ArtRange range(ArtChoice choice, Progress progress) throws IOException {
        ArtRange page = choice.white() instanceof TonePoint.Given && choice.black() instanceof TonePoint.Given
                ? ArtRange.WHOLE
                : found(choice, progress);
        return new ArtRange(
                choice.white() instanceof TonePoint.Given given ? given.luminance() : page.white(),
                choice.black() instanceof TonePoint.Given given ? given.luminance() : page.black());
    }

    private ArtRange found(ArtChoice choice, Progress progress) throws IOException {
        Decoded page = decoded(choice, progress);
        ArtRange present = page.found;
        if (present == null) {
            Optional<ArtRange> drawn =
                    choice.hand().origin() == Origin.LINE ? line(choice).range() : Optional.empty();
            present = drawn.isPresent() ? drawn.get() : PaperAndInk.find(upright(page, progress));
            page.found = present;
        }
        return present;
    }

    /** Pixels of the fragment of a turned plane by grey code; nobody may change them. */
    long[] greysOfCrop(GreyPlane plane, ArtChoice choice, Progress progress) throws IOException {
        PixelRect part = cropped(plane, choice.crop());
        Decoded page = decoded(choice, progress);
        Counted present = page.counted;
        if (present == null || present.plane() != plane || !present.part().equals(part)) {
            present = new Counted(plane, part, Histogram.of(plane, part, Crew.allCores()));
            page.counted = present;
        }
        return present.greys();
    }

    private static PixelRect cropped(GreyPlane plane, ArtChoice.Crop crop) {
        int left = Math.min(plane.width() - 1, (int) (crop.left() * plane.width()));
        int top = Math.min(plane.height() - 1, (int) (crop.top() * plane.height()));
        int width = Math.max(1, Math.min(plane.width() - left, (int) Math.round(crop.width() * plane.width())));
        int height = Math.max(1, Math.min(plane.height() - top, (int) Math.round(crop.height() * plane.height())));
        return new PixelRect(left, top, width, height);
    }

    /** The choice with the digest of the file's bytes, for which one may have to wait. */
    ArtChoice read(ArtChoice choice) throws IOException {
        return choice.read(Crew.joined(decoded(choice, Progress.NONE).fingerprint));
    }

    public List<String> remarks(ArtChoice choice) throws IOException {
        List<String> remarks = new ArrayList<>(decoded(choice, Progress.NONE).remarks);
        if (choice.hand().origin() == Origin.LINE) {
            remarks.addAll(line(choice).remarks(choice.hand().line().threshold().isPresent()));
        }
        return remarks;
    }

    /** Whether its samples can say a colour. */
    public boolean coloured() {
        return look.coloured();
    }

    /** Whether the file says what its tones mean. */
    public boolean tonesStated() {
        return look.tonesStated();
    }

    private static void letTurnedGo(Decoded page) {
        letTouchedGo(page);
        Turned present = page.turned;
        page.turned = null;
        if (present != null && present.plane() != page.upright && !page.spots.holds(present.plane())) {
            present.plane().close();
        }
    }

    @Override
    public void close() {
        Decoded page = decoded;
        decoded = null;
        if (page != null) {
            letTurnedGo(page);
            page.spots.letGo();
            GreyPlane upright = page.upright;
            if (upright != null) {
                upright.close();
            }
        }
    }
}
