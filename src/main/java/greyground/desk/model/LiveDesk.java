package greyground.desk.model;

import greyground.app.Greyground;
import greyground.app.bite.BiteTimes;
import greyground.app.bite.LoggedProof;
import greyground.app.check.PlateWarning;
import greyground.app.live.LiveArt;
import greyground.app.live.LiveBench;
import greyground.app.live.LiveBite;
import greyground.app.live.LivePlate;
import greyground.app.live.LiveSheet;
import greyground.app.live.SheetSide;
import greyground.app.live.ToneAt;
import greyground.app.live.ToneCounts;
import greyground.app.recipe.SourceArt;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.app.sight.Stage;
import greyground.desk.model.BenchWorker.Kind;
import greyground.film.job.ArtChoice;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.plan.ExposurePlan;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Brings the bench's pictures to the window: everything is computed on the {@link BenchWorker}, everything told on the window's own
 * thread, and what a newer change has overtaken is never told.
 */
public final class LiveDesk implements AutoCloseable {
    /** Pixels at which the film's dots begin to be told apart, in millimetres. */
    static final double DOTS_SHOW_MILLIMETRES = 0.045;

    private final BenchWorker worker;
    private final Executor window;
    private final Consumer<String> refusals;
    // These four belong to the worker's thread.
    private @Nullable LiveBench bench;
    private @Nullable LivePlate plate;
    private @Nullable LiveSheet sheet;
    private double toldOpening;
    private volatile DoubleConsumer opening = done -> {};
    // Counts changes; the window's thread alone writes it.
    private volatile int change;
    /** News on its way to the window's thread: what it will ask for is not asked yet. */
    private final AtomicInteger untold = new AtomicInteger();

    /**
     * A desk without a picture.
     *
     * @param window runs what it is given on the window's thread
     * @param refusals hears one line when something can't be done, on that thread
     */
    public LiveDesk(Executor window, Consumer<String> refusals) {
        this.window = window;
        this.refusals = refusals;
        this.worker = new BenchWorker(this::failed);
    }

    private void failed(Throwable failed) {
        String words = DeskWords.fault(failed, "picture");
        window.execute(() -> refusals.accept(words));
    }

    /**
     * Makes the plate of a new state.
     *
     * @param first told as soon as art that was not seen before can be, before its plate is computed
     * @param ready told when the plate's pictures can be asked for
     */
    public void show(
            BenchState state, FirstSight.WholeView whole, Consumer<FirstSight> first, Consumer<LivePlate> ready) {
        int own = change + 1;
        change = own;
        worker.drop(Kind.CHECK);
        worker.drop(Kind.WORDS);
        worker.ask(Kind.PLATE, watch -> {
            LiveBench present = bench;
            if (present == null || !present.file().equals(state.art())) {
                present = Greyground.bench(state.art());
                take(present);
            }
            sheet = null;
            if (plate == null) {
                LiveArt art = present.art(state.job().art(), watch::accept);
                LiveView view = whole.of(art.width(), art.height());
                FirstSight seen = new FirstSight(art.width(), art.height(), view, art.picture(view));
                tell(own, () -> first.accept(seen));
            }
            LivePlate made = present.plate(state.job(), state.workshop(), watch::accept);
            plate = made;
            tell(own, () -> ready.accept(made));
        });
    }

    /** Lays other art on the bench; what lay there before is let go of. */
    private void take(LiveBench other) {
        LiveBench before = bench;
        plate = null;
        bench = other;
        if (before != null) {
            before.close();
        }
    }

    /** Hears, on the window's thread, how far a new picture is opened; 1 is the end, however it came. */
    public void watchOpening(DoubleConsumer hears) {
        opening = hears;
    }

    private void tellOpening(double done) {
        // A band more or less shows nowhere, and news of each would only keep the window busy.
        if (done == 1 || Math.abs(done - toldOpening) >= 0.01) {
            toldOpening = done;
            DoubleConsumer hears = opening;
            window.execute(() -> hears.accept(done));
        }
    }

    /** Gives up the picture that is being opened; whoever asked for it hears no more of it. */
    public void stopOpening() {
        worker.drop(Kind.OPEN);
    }

    /**
     * Opens a picture's file and reads it whole, so that only what can be seen is ever laid on the bench.
     *
     * @param choice what of it to read, once it is known what the file holds
     * @param told on the window's thread, once it is read
     * @param refused hears there why it can't be read, in one line; the plate of what lay there before is to be shown again
     */
    public void open(
            Path file, Function<SourceArt, ArtChoice> choice, Consumer<SourceArt> told, Consumer<String> refused) {
        worker.ask(Kind.OPEN, watch -> {
            plate = null;
            LiveBench before = bench;
            if (before != null) {
                // There may not be room for both; it is read again if it is to be seen again.
                before.close();
            }
            LiveBench opened = null;
            try {
                opened = Greyground.bench(file);
                SourceArt source = opened.source(1);
                opened.art(choice.apply(source), done -> {
                    watch.accept(done);
                    tellOpening(Math.min(done, 0.999));
                });
                worker.drop(Kind.PLATE);
                take(opened);
                opened = null;
                window.execute(() -> told.accept(source));
            } catch (CancellationException stopped) {
                throw stopped;
            } catch (Throwable unreadable) {
                String words = DeskWords.fault(unreadable, "picture");
                window.execute(() -> refused.accept(words));
            } finally {
                if (opened != null) {
                    opened.close();
                }
                tellOpening(1);
            }
        });
    }

    private void tell(int own, Runnable told) {
        untold.incrementAndGet();
        window.execute(() -> {
            try {
                if (own == change) {
                    told.run();
                }
            } finally {
                untold.decrementAndGet();
            }
        });
    }

    /**
     * Work that needs the plate.
     *
     * @param <T> what comes of it
     */
    @FunctionalInterface
    private interface PlateWork<T> {
        T run(LivePlate plate, DoubleConsumer watch) throws IOException;
    }

    /** Asks for work; what comes of it is told unless something newer has overtaken it. */
    private <T> void ask(Kind kind, Consumer<T> told, PlateWork<T> work) {
        int own = change;
        worker.ask(kind, watch -> {
            LivePlate present = plate;
            if (present != null && own == change) {
                T made = work.run(present, watch);
                tell(own, () -> told.accept(made));
            }
        });
    }

    /** A station from afar, and then from near where the view shows dots. */
    public void picture(Station station, LiveView view, Consumer<LivePicture> shown) {
        worker.drop(Kind.FINE_PICTURE);
        ask(Kind.PICTURE, shown, (present, watch) -> far(present, station, view));
        if (station.stage().isPresent() && view.perPixel() <= DOTS_SHOW_MILLIMETRES) {
            Stage stage = station.stage().get();
            boolean quick = view.perPixel() > 0.01;
            ask(Kind.FINE_PICTURE, shown, (present, watch) -> present.close(stage, view, quick, watch::accept));
        }
    }

    private static LivePicture far(LivePlate plate, Station station, LiveView view) {
        return station.stage().map(stage -> plate.tones(stage, view)).orElseGet(() -> plate.art(view));
    }

    /** The art where it lies on the plate. */
    public void artOnPlate(LiveView view, Consumer<LivePicture> shown) {
        ask(Kind.AGAINST, shown, (present, watch) -> present.artOnPlate(view));
    }

    /** What a station's picture loses, to be laid over it. */
    public void lost(Station station, LiveView view, Consumer<LivePicture> shown) {
        ask(Kind.LOST, shown, (present, watch) -> present.lost(station.stage(), view));
    }

    /** Lays out the film sheet; told where everything lies, or why it can't be. */
    public void layOut(boolean screen, Consumer<LiveSheet> told, Consumer<String> refused) {
        askSheet(Kind.LAY_OUT, told, refused, present -> {
            sheet = present.sheet(screen);
            return sheet;
        });
    }

    /** How large the largest film comes out of a printer; or why it can't be laid out. */
    public void measure(Consumer<SheetSize> told, Consumer<String> refused) {
        askSheet(Kind.MEASURE, told, refused, present -> present.sheet(false).printed());
    }

    @FunctionalInterface
    private interface SheetWork<T> {
        T run(LivePlate plate) throws IOException;
    }

    private <T> void askSheet(Kind kind, Consumer<T> told, Consumer<String> refused, SheetWork<T> work) {
        ask(kind, Runnable::run, (present, watch) -> {
            try {
                T made = work.run(present);
                return () -> told.accept(made);
            } catch (Refusal tooSmall) {
                return () -> refused.accept(String.valueOf(tooSmall.getMessage()));
            }
        });
    }

    /** The sheet laid out last from afar, and then its own dots where the view shows them. */
    public void sheet(SheetSide side, LiveView view, Consumer<LivePicture> shown) {
        Consumer<Optional<LivePicture>> told = made -> made.ifPresent(shown);
        worker.drop(Kind.FINE_SHEET);
        ask(Kind.SHEET, told, (present, watch) -> Optional.ofNullable(sheet).map(laid -> laid.far(view, side)));
        if (view.perPixel() <= DOTS_SHOW_MILLIMETRES) {
            ask(Kind.FINE_SHEET, told, (present, watch) -> {
                LiveSheet laid = sheet;
                return laid == null ? Optional.empty() : Optional.of(laid.near(view, side, watch::accept));
            });
        }
    }

    /** A small print, to be known by later. */
    public void small(LiveView view, Consumer<LivePicture> shown) {
        ask(Kind.RECENT, shown, (present, watch) -> far(present, Station.PRINT, view));
    }

    public void thumbnails(LiveView ofArt, LiveView ofPlate, BiConsumer<Station, LivePicture> shown) {
        int own = change;
        ask(Kind.THUMBNAILS, done -> {}, (present, watch) -> {
            for (Station station : Station.values()) {
                LivePicture small = far(present, station, station == Station.ART ? ofArt : ofPlate);
                tell(own, () -> shown.accept(station, small));
                watch.accept(0);
            }
            return own;
        });
    }

    /** A station through the loupe, and the tone in its middle. */
    public void loupe(Station station, LiveView view, BiConsumer<LivePicture, ToneAt> shown) {
        double x = view.left() + view.width() * view.perPixel() / 2;
        double y = view.top() + view.height() * view.perPixel() / 2;
        ask(Kind.LOUPE, Runnable::run, (present, watch) -> {
            LivePicture seen = station.stage().isPresent()
                    ? present.close(station.stage().get(), view, true, watch::accept)
                    : present.art(view);
            ToneAt tone = tone(present, station, x, y);
            return () -> shown.accept(seen, tone);
        });
    }

    /** A place of a station of the plate at several bite times. */
    public void bites(Station station, LiveView view, BiteTimes times, Consumer<List<LiveBite>> shown) {
        Stage stage = station.stage().orElseThrow();
        ask(Kind.BITES, shown, (present, watch) -> present.bites(stage, view, times, watch::accept));
    }

    private static ToneAt tone(LivePlate plate, Station station, double x, double y) {
        return station == Station.ART ? plate.toneOfArt(x, y) : plate.tone(new Offset(x, y));
    }

    /** The tone of a place: of the plate in millimetres, of the art in its pixels. */
    public void tone(Station station, double x, double y, Consumer<ToneAt> told) {
        ask(Kind.TONE, told, (present, watch) -> tone(present, station, x, y));
    }

    /** How many of the art's pixels have which tone at a station. */
    public void counts(Station station, Consumer<ToneCounts> told) {
        ask(Kind.COUNTS, told, (present, watch) -> present.counts(station.stage()));
    }

    /** Linear luminance of a place of the art. */
    public void luminance(double artX, double artY, Consumer<Double> told) {
        ask(Kind.TONE, told, (present, watch) -> present.luminance(artX, artY));
    }

    /** Plan and remarks, then every dot of the film looked through. */
    public void words(
            Consumer<ExposurePlan> plan, Consumer<List<PlateWarning>> remarks, Consumer<List<PlateWarning>> warnings) {
        ask(Kind.WORDS, Runnable::run, (present, watch) -> {
            ExposurePlan made = present.plan();
            List<PlateWarning> said = present.remarks(watch::accept);
            return () -> {
                plan.accept(made);
                remarks.accept(said);
            };
        });
        ask(Kind.CHECK, warnings, (present, watch) -> present.check(watch::accept));
    }

    /** What the proofs of this plate tell, and what further minutes would do; never heard of again once it is stopped. */
    public void biteLog(List<LoggedProof> proofs, LongWork.News<ExposurePlan.Step> news) {
        int own = change;
        worker.ask(Kind.BITE_LOG, watch -> {
            LivePlate present = plate;
            if (present == null || own != change) {
                window.execute(() -> news.failed().accept("the plate has changed meanwhile: ask again"));
                return;
            }
            try {
                ExposurePlan.Step step = present.biteLog(proofs, done -> {
                            watch.accept(done);
                            window.execute(() -> news.progress().accept(done));
                        })
                        .step();
                window.execute(() -> news.done().accept(step));
            } catch (Refusal refused) {
                window.execute(() -> news.failed().accept(String.valueOf(refused.getMessage())));
            }
        });
    }

    public void stopBiteLog() {
        worker.drop(Kind.BITE_LOG);
    }

    /** Whether a plate, or the first picture of it, is being computed. */
    public boolean isMakingPlate() {
        return worker.isDoing(Kind.PLATE) || worker.isDoing(Kind.PICTURE);
    }

    /** Whether anything is computed, or has been and is not told yet. */
    public boolean isBusy() {
        return worker.isBusy() || untold.get() > 0;
    }

    @Override
    public void close() {
        worker.close(watch -> {
            LiveBench present = bench;
            bench = null;
            if (present != null) {
                present.close();
            }
        });
    }
}
